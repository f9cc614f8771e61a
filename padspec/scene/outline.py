"""Outlines: move, line, cubic curve and close, in millimetres; the only geometry a shape can have.

Rounded boxes and circles are cubics here, so that every renderer draws the same corner.
"""

from math import cos, pi, sin
from typing import NamedTuple

from padspec.base.geometry import Affine, Box

#: A quarter circle as one cubic: the usual handle length, off the true arc by at most 0.027 % of the radius.
KAPPA = 4 / 3 * (2**0.5 - 1)


class Move(NamedTuple):
    """Start a new part of the outline at a point."""

    x: float
    y: float


class Line(NamedTuple):
    """A straight line to a point."""

    x: float
    y: float


class Curve(NamedTuple):
    """A cubic Bézier curve to (x, y) with its two handles."""

    x1: float
    y1: float
    x2: float
    y2: float
    x: float
    y: float


class Close(NamedTuple):
    """A straight line back to where the part began."""


Step = Move | Line | Curve | Close
Outline = tuple[Step, ...]


def line(x1: float, y1: float, x2: float, y2: float) -> Outline:
    """One straight line."""
    return (Move(x1, y1), Line(x2, y2))


def polygon(*points: tuple[float, float]) -> Outline:
    """A closed outline through the points."""
    first, *rest = points
    return (Move(*first), *(Line(*point) for point in rest), Close())


def rectangle(box: Box) -> Outline:
    """The edge of a box."""
    return polygon((box.x, box.y), (box.right, box.y), (box.right, box.bottom), (box.x, box.bottom))


def rounded(box: Box, radius: float) -> Outline:
    """The edge of a box with true circular corners; the radius is held to half the shorter side."""
    r = min(radius, box.width / 2, box.height / 2)
    if r <= 0:
        return rectangle(box)
    k = r * (1 - KAPPA)
    left, top, right, bottom = box.x, box.y, box.right, box.bottom
    return (
        Move(left + r, top),
        Line(right - r, top),
        Curve(right - k, top, right, top + k, right, top + r),
        Line(right, bottom - r),
        Curve(right, bottom - k, right - k, bottom, right - r, bottom),
        Line(left + r, bottom),
        Curve(left + k, bottom, left, bottom - k, left, bottom - r),
        Line(left, top + r),
        Curve(left, top + k, left + k, top, left + r, top),
        Close(),
    )


def circle(x: float, y: float, radius: float) -> Outline:
    """A full circle of four cubics."""
    steps: list[Step] = [Move(x + radius, y)]
    for quarter in range(4):
        start, end = quarter * pi / 2, (quarter + 1) * pi / 2
        c0, s0, c1, s1 = cos(start), sin(start), cos(end), sin(end)
        steps.append(
            Curve(
                x + radius * (c0 - KAPPA * s0),
                y + radius * (s0 + KAPPA * c0),
                x + radius * (c1 + KAPPA * s1),
                y + radius * (s1 - KAPPA * c1),
                x + radius * c1,
                y + radius * s1,
            )
        )
    return (*steps, Close())


def mapped(outline: Outline, affine: Affine) -> Outline:
    """The outline with every point sent through an affine map.

    The map is written out: lettering alone sends thousands of points through here.
    """
    a, b, c, d, e, f = affine.a, affine.b, affine.c, affine.d, affine.e, affine.f
    found: list[Step] = []
    for step in outline:
        match step:
            case Curve(x1, y1, x2, y2, x, y):
                found.append(
                    Curve(
                        a * x1 + c * y1 + e,
                        b * x1 + d * y1 + f,
                        a * x2 + c * y2 + e,
                        b * x2 + d * y2 + f,
                        a * x + c * y + e,
                        b * x + d * y + f,
                    )
                )
            case Line(x, y):
                found.append(Line(a * x + c * y + e, b * x + d * y + f))
            case Move(x, y):
                found.append(Move(a * x + c * y + e, b * x + d * y + f))
            case Close():
                found.append(step)
    return tuple(found)


def points(outline: Outline) -> list[tuple[float, float]]:
    """Every point an outline names, handles included: their bounds hold the outline."""
    found: list[tuple[float, float]] = []
    for step in outline:
        match step:
            case Move(x, y) | Line(x, y):
                found.append((x, y))
            case Curve(x1, y1, x2, y2, x, y):
                found += [(x1, y1), (x2, y2), (x, y)]
            case Close():
                pass
    return found


def bounds(outline: Outline) -> Box:
    """The box of an outline's points, handles included (exact for boxes and circles, near for lettering)."""
    found = points(outline)
    xs, ys = [x for x, _ in found], [y for _, y in found]
    return Box(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))
