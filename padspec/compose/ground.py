"""The ground of a face: a flat colour out to the bleed, and a pattern on it, clipped to the bleed.

One line in `_pattern` for each kind of pattern.
"""

from typing import assert_never

from padspec.base.geometry import Box, Size
from padspec.compose.dots import dots
from padspec.compose.face import Drawn
from padspec.compose.stripes import stripes
from padspec.resolve.design import Ground, Pattern
from padspec.scene.nodes import Cause, Group, LayerName, Node, Shape
from padspec.scene.outline import Outline, rectangle

GROUND = "ground"


def draw_ground(ground: Ground, trim: Size, bleed: float) -> Drawn:
    """The background, out to the bleed on every side."""
    area = Box(0, 0, trim.width, trim.height).inset(-bleed)
    nodes: list[tuple[LayerName, Node]] = [
        ("ground", Shape(rectangle(area), Cause(GROUND, "ground"), fill=ground.colour))
    ]
    if ground.pattern is not None:
        cause = Cause(GROUND, "pattern")
        shapes = tuple(Shape(o, cause, fill=ground.pattern.colour) for o in _pattern(ground.pattern, area))
        nodes.append(("ground", Group(shapes, clip=rectangle(area))))
    return Drawn(tuple(nodes))


def _pattern(pattern: Pattern, area: Box) -> tuple[Outline, ...]:
    match pattern.kind:
        case "dots":
            return dots(pattern, area)
        case "stripes":
            return stripes(pattern, area)
        case _:
            assert_never(pattern.kind)
