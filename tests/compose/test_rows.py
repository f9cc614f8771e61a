"""Rows: how many, where, and squares that are as large as they say."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box
from padspec.compose.blocks.rows import draw, rule_up
from padspec.compose.face import Drawn, Room
from padspec.scene.outline import Line, Move, bounds

from .blocks import ink_boxes, of_part, rows, squares

pitches = st.floats(3, 20)
heights = st.floats(0, 400)
seats = st.sampled_from(["rule", "centre"])
weights = st.floats(0.1, 0.8)


def drawn(box: Box, **changes: object) -> Drawn:
    return draw(rows(**changes), Room(box), 0.0)


def rule_ys(some: Drawn) -> list[float]:
    return [shape.outline[0].y for shape in of_part(some, "rule")]


# Rulings in common use: wide or legal 11/32 in, college 9/32 in, narrow 1/4 in, the Japanese U, A, B and C
# rulings of 8, 7, 6 and 5 mm (trade usage; no standard fixes them).
@pytest.mark.parametrize(
    ("pitch", "count"),
    [(11 * 25.4 / 32, 17), (8.0, 18), (9 * 25.4 / 32, 20), (7.0, 21), (25.4 / 4, 23), (6.0, 25), (5.0, 30)],
)
def test_a_panel_of_150_mm_holds_as_many_rows_of_a_ruling_as_fit(pitch: float, count: int) -> None:
    assert rule_up(rows(pitch=pitch), Box(0, 0, 68, 150)).count == count


@settings(deadline=None)
@given(st.integers(1, 60), st.sampled_from([5.0, 6.35, 7.14375, 0.1 * 3, 8.73125]))
def test_a_room_of_exactly_n_pitches_holds_n_rows(count: int, pitch: float) -> None:
    assert rule_up(rows(pitch=pitch, squares=None), Box(0, 0, 68, count * pitch)).count == count


@settings(deadline=None)
@given(pitches, heights)
def test_one_row_more_would_not_fit(pitch: float, height: float) -> None:
    count = rule_up(rows(pitch=pitch), Box(0, 0, 68, height)).count
    assert count * pitch <= height + 1e-6
    assert (count + 1) * pitch > height


@settings(deadline=None)
@given(pitches, heights, seats, weights, st.floats(0.2, 0.8))
def test_the_ink_is_centred_in_its_room(
    pitch: float, height: float, seat: str, weight: float, share: float
) -> None:
    assume(weight < pitch * min(share / 2, 1 - share))
    box = Box(11, 40, 68, height)
    some = drawn(box, pitch=pitch, squares=squares(size=share * pitch, seat=seat), weight=weight)
    ink = list(ink_boxes(of_part(some, "rule") + of_part(some, "checkbox")))
    if ink:
        above = min(part.y for part in ink) - box.y
        below = box.bottom - max(part.bottom for part in ink)
        assert above == pytest.approx(below, abs=1e-6)
        assert above >= -1e-6


@settings(deadline=None)
@given(pitches, heights, weights)
def test_without_squares_half_a_pitch_of_writing_room_stands_for_the_ink(
    pitch: float, height: float, weight: float
) -> None:
    box = Box(11, 40, 68, height)
    ys = rule_ys(drawn(box, pitch=pitch, squares=None, weight=weight))
    if ys:
        assert ys[0] - pitch / 2 - box.y == pytest.approx(box.bottom - ys[-1] - weight / 2, abs=1e-6)


@settings(deadline=None)
@given(pitches, heights)
def test_every_rule_is_its_number_of_pitches_from_the_first(pitch: float, height: float) -> None:
    ys = rule_ys(drawn(Box(11, 40, 68, height), pitch=pitch))
    assert ys == [ys[0] + n * pitch for n in range(len(ys))]


@settings(deadline=None)
@given(st.integers(1, 200), st.floats(20, 400))
def test_a_count_that_is_asked_for_sets_the_pitch(count: int, height: float) -> None:
    some = drawn(Box(0, 0, 68, height), count=count, squares=None)
    ys = rule_ys(some)
    assert len(ys) == count
    assert some.placements[0].pitch == pytest.approx(height / count, abs=1e-9)
    assert ys[-1] - ys[0] == pytest.approx((count - 1) * height / count, abs=1e-6)


@settings(deadline=None)
@given(st.floats(1, 10), weights, seats, st.floats(0, 4))
def test_a_square_is_its_outer_size_line_included(size: float, weight: float, seat: str, corner: float) -> None:
    some = drawn(
        Box(11, 40, 68, 30), pitch=12.0, squares=squares(size=size, seat=seat, corner=corner), weight=weight
    )
    for ink in ink_boxes(of_part(some, "checkbox")):
        assert (ink.x, ink.width, ink.height) == pytest.approx((11, size, size), abs=1e-9)


def test_a_square_on_the_rule_stands_with_its_foot_at_the_foot_of_the_line() -> None:
    some = drawn(Box(11, 40, 68, 20), pitch=8.0, weight=0.3)
    for y, ink in zip(rule_ys(some), ink_boxes(of_part(some, "checkbox")), strict=True):
        assert ink.bottom == pytest.approx(y + 0.15, abs=1e-9)


def test_a_square_in_the_middle_of_the_row_is_half_a_pitch_above_the_rule() -> None:
    some = drawn(Box(11, 40, 68, 20), pitch=8.0, squares=squares(seat="centre"))
    for y, ink in zip(rule_ys(some), ink_boxes(of_part(some, "checkbox")), strict=True):
        assert ink.centre[1] == pytest.approx(y - 4, abs=1e-9)


def test_a_rule_runs_from_the_gap_beside_the_square_to_the_end_of_the_room() -> None:
    (shape, *_) = of_part(drawn(Box(11, 40, 68, 20), squares=squares(size=4.0), gap=2.5), "rule")
    assert shape.outline == (Move(17.5, shape.outline[0].y), Line(79, shape.outline[0].y))


def test_round_ends_stay_inside_the_room() -> None:
    (shape, *_) = of_part(drawn(Box(11, 40, 68, 20), squares=None, weight=0.6, ends="round"), "rule")
    box = bounds(shape.outline)
    assert (box.x, box.right) == pytest.approx((11.3, 78.7), abs=1e-9)


@pytest.mark.parametrize(("width", "rules"), [(6.6, 2), (6.5, 0), (3.0, 0)])
def test_a_room_that_its_squares_fill_has_no_rules_rather_than_backward_ones(width: float, rules: int) -> None:
    some = drawn(Box(11, 40, width, 20), pitch=8.0, squares=squares(size=4.0), gap=2.5)
    assert len(of_part(some, "rule")) == rules
    assert len(of_part(some, "checkbox")) == 2


@pytest.mark.parametrize("height", [0.0, -4.0, 7.9])
def test_a_room_too_low_for_one_row_draws_none_and_says_what_lacks(height: float) -> None:
    some = drawn(Box(0, 0, 68, height), pitch=8.0)
    assert some.nodes == ()
    assert some.placements[0].short_by == pytest.approx(8.0 - max(height, 0.0))


def test_the_tallest_trim_is_ruled_to_its_foot_at_the_finest_pitch() -> None:
    assert rule_up(rows(pitch=1.0), Box(0, 0, 68, 978)).count == 978
