"""Sheets of any arrangement for the tests of cutting, and their plans."""

from dataclasses import replace

from hypothesis import strategies as st

from padspec.base.geometry import Sides, Size
from padspec.resolve.studio import Cutter, CutterKind, Offcut, Stock
from padspec.sheet.arrangement import Arrangement, Grid, Split, extent
from padspec.sheet.bed import bed_of
from padspec.sheet.cutting.plan import CutPlan
from padspec.sheet.cutting.plan_cuts import plan_cuts
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import lay

from .designs import design

STOCK = Stock(grammage=100, caliper=0.12, tolerance=0.07, price=None, ink_limit=2.6)
FACE = Size(60.0, 90.0)
#: Six upright faces above two on their sides: 180 wide both, butted.
UNDER = Split(False, Grid(2, 3, FACE, False), Grid(1, 2, FACE.turned(), True))
#: Three faces on the left; on the right two on their sides above one of another design, which is smaller.
NESTED = Split(
    True,
    Grid(3, 1, FACE, False),
    Split(False, Grid(2, 1, FACE.turned(), True), Grid(1, 1, Size(50.0, 70.0), False, 1)),
)


def cutter(kind: CutterKind = "guillotine") -> Cutter:
    return Cutter(kind=kind, error=0.5, sheets_at_once=2, clamp_height=40.0, stroke_seconds=30)


def laid(arrangement: Arrangement, gutter: float = 4.0, margin: float = 20.0, marks: bool = True) -> Sheet:
    """An arrangement on paper that leaves this margin around it."""
    size = extent(arrangement, gutter)
    paper = Size(size.width + 2 * margin, size.height + 2 * margin)
    plain = design(FACE, paper, Sides.all(min(4.0, margin / 4)), gutter, marks=marks)
    return lay(arrangement, bed_of(plain), plain.sheet, plain.small_print, 20, ("Sheet",), ("Sheet",))


def plan_of(
    sheet: Sheet, kind: CutterKind = "guillotine", sheets: int = 100, things: tuple[Offcut, ...] = ()
) -> CutPlan:
    return plan_cuts(sheet, cutter(kind), STOCK, sheets, things)


lengths = st.floats(20, 70).map(lambda length: round(length, 3))
grids = st.builds(
    lambda rows, columns, size, turned: Grid(rows, columns, size.turned() if turned else size, turned),
    st.integers(1, 4),
    st.integers(1, 4),
    st.builds(Size, lengths, lengths),
    st.booleans(),
)
arrangements = st.recursive(grids, lambda part: st.builds(Split, st.booleans(), part, part), max_leaves=5)
gutters = st.sampled_from([0.0, 0.0, 2.0, 4.0, 6.35])
sheets = st.builds(laid, arrangements, gutters, st.sampled_from([6.0, 12.5, 60.0]))


def with_cutter(kind: CutterKind, **changes: float) -> Cutter:
    return replace(cutter(kind), **changes)
