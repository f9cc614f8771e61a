"""What every block is: an id and how it grows; a holder has blocks inside it."""

from dataclasses import dataclass
from typing import Literal

Align = Literal["left", "centre", "right"]


@dataclass(frozen=True, slots=True)
class Block:
    """One block of a face: its id, and its part of the spare height (0 for none)."""

    id: str
    grow: int

    @property
    def called(self) -> str:
        """Its name in the layout; blocks that repeat share one."""
        return self.id.rpartition("/")[2]


@dataclass(frozen=True, slots=True)
class Holder(Block):
    """A block with others inside it, head to foot or left to right."""

    holds: tuple[Block, ...]


def opened(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """These blocks and all that they hold, head to foot."""
    return tuple(
        inner for block in blocks for inner in (block, *(opened(block.holds) if isinstance(block, Holder) else ()))
    )
