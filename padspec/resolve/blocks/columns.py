"""Blocks side by side."""

from dataclasses import dataclass
from typing import Literal, cast

from padspec.resolve.blocks.block import Block, Holder
from padspec.resolve.drafts import Draft
from padspec.resolve.means import Means


@dataclass(frozen=True, slots=True)
class Columns(Holder):
    """Blocks side by side, `gap` apart, their widths as the parts in `shares`; `inset` from the face's edges.

    `seat` says where a block stands that is less high than the columns and does not grow.
    """

    shares: tuple[float, ...]
    gap: float
    inset: float
    seat: Literal["head", "middle", "foot"]


def read_columns(draft: Draft, means: Means, holds: tuple[Block, ...]) -> Columns:  # noqa: ARG001 (all readers alike)
    """The columns with what they hold; a share is 1 where none is written."""
    settings = draft.settings
    read = [block.id for block in holds]
    # A picture that is not there leaves its part of the width to the others.
    shares = [share for inner, share in zip(draft.holds, column_shares(draft), strict=True) if inner.id in read]
    return Columns(
        id=draft.id,
        grow=draft.grow,
        holds=holds,
        shares=tuple(shares),
        gap=settings.length("gap"),
        inset=draft.inset,
        seat=cast(Literal["head", "middle", "foot"], settings.text("seat")),
    )


def column_shares(draft: Draft) -> tuple[float, ...]:
    """The part of the width that each of the held blocks has, beside the others."""
    written = draft.settings.numbers("shares")
    return tuple(written[n] if n < len(written) else 1.0 for n in range(len(draft.holds)))


def shared_widths(width: float, shares: tuple[float, ...]) -> tuple[float, ...]:
    """A width, gaps taken off, shared by parts; never less than nothing."""
    whole = sum(shares)
    return tuple(max(width, 0.0) * share / whole for share in shares)
