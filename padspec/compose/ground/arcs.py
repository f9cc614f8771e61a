"""Arcs, bars and rings as cubics."""

from math import ceil, cos, pi, sin, tan

from padspec.base.numbers import EPSILON
from padspec.scene.outline import Close, Curve, Line, Move, Outline, Step, circle


def arc(x: float, y: float, radius: float, start: float, end: float) -> tuple[Curve, ...]:
    """The way along a circle from one angle to another, in radians, clockwise where `end` is greater.

    No cubic takes more than a quarter; its handles are 4/3 · tan(angle / 4) of the radius, off the true arc by at
    most 0.027 % of it.
    """
    parts = max(ceil(abs(end - start) / (pi / 2) - EPSILON), 1)
    turn = (end - start) / parts
    k = 4 / 3 * tan(turn / 4)
    found: list[Curve] = []
    for n in range(parts):
        a, b = start + n * turn, start + (n + 1) * turn
        found.append(
            Curve(
                x + radius * (cos(a) - k * sin(a)),
                y + radius * (sin(a) + k * cos(a)),
                x + radius * (cos(b) + k * sin(b)),
                y + radius * (sin(b) - k * cos(b)),
                x + radius * cos(b),
                y + radius * sin(b),
            )
        )
    return tuple(found)


def bow(x: float, y: float, outer: float, inner: float, start: float, end: float) -> Outline:
    """A stretch of a ring between two radii, from one angle to a greater one, in radians."""
    return (
        Move(x + outer * cos(start), y + outer * sin(start)),
        *arc(x, y, outer, start, end),
        Line(x + inner * cos(end), y + inner * sin(end)),
        *arc(x, y, inner, end, start),
        Close(),
    )


def ring(x: float, y: float, outer: float, inner: float) -> Outline:
    """A ring: its inner edge runs the other way round, so that it stays open."""
    hole: tuple[Step, ...] = (Move(x + inner, y), *arc(x, y, inner, 0.0, -2 * pi), Close())
    return circle(x, y, outer) + hole


def bar(x: float, y: float, length: float, width: float, turn: float) -> Outline:
    """A bar with round ends around its middle, turned by an angle in radians; its ends count in its length."""
    r, half = width / 2, (length - width) / 2
    c, s = cos(turn), sin(turn)
    right, left = (x + half * c, y + half * s), (x - half * c, y - half * s)
    return (
        Move(right[0] + r * s, right[1] - r * c),
        *arc(*right, r, turn - pi / 2, turn + pi / 2),
        Line(left[0] - r * s, left[1] + r * c),
        *arc(*left, r, turn + pi / 2, turn + 3 * pi / 2),
        Close(),
    )
