"""A stack of blocks from head to foot: fixed heights first, then the spare height to those that grow.

This is the explicit table of block kinds: a line in `_need` and one in `_draw` for each.
"""

from typing import assert_never

from padspec.base.geometry import Box
from padspec.compose import art, heading, panel, rows, space
from padspec.compose.face import Drawn, Room
from padspec.resolve.design import Art, Block, Heading, Panel, Rows, Space


def draw_stack(blocks: tuple[Block, ...], room: Room, margin: float) -> Drawn:
    """Draw blocks into a room, one under the other.

    `margin` is kept at the sides, head and foot by blocks that have no inset of their own; inside a panel,
    whose pad already holds them off, it is 0.
    """
    heights = _heights(blocks, room.box, margin)
    drawn, top, covered = Drawn(), room.box.y, room.covered
    for block, height in zip(blocks, heights, strict=True):
        box = Box(room.box.x, top, room.box.width, max(height, 0.0))
        drawn = drawn.and_(_draw(block, Room(box, covered), margin))
        covered = block.overlap if isinstance(block, Art) and block is not blocks[-1] else 0.0
        top += height - covered
    return drawn


def _heights(blocks: tuple[Block, ...], box: Box, margin: float) -> list[float]:
    needs = [_need(block, box.width, margin) for block in blocks]
    overlaps = sum(block.overlap for block in blocks[:-1] if isinstance(block, Art))
    spare = box.height - sum(needs) + overlaps
    shares = sum(block.grow for block in blocks)
    if shares == 0 or spare <= 0:
        return needs if spare >= 0 else _squeezed(blocks, needs, spare)
    return [need + spare * block.grow / shares for need, block in zip(needs, blocks, strict=True)]


def _squeezed(blocks: tuple[Block, ...], needs: list[float], lack: float) -> list[float]:
    """Too little height: what grows gives way first, down to nothing, so that the rest keeps its size."""
    left = -lack
    heights = list(needs)
    for index in sorted(range(len(blocks)), key=lambda i: -blocks[i].grow):
        given = min(left, heights[index])
        heights[index] -= given
        left -= given
    return heights


def _need(block: Block, width: float, margin: float) -> float:
    """The height a block needs, its own insets included."""
    match block:
        case Art():
            return art.need(block)
        case Heading():
            return heading.need(block, width - 2 * margin, margin)
        case Panel():
            return panel.need(block)
        case Rows():
            return rows.need(block, margin)
        case Space():
            return space.need(block)
        case _:
            assert_never(block)


def _draw(block: Block, room: Room, margin: float) -> Drawn:
    match block:
        case Art():
            return art.draw(block, room)
        case Heading():
            return heading.draw(block, room, margin)
        case Panel():
            return panel.draw(block, room, draw_stack)
        case Rows():
            return rows.draw(block, room, margin)
        case Space():
            return space.draw(block, room)
        case _:
            assert_never(block)
