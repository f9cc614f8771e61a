"""How likely each page's leaves are to show a white sliver or a panel off its middle."""

from dataclasses import dataclass

from padspec.jobs.plan import PrintedPage
from padspec.resolve.studio import Studio
from padspec.sheet.sheet import Sheet, Slot
from padspec.sheet.tolerance import Edges, Errors, bleed_for_chance, chance_of_sliver, chance_off_centre


@dataclass(frozen=True, slots=True)
class Chances:
    """Shares of one, for the leaf of a page that is worst off; `bleed` brings slivers down to the chance that the
    studio allows.
    """

    page: int
    sliver: float
    off_centre: float
    bleed: float


def chances_of(page: PrintedPage, studio: Studio) -> Chances:
    """The chances of one page."""
    errors = Errors(studio.printer.placement_error, studio.printer.skew_error, studio.cutter.error)
    wish, size, slots = studio.tolerance, page.sheet.size, _different(page.sheet)
    return Chances(
        page=page.number,
        sliver=max(chance_of_sliver(slot.trim, size, edges_of(slot), errors, wish.sliver) for slot in slots),
        off_centre=max(chance_off_centre(slot.trim, size, errors, wish.off_centre) for slot in slots),
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


def _different(sheet: Sheet) -> tuple[Slot, ...]:
    """The slots that can be worst off: what a turn of the print does grows with the way from the leading edge, and
    with the way from its middle.
    """
    middle = sheet.size.width / 2
    far = max(round(slot.trim.bottom, 6) for slot in sheet.slots)
    wide = max(round(max(abs(slot.trim.x - middle), abs(slot.trim.right - middle)), 6) for slot in sheet.slots)
    return tuple(
        slot
        for slot in sheet.slots
        if round(slot.trim.bottom, 6) == far
        or round(max(abs(slot.trim.x - middle), abs(slot.trim.right - middle)), 6) == wide
        or slot.bleed.least() == min(other.bleed.least() for other in sheet.slots)
    )
