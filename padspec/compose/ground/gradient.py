"""A gradient as bands of flat colour, a step of eight bits each: the same for every renderer and every press."""

from padspec.base.colour import Colour
from padspec.base.geometry import Box, Size
from padspec.compose.ground.coat import Coat, blend
from padspec.compose.ground.half_plane import beyond, corners, direction, distances
from padspec.resolve.ground import Pattern
from padspec.scene.outline import polygon


def gradient(pattern: Pattern, behind: Colour, area: Box, trim: Size) -> tuple[Coat, ...]:
    """From the ground's colour to the pattern's, mixed in OKLab, between the trim's nearest and furthest corner.

    As many bands as the channel that changes most has levels on the way. Every band reaches to the far end, under
    those that follow, so that no seam between two can show what lies behind.
    """
    across, middle = direction(pattern.angle), (trim.width / 2, trim.height / 2)
    way = distances(corners(Box(0, 0, trim.width, trim.height)), across, middle)
    colours = _colours(behind, pattern.colour)
    wide = (max(way) - min(way)) / len(colours)
    cuts = (
        (colour, beyond(corners(area), across, middle, min(way) + n * wide)) for n, colour in enumerate(colours)
    )
    return tuple(Coat(colour, (polygon(*cut),)) for colour, cut in list(cuts)[1:] if len(cut) >= 3)


def _colours(start: Colour, end: Colour) -> list[Colour]:
    """Every colour on the way, both ends included."""
    levels = max(abs(start.red - end.red), abs(start.green - end.green), abs(start.blue - end.blue))
    mixed = (blend(start, end, n / levels) for n in range(1, levels))
    return [start, *mixed, *([end] if levels else [])]
