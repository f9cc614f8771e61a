"""The panel: a rounded box that holds other blocks."""

from dataclasses import dataclass

from padspec.base.colour import Colour
from padspec.resolve.blocks.block import Block, Holder
from padspec.resolve.drafts import Draft
from padspec.resolve.means import Means

#: On a leaf of the usual size, in mm.
_USUAL_CORNER, USUAL_PAD = 6.0, 5.0


@dataclass(frozen=True, slots=True)
class Panel(Holder):
    """A rounded box and the blocks it holds: `inset` from the face's edges, `pad` inside its own; `opacity` from 0
    to 1 says how much of what lies under it is hidden.
    """

    colour: Colour
    opacity: float
    corner: float
    inset: float
    pad: float


def read_panel(draft: Draft, means: Means, holds: tuple[Block, ...]) -> Panel:
    """The panel with what it holds."""
    settings = draft.settings
    return Panel(
        id=draft.id,
        grow=draft.grow,
        holds=holds,
        colour=means.palette.colour(settings, "colour"),
        opacity=settings.share("opacity"),
        corner=draft.scaled("corner", _USUAL_CORNER),
        inset=draft.inset,
        pad=draft.scaled("pad", USUAL_PAD),
    )
