"""Checks: squares of both colours in turn, corner to corner."""

from padspec.base.geometry import Box, Size
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.repeat import repeat
from padspec.compose.ground.rhombus import Rhombus
from padspec.resolve.ground import Pattern


def checks(pattern: Pattern, area: Box, trim: Size) -> tuple[Coat, ...]:
    """Every second square, half a `size` wide, so that coloured ones in a row are one `size` apart; one has its
    middle in that of the trim.
    """
    side = pattern.size / 2
    # Coloured squares follow each other along the diagonals; half of both steps leads from one to a bare one.
    lattice = repeat(pattern, trim, (side, side), (-side, side), off=((0.5, 0.5),))
    (ax, ay), (bx, by) = lattice.steps
    square = Rhombus((ax / 2, ay / 2), (bx / 2, by / 2))
    found = tuple(square.at(*lattice.at(i, j)) for i, j in lattice.near(area, square.reach))
    return (Coat(pattern.colour, found),)
