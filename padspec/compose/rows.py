"""Rows: rules at an even pitch with a square beside each.

A row is one pitch with its rule at the foot. n = ⌊room ÷ pitch⌋ and what remains is shared, so that the ink
of the block is centred in its room. The ink of a row reaches up to the top of its square, or half a pitch
where there is none: that is where the writing stands.
"""

from dataclasses import dataclass
from math import floor

from padspec.base.geometry import Box
from padspec.base.numbers import EPSILON
from padspec.compose.face import Drawn, Placement, Room
from padspec.resolve.design import Rows
from padspec.scene.nodes import Cause, LayerName, Node, Shape, Stroke
from padspec.scene.outline import line, rounded


@dataclass(frozen=True, slots=True)
class Ruling:
    """How many rows, at which pitch, and the y of the first rule."""

    count: int
    pitch: float
    first: float

    def rule(self, n: int) -> float:
        """The y of the n-th rule, from the origin each time so that no error adds up."""
        return self.first + n * self.pitch


def need(block: Rows, margin: float) -> float:
    """Fixed rows need their pitch each; others need nothing and take what is left."""
    rows = block.count * block.pitch if block.count and not block.grow else 0.0
    return rows + margin


def left_over(block: Rows, height: float, margin: float) -> float:
    """The height that no row takes; none where the pitch follows from a count."""
    room = height - margin
    if block.count or room <= 0:
        return 0.0
    return room - floor(room / block.pitch + EPSILON) * block.pitch


def draw(block: Rows, room: Room, margin: float) -> Drawn:
    """Rules and squares, each a shape of its own."""
    box = Box(room.box.x + margin, room.box.y, room.box.width - 2 * margin, max(room.box.height - margin, 0.0))
    ruling = rule_up(block, box)
    nodes: list[tuple[LayerName, Node]] = []
    for n in range(ruling.count):
        y = ruling.rule(n)
        if rule := _rule(block, box, y):
            nodes.append(("rules", rule))
        if block.checkbox is not None:
            nodes.append(("rules", _checkbox(block, box.x, y, ruling.pitch)))
    short = max(block.pitch - box.height, 0.0) if ruling.count == 0 else 0.0
    placement = Placement(block.id, box, rows=ruling.count, pitch=ruling.pitch, short_by=short)
    return Drawn(tuple(nodes), (placement,))


def rule_up(block: Rows, box: Box) -> Ruling:
    """Where the rules of a block come to lie in a box."""
    if box.height <= 0:
        return Ruling(0, block.pitch, box.y)
    pitch = box.height / block.count if block.count else block.pitch
    count = block.count or floor(box.height / pitch + EPSILON)
    if count == 0:
        return Ruling(0, pitch, box.y)
    above, below = _ink(block, pitch)
    ink = above + (count - 1) * pitch + below
    return Ruling(count, pitch, box.y + (box.height - ink) / 2 + above)


def _ink(block: Rows, pitch: float) -> tuple[float, float]:
    """How far a row's ink reaches above and below the middle of its rule."""
    half = block.weight / 2
    if block.checkbox is None:
        return pitch / 2, half
    if block.checkbox_seat == "rule":
        return block.checkbox - half, half
    return pitch / 2 + block.checkbox / 2, half


def _rule(block: Rows, box: Box, y: float) -> Shape | None:
    """The line to write on; none where the square leaves no length for one."""
    start = box.x if block.checkbox is None else box.x + block.checkbox + block.checkbox_gap
    ends = block.weight / 2 if block.ends == "round" else 0.0
    if box.right - ends <= start + ends:
        return None
    return Shape(
        line(start + ends, y, box.right - ends, y),
        Cause(block.id, "rule"),
        stroke=Stroke(block.colour, block.weight, block.ends),
    )


def _checkbox(block: Rows, x: float, y: float, pitch: float) -> Shape:
    """The square, its outer size the checkbox: the line lies wholly inside."""
    outer = block.checkbox or 0.0
    foot = y + block.weight / 2 if block.checkbox_seat == "rule" else y - pitch / 2 + outer / 2
    middle = Box(x, foot - outer, outer, outer).inset(block.weight / 2)
    corner = max(block.checkbox_corner - block.weight / 2, 0.0)
    return Shape(
        rounded(middle, corner),
        Cause(block.id, "checkbox"),
        stroke=Stroke(block.checkbox_colour, block.weight),
    )
