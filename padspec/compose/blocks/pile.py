"""A stack as a block of its own: what it holds, head to foot, inside its inset."""

from padspec.base.geometry import Box
from padspec.compose.face import Drawn, Placement, Room, Stacking
from padspec.resolve.blocks.stack import Stack


def need(block: Stack, width: float, stacking: Stacking) -> float:
    """What it holds and its inset at head and foot; one that grows takes what it is given."""
    held = 0.0 if block.grow else stacking.need(block.holds, width - 2 * block.inset, 0.0)
    return 2 * block.inset + held


def draw(block: Stack, room: Room, stacking: Stacking) -> Drawn:
    """What it holds, inside its inset."""
    box = inside(room, block.inset)
    return Drawn(placements=(Placement(block.id, box),)).and_(stacking.draw(block.holds, Room(box), 0.0))


def inside(room: Room, inset: float) -> Box:
    """A room less the same inset on all sides, but at a head that a picture lies over."""
    head = 0.0 if room.covered else inset
    return Box(
        room.box.x + inset,
        room.box.y + head,
        max(room.box.width - 2 * inset, 0.0),
        max(room.box.height - head - inset, 0.0),
    )
