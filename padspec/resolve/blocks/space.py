"""Empty height between blocks."""

from dataclasses import dataclass

from padspec.resolve.blocks.block import Block
from padspec.resolve.drafts import Draft
from padspec.resolve.means import Means


@dataclass(frozen=True, slots=True)
class Space(Block):
    """Empty height; None takes its share of what is left."""

    height: float | None


def read_space(draft: Draft, means: Means) -> Space:
    """The space; one without a height of its own grows."""
    settings = draft.settings
    height = settings.length_or_share("height", means.trim.height) if settings.has("height") else None
    return Space(draft.id, max(draft.grow, 0 if height is not None else 1), height)
