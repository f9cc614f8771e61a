"""Rows: rules at an even pitch, with squares, numbers or words at the front of each.

A row is one pitch with its rule at the foot. n = ⌊room ÷ pitch⌋ and what remains is shared, so that the ink
of the block is centred in its room. The ink of a row reaches up to the top of its square, or half a pitch
where there is none: that is where the writing stands.
"""

from dataclasses import dataclass
from math import floor

from padspec.base.geometry import Box
from padspec.base.numbers import EPSILON, round_down
from padspec.compose.blocks.row_ends import (
    front_width,
    label_reach,
    label_size,
    labels_of,
    squares_of,
    tail_of,
    tail_width,
)
from padspec.compose.face import Drawn, Placement, Room
from padspec.resolve.blocks.rows import Rows
from padspec.scene.nodes import Cause, LayerName, Node, Shape, Stroke
from padspec.scene.outline import line

#: A dash and the gap after it, in mm, before they are fitted to the rule.
_DASH, _GAP = 1.6, 1.1
#: Dots stand so many weights apart, middle to middle.
_DOTS_APART = 3.2
#: Lengths are drawn to this many mm: a distance of dots rounded up would push the last one off its rule.
_DRAWN_TO = 0.001


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
    """Rules and what stands at their ends, each a shape of its own."""
    box = Box(room.box.x + margin, room.box.y, room.box.width - 2 * margin, max(room.box.height - margin, 0.0))
    ruling = rule_up(block, box)
    nodes: list[tuple[LayerName, Node]] = []
    for n in range(ruling.count):
        nodes += _row(block, box, ruling, n)
    short = max(block.pitch - box.height, 0.0) if ruling.count == 0 else 0.0
    size = label_size(block.labels, ruling.pitch) if block.labels else 0.0
    placement = Placement(block.id, box, rows=ruling.count, pitch=ruling.pitch, size=size, short_by=short)
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
    first = box.y + (box.height - ink) / 2 + above
    # Accents and descenders of words stay in the box too.
    rise, _ = label_reach(block, pitch, 0)
    _, fall = label_reach(block, pitch, count - 1)
    first = max(min(first, box.bottom - (count - 1) * pitch - fall), box.y + rise)
    return Ruling(count, pitch, first)


def rule_length(block: Rows, box: Box, count: int) -> float:
    """How long the rules of a block are in a box."""
    return box.width - front_width(block, count) - tail_width(block)


def _ink(block: Rows, pitch: float) -> tuple[float, float]:
    """How far a row's ink reaches above and below the middle of its rule."""
    half = (max(block.weight, block.heavy_weight) if block.heavy_every else block.weight) / 2
    if block.squares is None:
        return pitch / 2, half
    if block.squares.seat == "rule":
        return block.squares.size - block.weight / 2, half
    return pitch / 2 + block.squares.size / 2, half


def _row(block: Rows, box: Box, ruling: Ruling, n: int) -> list[tuple[LayerName, Node]]:
    y = ruling.rule(n)
    rule = _rule(block, box, ruling, n)
    ends: list[tuple[LayerName, Node]] = [("rules", rule)] if rule else []
    ends += squares_of(block, box, y, ruling)
    ends += labels_of(block, box, y, ruling, n)
    ends += tail_of(block, box, y, ruling.pitch)
    return ends


def _rule(block: Rows, box: Box, ruling: Ruling, n: int) -> Shape | None:
    """The line to write on; none where what stands at the ends leaves no length for one."""
    heavy = bool(block.heavy_every) and (n + 1) % block.heavy_every == 0
    weight = block.heavy_weight if heavy else block.weight
    cap = "round" if block.line == "dotted" else block.ends
    inside = weight / 2 if cap == "round" else 0.0
    start, end = box.x + front_width(block, ruling.count) + inside, box.right - tail_width(block) - inside
    if block.line == "none" or end <= start:
        return None
    stroke = Stroke(block.colour, weight, cap, _dash(block, end - start, weight))
    y = ruling.rule(n)
    return Shape(line(start, y, end, y), Cause(block.id, "rule"), stroke=stroke)


def _dash(block: Rows, length: float, weight: float) -> tuple[float, float] | None:
    """Dash and gap such that the rule begins and ends with a whole dash, or a dot."""
    match block.line:
        case "dashed":
            count = max(round((length + _GAP) / (_DASH + _GAP)), 1)
            scale = length / (count * _DASH + (count - 1) * _GAP)
            return _DASH * scale, _GAP * scale
        case "dotted":
            apart = (length - 3 * _DRAWN_TO) / max(round(length / (_DOTS_APART * weight)), 1)
            # A dot is a dash all but without length: some renderers lengthen those that have none at all.
            return _DRAWN_TO, max(round_down(apart - _DRAWN_TO, _DRAWN_TO), _DRAWN_TO)
        case "solid" | "none":
            return None
