"""Stripes at any angle: bands one `size` apart, centre to centre, cut exactly to the area they cover."""

from math import ceil, cos, floor, radians, sin

from padspec.base.geometry import Box
from padspec.base.numbers import EPSILON
from padspec.resolve.design import Pattern
from padspec.scene.outline import Outline, polygon

Point = tuple[float, float]


def stripes(pattern: Pattern, area: Box) -> tuple[Outline, ...]:
    """One outline a band. A band's middle runs through the middle of the area, so both sides end alike.

    At angle 0 the bands stand upright; a positive angle turns them clockwise.
    """
    turn = radians(pattern.angle)
    across: Point = (cos(turn), sin(turn))
    centre = area.centre
    corners = [(area.x, area.y), (area.right, area.y), (area.right, area.bottom), (area.x, area.bottom)]
    reach = [(x - centre[0]) * across[0] + (y - centre[1]) * across[1] for x, y in corners]
    half = pattern.size * pattern.mark / 2
    first = ceil((min(reach) - half) / pattern.size + EPSILON)
    last = floor((max(reach) + half) / pattern.size - EPSILON)
    bands = (_band(corners, across, centre, n * pattern.size, half) for n in range(first, last + 1))
    return tuple(polygon(*band) for band in bands if len(band) >= 3)


def _band(corners: list[Point], across: Point, centre: Point, middle: float, half: float) -> list[Point]:
    cut = _keep(corners, across, centre, middle - half, 1.0)
    return _keep(cut, across, centre, middle + half, -1.0)


def _keep(points: list[Point], across: Point, centre: Point, limit: float, side: float) -> list[Point]:
    """A convex polygon cut by a line: what lies on one side of it (Sutherland and Hodgman's clipping)."""
    kept: list[Point] = []
    for n, (x, y) in enumerate(points):
        px, py = points[n - 1]
        now = side * ((x - centre[0]) * across[0] + (y - centre[1]) * across[1] - limit)
        before = side * ((px - centre[0]) * across[0] + (py - centre[1]) * across[1] - limit)
        if (now > 0) != (before > 0):
            share = before / (before - now)
            kept.append((px + (x - px) * share, py + (y - py) * share))
        if now > 0:
            kept.append((x, y))
    return kept
