"""Columns: blocks side by side, each in its part of the width."""

from padspec.base.geometry import Box
from padspec.compose.blocks import panel
from padspec.compose.blocks.pile import inside
from padspec.compose.face import Drawn, Placement, Room, Stacking
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.columns import Columns, shared_widths
from padspec.resolve.blocks.panel import Panel

_SEATS = {"head": 0.0, "middle": 0.5, "foot": 1.0}


def need(block: Columns, width: float, stacking: Stacking, covered: float = 0.0) -> float:
    """The tallest of what it holds, and its inset at head and foot; one that grows takes what it is given.

    Where a picture covers its head by so much, there is no inset there.
    """
    insets = block.inset if covered else 2 * block.inset
    return insets + max(_needs(block, width - 2 * block.inset, stacking, covered), default=0.0)


def draw(block: Columns, room: Room, stacking: Stacking) -> Drawn:
    """Each held block in a column of its own, as high as the room where it grows."""
    box = inside(room, block.inset)
    drawn = Drawn(placements=(Placement(block.id, box),))
    left = box.x
    for inner, wide, tall in zip(
        block.holds, column_widths(block, box.width), _needs(block, box.width, stacking, room.covered), strict=True
    ):
        height = box.height if inner.grow else min(tall, box.height)
        top = box.y + (box.height - height) * _SEATS[block.seat]
        covered = room.covered if isinstance(inner, Panel) else 0.0
        drawn = drawn.and_(stacking.draw((inner,), Room(Box(left, top, wide, height), covered), 0.0))
        left += wide + block.gap
    return drawn


def takes_overlap(block: Block) -> bool:
    """Whether a picture may lie over the head of a block, which then keeps what it holds clear of it."""
    return isinstance(block, Panel) or (
        isinstance(block, Columns) and all(isinstance(inner, Panel) for inner in block.holds)
    )


def column_widths(block: Columns, width: float) -> tuple[float, ...]:
    """The width of each column: what the gaps leave, shared by parts."""
    return shared_widths(width - block.gap * (len(block.holds) - 1), block.shares)


def _needs(block: Columns, width: float, stacking: Stacking, covered: float) -> list[float]:
    """The height that each column needs; none for one that takes what it is given."""
    found = []
    for inner, wide in zip(block.holds, column_widths(block, width), strict=True):
        if inner.grow:
            found.append(0.0)
        elif isinstance(inner, Panel):
            found.append(panel.need(inner, wide, stacking, covered))
        else:
            found.append(stacking.need((inner,), wide, 0.0))
    return found
