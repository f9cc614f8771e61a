"""A run of marks to fill in one by one, such as the days of a month."""

from dataclasses import dataclass
from typing import Literal, cast

from padspec.base.colour import Colour
from padspec.resolve.blocks.block import Block
from padspec.resolve.drafts import Draft
from padspec.resolve.font import Font
from padspec.resolve.means import Means


@dataclass(frozen=True, slots=True)
class Marks(Block):
    """`count` circles or squares in even lines, numbered from 1 where `numbered`.

    `size` is the outer size, `gap` the least distance between two, `across` how many stand in a line (0: as many
    as divide them most evenly). `numeral` is the em of the numbers as a share of the size.
    """

    count: int
    across: int
    size: float
    gap: float
    shape: Literal["circle", "square"]
    numbered: bool
    numeral: float
    font: Font
    colour: Colour
    numeral_colour: Colour
    weight: float


def read_marks(draft: Draft, means: Means) -> Marks:
    """The marks of a block."""
    settings = draft.settings
    return Marks(
        id=draft.id,
        grow=draft.grow,
        count=settings.integer("count"),
        across=0 if settings.text("across") == "even" else settings.integer("across"),
        size=settings.length("size"),
        gap=settings.length("gap"),
        shape=cast(Literal["circle", "square"], settings.text("shape")),
        numbered=settings.flag("numbered"),
        numeral=settings.share("numeral"),
        font=means.fonts.find(settings.text("font"), settings.integer("font-weight"), settings.place("font")),
        colour=means.palette.colour(settings, "colour"),
        numeral_colour=means.palette.colour(settings, "numeral-colour"),
        weight=settings.length("weight"),
    )
