"""How likely each page's leaves are to show a white sliver or a panel off its middle."""

from dataclasses import dataclass

from padspec.jobs.plan import PrintedPage
from padspec.resolve.studio import Studio
from padspec.sheet.chances.tolerance import (
    Edges,
    Errors,
    OverLeaves,
    bleed_for_chance,
    chance_of_sliver,
    chance_off_centre,
    over_leaves,
)
from padspec.sheet.sheet import Slot


@dataclass(frozen=True, slots=True)
class Chances:
    """Shares of one over the leaves of a page; `bleed` brings slivers of the worst leaf down to the chance that
    the studio allows.
    """

    page: int
    sliver: OverLeaves
    off_centre: OverLeaves
    bleed: float


def chances_of(page: PrintedPage, studio: Studio) -> Chances:
    """The chances of one page."""
    errors = Errors(studio.printer.placement_error, studio.printer.skew_error, studio.cutter.error)
    wish, size, slots = studio.tolerance, page.sheet.size, page.sheet.slots
    return Chances(
        page=page.number,
        sliver=over_leaves(
            [chance_of_sliver(slot.trim, size, edges_of(slot), errors, wish.sliver) for slot in slots]
        ),
        off_centre=over_leaves([chance_off_centre(slot.trim, size, errors, wish.off_centre) for slot in slots]),
        bleed=max(
            bleed_for_chance(slot.trim, size, edges_of(slot), errors, wish.sliver, wish.chance) for slot in slots
        ),
    )


def edges_of(slot: Slot) -> Edges:
    """The bleed at each edge; none is asked of an edge that a neighbour shares."""
    bleed, shared = slot.bleed, slot.butted
    return Edges(
        left=None if "left" in shared else bleed.left,
        head=None if "head" in shared else bleed.top,
        right=None if "right" in shared else bleed.right,
        foot=None if "foot" in shared else bleed.bottom,
    )
