"""Dots in rows that stand between each other, nearest neighbours one `size` apart."""

from math import ceil, cos, hypot, radians, sin, sqrt

from padspec.base.geometry import Box
from padspec.base.numbers import EPSILON
from padspec.resolve.design import Pattern
from padspec.scene.outline import Outline, circle


def dots(pattern: Pattern, area: Box) -> tuple[Outline, ...]:
    """One outline a dot, for every dot that reaches into the area; one dot is at the area's middle.

    The rows lie across at angle 0; a positive angle turns them clockwise.
    """
    radius = pattern.size * pattern.mark / 2
    step = pattern.size * sqrt(3) / 2
    middle_x, middle_y = area.centre
    turn = radians(pattern.angle)
    along, down = (cos(turn), sin(turn)), (-sin(turn), cos(turn))
    reach = hypot(area.width, area.height) / 2 + radius
    seen = area.inset(-radius - EPSILON)
    found: list[Outline] = []
    for row in range(-ceil(reach / step), ceil(reach / step) + 1):
        shift = pattern.size / 2 if row % 2 else 0.0
        for n in range(-ceil(reach / pattern.size) - 1, ceil(reach / pattern.size) + 1):
            u, v = n * pattern.size + shift, row * step
            x, y = middle_x + u * along[0] + v * down[0], middle_y + u * along[1] + v * down[1]
            if seen.covers(Box(x, y, 0, 0)):
                found.append(circle(x, y, radius))
    return tuple(found)
