"""The ground of a face: a flat colour out to the bleed, and a pattern on it, clipped to the bleed.

One line in `_coats` for each kind of pattern.
"""

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from typing import assert_never

from padspec.base.colour import BLACK, Colour
from padspec.base.geometry import Box, Size
from padspec.compose.face import Drawn
from padspec.compose.ground.checks import checks
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.dots import dots
from padspec.compose.ground.gingham import gingham
from padspec.compose.ground.gradient import gradient
from padspec.compose.ground.lattice import lattice
from padspec.compose.ground.motif import motif
from padspec.compose.ground.scallop import scallop
from padspec.compose.ground.split import split
from padspec.compose.ground.sprinkle import sprinkle
from padspec.compose.ground.stripes import stripes
from padspec.compose.ground.wave import wave
from padspec.resolve.ground import Ground, Pattern
from padspec.scene.nodes import Cause, Group, LayerName, Node, Shape
from padspec.scene.outline import Outline, bounds, rectangle

GROUND = "ground"
#: Kinds whose coats all have the pattern's own colour.
_ONE_COLOUR = frozenset({"split", "stripes", "dots", "checks", "scallop", "wave", "lattice"})
_PATTERN = Cause(GROUND, "pattern")


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
        drawn = tuple(_drawn(ground.pattern, ground.colour, area, trim, covers))
        if drawn:
            nodes.append(("ground", Group(drawn, clip=rectangle(area))))
    return Drawn(tuple(nodes))


def _drawn(pattern: Pattern, behind: Colour, area: Box, trim: Size, covers: tuple[Box, ...]) -> Iterator[Node]:
    if pattern.kind == "motif":
        copies = motif(pattern, area, trim, _PATTERN)
        yield from (copy for middle, copy in copies if not any(cover.covers(middle) for cover in covers))
        return
    if pattern.kind in _ONE_COLOUR:
        outlines = _seen(replace(pattern, colour=BLACK), area, trim, covers)
        yield from (Shape(outline, _PATTERN, fill=pattern.colour) for outline in outlines if outline)
        return
    for coat in _coats(pattern, behind, area, trim):
        outline = _whole(coat, covers)
        if outline:
            yield Shape(outline, _PATTERN, fill=coat.colour)


# The colourways of a design have the same pattern in other colours.
@lru_cache(maxsize=8)
def _seen(pattern: Pattern, area: Box, trim: Size, covers: tuple[Box, ...]) -> tuple[Outline, ...]:
    """What is seen of each coat of a pattern whose coats all have its own colour."""
    return tuple(_whole(coat, covers) for coat in _coats(pattern, BLACK, area, trim))


def _whole(coat: Coat, covers: tuple[Box, ...]) -> Outline:
    """All of a coat as one outline: hundreds of dots as shapes of their own would swell every file."""
    parts = (part for part in coat.outlines if not _hidden(part, covers, coat.compact))
    return tuple(step for part in parts for step in part)


def _hidden(part: Outline, covers: tuple[Box, ...], compact: bool) -> bool:
    """Whether a part cannot be seen; a dot is left out as soon as its middle is hidden, for its rest would look
    like a bite out of the panel's edge.
    """
    box = bounds(part)
    x, y = box.centre
    seen = Box(x, y, 0, 0) if compact else box
    return any(cover.covers(seen) for cover in covers)


def _coats(pattern: Pattern, behind: Colour, area: Box, trim: Size) -> tuple[Coat, ...]:
    match pattern.kind:
        case "split":
            return split(pattern, area, trim)
        case "gradient":
            return gradient(pattern, behind, area, trim)
        case "stripes":
            return stripes(pattern, area, trim)
        case "dots":
            return dots(pattern, area, trim)
        case "gingham":
            return gingham(pattern, behind, area, trim)
        case "checks":
            return checks(pattern, area, trim)
        case "scallop":
            return scallop(pattern, area, trim)
        case "wave":
            return wave(pattern, area, trim)
        case "lattice":
            return lattice(pattern, area, trim)
        case "sprinkle":
            return sprinkle(pattern, area, trim)
        case "motif":
            return ()
        case _:
            assert_never(pattern.kind)
