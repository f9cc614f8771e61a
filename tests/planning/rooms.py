"""Sheets for the planner's tests, and orders in few words."""

from padspec.base.geometry import Size
from padspec.planning.orders import GangPlan, Order, SheetRoom

#: Room on an A4 sheet, and trims of which several go on it together.
A4 = Size(201.6, 288.6)
LIST, NOTE, TAG = Size(90, 190), Size(74, 105), Size(60, 90)


def strip(slots: int) -> SheetRoom:
    """A sheet of just so many slots of one trim."""
    return SheetRoom(Size(50 * slots, 70), 0.0, (Size(50, 70),), turns=False)


def orders(*pads: int, leaves: int = 50) -> list[Order]:
    """Designs of one trim, so many pads of each."""
    return [Order(f"design {number}", n, leaves) for number, n in enumerate(pads)]


def shown(plan: GangPlan, names: list[str]) -> list[tuple[object, ...]]:
    """The pages by the names of the designs, so that plans for orders in another sequence compare."""
    return [
        (page.arrangement, tuple(names[design] for design in page.designs), page.sheets, page.pads, page.joined)
        for page in plan.pages
    ]
