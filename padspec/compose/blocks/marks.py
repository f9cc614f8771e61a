"""Marks to fill in: circles or squares in even lines across their room, numbered or bare."""

from dataclasses import dataclass
from math import ceil, floor

from padspec.base.geometry import Affine, Box
from padspec.base.numbers import EPSILON
from padspec.compose.face import Drawn, Placement, Room
from padspec.compose.lettering.shaping import shape_line
from padspec.resolve.blocks.marks import Marks
from padspec.scene.nodes import Cause, LayerName, Node, Shape, Stroke
from padspec.scene.outline import circle, mapped, rounded

#: The corners of a square mark, as a share of its size.
_CORNER = 0.18


@dataclass(frozen=True, slots=True)
class Array:
    """How many marks stand in a line, how many lines there are, and the distance between middles both ways."""

    across: int
    lines: int
    step: float
    drop: float

    def tall(self, block: Marks) -> float:
        """The least height that so many lines need."""
        return self.lines * block.size + (self.lines - 1) * block.gap


def need(block: Marks, width: float, margin: float) -> float:
    """The lines that the width asks for, at their least distance."""
    lines = ceil(block.count / _across(block, width - 2 * margin))
    return margin + lines * block.size + (lines - 1) * block.gap


def draw(block: Marks, room: Room, margin: float) -> Drawn:
    """The marks spread over the width, the first and the last of a line at its ends; none where not all fit."""
    box = Box(room.box.x + margin, room.box.y, room.box.width - 2 * margin, max(room.box.height - margin, 0.0))
    array = array_in(block, box)
    short = max(array.tall(block) - box.height, 0.0)
    size = block.numeral * block.size
    if short > EPSILON or block.size > box.width + EPSILON:
        return Drawn(placements=(Placement(block.id, box, size=size, short_by=short),))
    top = box.y + (box.height - (array.lines - 1) * array.drop - block.size) / 2
    nodes: list[tuple[LayerName, Node]] = []
    for n in range(block.count):
        x = box.x + block.size / 2 + (n % array.across) * array.step
        y = top + block.size / 2 + (n // array.across) * array.drop
        nodes.append(("rules", _mark(block, x, y)))
        if block.numbered:
            nodes.append(("lettering", _number(block, n + 1, x, y)))
    return Drawn(tuple(nodes), (Placement(block.id, box, rows=array.lines, pitch=array.drop, size=size),))


def array_in(block: Marks, box: Box) -> Array:
    """How the marks of a block stand in a box; lines are no further apart than marks in a line."""
    across = _across(block, box.width)
    lines = ceil(block.count / across)
    step = (box.width - block.size) / (across - 1) if across > 1 else 0.0
    room = (box.height - block.size) / (lines - 1) if lines > 1 else 0.0
    drop = max(min(room, step or room), block.size + block.gap)
    return Array(across, lines, step, drop if lines > 1 else 0.0)


def _across(block: Marks, width: float) -> int:
    """As many in a line as were asked for, else as few as the number of lines that must be allows."""
    most = max(floor((width + block.gap) / (block.size + block.gap) + EPSILON), 1)
    if block.across:
        return min(block.across, most)
    return ceil(block.count / ceil(block.count / most))


def _mark(block: Marks, x: float, y: float) -> Shape:
    half = (block.size - block.weight) / 2
    outline = (
        circle(x, y, half)
        if block.shape == "circle"
        else rounded(Box(x - half, y - half, 2 * half, 2 * half), _CORNER * block.size)
    )
    return Shape(outline, Cause(block.id, "checkbox"), stroke=Stroke(block.colour, block.weight))


def _number(block: Marks, number: int, x: float, y: float) -> Shape:
    """The number with its ink in the middle of the mark; all numbers stand on one line of feet."""
    em = block.numeral * block.size
    shaped, tall = shape_line(block.font, str(number)), shape_line(block.font, "0").ink
    left = x - (shaped.ink.x + shaped.ink.width / 2) * em
    baseline = y - (tall.y + tall.height / 2) * em
    outline = mapped(shaped.outline, Affine.scale(em).then(Affine.move(left, baseline)))
    return Shape(outline, Cause(block.id, "lettering"), fill=block.numeral_colour)
