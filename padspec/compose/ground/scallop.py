"""Scallop: fish scales that hang in rows, each row over the next, in lines of one width."""

from math import acos, pi, sqrt

from padspec.base.geometry import Box, Size
from padspec.compose.ground.arcs import bow
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.repeat import repeat
from padspec.resolve.ground import Pattern
from padspec.scene.outline import Outline, bounds, mapped

#: The second arc of a scale, as a share of its radius.
_INNER = 0.62


def scallop(pattern: Pattern, area: Box, trim: Size) -> tuple[Coat, ...]:
    """Scales one `size` wide, in rows half of that apart, that hang down at angle 0. The line is `mark` of the
    size wide and lies inside the scale; the middle of one scale's upper edge is that of the trim.
    """
    # Lines of two scales meet where a line of the next row begins: bent a little with the lattice they still do.
    lattice = repeat(pattern, trim, (pattern.size, 0.0), (pattern.size / 2, pattern.size / 2), off=((0.5, 0.0),))
    scale = _scale(pattern.size / 2, pattern.size * pattern.mark)
    drawn = (mapped(part, lattice.onto(i, j)) for i, j in lattice.near(area, pattern.size) for part in scale)
    found = tuple(part for part in drawn if area.overlaps(bounds(part)))
    return (Coat(pattern.colour, found),)


def _scale(radius: float, line: float) -> tuple[Outline, ...]:
    """A scale around the middle of its upper edge: its own arc, and a smaller one up to the row above."""
    inner = radius * _INNER
    # Where the smaller circle meets that of a scale above, whose middle is one radius aside and one up.
    meet = 0.75 * pi - acos((inner**2 + radius**2) / (2 * sqrt(2) * radius * inner))
    over = meet - pi / 2 + line / inner / 2
    return (
        bow(0, 0, radius, max(radius - line, 0.0), 0.0, pi),
        bow(0, 0, inner, max(inner - line, 0.0), -over, pi + over),
    )
