"""Dots in rows that stand between each other, nearest neighbours one `size` apart."""

from math import sqrt

from padspec.base.geometry import Box, Size
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.repeat import repeat
from padspec.resolve.ground import Pattern
from padspec.scene.outline import circle


def dots(pattern: Pattern, area: Box, trim: Size) -> tuple[Coat, ...]:
    """One outline a dot, for every dot that reaches into the area; one dot is at the trim's middle.

    The rows lie across at angle 0; a positive angle turns them clockwise.
    """
    radius = pattern.size * pattern.mark / 2
    lattice = repeat(pattern, trim, (pattern.size, 0.0), (pattern.size / 2, pattern.size * sqrt(3) / 2))
    found = tuple(circle(*lattice.at(i, j), radius) for i, j in lattice.near(area, radius))
    return (Coat(pattern.colour, found, compact=True),)
