"""Design in, two rows out: the same faces butted, and with a gutter between them."""

from dataclasses import dataclass

from padspec.resolve.design import Design, with_sheet
from padspec.sheet.cutting.plan_cuts import plan_cuts
from padspec.sheet.tile import tile

#: The gutter that a butted design without any bleed is compared with, in mm.
_BARE_GUTTER = 3.0


@dataclass(frozen=True, slots=True)
class GutterRow:
    """What one gutter comes to. All counts are 0 where not one face fits.

    `cuts` are those of one lift, `strokes` those of all lifts of the `sheets` that one pad takes.
    """

    gutter: float
    n_up: int
    sheets: int
    cuts: int
    lifts: int
    strokes: int
    minutes: float


def compare_gutters(design: Design) -> tuple[GutterRow, GutterRow]:
    """Butted, then with the design's gutter; a butted design is compared with twice its least bleed."""
    wish = design.sheet
    gutter = wish.gutter or 2 * wish.least_bleed or 2 * wish.bleed or _BARE_GUTTER
    return _row(design, 0.0), _row(design, gutter)


def _row(design: Design, gutter: float) -> GutterRow:
    sheet = tile(with_sheet(design, gutter=gutter))
    if sheet is None:
        return GutterRow(gutter, 0, 0, 0, 0, 0, 0.0)
    studio = design.studio
    plan = plan_cuts(sheet, studio.cutter, studio.stock, sheet.copies)
    return GutterRow(gutter, sheet.n_up, sheet.copies, len(plan.cuts), plan.lifts, plan.strokes, plan.minutes)
