"""Sheet and cutter in, cut plan out: the one way to make a plan."""

from math import ceil, floor

from padspec.base.numbers import EPSILON
from padspec.resolve.studio import Cutter, Offcut, Stock
from padspec.sheet.cutting.offcuts import offcuts
from padspec.sheet.cutting.order import cuts_in_order
from padspec.sheet.cutting.plan import CutPlan
from padspec.sheet.sheet import Sheet


def plan_cuts(sheet: Sheet, cutter: Cutter, stock: Stock, sheets: int, things: tuple[Offcut, ...] = ()) -> CutPlan:
    """How `sheets` of one kind are cut, and which of the `things` could be made of what comes off."""
    cuts = cuts_in_order(sheet, cutter.kind)
    most = sheets_a_lift(cutter, stock)
    lifts = ceil(sheets / most)
    strokes = len(cuts) * lifts
    return CutPlan(
        kind=cutter.kind,
        cuts=cuts,
        sheets=sheets,
        # Even lifts, so that the last is not a thin one: tall and thin piles draw differently.
        sheets_a_lift=ceil(sheets / lifts) if lifts else most,
        lifts=lifts,
        strokes=strokes,
        minutes=round(strokes * cutter.stroke_seconds / 60, 9),
        offcuts=offcuts(cuts, sheet, things),
    )


def sheets_a_lift(cutter: Cutter, stock: Stock) -> int:
    """The most sheets cut at once: what a knife or lever takes, or what goes under the clamp of a guillotine."""
    if cutter.kind != "guillotine":
        return cutter.sheets_at_once
    return max(floor(cutter.clamp_height / stock.caliper + EPSILON), 1)
