"""Lattice: lines that cross in upright lozenges, with a knot at each crossing."""

from math import sqrt

from padspec.base.geometry import Box, Size
from padspec.compose.ground.bands import bands
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.repeat import repeat
from padspec.resolve.ground import Pattern
from padspec.scene.outline import circle

#: How wide a knot is, in widths of a line, and at most, as a share of the distance between two lines.
_KNOT, _MOST_KNOT = 2.6, 0.4


def lattice(pattern: Pattern, area: Box, trim: Size) -> tuple[Coat, ...]:
    """Lozenges one `size` wide and √3 of that high; a crossing is at the middle of the trim. A line takes `mark`
    of the distance to the next one of its set.
    """
    half, high = pattern.size / 2, pattern.size * sqrt(3) / 2
    crossings = repeat(pattern, trim, (half, high), (-half, high), off=((0.5, 0.5),))
    lines = (line for wave in crossings.waves for line in bands(wave, pattern.mark, crossings.origin, area))
    radius = high * min(pattern.mark * _KNOT, _MOST_KNOT) / 2
    knots = (circle(*crossings.at(i, j), radius) for i, j in crossings.near(area, radius))
    return (Coat(pattern.colour, (*lines, *knots)),)
