"""Lettering on an arc: a shaped line in, the same line with its baseline bent to a circle out.

Angles are in degrees; a positive one bends the middle upwards (an arch), a negative one downwards (a bowl). With
y downwards and the middle of the ink at (0, 0), the circle's centre lies at (0, radius), negative for a bowl, so
that one formula serves both: a point of the baseline at a distance s from the middle goes to
(r sin φ, r - r cos φ) with φ = s / spaced radius. Letters are spaced as they were at half the x-height, where the
eye reads the gaps: at the baseline an arch would look loose and a bowl would touch.
"""

from dataclasses import dataclass, replace
from math import ceil, cos, radians, sin

from padspec.base.geometry import Affine
from padspec.compose.lettering.ink import true_bounds
from padspec.compose.lettering.shaping import Letter, ShapedLine
from padspec.scene.outline import Close, Curve, Line, Move, Outline, Step, mapped

#: Where gaps keep their width, as a share of the em above the baseline: half of a usual x-height.
_SPACED_AT = 0.25
#: The tightest circle, in ems: on a smaller one the feet or the heads of letters overlap.
LEAST_RADIUS = 1.2
#: A piece of an outline that is bent smoothly turns by no more than this, in radians.
_MOST_TURN = 0.08


@dataclass(frozen=True, slots=True)
class Seat:
    """Where the middle of a letter stands on the circle, in ems, and its turn clockwise, in radians."""

    x: float
    y: float
    turn: float


def radius_of(line: ShapedLine, degrees: float) -> float:
    """The radius of the baseline in ems, negative for a bowl. The ink spans the angle, or less."""
    radius = line.ink.width / radians(degrees) - _SPACED_AT
    if abs(radius) >= LEAST_RADIUS and radius * degrees > 0:
        return radius
    return LEAST_RADIUS if degrees > 0 else -LEAST_RADIUS


def seat(line: ShapedLine, letter: Letter, degrees: float) -> Seat:
    """Where a letter of the line comes to stand: its middle on the circle, upright to it."""
    radius = radius_of(line, degrees)
    turn = (letter.x + letter.advance / 2 - _middle(line)) / (radius + _SPACED_AT)
    return Seat(radius * sin(turn), radius - radius * cos(turn), turn)


def bent(line: ShapedLine, degrees: float) -> ShapedLine:
    """The line on its arc, the ink as it then is. Letters are turned whole; joined scripts are bent smoothly."""
    if not line.outline or not degrees:
        return line
    letters = tuple(replace(letter, outline=_on_arc(line, letter, degrees)) for letter in line.letters)
    outline = tuple(step for letter in letters for step in letter.outline)
    ink = true_bounds(outline)
    return ShapedLine(outline, ink.width, ink, letters, line.uneven)


def _on_arc(line: ShapedLine, letter: Letter, degrees: float) -> Outline:
    if letter.joined:
        return _bent_smoothly(letter.outline, _middle(line), radius_of(line, degrees))
    at = seat(line, letter, degrees)
    c, s = cos(at.turn), sin(at.turn)
    middle = letter.x + letter.advance / 2
    turned = Affine.move(-middle, 0.0).then(Affine(a=c, b=s, c=-s, d=c, e=at.x, f=at.y))
    return mapped(letter.outline, turned)


def _middle(line: ShapedLine) -> float:
    return line.ink.x + line.ink.width / 2


def _bent_smoothly(outline: Outline, middle: float, radius: float) -> Outline:
    """Every point sent onto the arc; curves are cut small and keep their direction at both ends."""
    found: list[Step] = []
    at = start = (0.0, 0.0)
    for step in outline:
        match step:
            case Move(x, y):
                at = start = (x, y)
                found.append(Move(*_sent(at, middle, radius)))
            case Line(x, y):
                found += _bent_curve(at, _straight(at, (x, y)), middle, radius)
                at = (x, y)
            case Curve(x=x, y=y):
                found += _bent_curve(at, step, middle, radius)
                at = (x, y)
            case Close():
                if at != start:
                    found += _bent_curve(at, _straight(at, start), middle, radius)
                found.append(step)
                at = start
    return tuple(found)


def _straight(a: tuple[float, float], b: tuple[float, float]) -> Curve:
    (x0, y0), (x, y) = a, b
    return Curve(x0 + (x - x0) / 3, y0 + (y - y0) / 3, x0 + (x - x0) * 2 / 3, y0 + (y - y0) * 2 / 3, x, y)


def _bent_curve(start: tuple[float, float], curve: Curve, middle: float, radius: float) -> list[Step]:
    xs = (start[0], curve.x1, curve.x2, curve.x)
    pieces = max(ceil((max(xs) - min(xs)) / (_MOST_TURN * abs(radius))), 1)
    found: list[Step] = []
    for n in range(pieces):
        t0, t1 = n / pieces, (n + 1) / pieces
        p0, d0 = _at(start, curve, t0)
        p1, d1 = _at(start, curve, t1)
        third = (t1 - t0) / 3
        a, b = _sent(p0, middle, radius), _sent(p1, middle, radius)
        va, vb = _carried(p0, d0, middle, radius), _carried(p1, d1, middle, radius)
        found.append(
            Curve(a[0] + va[0] * third, a[1] + va[1] * third, b[0] - vb[0] * third, b[1] - vb[1] * third, *b)
        )
    return found


def _at(start: tuple[float, float], curve: Curve, t: float) -> tuple[tuple[float, float], tuple[float, float]]:
    """A point of a cubic and its derivative there."""
    u = 1 - t
    weights = (u**3, 3 * u * u * t, 3 * u * t * t, t**3)
    slopes = (-3 * u * u, 3 * u * u - 6 * u * t, 6 * u * t - 3 * t * t, 3 * t * t)
    xs, ys = (start[0], curve.x1, curve.x2, curve.x), (start[1], curve.y1, curve.y2, curve.y)

    def mixed(shares: tuple[float, ...]) -> tuple[float, float]:
        return sum(s * x for s, x in zip(shares, xs, strict=True)), sum(
            s * y for s, y in zip(shares, ys, strict=True)
        )

    return mixed(weights), mixed(slopes)


def _sent(point: tuple[float, float], middle: float, radius: float) -> tuple[float, float]:
    turn = (point[0] - middle) / (radius + _SPACED_AT)
    out = radius - point[1]
    return out * sin(turn), radius - out * cos(turn)


def _carried(
    point: tuple[float, float], way: tuple[float, float], middle: float, radius: float
) -> tuple[float, float]:
    """A direction at a point, as the bending carries it along (the derivative of `_sent`)."""
    turn = (point[0] - middle) / (radius + _SPACED_AT)
    out = (radius - point[1]) / (radius + _SPACED_AT) * way[0]
    return out * cos(turn) - way[1] * sin(turn), out * sin(turn) + way[1] * cos(turn)
