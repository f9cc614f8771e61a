"""Gingham: two sets of stripes that cross, half as strong as the colour, which stands in full where they meet."""

from padspec.base.colour import Colour
from padspec.base.geometry import Box, Size
from padspec.compose.ground.bands import bands
from padspec.compose.ground.coat import Coat, blend
from padspec.compose.ground.repeat import repeat
from padspec.compose.ground.rhombus import Rhombus
from padspec.resolve.ground import Pattern


def gingham(pattern: Pattern, behind: Colour, area: Box, trim: Size) -> tuple[Coat, ...]:
    """Bands one `size` apart both ways, in the tone halfway (in OKLab) between the ground's colour and the
    pattern's; a crossing has its middle in that of the trim.
    """
    # Half a step off one way alone: off both ways, half the edge would still look the same.
    lattice = repeat(pattern, trim, (pattern.size, 0.0), (0.0, pattern.size), off=((0.5, 0.0), (0.0, 0.5)))
    (ax, ay), (bx, by) = lattice.steps
    half = pattern.mark / 2
    square = Rhombus(((ax + bx) * half, (ay + by) * half), ((bx - ax) * half, (by - ay) * half))
    weave = tuple(band for wave in lattice.waves for band in bands(wave, pattern.mark, lattice.origin, area))
    crossings = tuple(square.at(*lattice.at(i, j)) for i, j in lattice.near(area, square.reach))
    return Coat(blend(behind, pattern.colour, 0.5), weave), Coat(pattern.colour, crossings)
