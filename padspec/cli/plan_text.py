"""A plan as lines for a terminal: what to print, how to cut it, what may go wrong, what other paper comes to."""

from collections.abc import Iterator
from decimal import Decimal

from padspec.base.numbers import mm_text, number_text
from padspec.cli.say import counted, table
from padspec.jobs.figures import Figures
from padspec.jobs.plan import JobPlan, PrintedPage
from padspec.making.ink import InkUse
from padspec.sheet.cutting.compare import GutterRow
from padspec.sheet.cutting.wording import cut_lines


def plan_lines(plan: JobPlan, figures: Figures) -> Iterator[str]:
    """The whole plan, section by section."""
    yield from _opening(plan)
    yield from _pages(plan)
    yield from _cuts(plan)
    yield from _chances(plan, figures)
    yield from _papers(plan, figures)
    yield from _gutters(figures)
    yield from _ink(plan, figures)


def _opening(plan: JobPlan) -> Iterator[str]:
    pads = sum(one.pads for one in plan.wanted)
    yield f"{plan.name}: {counted(pads, 'pad')} of {counted(len(plan.wanted), 'design')}"
    yield f"Print {counted(plan.sheets, 'sheet')} of {counted(len(plan.pages), 'page')}. {_best(plan)}"
    cost = "" if plan.paper_cost is None else f", paper {money(plan.paper_cost, plan)}"
    yield f"{_share(plan.waste)} of the paper ends up in no pad{cost}."
    spare = [f"{n} × {one.design.sku}" for one, n in zip(plan.wanted, plan.spare, strict=True) if n]
    if spare:
        yield f"Over the order: {', '.join(spare)}."


def _best(plan: JobPlan) -> str:
    """How good the plan is, and on what terms."""
    fewer = "no plan takes fewer" if plan.sheets == plan.bound else f"no plan takes fewer than {plan.bound}"
    if not plan.gang:
        return f"One design a sheet, as you asked, and on the paper that the designs name, {fewer}."
    return f"On the paper that the designs name {fewer}; one design a sheet takes {plan.solo_sheets}."


def _pages(plan: JobPlan) -> Iterator[str]:
    head = ("page", "on", "holds", "sheets", "tests", "copies", "gives", "stacks", "cuts")
    yield ""
    yield table(head, [_page_row(page, plan) for page in plan.pages])
    if any(page.joined for page in plan.pages):
        yield "Join, count off: lay the cut stacks of all slots together and count the leaves of each pad off."
    if any(not page.joined for page in plan.pages):
        yield "Deep: each slot's stack is so many pads as it lies; count the leaves off it, the rest is overs."


def _page_row(page: PrintedPage, plan: JobPlan) -> tuple[str, ...]:
    skus = [plan.wanted[at].design.sku for at in page.designs]
    holds = ", ".join(f"{skus.count(sku)} × {sku}" for sku in dict.fromkeys(skus))
    pads = {sku: sum(n for s, n in zip(skus, page.pads, strict=True) if s == sku) for sku in dict.fromkeys(skus)}
    return (
        str(page.number),
        page.sheet.size_name,
        holds,
        str(page.sheets),
        str(page.test_sheets),
        str(page.sheet.copies),
        ", ".join(f"{n} × {sku}" for sku, n in pads.items()),
        "join, count off" if page.joined else f"{_depths(skus, page)} deep",
        str(len(page.cuts.cuts)),
    )


def _depths(skus: list[str], page: PrintedPage) -> str:
    """How many pads lie in each slot's stack: one number, or one for each design."""
    deep = dict(zip(skus, page.pads, strict=True))
    if len(set(deep.values())) == 1:
        return counted(page.pads[0], "pad")
    return ", ".join(f"{sku} {counted(pads, 'pad')}" for sku, pads in deep.items())


def _cuts(plan: JobPlan) -> Iterator[str]:
    """Each way to cut once, with the pages that are cut so."""
    ways: dict[tuple[str, ...], list[PrintedPage]] = {}
    cautions: dict[str, None] = {}
    for page in plan.pages:
        told = cut_lines(page.cuts)
        ways.setdefault(told[1:-1], []).append(page)
        cautions[told[-1]] = None
    for lines, pages in ways.items():
        numbers = [str(page.number) for page in pages]
        yield ""
        yield f"Cut page {numbers[0]}:" if len(numbers) == 1 else f"Cut pages {', '.join(numbers)} alike:"
        yield from (f"  Page {page.number}. {cut_lines(page.cuts)[0]}" for page in pages)
        yield from (f"  {line}" for line in lines)
    yield ""
    yield from cautions
    if len(plan.pages) > 1:
        yield f"In all {counted(plan.strokes, 'stroke')}, about {number_text(plan.minutes, 0)} min (an estimate)."


