"""Straight bands of one width at equal distances, cut exactly to the area they cover."""

from math import ceil, floor, hypot

from padspec.base.geometry import Box
from padspec.base.numbers import EPSILON
from padspec.compose.ground.half_plane import Point, beyond, corners, distances
from padspec.scene.outline import Outline, polygon


def bands(wave: Point, mark: float, through: Point, area: Box) -> tuple[Outline, ...]:
    """One outline a band, for every band that reaches into the area; the middle of one runs through a point.

    `wave` points across the bands and is as long as there are bands to a millimetre; `mark` is the share of the
    distance between two that is coloured.
    """
    size = 1 / hypot(*wave)
    across = (wave[0] * size, wave[1] * size)
    edge = corners(area)
    reach = distances(edge, across, through)
    half = size * mark / 2
    first = ceil((min(reach) - half) / size + EPSILON)
    last = floor((max(reach) + half) / size - EPSILON)
    found: list[Outline] = []
    for n in range(first, last + 1):
        cut = beyond(edge, across, through, n * size - half)
        cut = beyond(cut, across, through, n * size + half, -1.0)
        if len(cut) >= 3:
            found.append(polygon(*cut))
    return tuple(found)
