"""A stack of blocks from head to foot: fixed heights first, then the spare height to those that grow."""

from dataclasses import dataclass
from itertools import pairwise

from padspec.base.geometry import Box
from padspec.compose.blocks import art, columns, panel, rows
from padspec.compose.blocks.columns import takes_overlap
from padspec.compose.blocks.table import KINDS, HolderKind
from padspec.compose.face import Drawn, Room
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.columns import Columns
from padspec.resolve.blocks.grid import Grid
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.marks import Marks
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.blocks.stack import Stack

#: Blocks on the bare ground that keep the same distance all round.
_INSET = (Panel, Columns, Stack)


def draw_stack(blocks: tuple[Block, ...], room: Room, margin: float, gap: float = 0.0) -> Drawn:
    """Draw blocks into a room, one under the other, `gap` apart.

    `margin` is kept at the sides, head and foot by blocks that have no inset of their own; inside a panel,
    whose pad already holds them off, it is 0.
    """
    blocks = tuple(block for block in blocks if not _fills_face(block))
    leads = _leads(blocks, margin, gap)
    heights = _heights(blocks, leads, room, margin)
    leads, heights = _shared(blocks, leads, heights, margin)
    drawn, foot = Drawn(), room.box.y
    for block, lead, height, covered in zip(blocks, leads, heights, _covered(blocks, room.covered), strict=True):
        top = foot + lead - (covered if block is not blocks[0] else 0.0)
        kept = _foot(block, margin) if block is blocks[-1] else 0.0
        box = Box(room.box.x, top, room.box.width, max(height - kept, 0.0))
        drawn = drawn.and_(_draw(block, Room(box, covered), margin))
        foot = top + height
    return drawn


def stack_need(blocks: tuple[Block, ...], width: float, margin: float, gap: float = 0.0) -> float:
    """The height that blocks need together, one under the other."""
    blocks = tuple(block for block in blocks if not _fills_face(block))
    covered = _covered(blocks, 0.0)
    needs = sum(_need(block, width, margin, over) for block, over in zip(blocks, covered, strict=True))
    foot = _foot(blocks[-1], margin) if blocks else 0.0
    return needs + foot + sum(_leads(blocks, margin, gap)) - sum(covered)


@dataclass(frozen=True, slots=True)
class Stacked:
    """What a holder is given to stack what it holds."""

    gap: float

    def need(self, blocks: tuple[Block, ...], width: float, margin: float) -> float:
        """The height that they need together."""
        return stack_need(blocks, width, margin, self.gap)

    def draw(self, blocks: tuple[Block, ...], room: Room, margin: float) -> Drawn:
        """All of them in a room."""
        return draw_stack(blocks, room, margin, self.gap)


def _stacking(block: Block) -> Stacked:
    return Stacked(block.gap if isinstance(block, Stack) else 0.0)


def _fills_face(block: Block) -> bool:
    return isinstance(block, Art) and block.fills == "face"


def _covered(blocks: tuple[Block, ...], first: float) -> list[float]:
    """How far each block is covered by the one above, `first` for the first of them: a picture lies over a panel,
    which keeps what it holds clear of it.
    """
    found = [
        art.covering(above) if isinstance(above, Art) and takes_overlap(block) else 0.0
        for above, block in pairwise(blocks)
    ]
    return [first, *found][: len(blocks)]


def _leads(blocks: tuple[Block, ...], margin: float, gap: float) -> list[float]:
    """Air above each block: a heading further down a panel keeps off what is above as from what it heads. Two
    blocks that keep off the edges share the distance between them.
    """
    leads = [0.0 for _ in blocks]
    if blocks and isinstance(blocks[0], Rows | Grid | Marks):
        leads[0] = margin
    for n, (above, block) in enumerate(pairwise(blocks), 1):
        heads = isinstance(block, Heading) and block.text and not isinstance(above, Art) and not margin
        leads[n] = max(block.space if isinstance(block, Heading) and heads else 0.0, gap)
        if isinstance(above, _INSET) and isinstance(block, _INSET):
            leads[n] -= min(above.inset, block.inset)
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


def _heights(blocks: tuple[Block, ...], leads: list[float], room: Room, margin: float) -> list[float]:
    covered = _covered(blocks, room.covered)
    needs = [_need(block, room.box.width, margin, over) for block, over in zip(blocks, covered, strict=True)]
    if blocks:
        needs[-1] += _foot(blocks[-1], margin)
    spare = room.box.height - sum(needs) - sum(leads) + sum(covered[1:])
    shares = sum(block.grow for block in blocks)
    if shares == 0 or spare <= 0:
        return needs if spare >= 0 else _squeezed(blocks, needs, spare)
    return [need + spare * block.grow / shares for need, block in zip(needs, blocks, strict=True)]


def _foot(block: Block, margin: float) -> float:
    """What the last block keeps below itself on the bare ground; the others have it in their own height."""
    if isinstance(block, Art):
        return block.inset if margin else 0.0
    return margin if isinstance(block, Heading) else 0.0


def _squeezed(blocks: tuple[Block, ...], needs: list[float], lack: float) -> list[float]:
    """Too little height: rows give way first, down to nothing, then space, pictures and panels; words last."""
    left = -lack
    heights = list(needs)
    for index in sorted(range(len(blocks)), key=lambda i: KINDS[type(blocks[i])].gives_way):
        given = min(left, heights[index])
        heights[index] -= given
        left -= given
    return heights


def _need(block: Block, width: float, margin: float, covered: float) -> float:
    """The height a block needs, its own insets and what covers its head included."""
    kind = KINDS[type(block)]
    if isinstance(block, Panel):
        return panel.need(block, width, _stacking(block), covered)
    if isinstance(block, Columns):
        return columns.need(block, width, _stacking(block), covered)
    if isinstance(kind, HolderKind):
        return kind.need(block, width, _stacking(block))
    return kind.need(block, width, margin)


def _draw(block: Block, room: Room, margin: float) -> Drawn:
    kind = KINDS[type(block)]
    if isinstance(kind, HolderKind):
        return kind.draw(block, room, _stacking(block))
    return kind.draw(block, room, margin)
