"""Boxes and affine maps: the algebra that every position rests on."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Affine, Box, Sides, Size

numbers = st.floats(-500, 500, allow_nan=False)
lengths = st.floats(0.1, 500)
points = st.tuples(numbers, numbers)
shifts = st.builds(Affine.move, numbers, numbers)
turns = st.builds(Affine.quarter_turn, lengths)
scales = st.builds(Affine.scale, st.floats(0.1, 10))
maps = st.one_of(shifts, turns, scales)
boxes = st.builds(Box, numbers, numbers, lengths, lengths)


def near(*values: float) -> object:
    return pytest.approx(values, abs=1e-6)


@settings(deadline=None)
@given(maps, maps, points)
def test_then_applies_the_first_map_first(first: Affine, after: Affine, point: tuple[float, float]) -> None:
    assert first.then(after).of(*point) == near(*after.of(*first.of(*point)))


@settings(deadline=None)
@given(maps, maps, maps, points)
def test_composition_is_associative(f: Affine, g: Affine, h: Affine, point: tuple[float, float]) -> None:
    assert f.then(g).then(h).of(*point) == near(*f.then(g.then(h)).of(*point))


@settings(deadline=None)
@given(maps, points)
def test_the_map_without_values_is_neutral_on_both_sides(f: Affine, point: tuple[float, float]) -> None:
    assert Affine().then(f) == f.then(Affine()) == f
    assert Affine().of(*point) == point


@settings(deadline=None)
@given(numbers, numbers, points)
def test_a_shift_and_its_opposite_cancel(dx: float, dy: float, point: tuple[float, float]) -> None:
    assert Affine.move(dx, dy).then(Affine.move(-dx, -dy)).of(*point) == near(*point)


@settings(deadline=None)
@given(lengths, lengths)
def test_a_quarter_turn_lands_a_box_at_the_origin_on_its_side(width: float, height: float) -> None:
    turn = Affine.quarter_turn(height)
    corners = [turn.of(x, y) for x, y in ((0, 0), (width, 0), (width, height), (0, height))]
    assert [min(x for x, _ in corners), min(y for _, y in corners)] == pytest.approx([0, 0], abs=1e-9)
    assert [max(x for x, _ in corners), max(y for _, y in corners)] == pytest.approx([height, width], abs=1e-9)


def test_a_quarter_turn_is_clockwise_on_a_page_whose_y_grows_downwards() -> None:
    head_left, head_right = Affine.quarter_turn(190).of(0, 0), Affine.quarter_turn(190).of(90, 0)
    assert head_left == (190, 0)  # the head's left corner goes to the top right …
    assert head_right == (190, 90)  # … and the head runs down the right edge


@settings(deadline=None)
@given(lengths, lengths, points)
def test_four_quarter_turns_are_none(width: float, height: float, point: tuple[float, float]) -> None:
    whole = Affine()
    for side in (height, width, height, width):
        whole = whole.then(Affine.quarter_turn(side))
    assert whole.of(*point) == near(*point)


@settings(deadline=None)
@given(maps)
def test_a_quarter_turn_or_a_shift_keeps_area_and_never_mirrors(f: Affine) -> None:
    determinant = f.a * f.d - f.b * f.c
    assert determinant > 0
    assert determinant == pytest.approx(1 if f.b else f.a**2)


@settings(deadline=None)
@given(boxes, st.floats(-50, 50))
def test_an_inset_and_its_opposite_cancel(box: Box, distance: float) -> None:
    back = box.inset(distance).inset(-distance)
    assert (back.x, back.y, back.width, back.height) == near(box.x, box.y, box.width, box.height)


@settings(deadline=None)
@given(boxes, boxes)
def test_joined_boxes_are_the_least_box_that_covers_both(one: Box, other: Box) -> None:
    both = one.joined(other)
    assert both.covers(one)
    assert both.covers(other)
    edges = {both.x: (one.x, other.x), both.right: (one.right, other.right)}
    for edge, own in edges.items():
        assert min(abs(edge - x) for x in own) < 1e-9


@settings(deadline=None)
@given(boxes, boxes)
def test_boxes_overlap_alike_from_either_side(one: Box, other: Box) -> None:
    assert one.overlaps(other) == other.overlaps(one)


def test_boxes_that_share_an_edge_do_not_overlap() -> None:
    assert not Box(0, 0, 10, 10).overlaps(Box(10, 0, 10, 10))
    assert Box(0, 0, 10, 10).overlaps(Box(9.9, 0, 10, 10))


def test_shrinking_takes_each_side_its_own_distance() -> None:
    assert Box(0, 0, 100, 200).shrink(Sides(left=1, top=2, right=3, bottom=4)) == Box(1, 2, 96, 194)


def test_a_size_on_its_side_swaps_width_and_height() -> None:
    assert Size(90, 190).turned() == Size(190, 90)
    assert Sides(4, 3, 2, 1).least() == 1
