"""A job on each size of sheet that the studio can buy: how many sheets, how much waste, what the paper costs."""

from dataclasses import dataclass, replace
from decimal import Decimal

from padspec.base.geometry import Size
from padspec.jobs.plan import JobPlan, Wanted, make_plan, unfit


@dataclass(frozen=True, slots=True)
class Paper:
    """A job on one size of sheet. Where a design does not fit it, `misfits` names it and the figures are 0."""

    size_name: str
    n_up: tuple[int, ...]
    pages: int
    sheets: int
    strokes: int
    waste: float
    cost: Decimal | None
    misfits: tuple[str, ...]


def compare_papers(plan: JobPlan) -> tuple[Paper, ...]:
    """The job on every size that its designs use and every other one of the studio, each design on that size."""
    sizes = {one.design.sheet.size for one in plan.wanted}
    return tuple(
        _told(name, plan) if sizes == {size} else _on(name, size, plan) for name, size in _sizes(plan.wanted)
    )


def _sizes(wanted: tuple[Wanted, ...]) -> list[tuple[str, Size]]:
    found: dict[Size, str] = {}
    for one in wanted:
        found.setdefault(one.design.sheet.size, one.design.sheet.size_name)
    for one in wanted:
        for other in one.design.studio.other_sheets:
            found.setdefault(other.size, other.size_name)
    return [(name, size) for size, name in found.items()]


def _on(name: str, size: Size, plan: JobPlan) -> Paper:
    wanted = tuple(
        replace(one, design=replace(one.design, sheet=replace(one.design.sheet, size_name=name, size=size)))
        for one in plan.wanted
    )
    misfits = tuple(design.sku for design in unfit(wanted))
    if misfits:
        return Paper(name, (), 0, 0, 0, 0.0, None, misfits)
    return _told(name, make_plan(plan.name, wanted, plan.gang))


def _told(name: str, plan: JobPlan) -> Paper:
    n_up = tuple(sorted({page.sheet.n_up for page in plan.pages}))
    return Paper(name, n_up, len(plan.pages), plan.sheets, plan.strokes, plan.waste, plan.paper_cost, ())
