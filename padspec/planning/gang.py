"""Orders in, a gang plan out: fewest sheets, then fewest different pages, and how far from the best it may be.

1. `find_layouts`   the ways to fill a sheet with the trims
2. `lower_bounds`   what no plan can take less than
3. `_drafts`        good plans made page by page
4. `_masters`       the best over all patterns of the runs worth trying: first for sheets, then for pages
5. `pages_of`       every slot gets its design
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil, isfinite

from padspec.planning.bounds import Bounds, lower_bounds
from padspec.planning.cutting_stock import SLACK
from padspec.planning.drafts import Draft, cost, meets, one_design_a_sheet, polished
from padspec.planning.greedy import even_drafts, greedy_drafts
from padspec.planning.layouts import Layouts, find_layouts
from padspec.planning.masters import Master, draft_of, fewest_pages, fewest_sheets
from padspec.planning.mixtures import Mixture
from padspec.planning.orders import Effort, GangPlan, Order, Page, SheetRoom
from padspec.planning.pages import pages_of
from padspec.planning.programme import Whole, solve_whole
from padspec.planning.quantities import Need, stack_depth
from padspec.planning.rework import reworked
from padspec.planning.runs import all_runs, yields_of


@dataclass(frozen=True, slots=True)
class _Best:
    """The best draft so far, and what is known of the best there is."""

    draft: Draft
    sheets: int
    pages: int
    bound: int
    fewest_pages: bool


def plan_gang(
    orders: Sequence[Order],
    room: SheetRoom,
    overs: float = 0.0,
    test_sheets: int = 0,
    effort: Effort | None = None,
) -> GangPlan:
    """The pages to print and how often, so that every order is met.

    `overs` is a share of the leaves, `test_sheets` are printed for each different page. The plan is never worse
    than one design a sheet. It depends on names and numbers, not on the order of the orders. Raises PadspecError
    for a trim that does not fit on the sheet, ValueError for an order of no pads or of pads without leaves.
    """
    effort = effort or Effort()
    if any(order.pads < 1 or order.leaves < 1 for order in orders):
        raise ValueError("an order has at least one pad, a pad at least one leaf")
    if not orders:
        return GangPlan((), 0, 0, 0, (), (), True)
    items = sorted({order.item for order in orders})
    layouts = find_layouts(room, items, effort.questions)
    needs = _needs(orders, items, layouts, overs)
    best = _best(needs, layouts, test_sheets, effort)
    pages = pages_of(best.draft, needs, layouts, items, test_sheets)
    made = _made(pages, len(orders))
    return GangPlan(
        pages,
        sum(page.all_sheets for page in pages),
        best.bound,
        cost(one_design_a_sheet(needs), needs, test_sheets)[0],
        made,
        tuple(pads - order.pads for pads, order in zip(made, orders, strict=True)),
        best.fewest_pages,
    )


def _needs(orders: Sequence[Order], items: Sequence[int], layouts: Layouts, overs: float) -> tuple[Need, ...]:
    """The orders in a sequence of their own, largest first, whatever sequence they came in."""
    ranked = sorted(enumerate(orders), key=lambda at: (at[1].item, -at[1].pads, -at[1].leaves, at[1].name))
    needs = []
    for i, order in ranked:
        kind = items.index(order.item)
        n_up = layouts.fullest[kind].mixture[kind]
        depth = stack_depth(order.leaves, overs)
        needs.append(Need(i, order.pads, depth, order.leaves * (1 + overs), kind, n_up))
    return tuple(needs)


def _made(pages: Sequence[Page], orders: int) -> tuple[int, ...]:
    made = [0] * orders
    for page in pages:
        for design, pads in zip(page.designs, page.pads, strict=True):
            made[design] += pads
    return tuple(made)


def _best(needs: tuple[Need, ...], layouts: Layouts, test_sheets: int, effort: Effort) -> _Best:
    bounds = lower_bounds(needs, layouts.possible, test_sheets, effort.rounds)
    mixtures = tuple(layout.mixture for layout in layouts.found)
    draft = min(_drafts(needs, mixtures, test_sheets), key=lambda one: cost(one, needs, test_sheets))
    cells = len(all_runs(needs)) * (len(needs) + len(mixtures))
    shares = any(sum(mixture) > 1 for mixture in mixtures) and len(needs) > 1
    if shares and cells > effort.window_cells:
        draft = reworked(draft, needs, mixtures, test_sheets, effort)
    sheets, pages = cost(draft, needs, test_sheets)
    bound = bounds.sheets if shares else sheets
    best = _Best(draft, sheets, pages, bound, sheets == bound and (pages == bounds.pages or not shares))
    if best.fewest_pages or cells > effort.cells:
        return best
    return _masters(best, needs, layouts, bounds, test_sheets, effort)


def _drafts(needs: tuple[Need, ...], mixtures: tuple[Mixture, ...], test_sheets: int) -> list[Draft]:
    """One design a sheet first, so that among equals nothing more intricate is taken."""
    found = [
        one_design_a_sheet(needs),
        *even_drafts(needs, mixtures),
        *greedy_drafts(needs, mixtures, test_sheets),
    ]
    return [polished(draft, needs, mixtures) for draft in found]


def _masters(
    best: _Best,
    needs: tuple[Need, ...],
    layouts: Layouts,
    bounds: Bounds,
    test_sheets: int,
    effort: Effort,
) -> _Best:
    """Over all patterns and all runs that count: sheets first, then pages at that number of sheets."""
    mixtures = tuple(layout.mixture for layout in layouts.found)
    lengths = all_runs(needs)
    master = _master(best.draft, lengths, needs, mixtures, test_sheets)
    nodes = max(effort.nodes // (len(lengths) * (len(needs) + len(mixtures))), 1)
    if best.sheets > best.bound:
        solved = solve_whole(fewest_sheets(master), nodes)
        best = _improved(best, solved.values, master)
        best = replace(best, bound=max(best.bound, _proved(solved, layouts, best.sheets)))
    master = _master(best.draft, lengths, needs, mixtures, test_sheets)
    solved = solve_whole(fewest_pages(master, best.sheets), nodes)
    best = _improved(best, solved.values, master)
    least = max(bounds.pages, _proved(solved, layouts, best.pages))
    return replace(best, fewest_pages=best.sheets == best.bound and best.pages <= least)


def _proved(solved: Whole, layouts: Layouts, reached: int) -> int:
    """What a master over all there is to choose from proves; nothing where it says more than what was reached."""
    if layouts.doubtful or not isfinite(solved.bound):
        return 0
    least = ceil(solved.bound - SLACK)
    return least if least <= reached else 0


def _master(
    draft: Draft, lengths: Sequence[int], needs: tuple[Need, ...], mixtures: tuple[Mixture, ...], test_sheets: int
) -> Master:
    """Over these runs and those of a draft to start from."""
    runs = tuple(sorted({*lengths, *(page.run for page in draft.shared)}))
    return Master(needs, mixtures, yields_of(runs, needs), test_sheets)


def _improved(best: _Best, values: tuple[int, ...] | None, master: Master) -> _Best:
    if values is None:
        return best
    found = draft_of(values, master)
    if not meets(found, master.needs):
        return best
    draft = polished(found, master.needs, master.mixtures)
    sheets, pages = cost(draft, master.needs, master.test_sheets)
    if (sheets, pages) >= (best.sheets, best.pages):
        return best
    return replace(best, draft=draft, sheets=sheets, pages=pages)
