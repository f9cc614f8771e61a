"""A split: the ground's colour on one side of a straight line, the pattern's on the other."""

from padspec.base.geometry import Box, Size
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.half_plane import beyond, corners, direction, distances
from padspec.resolve.ground import Pattern
from padspec.scene.outline import polygon


def split(pattern: Pattern, area: Box, trim: Size) -> tuple[Coat, ...]:
    """The far side is coloured: right at angle 0, the foot at 90. `mark` is its share of the way from the nearest
    corner of the trim to the furthest.
    """
    across, middle = direction(pattern.angle), (trim.width / 2, trim.height / 2)
    way = distances(corners(Box(0, 0, trim.width, trim.height)), across, middle)
    line = max(way) - pattern.mark * (max(way) - min(way))
    cut = beyond(corners(area), across, middle, line)
    return (Coat(pattern.colour, (polygon(*cut),)),) if len(cut) >= 3 else ()
