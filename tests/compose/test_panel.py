"""The panel: true circular corners, and nothing in it that touches them."""

from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box
from padspec.compose.blocks.panel import CORNER_CLEARANCE, covers, draw
from padspec.compose.face import Drawn, Room
from padspec.compose.stack import Stacked
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.panel import Panel
from padspec.scene.nodes import Shape
from padspec.scene.outline import Curve, Line, Move, Outline, bounds, circle, rounded

from .blocks import columns, grid, ink_boxes, marks, of_part, panel, pile, rows, squares
from .test_row_ends import styles

TRIM = Box(0, 0, 90, 190)
#: What a panel may hold besides rows.
HELD: dict[str, Block] = {
    "grid": grid(pitch=4.0, heavy_every=5),
    "dots": grid(pitch=5.0, mark="dots", dot=1.0),
    "crosses": grid(pitch=7.0, mark="crosses", dot=2.0),
    "circles": marks(count=31),
    "squares": marks(count=9, shape="square", size=8.0),
    "columns": columns(rows(id="a"), grid(id="b")),
    "stack": pile(rows(id="a", grow=0, count=2, squares=None), rows(id="b")),
}


def drawn(
    covered: float = 0.0, trim: Box = TRIM, row_keys: dict[str, object] | None = None, **keys: object
) -> Drawn:
    return draw(panel(rows(**(row_keys or {})), **keys), Room(trim, covered), Stacked(0.0))


def clearance(point: tuple[float, float], box: Box, radius: float) -> float:
    """How far inside a rounded box a point lies: from the arc in a corner's square, else from the nearest side."""
    x, y = point
    aside = min(x - box.x, box.right - x)
    along = min(y - box.y, box.bottom - y)
    if aside < radius and along < radius:
        return radius - hypot(radius - aside, radius - along)
    return min(aside, along)


@settings(deadline=None)
@given(
    corner=st.floats(0, 40),
    pad=st.floats(0, 15),
    pitch=st.floats(3, 15),
    square=st.floats(0.2, 0.8),
    seat=st.sampled_from(["rule", "centre"]),
    covered=st.sampled_from([0.0, 0.0, 5.0, 12.0]),
    width=st.floats(60, 200),
    height=st.floats(60, 300),
)
def test_no_rule_and_no_square_comes_near_a_corner_arc(
    corner: float, pad: float, pitch: float, square: float, seat: str, covered: float, width: float, height: float
) -> None:
    keys = {"pitch": pitch, "squares": squares(size=square * pitch, seat=seat)}
    some = drawn(covered, Box(0, 0, width, height), keys, corner=corner, pad=pad)
    box = some.placements[0].box
    radius = min(corner, box.width / 2, box.height / 2)
    for ink in ink_boxes(of_part(some, "rule") + of_part(some, "checkbox")):
        if ink.width <= 0 or ink.x < box.x or ink.right > box.right:
            continue  # a panel too narrow for its squares; the checks tell of that
        for point in ((ink.x, ink.y), (ink.right, ink.y), (ink.x, ink.bottom), (ink.right, ink.bottom)):
            assert clearance(point, box, radius) >= min(CORNER_CLEARANCE, pad) - 1e-6


@settings(deadline=None, max_examples=80)
@given(
    style=styles,
    corner=st.floats(0, 40),
    pad=st.floats(0, 15),
    covered=st.sampled_from([0.0, 0.0, 5.0]),
    width=st.floats(60, 200),
    height=st.floats(60, 300),
)
def test_rows_of_every_style_clear_the_corner_arcs(
    style: dict[str, object], corner: float, pad: float, covered: float, width: float, height: float
) -> None:
    keep_clear(panel(rows(**style), corner=corner, pad=pad), covered, width, height)


@settings(deadline=None, max_examples=80)
@given(
    held=st.sampled_from(sorted(HELD)),
    corner=st.floats(0, 40),
    pad=st.floats(0, 15),
    width=st.floats(60, 200),
    height=st.floats(60, 300),
)
def test_whatever_a_panel_holds_clears_its_corner_arcs(
    held: str, corner: float, pad: float, width: float, height: float
) -> None:
    keep_clear(panel(HELD[held], corner=corner, pad=pad), 0.0, width, height)


