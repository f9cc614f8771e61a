"""Grids: whole squares in the middle of their room, and what is drawn where the lines meet."""

from io import BytesIO
from itertools import pairwise
from math import floor

import pdfplumber
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.compose.blocks.grid import draw, lattice_in, need
from padspec.compose.face import Drawn, Room
from padspec.draw.pdf import face_pdf
from padspec.scene.nodes import Layer, Scene, Shape
from padspec.scene.outline import bounds

from .blocks import grid, lines_of, of_part

ROOM = Box(11, 40, 68, 97)
POINTS = 72 / 25.4

kinds = st.fixed_dictionaries(
    {
        "mark": st.sampled_from(["lines", "dots", "crosses"]),
        "pitch": st.floats(1, 20),
        "weight": st.floats(0.05, 0.9),
        "dot": st.floats(0.1, 0.9),
        "heavy_every": st.sampled_from([0, 1, 2, 5]),
    }
)


def drawn(box: Box = ROOM, **changes: object) -> Drawn:
    return draw(grid(**changes), Room(box), 0.0)


def ink(some: Drawn) -> list[Box]:
    """Every line with its weight, every filled shape."""
    found = []
    for shape in of_part(some, "rule"):
        if shape.stroke is None:
            found.append(bounds(shape.outline))
            continue
        half = shape.stroke.weight / 2
        for x1, y1, x2, y2 in lines_of(shape):
            across, along = (half, 0.0) if x1 == x2 else (0.0, half)
            found.append(Box(x1 - across, y1 - along, x2 - x1 + 2 * across, y2 - y1 + 2 * along))
    return found


def lines(some: Drawn) -> list[tuple[float, float, float, float, float]]:
    """Ends and weight of every line."""
    return [
        (*ends, shape.stroke.weight) for shape in of_part(some, "rule") if shape.stroke for ends in lines_of(shape)
    ]


@settings(deadline=None)
@given(kinds, st.floats(5, 200), st.floats(5, 250))
def test_the_grid_stays_in_its_room(kind: dict[str, object], width: float, height: float) -> None:
    box = Box(11, 40, width, height)
    for one in ink(drawn(box, **kind)):
        assert one.x >= box.x - 1e-9
        assert one.right <= box.right + 1e-9
        assert one.y >= box.y - 1e-9
        assert one.bottom <= box.bottom + 1e-9


@settings(deadline=None)
@given(kinds.filter(lambda kind: not kind["heavy_every"]), st.floats(5, 200), st.floats(5, 250))
def test_the_ink_is_centred_both_ways(kind: dict[str, object], width: float, height: float) -> None:
    box = Box(11, 40, width, height)
    found = ink(drawn(box, **kind))
    if found:
        left, right = min(one.x for one in found) - box.x, box.right - max(one.right for one in found)
        head, foot = min(one.y for one in found) - box.y, box.bottom - max(one.bottom for one in found)
        assert left == pytest.approx(right, abs=1e-6)
        assert head == pytest.approx(foot, abs=1e-6)


@settings(deadline=None)
@given(st.floats(1, 20), st.floats(5, 200), st.floats(5, 250))
def test_there_are_as_many_squares_as_fit_and_no_more(pitch: float, width: float, height: float) -> None:
    """⌊(room - line) ÷ pitch⌋ each way."""
    lattice = lattice_in(grid(pitch=pitch, weight=0.3), Box(0, 0, width, height))
    for count, room in ((lattice.across, width), (lattice.down, height)):
        assert count == max(floor((room - 0.3) / pitch + 1e-9), 0)


def test_a_room_of_whole_squares_and_a_line_is_filled() -> None:
    """Twelve squares of 5 mm with a line of 0.3 mm are 60.3 mm."""
    lattice = lattice_in(grid(pitch=5.0, weight=0.3), Box(0, 0, 60.3, 60.29))
    assert (lattice.across, lattice.down) == (12, 11)


@settings(deadline=None)
@given(st.floats(2, 12))
def test_all_squares_are_of_the_pitch(pitch: float) -> None:
    found = lines(drawn(pitch=pitch))
    for at in (0, 1):
        places = sorted({round(one[at], 9) for one in found if one[at] == one[at + 2]})
        assert len(places) > 5
        for before, after in pairwise(places):
            assert after - before == pytest.approx(pitch, abs=1e-6)


