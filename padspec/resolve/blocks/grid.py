"""A grid to draw or write on: lines, dots or crosses at an even pitch both ways."""

from dataclasses import dataclass
from typing import Literal, cast

from padspec.base.colour import Colour
from padspec.resolve.blocks.block import Block
from padspec.resolve.drafts import Draft
from padspec.resolve.means import Means


@dataclass(frozen=True, slots=True)
class Grid(Block):
    """A grid of squares `pitch` wide. `mark` says what is drawn: all its lines, a dot or a cross where they meet.

    `dot` is the diameter of a dot or the length of a cross. Each `heavy_every`-th line is twice as heavy.
    """

    pitch: float
    mark: Literal["lines", "dots", "crosses"]
    weight: float
    dot: float
    colour: Colour
    heavy_every: int


def read_grid(draft: Draft, means: Means) -> Grid:
    """The grid of a block."""
    settings = draft.settings
    return Grid(
        id=draft.id,
        grow=draft.grow,
        pitch=settings.length("pitch"),
        mark=cast(Literal["lines", "dots", "crosses"], settings.text("mark")),
        weight=settings.length("weight"),
        dot=settings.length("dot"),
        colour=means.palette.colour(settings, "colour"),
        heavy_every=settings.integer("heavy-every"),
    )
