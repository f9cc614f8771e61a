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
from padspec.scene.outline import Outline, bounds, rectangle

GROUND = "ground"


def draw_ground(ground: Ground, trim: Size, bleed: float, covers: tuple[Box, ...] = ()) -> Drawn:
    """The background, out to the bleed on every side.

    Parts of a pattern that lie wholly under one of the `covers` (the paper of a panel) are left out: they
    cannot be seen, and there would be hundreds of them.
    """
    area = Box(0, 0, trim.width, trim.height).inset(-bleed)
    nodes: list[tuple[LayerName, Node]] = [
        ("ground", Shape(rectangle(area), Cause(GROUND, "ground"), fill=ground.colour))
    ]
    if ground.pattern is not None:
        # All of a pattern is one shape: hundreds of dots as shapes of their own would swell every file.
        parts = (
            part
            for part in _pattern(ground.pattern, area)
            if not _hidden(part, covers, ground.pattern.kind == "dots")
        )
        outline = tuple(step for part in parts for step in part)
        shape = Shape(outline, Cause(GROUND, "pattern"), fill=ground.pattern.colour)
        nodes.append(("ground", Group((shape,), clip=rectangle(area))))
    return Drawn(tuple(nodes))


def _hidden(part: Outline, covers: tuple[Box, ...], compact: bool) -> bool:
    """Whether a part cannot be seen; a dot is left out as soon as its middle is hidden, for its rest would look
    like a bite out of the panel's edge.
    """
    box = bounds(part)
    x, y = box.centre
    seen = Box(x, y, 0, 0) if compact else box
    return any(cover.covers(seen) for cover in covers)


def _pattern(pattern: Pattern, area: Box) -> tuple[Outline, ...]:
    match pattern.kind:
        case "dots":
            return dots(pattern, area)
        case "stripes":
            return stripes(pattern, area)
        case _:
            assert_never(pattern.kind)