def test_every_line_reaches_the_outer_edge_of_the_outer_lines() -> None:
    """The corners are square, and no line sticks out, heavier outer lines counted."""
    for every in (0, 1, 2, 3):
        found = ink(drawn(Box(0, 0, 31.5, 26.5), pitch=5.0, weight=0.3, heavy_every=every))
        outer = Box(min(b.x for b in found), min(b.y for b in found), 0, 0)
        right, bottom = max(b.right for b in found), max(b.bottom for b in found)
        for one in found:
            upright = one.height > one.width
            ends = (one.y, one.bottom, outer.y, bottom) if upright else (one.x, one.right, outer.x, right)
            assert ends[:2] == pytest.approx(ends[2:], abs=1e-9)


def test_every_nth_line_is_twice_as_heavy_from_the_first() -> None:
    found = lines(drawn(heavy_every=5, weight=0.3))
    for at in (0, 1):
        across = sorted((one[at], one[4]) for one in found if one[at] == one[at + 2])
        weights = [weight for _, weight in across]
        assert weights == [0.6 if n % 5 == 0 else 0.3 for n in range(len(weights))]


@pytest.mark.parametrize(("mark", "parts"), [("dots", 1), ("crosses", 2)])
def test_a_dot_or_a_cross_stands_at_each_corner_of_the_grid(mark: str, parts: int) -> None:
    """Read back from the PDF by pdfplumber, within a hundredth of a millimetre."""
    block = grid(mark=mark, pitch=7.0, dot=1.2)
    some = draw(block, Room(ROOM), 0.0)
    lattice = lattice_in(block, ROOM)
    wanted = {
        (round(lattice.x + column * 7.0, 2), round(lattice.y + row * 7.0, 2))
        for row in range(lattice.down + 1)
        for column in range(lattice.across + 1)
    }
    middles = read_middles(some)
    assert len(middles) == parts * len(wanted)
    for x, y in middles:
        assert min(max(abs(x - a), abs(y - b)) for a, b in wanted) < 0.01
    for a, b in wanted:
        assert min(max(abs(x - a), abs(y - b)) for x, y in middles) < 0.01


def read_middles(some: Drawn) -> list[tuple[float, float]]:
    """The middle of every part of the drawing, in mm from the page's top left corner, as pdfplumber reads it."""
    scene = Scene(Size(100, 150), 0, (Layer("rules", tuple(node for _, node in some.nodes)),))
    with pdfplumber.open(BytesIO(face_pdf(scene))) as document:
        page = document.pages[0]
        found = page.curves + page.lines + page.rects
        return [
            ((one["x0"] + one["x1"]) / 2 / POINTS, (one["top"] + one["bottom"]) / 2 / POINTS)
            for one in found
            if one["width"] < 50  # not the white under it all
        ]


def test_a_dot_has_its_diameter_and_no_line() -> None:
    (shape,) = of_part(drawn(Box(0, 0, 5.9, 5.9), mark="dots", pitch=5.0, dot=0.8), "rule")
    assert shape.stroke is None
    assert bounds(shape.outline).width == pytest.approx(5.8)


def test_a_cross_is_as_long_as_it_says_both_ways() -> None:
    found = lines(drawn(Box(0, 0, 7, 7), mark="crosses", pitch=5.0, dot=1.4))
    assert {round(abs(x2 - x1) + abs(y2 - y1), 9) for x1, y1, x2, y2, _ in found} == {1.4}


@pytest.mark.parametrize("box", [Box(0, 0, 60, 5.2), Box(0, 0, 5.2, 60), Box(0, 0, 60, 0), Box(0, 0, 60, -9)])
def test_a_room_too_small_for_one_square_has_nothing(box: Box) -> None:
    assert drawn(box, pitch=5.0, weight=0.3).nodes == ()


def test_a_room_too_low_says_what_it_lacks() -> None:
    assert drawn(Box(0, 0, 60, 4), pitch=5.0, weight=0.3).placements[0].short_by == pytest.approx(1.3)


@settings(deadline=None)
@given(kinds)
def test_the_height_that_a_grid_asks_for_holds_one_square(kind: dict[str, object]) -> None:
    placed = draw(grid(**kind), Room(Box(0, 0, 90, need(grid(**kind), 6.0))), 6.0).placements[0]
    assert placed.rows == 1
    assert placed.short_by == 0


def test_a_grid_on_the_bare_ground_keeps_the_margin() -> None:
    box = draw(grid(), Room(Box(0, 0, 90, 100)), 6.0).placements[0].box
    assert (box.x, box.right, box.bottom) == (6, 84, 94)


def test_light_and_heavy_lines_are_one_shape_each() -> None:
    assert len([node for _, node in drawn(heavy_every=4).nodes if isinstance(node, Shape)]) == 2
