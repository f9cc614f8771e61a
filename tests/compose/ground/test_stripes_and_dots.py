"""Stripes and dots against what their definition says of every point of the ground, and what a panel hides."""

from dataclasses import replace
from itertools import product
from math import cos, hypot, pi, radians, sin, sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kit import PLAIN, apply, pad

from padspec.base.colour import Colour
from padspec.base.geometry import Box, Size
from padspec.compose.compose import compose
from padspec.compose.ground.dots import dots as dots_of
from padspec.compose.ground.stripes import stripes as stripes_of
from padspec.resolve.ground import Pattern
from padspec.scene.nodes import Group, Scene
from padspec.scene.outline import Line, Move, Outline, bounds

TRIM = Size(90, 190)
AREA = Box(-3, -3, 96, 196)
sizes = st.floats(2, 40)
marks = st.floats(0.05, 0.95)
angles = st.floats(-180, 180)

#: Points strewn evenly at random, the same on every run.
SCATTERED = np.random.default_rng(11).uniform((AREA.x, AREA.y), (AREA.right, AREA.bottom), (200_000, 2))


def pattern(kind: str, size: float, mark: float, angle: float = 0.0) -> Pattern:
    return Pattern(kind=kind, colour=Colour(0, 0, 0), size=size, mark=mark, angle=angle)


def stripes(some: Pattern) -> tuple[Outline, ...]:
    return stripes_of(some, AREA, TRIM)[0].outlines


def dots(some: Pattern, area: Box = AREA, trim: Size = TRIM) -> tuple[Outline, ...]:
    return dots_of(some, area, trim)[0].outlines


def corners(outline: Outline) -> np.ndarray:
    return np.array([(step.x, step.y) for step in outline if isinstance(step, Move | Line)])


def area_of(outline: Outline) -> float:
    """The shoelace sum."""
    x, y = corners(outline).T
    return float(abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2)


def in_band(points: np.ndarray, some: Pattern) -> np.ndarray:
    """How deep points lie in a band, by the definition: negative outside."""
    turn = radians(some.angle)
    along = (points - np.array(AREA.centre)) @ np.array([cos(turn), sin(turn)])
    off = np.abs((along + some.size / 2) % some.size - some.size / 2)
    return some.size * some.mark / 2 - off


def in_polygon(points: np.ndarray, polygon: np.ndarray) -> np.ndarray:
    """By how many edges a ray to the right crosses."""
    inside = np.zeros(len(points), bool)
    for (x0, y0), (x1, y1) in zip(polygon, np.roll(polygon, -1, axis=0), strict=True):
        crosses = (y0 > points[:, 1]) != (y1 > points[:, 1])
        if y0 != y1:
            at = x0 + (points[:, 1] - y0) / (y1 - y0) * (x1 - x0)
            inside ^= crosses & (points[:, 0] < at)
    return inside


def grid(columns: int, rows: int) -> np.ndarray:
    xs = AREA.x + (np.arange(columns) + 0.5) / columns * AREA.width
    ys = AREA.y + (np.arange(rows) + 0.5) / rows * AREA.height
    return np.stack(np.meshgrid(xs, ys), axis=-1).reshape(-1, 2)


@settings(max_examples=40, deadline=None)
@given(sizes, marks, angles)
def test_a_point_is_in_a_stripe_where_the_definition_says_so(size: float, mark: float, angle: float) -> None:
    some = pattern("stripes", size, mark, angle)
    points = grid(37, 61)
    depth = in_band(points, some)
    inside = np.zeros(len(points), int)
    for outline in stripes(some):
        inside += in_polygon(points, corners(outline))
    sure = np.abs(depth) > 1e-6
    assert inside.max(initial=0) <= 1
    assert np.array_equal(inside[sure] == 1, depth[sure] > 0)


@settings(max_examples=40, deadline=None)
@given(sizes, marks, angles)
def test_the_area_of_the_stripes_is_the_area_counted_in_points(size: float, mark: float, angle: float) -> None:
    some = pattern("stripes", size, mark, angle)
    inside = (in_band(SCATTERED, some) > 0).mean() * AREA.width * AREA.height
    six_sigma = 6 * AREA.width * AREA.height * 0.5 / len(SCATTERED) ** 0.5
    assert sum(area_of(outline) for outline in stripes(some)) == pytest.approx(inside, abs=six_sigma)


@pytest.mark.parametrize(("angle", "length"), [(0.0, 196), (90.0, 96), (-90.0, 96), (180.0, 196)])
def test_a_whole_stripe_square_to_the_page_is_its_width_by_the_area(angle: float, length: float) -> None:
    middle = [
        outline
        for outline in stripes(pattern("stripes", 10, 0.5, angle))
        if in_polygon(np.array([AREA.centre]), corners(outline))[0]
    ]
    assert [area_of(outline) for outline in middle] == pytest.approx([5 * length])


@settings(deadline=None)
@given(sizes, marks, angles)
def test_no_stripe_leaves_the_area_or_is_empty(size: float, mark: float, angle: float) -> None:
    for outline in stripes(pattern("stripes", size, mark, angle)):
        assert AREA.covers(bounds(outline), slack=1e-6)
        assert area_of(outline) > 0


