"""Waves: lines of one width that swing from side to side in arcs of a circle."""

from itertools import groupby
from math import cos, pi, sin

from padspec.base.geometry import Box, Size
from padspec.compose.ground.arcs import arc
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.repeat import repeat
from padspec.resolve.ground import Pattern
from padspec.scene.outline import Close, Curve, Line, Move, Outline, bounds, mapped

#: From crest to crest, as a share of the distance between two waves.
_LENGTH = 2.6
#: How steep a wave is where it crosses its middle, in radians.
_STEEP = 0.72


def wave(pattern: Pattern, area: Box, trim: Size) -> tuple[Coat, ...]:
    """Waves one `size` apart that run across at angle 0; a crest is above the middle of the trim."""
    length = pattern.size * _LENGTH
    lattice = repeat(pattern, trim, (length, 0.0), (0.0, pattern.size), off=((0.5, 0.0), (0.0, 0.5)))
    found: list[Outline] = []
    for _, marks in groupby(lattice.near(area, 1.5 * length), key=lambda mark: mark[1]):
        row = list(marks)
        line = _line(length, pattern.size * pattern.mark, row[-1][0] - row[0][0] + 1)
        placed = mapped(line, lattice.onto(*row[0]))
        if area.overlaps(bounds(placed)):
            found.append(placed)
    return (Coat(pattern.colour, tuple(found)),)


def _line(length: float, width: float, crests: int) -> Outline:
    """A wave from before its first crest, which is above the origin, to the end of its last trough: crests are
    arcs around points below the wave, troughs around points above it.
    """
    radius = length / 4 / sin(_STEEP)
    rise, half = radius * cos(_STEEP), min(width / 2, radius)
    upper: list[Curve] = []
    lower: list[Curve] = []
    for n in range(crests):
        x, next_x = n * length, (n + 0.5) * length
        crest, trough = (-pi / 2 - _STEEP, -pi / 2 + _STEEP), (pi / 2 + _STEEP, pi / 2 - _STEEP)
        upper += [*arc(x, rise, radius + half, *crest), *arc(next_x, -rise, radius - half, *trough)]
        back = [*arc(next_x, -rise, radius + half, *trough[::-1]), *arc(x, rise, radius - half, *crest[::-1])]
        lower = back + lower
    # Both ends are cut square to the line, half a width to each side of it.
    left, right = -length / 4, (crests - 0.25) * length
    aside, along = half * cos(_STEEP), half * sin(_STEEP)
    return (
        Move(left - along, -aside),
        *upper,
        Line(right - along, aside),
        *lower,
        Close(),
    )
