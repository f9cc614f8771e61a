"""Convex polygons cut by straight lines, exactly: how bands and splits end at the area that they cover."""

from math import cos, radians, sin

from padspec.base.geometry import Box

Point = tuple[float, float]


def direction(angle: float) -> Point:
    """The unit vector at an angle in degrees, clockwise from one to the right."""
    turn = radians(angle)
    return cos(turn), sin(turn)


def corners(box: Box) -> list[Point]:
    """The corners of a box, clockwise from its top left."""
    return [(box.x, box.y), (box.right, box.y), (box.right, box.bottom), (box.x, box.bottom)]


def distances(points: list[Point], across: Point, through: Point) -> list[float]:
    """How far points lie along a unit vector from a point."""
    return [(x - through[0]) * across[0] + (y - through[1]) * across[1] for x, y in points]


def beyond(points: list[Point], across: Point, through: Point, limit: float, side: float = 1.0) -> list[Point]:
    """What of a convex polygon lies further along a unit vector than a limit, or with a side of -1 less far
    (I. E. Sutherland and G. W. Hodgman, Reentrant Polygon Clipping, 1974).
    """
    kept: list[Point] = []
    for n, (x, y) in enumerate(points):
        px, py = points[n - 1]
        now = side * ((x - through[0]) * across[0] + (y - through[1]) * across[1] - limit)
        before = side * ((px - through[0]) * across[0] + (py - through[1]) * across[1] - limit)
        if (now > 0) != (before > 0):
            share = before / (before - now)
            kept.append((px + (x - px) * share, py + (y - py) * share))
        if now > 0:
            kept.append((x, y))
    return kept
