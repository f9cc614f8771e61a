"""Dots in rows that stand between each other, nearest neighbours one `size` apart."""

from math import ceil, floor, sqrt

from padspec.base.geometry import Box
from padspec.resolve.design import Pattern
from padspec.scene.outline import Outline, circle


def dots(pattern: Pattern, area: Box) -> tuple[Outline, ...]:
    """One outline a dot, for every dot that reaches into the area; one dot is at the area's middle."""
    radius = pattern.size * pattern.mark / 2
    step = pattern.size * sqrt(3) / 2
    middle_x, middle_y = area.centre
    lowest, highest = _span(area.y, area.bottom, middle_y, step, radius)
    found: list[Outline] = []
    for row in range(lowest, highest + 1):
        start = middle_x + (pattern.size / 2 if row % 2 else 0.0)
        first, last = _span(area.x, area.right, start, pattern.size, radius)
        found += [circle(start + n * pattern.size, middle_y + row * step, radius) for n in range(first, last + 1)]
    return tuple(found)


def _span(low: float, high: float, start: float, step: float, radius: float) -> tuple[int, int]:
    """The first and last n for which a dot at start + n × step reaches between low and high."""
    return ceil((low - radius - start) / step), floor((high + radius - start) / step)
