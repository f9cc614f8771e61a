"""Wishes in, the artwork out: drawing, studio, lines and QR code under each other in the middle, all of one
black.
"""

from dataclasses import dataclass

from padspec.art.errors import ArtError
from padspec.base.colour import BLACK
from padspec.base.errors import Problem, ProblemsError
from padspec.base.geometry import Affine, Box, Size
from padspec.base.numbers import mm_text
from padspec.compose.lettering.ink import true_bounds
from padspec.compose.lettering.shaping import shape_line
from padspec.resolve.font import Font
from padspec.resolve.stamp import StampWish
from padspec.scene.nodes import Cause, Group, Layer, Node, Scene, Shape
from padspec.scene.outline import mapped, rectangle
from padspec.stamp.code import MODULE, QUIET, code_outline
from padspec.stamp.trace import traced

#: Sizes and air as shares of the width: the name at most, lines at most, between parts.
_NAME, _LINES, _AIR = 0.17, 0.062, 0.035
#: A line between name and words: as wide, and as heavy in mm.
_RULE_SHARE, RULE_WEIGHT = 0.28, 0.4
#: What a line takes above and below its baseline, as shares of its size.
_ABOVE, _BELOW = 0.72, 0.2


@dataclass(frozen=True, slots=True)
class Part:
    """A named part of the artwork and its box, for what is told of it."""

    name: str
    box: Box


@dataclass(frozen=True, slots=True)
class Artwork:
    """The drawing of a stamp at its true size, and its parts from head to foot."""

    scene: Scene
    parts: tuple[Part, ...]


def artwork(wish: StampWish, is_mirrored: bool) -> Artwork:
    """The artwork; raises ProblemsError for a drawing that cannot be used or a code that is too wide."""
    drawn = _Column(wish.width)
    if wish.drawing is not None:
        _draw_drawing(drawn, wish)
    drawn.words("studio", wish.studio, wish.name_font, _NAME * wish.width)
    if wish.lines or wish.link:
        drawn.rule()
    for n, line in enumerate(wish.lines):
        drawn.words(f"line {n + 1}", line, wish.lines_font, _LINES * wish.width)
    if wish.link:
        _draw_code(drawn, wish)
    size = Size(wish.width, round(drawn.y - drawn.air, 3))
    nodes: tuple[Node, ...] = tuple(drawn.nodes)
    if is_mirrored:
        nodes = (Group(nodes, Affine(a=-1.0, e=wish.width)),)
    parts = tuple(_mirrored(part, wish.width) if is_mirrored else part for part in drawn.parts)
    return Artwork(Scene(size, 0.0, (Layer("lettering", nodes),)), parts)


class _Column:
    """Parts set under each other, each in the middle; `y` is where the next begins."""

    def __init__(self, width: float) -> None:
        self.width = width
        self.air = _AIR * width
        self.y = 0.0
        self.nodes: list[Shape] = []
        self.parts: list[Part] = []

    def add(self, name: str, shape: Shape, box: Box) -> None:
        """One part that ends at the foot of its box."""
        self.nodes.append(shape)
        self.parts.append(Part(name, box))
        self.y = box.bottom + self.air

    def words(self, name: str, text: str, font: Font, most: float) -> None:
        """A line of lettering as large as its width allows, its ink exactly in the column."""
        outline = shape_line(font, text).outline
        if not outline:
            return
        ink = true_bounds(outline)
        size = min(most, self.width / ink.width)
        left = (self.width - ink.width * size) / 2 - ink.x * size
        # Even lines: what has no descenders keeps their room.
        above, below = max(_ABOVE, -ink.y) * size, max(_BELOW, ink.bottom) * size
        placed = mapped(outline, Affine.scale(size).then(Affine.move(left, self.y + above)))
        box = Box((self.width - ink.width * size) / 2, self.y, ink.width * size, above + below)
        self.add(name, Shape(placed, Cause("stamp", "lettering"), fill=BLACK), box)

    def rule(self) -> None:
        """A short line across."""
        width = self.width * _RULE_SHARE
        box = Box((self.width - width) / 2, self.y, width, RULE_WEIGHT)
        self.add("rule", Shape(rectangle(box), Cause("stamp", "rule"), fill=BLACK), box)


def _draw_drawing(drawn: _Column, wish: StampWish) -> None:
    drawing = wish.drawing
    assert drawing is not None
    try:
        outline, size = traced(drawing)
    except ArtError as error:
        raise ProblemsError(Problem(drawing.place, error.message, error.mend)) from None
    share = min(1.0, drawn.width / size.width)
    box = Box((drawn.width - size.width * share) / 2, drawn.y, size.width * share, size.height * share)
    placed = mapped(outline, Affine.scale(share).then(Affine.move(box.x, box.y)))
    drawn.add("drawing", Shape(placed, Cause("stamp", "art"), fill=BLACK), box)


def _draw_code(drawn: _Column, wish: StampWish) -> None:
    """The QR code, its quiet zone inside the width; what stands over it keeps off by as much."""
    outline, modules = code_outline(wish.link)
    side = modules * MODULE
    needed = side + 2 * QUIET * MODULE
    if needed > wish.width:
        message = (
            f"The QR code of {len(wish.link)} characters has {modules} modules and 2 × {QUIET} of quiet zone; at "
            f"{mm_text(MODULE)} each that is {mm_text(needed)}, and the stamp is {mm_text(wish.width)} wide."
        )
        raise ProblemsError(Problem(wish.place, message, "Write a shorter link, or a larger width."))
    top = drawn.y + max(QUIET * MODULE - drawn.air, 0.0)
    box = Box(round((drawn.width - side) / 2, 3), round(top, 3), side, side)
    drawn.add("code", Shape(mapped(outline, Affine.move(box.x, box.y)), Cause("stamp", "rule"), fill=BLACK), box)
    drawn.y += QUIET * MODULE


def _mirrored(part: Part, width: float) -> Part:
    return Part(part.name, Box(width - part.box.right, part.box.y, part.box.width, part.box.height))
