"""Blocks one under the other, as one block."""

from dataclasses import dataclass

from padspec.resolve.blocks.block import Block, Holder
from padspec.resolve.drafts import Draft
from padspec.resolve.means import Means


@dataclass(frozen=True, slots=True)
class Stack(Holder):
    """Blocks one under the other, `gap` apart; `inset` from the face's edges."""

    gap: float
    inset: float


def read_stack(draft: Draft, means: Means, holds: tuple[Block, ...]) -> Stack:  # noqa: ARG001 (all readers alike)
    """The stack with what it holds."""
    return Stack(draft.id, draft.grow, holds, draft.settings.length("gap"), draft.inset)