def test_a_positive_angle_turns_the_stripes_clockwise() -> None:
    # At 30° a band's direction of repeat points right and down, so that the bands lean to the left downwards.
    some = pattern("stripes", 20, 0.5, 30)
    x, y = AREA.centre
    on_the_middle_band = np.array([(x - 10 * sin(radians(30)), y + 10 * cos(radians(30)))])
    assert sum(in_polygon(on_the_middle_band, corners(outline)).sum() for outline in stripes(some)) == 1


def centres(outlines: tuple[Outline, ...]) -> list[tuple[float, float]]:
    return [bounds(outline).centre for outline in outlines]


def reach(point: tuple[float, float]) -> float:
    """How far a point is from the area, 0 inside."""
    x, y = point
    return hypot(max(AREA.x - x, 0, x - AREA.right), max(AREA.y - y, 0, y - AREA.bottom))


@settings(max_examples=40, deadline=None)
@given(st.floats(3, 40), marks)
def test_every_dot_of_the_lattice_that_reaches_the_area_is_there_once(size: float, mark: float) -> None:
    radius = size * mark / 2
    found = centres(dots(pattern("dots", size, mark)))
    middle_x, middle_y = AREA.centre
    wide, high = int(AREA.width / size) + 3, int(AREA.height / (size * sqrt(3) / 2)) + 3
    lattice = [
        (middle_x + (n + (row % 2) / 2) * size, middle_y + row * size * sqrt(3) / 2)
        for row, n in product(range(-high, high + 1), range(-wide, wide + 1))
    ]
    near = {(round(x, 6), round(y, 6)) for x, y in found}
    assert len(near) == len(found)
    for x, y in lattice:
        if reach((x, y)) < radius - 1e-6:
            assert (round(x, 6), round(y, 6)) in near
    assert near <= {(round(x, 6), round(y, 6)) for x, y in lattice}


@settings(max_examples=30, deadline=None)
@given(st.floats(6, 40), marks)
def test_the_nearest_neighbour_of_a_dot_is_one_size_away(size: float, mark: float) -> None:
    found = np.array(centres(dots(pattern("dots", size, mark))))
    distances = np.hypot(*(found[:, None, :] - found[None, :, :]).transpose(2, 0, 1))
    np.fill_diagonal(distances, np.inf)
    assert distances.min() == pytest.approx(size, abs=1e-6)


@settings(max_examples=30, deadline=None)
@given(st.floats(4, 40), marks)
def test_every_dot_reaches_into_the_area_and_has_the_diameter_of_its_mark(size: float, mark: float) -> None:
    for outline in dots(pattern("dots", size, mark)):
        box = bounds(outline)
        assert (box.width, box.height) == pytest.approx((size * mark, size * mark), abs=1e-9)
        assert box.right >= AREA.x - 1e-9
        assert box.x <= AREA.right + 1e-9
        assert box.bottom >= AREA.y - 1e-9
        assert box.y <= AREA.bottom + 1e-9


def pattern_parts(scene: Scene) -> list[Box]:
    (group,) = [node for node in scene.layers[0].nodes if isinstance(node, Group)]
    parts: list[list[object]] = []
    for child in group.children:
        for step in child.outline:
            parts += [[step]] if isinstance(step, Move) else []
            parts[-1].append(step)
    return [bounds(tuple(part)) for part in parts]


def test_only_dots_that_the_panel_hides_are_left_out() -> None:
    design = pad(apply(PLAIN, {"ground.pattern": {"kind": "dots", "size": "3 mm", "mark": "60 %"}})).design
    face = compose(design)
    kept = {(round(x, 6), round(y, 6)) for x, y in (box.centre for box in pattern_parts(face.scene))}
    every = centres(dots(design.ground.pattern, face.scene.bleed_box))
    box = face.placement("panel").box
    left_out = [(x, y) for x, y in every if (round(x, 6), round(y, 6)) not in kept]
    assert len(left_out) > 500
    corner = 6.0
    for x, y in left_out:
        inner_x = min(max(x, box.x + corner), box.right - corner)
        inner_y = min(max(y, box.y + corner), box.bottom - corner)
        assert hypot(x - inner_x, y - inner_y) <= corner + 1e-6


def test_dots_turn_with_their_angle_about_the_middle() -> None:
    """Turned back by the same angle, the dots are those of a lattice that was never turned."""
    trim, area = Size(60, 90), Box(-3, -3, 66, 96)
    turned = Pattern("dots", Colour(0, 0, 0), 6.0, 0.4, 30.0)
    x0, y0 = area.centre
    lattice = {
        (round(x - x0, 6), round(y - y0, 6))
        for x, y in centres(dots(replace(turned, angle=0.0), area.inset(-60), trim))
    }
    found = centres(dots(turned, area, trim))
    assert len(found) > 150
    for x, y in found:
        dx, dy = x - x0, y - y0
        back = (dx * cos(pi / 6) + dy * sin(pi / 6), -dx * sin(pi / 6) + dy * cos(pi / 6))
        assert min(hypot(back[0] - u, back[1] - v) for u, v in lattice) < 1e-5
