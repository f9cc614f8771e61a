"""The panel: a rounded box with the blocks it holds, kept clear of its corner arcs and of art that overlaps it."""

from math import sqrt

from padspec.base.geometry import Box
from padspec.compose.face import Drawn, Placement, Room, Stacking
from padspec.resolve.blocks.panel import Panel
from padspec.scene.nodes import Cause, Shape
from padspec.scene.outline import rounded

#: What the panel holds keeps at least this far from its corner arcs.
CORNER_CLEARANCE = 1.0
#: Air between overlapping art and the first thing in the panel, as a share of the panel's pad.
UNDER_ART = 0.7


def need(block: Panel, width: float, stacking: Stacking, covered: float = 0.0) -> float:
    """Its edges, and what it holds where it does not grow: one that grows is as high as the room it is given.

    Where art covers its head by so much, that and the air under it take the place of the inset there.
    """
    head = _head(block, covered) + (0.0 if covered else block.inset)
    held = 0.0 if block.grow else stacking.need(block.holds, width - 2 * (block.inset + block.pad), 0.0)
    return head + held + _upright(block) + block.inset


def draw(block: Panel, room: Room, stacking: Stacking) -> Drawn:
    """The panel in its room (inset left, right and at the foot; at the head too where no art lies on it)."""
    head = 0.0 if room.covered else block.inset
    box = Box(
        room.box.x + block.inset,
        room.box.y + head,
        max(room.box.width - 2 * block.inset, 0.0),
        max(room.box.height - head - block.inset, 0.0),
    )
    shape = Shape(rounded(box, block.corner), Cause(block.id, "panel"), fill=block.colour, opacity=block.opacity)
    held = stacking.draw(block.holds, Room(content_box(block, box, room.covered)), 0.0)
    return Drawn((("panel", shape),), (Placement(block.id, box),)).and_(held)


def covers(block: Panel, box: Box) -> tuple[Box, ...]:
    """Two boxes that the panel hides wholly: its own less the corners, once across and once upright; none where it
    lets what lies under it through.
    """
    if block.opacity < 1:
        return ()
    corner = min(block.corner, box.width / 2, box.height / 2)
    return (
        Box(box.x + corner, box.y, box.width - 2 * corner, box.height),
        Box(box.x, box.y + corner, box.width, box.height - 2 * corner),
    )


def content_box(block: Panel, box: Box, covered: float) -> Box:
    """Where the held blocks may lie: inside the pad, below overlapping art, clear of the corner arcs."""
    head = _head(block, covered)
    return Box(
        box.x + block.pad,
        box.y + head,
        max(box.width - 2 * block.pad, 0.0),
        max(box.height - head - _upright(block), 0.0),
    )


def _head(block: Panel, covered: float) -> float:
    """How far what it holds keeps from its head."""
    return max(_upright(block), covered + UNDER_ART * block.pad) if covered else _upright(block)


def _upright(block: Panel) -> float:
    """How far what it holds keeps from its head and foot: its pad, or more where the corners ask for it."""
    return max(block.pad, _corner_depth(block.corner, block.pad))


def _corner_depth(radius: float, across: float) -> float:
    """How far down a box that starts `across` from the side must start to clear the arc by the clearance."""
    reach = radius - CORNER_CLEARANCE
    aside = radius - across
    if aside <= 0 or reach <= 0:
        return min(radius, CORNER_CLEARANCE) if aside > 0 else 0.0
    return radius - sqrt(reach**2 - aside**2) if aside < reach else radius
