"""The panel: a rounded box with the blocks it holds, kept clear of its corner arcs and of art that overlaps it."""

from collections.abc import Callable
from math import sqrt

from padspec.base.geometry import Box
from padspec.compose.face import Drawn, Placement, Room
from padspec.resolve.design import Block, Panel
from padspec.scene.nodes import Cause, Shape
from padspec.scene.outline import rounded

#: What the panel holds keeps at least this far from its corner arcs.
CORNER_CLEARANCE = 1.0
#: Air between overlapping art and the first thing in the panel, as a share of the panel's pad.
UNDER_ART = 0.7

Stack = Callable[[tuple[Block, ...], Room, float], Drawn]


def need(block: Panel) -> float:
    """Nothing of its own beyond its edges: a panel is as high as the room it is given."""
    return block.inset + 2 * block.pad


def draw(block: Panel, room: Room, draw_stack: Stack) -> Drawn:
    """The panel in its room (inset left, right and at the foot; at the head too where no art lies on it)."""
    head = 0.0 if room.covered else block.inset
    box = Box(
        room.box.x + block.inset,
        room.box.y + head,
        max(room.box.width - 2 * block.inset, 0.0),
        max(room.box.height - head - block.inset, 0.0),
    )
    shape = Shape(rounded(box, block.corner), Cause(block.id, "panel"), fill=block.colour)
    held = draw_stack(block.holds, Room(content_box(block, box, room.covered)), 0.0)
    return Drawn((("panel", shape),), (Placement(block.id, box),)).and_(held)


def covers(block: Panel, box: Box) -> tuple[Box, Box]:
    """Two boxes that the panel hides wholly: its own less the corners, once across and once upright."""
    corner = min(block.corner, box.width / 2, box.height / 2)
    return (
        Box(box.x + corner, box.y, box.width - 2 * corner, box.height),
        Box(box.x, box.y + corner, box.width, box.height - 2 * corner),
    )


def content_box(block: Panel, box: Box, covered: float) -> Box:
    """Where the held blocks may lie: inside the pad, below overlapping art, clear of the corner arcs."""
    across = block.pad
    upright = max(block.pad, _corner_depth(block.corner, across))
    head = max(upright, covered + UNDER_ART * block.pad) if covered else upright
    return Box(
        box.x + across,
        box.y + head,
        max(box.width - 2 * across, 0.0),
        max(box.height - head - upright, 0.0),
    )


def _corner_depth(radius: float, across: float) -> float:
    """How far down a box that starts `across` from the side must start to clear the arc by the clearance."""
    reach = radius - CORNER_CLEARANCE
    aside = radius - across
    if aside <= 0 or reach <= 0:
        return min(radius, CORNER_CLEARANCE) if aside > 0 else 0.0
    return radius - sqrt(reach**2 - aside**2) if aside < reach else radius