def _chances(plan: JobPlan, figures: Figures) -> Iterator[str]:
    studio = plan.wanted[0].design.studio
    wish = studio.tolerance
    yield ""
    yield (
        f"Chances for the leaf that is worst off, with placement ± {mm_text(studio.printer.placement_error)}, "
        f"skew ± {mm_text(studio.printer.skew_error)}, cut ± {mm_text(studio.cutter.error)}:"
    )
    head = (
        "page",
        f"white edge over {mm_text(wish.sliver)}",
        f"panel off by over {mm_text(wish.off_centre)}",
        f"bleed that keeps white edges under {_share(wish.chance)}",
    )
    yield table(
        head,
        [
            (str(one.page), _share(one.sliver.worst), _share(one.off_centre.worst), mm_text(one.bleed))
            for one in figures.chances
        ],
    )


def _papers(plan: JobPlan, figures: Figures) -> Iterator[str]:
    if len(figures.papers) < 2:
        return
    yield ""
    yield "The whole job on one size of sheet:"
    rows = []
    for paper in figures.papers:
        if paper.misfits:
            rows.append((paper.size_name, f"too small for {', '.join(paper.misfits)}", "", "", "", "", ""))
            continue
        n_up = " to ".join(dict.fromkeys((f"{paper.n_up[0]}", f"{paper.n_up[-1]}")))
        cost = "–" if paper.cost is None else money(paper.cost, plan)
        sums = (str(paper.pages), str(paper.sheets), _share(paper.waste), str(paper.strokes), cost)
        rows.append((paper.size_name, f"{n_up}-up", *sums))
    yield table(("sheet", "holds", "pages", "sheets", "waste", "strokes", "paper"), rows)


def _gutters(figures: Figures) -> Iterator[str]:
    yield ""
    yield "Butted or guttered, for one pad:"
    rows = []
    for sku, butted, guttered in figures.gutters:
        rows.append((sku, *_gutter(butted), "butted: a cut that is off shows the neighbour"))
        rows.append(("", *_gutter(guttered), f"gutter {mm_text(guttered.gutter)}: each leaf has its own bleed"))
    yield table(("design", "holds", "sheets", "cuts", "strokes", ""), rows)


def _gutter(row: GutterRow) -> tuple[str, str, str, str]:
    if not row.n_up:
        return ("none fits", "–", "–", "–")
    return f"{row.n_up}-up", str(row.sheets), str(row.cuts), str(row.strokes)


def _ink(plan: JobPlan, figures: Figures) -> Iterator[str]:
    yield ""
    yield "Ink for a leaf, in pages of the cartridges' stated yield (an estimate, good to a factor of two):"
    rows = []
    for one in figures.inks:
        pages = tuple(number_text(float(value), 2) for value in one.use.pages)
        saves = "–" if one.panel_saves is None else _saving(one.panel_saves, plan)
        rows.append((one.sku, *pages, _cost(one.use, plan), saves))
    yield table(("design", "cyan", "magenta", "yellow", "black", "cost", "the white panel saves"), rows)


def _saving(use: InkUse, plan: JobPlan) -> str:
    pages = number_text(float(sum(use.pages, Decimal(0))), 2)
    return f"{pages} pages" if use.cost is None else f"{pages} pages, {_cost(use, plan)}"


def _cost(use: InkUse, plan: JobPlan) -> str:
    return "no price" if use.cost is None else money(use.cost, plan, "0.001")


def money(amount: Decimal, plan: JobPlan, step: str = "0.01") -> str:
    """An amount with the studio's currency."""
    return f"{amount.quantize(Decimal(step))} {plan.wanted[0].design.studio.currency}"


def _share(share: float) -> str:
    """A share as a percentage, with a digit more where it is small."""
    percent = share * 100
    if 0 < percent < 0.01:
        return "< 0.01 %"
    return f"{number_text(percent, 2 if percent < 1 else 1 if percent < 10 else 0)} %"