def keep_clear(block: Panel, covered: float, width: float, height: float) -> None:
    """True distance of all ink, boxed, from the panel's edge and its arcs."""
    some = draw(block, Room(Box(0, 0, width, height), covered), Stacked(0.0))
    box = some.placements[0].box
    radius = min(block.corner, box.width / 2, box.height / 2)
    content = box.width - 2 * block.pad
    inked = [node for _, node in some.nodes if isinstance(node, Shape) and node.cause.part != "panel"]
    for ink in ink_boxes(inked):
        if (
            ink.width > content + 1e-6
            or ink.x < box.x + block.pad - 1e-6
            or ink.right > box.right - block.pad + 1e-6
        ):
            continue  # a panel too narrow for what it holds; the checks tell of that
        for point in ((ink.x, ink.y), (ink.right, ink.y), (ink.x, ink.bottom), (ink.right, ink.bottom)):
            assert clearance(point, box, radius) >= min(CORNER_CLEARANCE, block.pad) - 1e-6


def test_a_panel_that_lets_something_through_covers_nothing() -> None:
    assert covers(panel(opacity=0.9), Box(6, 6, 60, 60)) == ()


def test_the_panel_has_the_opacity_that_was_asked_for_and_what_it_holds_has_not() -> None:
    some = drawn(opacity=0.6)
    shapes = {node.cause.part: node.opacity for _, node in some.nodes if isinstance(node, Shape)}
    assert shapes == {"panel": 0.6, "rule": 1.0, "checkbox": 1.0}


@pytest.mark.parametrize(("head", "box"), [(0.0, Box(6, 6, 78, 178)), (5.0, Box(6, 0, 78, 184))])
def test_the_panel_keeps_its_inset_except_at_a_head_that_art_lies_on(head: float, box: Box) -> None:
    assert drawn(head).placements[0].box == box


def test_the_rows_keep_the_same_distance_left_and_right() -> None:
    some = drawn()
    box, held = some.placements[0].box, some.placements[1].box
    assert held.x - box.x == box.right - held.right == 5


def test_what_the_panel_holds_starts_below_the_art_that_lies_on_it() -> None:
    some = drawn(covered=12.0)
    assert some.placements[1].box.y >= some.placements[0].box.y + 12


@settings(deadline=None)
@given(st.floats(0.5, 40), st.floats(1, 200), st.floats(1, 200))
def test_rounded_corners_are_true_circles(radius: float, width: float, height: float) -> None:
    box = Box(3, 7, width, height)
    r = min(radius, width / 2, height / 2)
    for centre, point in sampled(rounded(box, radius)):
        assert abs(hypot(point[0] - centre[0], point[1] - centre[1]) / r - 1) < 3e-4


def sampled(outline: Outline) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """Points along each corner curve, each with the centre that its two tangents give."""
    found = []
    at = (0.0, 0.0)
    for step in outline:
        if isinstance(step, Curve):
            start, end = at, (step.x, step.y)
            level = abs(step.y1 - start[1]) < 1e-9  # the curve sets off along x
            centre = (start[0], end[1]) if level else (end[0], start[1])
            for n in range(33):
                t = n / 32
                weights = ((1 - t) ** 3, 3 * (1 - t) ** 2 * t, 3 * (1 - t) * t**2, t**3)
                xs, ys = (start[0], step.x1, step.x2, end[0]), (start[1], step.y1, step.y2, end[1])
                dot = [sum(w * v for w, v in zip(weights, values, strict=True)) for values in (xs, ys)]
                found.append((centre, (dot[0], dot[1])))
        if isinstance(step, Move | Line | Curve):
            at = (step.x, step.y)
    return found


def test_there_are_four_corners_of_equal_radius() -> None:
    curves = [step for step in rounded(Box(0, 0, 50, 30), 6) if isinstance(step, Curve)]
    assert len(curves) == 4
    assert {(step.x, step.y) for step in curves} == {(50, 6), (44, 30), (0, 24), (6, 0)}


def test_a_radius_over_half_the_shorter_side_makes_round_ends() -> None:
    assert rounded(Box(0, 0, 50, 20), 99) == rounded(Box(0, 0, 50, 20), 10)


@settings(deadline=None)
@given(st.floats(0.1, 30))
def test_a_circle_is_round_and_of_its_radius(radius: float) -> None:
    box = bounds(circle(5, 6, radius))
    assert (box.x, box.y, box.width, box.height) == pytest.approx(
        (5 - radius, 6 - radius, 2 * radius, 2 * radius), abs=1e-9
    )


@settings(deadline=None)
@given(st.floats(0, 60), st.floats(20, 80), st.floats(20, 80), st.floats(0, 1), st.floats(0, 1))
def test_what_a_panel_covers_lies_inside_its_rounded_edge(
    corner: float, width: float, height: float, across: float, down: float
) -> None:
    box = Box(6, 6, width, height)
    radius = min(corner, width / 2, height / 2)
    for cover in covers(panel(corner=corner), box):
        point = (cover.x + across * cover.width, cover.y + down * cover.height)
        assert clearance(point, box, radius) >= -1e-9
