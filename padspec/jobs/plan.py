"""A job and its designs in, a plan out: the pages to print in order, and how each is cut.

Designs that lie on the same paper with the same gutter and bleed may share a page; each such group is planned for
itself. Pages are numbered in the order in which they are printed.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from padspec.base.geometry import Size
from padspec.planning.gang import plan_gang
from padspec.planning.orders import GangPlan, Oracle, Order, Page, SheetRoom
from padspec.resolve.design import Design, SheetWish
from padspec.resolve.studio import Studio
from padspec.sheet.bed import bed_of
from padspec.sheet.cutting.plan import CutPlan
from padspec.sheet.cutting.plan_cuts import plan_cuts
from padspec.sheet.fitting.fit import Fit, best_fit, room
from padspec.sheet.fitting.guillotine import Cutting, Piece
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import lay


@dataclass(frozen=True, slots=True)
class Wanted:
    """A design with the number of pads wanted of it."""

    design: Design
    pads: int


@dataclass(frozen=True, slots=True)
class PrintedPage:
    """A page to print: its sheet (whose `copies` are all that are printed, test sheets included), for each slot
    the design that lies in it (an index into the plan's `wanted`) and the pads that come of it, and the cut plan.

    `joined`: one design fills the page, its stacks are joined and counted off; otherwise each slot's stack is pads
    as it lies.
    """

    number: int
    sheet: Sheet
    designs: tuple[int, ...]
    pads: tuple[int, ...]
    sheets: int
    test_sheets: int
    joined: bool
    cuts: CutPlan


@dataclass(frozen=True, slots=True)
class JobPlan:
    """What to print for a job. No plan on the paper that the designs name, and with one design a sheet if not
    `gang`, takes fewer sheets than `bound`; `solo_sheets` is what one design a sheet
    would take. `made` and `spare` have a number for each design wanted. `paper_cost` is None where no price is
    known; `waste` is the share of the paper that becomes no leaf of a pad wanted.
    """

    name: str
    gang: bool
    wanted: tuple[Wanted, ...]
    pages: tuple[PrintedPage, ...]
    sheets: int
    bound: int
    solo_sheets: int
    made: tuple[int, ...]
    spare: tuple[int, ...]
    paper_cost: Decimal | None
    waste: float

    @property
    def strokes(self) -> int:
        """Strokes of the cutter in all."""
        return sum(page.cuts.strokes for page in self.pages)

    @property
    def minutes(self) -> float:
        """About how long the cutting takes."""
        return sum(page.cuts.minutes for page in self.pages)


@dataclass(frozen=True, slots=True)
class _Part:
    """A page as the planner gives it, its designs by their place among all that are wanted."""

    page: Page
    designs: tuple[int, ...]


def unfit(wanted: Sequence[Wanted]) -> tuple[Design, ...]:
    """Designs of which not one face fits their sheet."""
    return tuple(one.design for one in wanted if best_fit(one.design) is None)


def make_plan(name: str, wanted: tuple[Wanted, ...], gang: bool = True, remark: str = "") -> JobPlan:
    """The plan of a job, every design of which fits its sheet; raises PadspecError for one that does not.

    `remark` goes at the head of every slug (that it was printed despite errors).
    """
    parts: list[_Part] = []
    bound = solo = 0
    for group in _groups(wanted, gang):
        plan = _planned([wanted[at] for at in group])
        bound, solo = bound + plan.bound, solo + plan.solo_sheets
        parts += [_Part(page, tuple(group[index] for index in page.designs)) for page in plan.pages]
    # All pages on one paper follow each other, so that the tray is changed as seldom as can be.
    sizes = list(dict.fromkeys(wanted[part.designs[0]].design.sheet.size for part in parts))
    parts.sort(key=lambda part: sizes.index(wanted[part.designs[0]].design.sheet.size))
    pages = tuple(
        _printed(part, (name, f"page {number} of {len(parts)}"), remark, wanted, number)
        for number, part in enumerate(parts, 1)
    )
    made = tuple(
        sum(n for page in pages for at, n in zip(page.designs, page.pads, strict=True) if at == index)
        for index in range(len(wanted))
    )
    return JobPlan(
        name=name,
        gang=gang,
        wanted=wanted,
        pages=pages,
        sheets=sum(page.sheet.copies for page in pages),
        bound=bound,
        solo_sheets=solo,
        made=made,
        spare=tuple(n - one.pads for n, one in zip(made, wanted, strict=True)),
        paper_cost=_paper_cost(pages, wanted),
        waste=_waste(pages, wanted),
    )


def _groups(wanted: tuple[Wanted, ...], gang: bool) -> Iterator[list[int]]:
    """Which designs may share a page: the same paper, gutter, bleed and marks, and no number a sheet asked for."""
    groups: dict[tuple[SheetWish, Studio], list[int]] = {}
    for at, one in enumerate(wanted):
        if gang and one.design.sheet.n_up is None:
            groups.setdefault((one.design.sheet, one.design.studio), []).append(at)
    shared = {at: group for group in groups.values() for at in group}
    for at in range(len(wanted)):
        group = shared.get(at, [at])
        if group[0] == at:
            yield group


def _planned(some: list[Wanted]) -> GangPlan:
    first = some[0].design
    trims = tuple(dict.fromkeys(one.design.trim for one in some))
    orders = [Order(one.design.sku, one.pads, one.design.leaves, trims.index(one.design.trim)) for one in some]
    area, gutter = room(bed_of(first), first.sheet.least_bleed), first.sheet.gutter
    sheet = SheetRoom(area, gutter, trims)
    if first.sheet.n_up is not None and (fit := best_fit(first)) is not None:
        sheet = replace(sheet, oracle=_as_asked(fit), lister=None)
    return plan_gang(orders, sheet, first.studio.overs, first.studio.test_sheets)


def _as_asked(fit: Fit) -> Oracle:
    """An oracle that knows one arrangement: that of the number of faces that the maker asked for."""

    def answer(_area: Size, pieces: Sequence[Piece], _gutter: float) -> Cutting:
        worth = fit.n_up * pieces[0].value
        return Cutting(fit.arrangement, worth, worth)

    return answer


def _printed(
    part: _Part, heading: tuple[str, str], remark: str, wanted: tuple[Wanted, ...], number: int
) -> PrintedPage:
    page, designs = part.page, [wanted[at].design for at in part.designs]
    first = designs[0]
    arrangement = page.arrangement
    if page.joined and (fit := best_fit(first)) is not None and fit.n_up == len(designs):
        arrangement = fit.arrangement
    copies = page.all_sheets
    contents = ", ".join(f"{designs.count(d)} × {d.sku}" for d in dict.fromkeys(designs))
    slug = (remark, *heading, f"{contents} on {first.sheet.size_name}", f"{copies} copies", "print at 100 %")
    sheet = lay(
        arrangement, bed_of(first), first.sheet, first.small_print, copies, (*heading, contents), slug, remark
    )
    studio = first.studio
    return PrintedPage(
        number=number,
        sheet=sheet,
        designs=part.designs,
        pads=page.pads,
        sheets=page.sheets,
        test_sheets=page.test_sheets,
        joined=page.joined,
        cuts=plan_cuts(sheet, studio.cutter, studio.stock, page.sheets, studio.offcuts),
    )


def price_of_sheet(design: Design) -> Decimal | None:
    """What one sheet of a design costs, where the studio says it: that of its own size, or of another."""
    studio, size = design.studio, design.sheet.size
    prices = {other.size: other.price for other in studio.other_sheets} | {studio.sheet: studio.stock.price}
    return prices.get(size)


def _paper_cost(pages: tuple[PrintedPage, ...], wanted: tuple[Wanted, ...]) -> Decimal | None:
    total = Decimal(0)
    for page in pages:
        price = price_of_sheet(wanted[page.designs[0]].design)
        if price is None:
            return None
        total += price * page.sheet.copies
    return total


def _waste(pages: tuple[PrintedPage, ...], wanted: tuple[Wanted, ...]) -> float:
    paper = sum(page.sheet.size.width * page.sheet.size.height * page.sheet.copies for page in pages)
    leaves = sum(one.design.trim.width * one.design.trim.height * one.pads * one.design.leaves for one in wanted)
    return 1 - leaves / paper if paper else 0.0
