"""How likely each page's leaves are to show a white sliver or a panel off its middle."""

from dataclasses import dataclass

from padspec.base.geometry import Box, Size
from padspec.jobs.plan import PrintedPage
from padspec.resolve.studio import Studio, Turn
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

#: No bleed is wide enough for a chance of nothing: that is taken as one leaf in a million.
NEVER = 1e-6


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
    wish, turn = studio.tolerance, studio.printer.turn
    # As fed, the head leads: what the skew does grows from there. Where it is not known how a page is turned, a
    # leaf is taken at the worse of both.
    leaves = [as_fed(slot, page.sheet.size, turn) for slot in page.sheet.slots]
    return Chances(
        page=page.number,
        sliver=over_leaves(
            [
                max(chance_of_sliver(v.leaf, v.size, v.edges, errors, wish.sliver) for v in views)
                for views in leaves
            ]
        ),
        off_centre=over_leaves(
            [max(chance_off_centre(v.leaf, v.size, errors, wish.off_centre) for v in views) for views in leaves]
        ),
        bleed=max(
            bleed_for_chance(v.leaf, v.size, v.edges, errors, wish.sliver, max(wish.chance, NEVER))
            for views in leaves
            for v in views
        ),
    )


@dataclass(frozen=True, slots=True)
class Fed:
    """A leaf, its sheet and the bleed at its edges, seen with the sheet as it is fed."""

    leaf: Box
    size: Size
    edges: Edges


def as_fed(slot: Slot, size: Size, turn: Turn) -> tuple[Fed, ...]:
    """A leaf as the printer meets it: as it is drawn, or, on a page wider than high, with the page turned."""
    box, edges = slot.trim, edges_of(slot)
    if size.width <= size.height:
        return (Fed(box, size, edges),)
    left = Fed(
        Box(box.y, size.width - box.right, box.height, box.width),
        size.turned(),
        Edges(left=edges.head, head=edges.right, right=edges.foot, foot=edges.left),
    )
    right = Fed(
        Box(size.height - box.bottom, box.x, box.height, box.width),
        size.turned(),
        Edges(left=edges.foot, head=edges.left, right=edges.head, foot=edges.right),
    )
    return {"left": (left,), "right": (right,), "unknown": (left, right)}[turn]


def edges_of(slot: Slot) -> Edges:
    """The bleed at each edge; none is asked of an edge that a neighbour shares."""
    bleed, shared = slot.bleed, slot.butted
    return Edges(
        left=None if "left" in shared else bleed.left,
        head=None if "head" in shared else bleed.top,
        right=None if "right" in shared else bleed.right,
        foot=None if "foot" in shared else bleed.bottom,
    )
