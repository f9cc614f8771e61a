"""Dashed edges and hatched areas as outlines, for diagrams: the scene knows only whole lines."""

from collections.abc import Iterator
from math import ceil, floor

from padspec.base.geometry import Box
from padspec.scene.outline import Outline, Step, line


def dashed(box: Box, dash: float = 0.9, gap: float = 0.9) -> Outline:
    """The edge of a box in dashes, stretched a little so that every corner is whole."""
    sides = (
        (box.x, box.y, box.right, box.y),
        (box.right, box.y, box.right, box.bottom),
        (box.right, box.bottom, box.x, box.bottom),
        (box.x, box.bottom, box.x, box.y),
    )
    return tuple(step for side in sides for step in _dashes(side, dash, gap))


def _dashes(side: tuple[float, float, float, float], dash: float, gap: float) -> Iterator[Step]:
    x1, y1, x2, y2 = side
    length = abs(x2 - x1) + abs(y2 - y1)
    count = max(round((length + gap) / (dash + gap)), 1)
    step = (length + gap) / count
    for number in range(count):
        start, end = number * step / length, min((number * step + step - gap) / length, 1.0)
        yield from line(x1 + (x2 - x1) * start, y1 + (y2 - y1) * start, x1 + (x2 - x1) * end, y1 + (y2 - y1) * end)


def hatched(box: Box, apart: float) -> Outline:
    """Lines at 45° over a box, `apart` from each other across; they may be drawn without a clip.

    The pattern hangs on the origin, not on the box, so that two boxes side by side are hatched as one.
    """
    rise = apart * 2**0.5
    first, last = ceil((box.x + box.y) / rise), floor((box.right + box.bottom) / rise)
    found: list[Step] = []
    for number in range(first, last + 1):
        total = number * rise
        low, high = max(box.x, total - box.bottom), min(box.right, total - box.y)
        if high > low:
            found += line(low, total - low, high, total - high)
    return tuple(found)
