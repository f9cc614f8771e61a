"""A stack of blocks from head to foot: fixed heights first, then the spare height to those that grow.

This is the explicit table of block kinds: a line in `_need` and one in `_draw` for each.
"""

from itertools import pairwise
from typing import assert_never

from padspec.base.geometry import Box
from padspec.compose import art, heading, panel, rows, space
from padspec.compose.face import Drawn, Room
from padspec.resolve.design import Art, Block, Heading, Panel, Rows, Space

#: Which kind of block gives way first where there is too little height.
_GIVES_WAY: dict[type, int] = {Rows: 0, Space: 1, Art: 2, Panel: 3, Heading: 4}


def draw_stack(blocks: tuple[Block, ...], room: Room, margin: float) -> Drawn:
    """Draw blocks into a room, one under the other.

    `margin` is kept at the sides, head and foot by blocks that have no inset of their own; inside a panel,
    whose pad already holds them off, it is 0.
    """
    leads = _leads(blocks, margin)
    heights = _heights(blocks, leads, room.box, margin)
    leads, heights = _shared(blocks, leads, heights, margin)
    drawn, top, covered = Drawn(), room.box.y, room.covered
    for block, lead, height, overlap in zip(blocks, leads, heights, _overlaps(blocks), strict=True):
        foot = _foot(block, margin) if block is blocks[-1] else 0.0
        box = Box(room.box.x, top + lead, room.box.width, max(height - foot, 0.0))
        drawn = drawn.and_(_draw(block, Room(box, covered), margin))
        covered = overlap
        top += lead + height - covered
    return drawn


def _overlaps(blocks: tuple[Block, ...]) -> list[float]:
    """How far each block lies over the next: a picture over a panel, which keeps what it holds clear of it."""
    below = (*blocks[1:], None)
    return [
        art.covering(block) if isinstance(block, Art) and isinstance(after, Panel) else 0.0
        for block, after in zip(blocks, below, strict=True)
    ]


def _leads(blocks: tuple[Block, ...], margin: float) -> list[float]:
    """Air above each block: a heading further down a panel keeps off what is above as from what it heads."""
    leads = [0.0 for _ in blocks]
    if blocks and isinstance(blocks[0], Rows):
        leads[0] = margin
    for n, (above, block) in enumerate(pairwise(blocks), 1):
        if isinstance(block, Heading) and block.text and not isinstance(above, Art) and not margin:
            leads[n] = block.space
    return leads


def _shared(
    blocks: tuple[Block, ...], leads: list[float], heights: list[float], margin: float
) -> tuple[list[float], list[float]]:
    """What rows leave over, shared with their heading: a third each above it, below it and at the foot."""
    leads, heights = list(leads), list(heights)
    for n, (block, below) in enumerate(pairwise(blocks)):
        if isinstance(block, Heading) and block.text and isinstance(below, Rows):
            third = rows.left_over(below, heights[n + 1], margin) / 3
            leads[n] += third
            heights[n + 1] -= third
    return leads, heights


def _heights(blocks: tuple[Block, ...], leads: list[float], box: Box, margin: float) -> list[float]:
    needs = [_need(block, box.width, margin) for block in blocks]
    if blocks:
        needs[-1] += _foot(blocks[-1], margin)
    spare = box.height - sum(needs) - sum(leads) + sum(_overlaps(blocks))
    shares = sum(block.grow for block in blocks)
    if shares == 0 or spare <= 0:
        return needs if spare >= 0 else _squeezed(blocks, needs, spare)
    return [need + spare * block.grow / shares for need, block in zip(needs, blocks, strict=True)]


def _foot(block: Block, margin: float) -> float:
    """What the last block keeps below itself on the bare ground; panels and rows have it in their own height."""
    match block:
        case Art():
            return block.inset if margin else 0.0
        case Heading():
            return margin
        case Panel() | Rows() | Space():
            return 0.0
        case _:
            assert_never(block)


def _squeezed(blocks: tuple[Block, ...], needs: list[float], lack: float) -> list[float]:
    """Too little height: rows give way first, down to nothing, then space, pictures and panels; words last."""
    left = -lack
    heights = list(needs)
    for index in sorted(range(len(blocks)), key=lambda i: _GIVES_WAY[type(blocks[i])]):
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
