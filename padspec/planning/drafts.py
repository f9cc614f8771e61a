"""A plan while it is being made: how many slots of which page each order takes, not yet which slot.

Each change here keeps every order met and never adds a sheet.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from padspec.planning.mixtures import Mixture
from padspec.planning.quantities import Need, joined_run, pads_in_slot


@dataclass(frozen=True, slots=True)
class Shared:
    """A page that designs share: its run without test sheets, its layout, and the slots that each need takes."""

    run: int
    layout: int
    slots: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Draft:
    """Shared pages, and the pads of each need that are made on a page of their own."""

    shared: tuple[Shared, ...]
    alone: tuple[int, ...]


def one_design_a_sheet(needs: Sequence[Need]) -> Draft:
    """The plan that any other must beat."""
    return Draft((), tuple(need.pads for need in needs))


def cost(draft: Draft, needs: Sequence[Need], test_sheets: int) -> tuple[int, int]:
    """All sheets, test sheets included; then different pages."""
    runs = [page.run for page in draft.shared]
    runs += [joined_run(pads, need.use, need.n_up) for pads, need in zip(draft.alone, needs, strict=True) if pads]
    return sum(runs) + test_sheets * len(runs), len(runs)


def made_on(page: Shared, needs: Sequence[Need]) -> tuple[int, ...]:
    """Pads of each need from one shared page."""
    return tuple(n * pads_in_slot(page.run, need.depth) for n, need in zip(page.slots, needs, strict=True))


def meets(draft: Draft, needs: Sequence[Need]) -> bool:
    """Whether every order is met: asked of what a solver brings, whose arithmetic is not exact."""
    made = [made_on(page, needs) for page in draft.shared] + [draft.alone]
    return all(sum(pads) >= need.pads for pads, need in zip(zip(*made, strict=True), needs, strict=True))


def polished(draft: Draft, needs: Sequence[Need], mixtures: Sequence[Mixture]) -> Draft:
    """The same plan without what it can do without: shortest runs, equal pages merged. Canonical order."""
    while True:
        better = _trimmed(_merged(_parted(draft, needs), needs, mixtures), needs)
        if better == draft:
            return draft
        draft = better


def _parted(draft: Draft, needs: Sequence[Need]) -> Draft:
    """A shared page that only one design uses becomes a page of its own, whose stacks may be joined."""
    shared, alone = [], list(draft.alone)
    for page in draft.shared:
        users = [i for i, n in enumerate(page.slots) if n]
        if len(users) > 1:
            shared.append(page)
        for i in users if len(users) == 1 else ():
            alone[i] = min(alone[i] + made_on(page, needs)[i], needs[i].pads)
    return Draft(tuple(shared), tuple(alone))


def _merged(draft: Draft, needs: Sequence[Need], mixtures: Sequence[Mixture]) -> Draft:
    """Pages with the same slots are one page, run longer; the first layout that holds the slots is taken."""
    runs: dict[tuple[int, ...], int] = {}
    for page in draft.shared:
        runs[page.slots] = runs.get(page.slots, 0) + page.run
    shared = [Shared(run, _layout_for(slots, needs, mixtures), slots) for slots, run in runs.items()]
    return Draft(tuple(sorted(shared, key=_order)), draft.alone)


def _order(page: Shared) -> tuple[int, tuple[int, ...]]:
    return -page.run, tuple(-n for n in page.slots)


def _layout_for(slots: Sequence[int], needs: Sequence[Need], mixtures: Sequence[Mixture]) -> int:
    taken = [0] * len(mixtures[0])
    for n, need in zip(slots, needs, strict=True):
        taken[need.kind] += n
    holders = [q for q, m in enumerate(mixtures) if all(t <= n for t, n in zip(taken, m, strict=True))]
    return min(holders, key=lambda q: (sum(mixtures[q]), q))


def _trimmed(draft: Draft, needs: Sequence[Need]) -> Draft:
    """Runs and slots no larger than what all the other pages leave to do."""
    shared = list(draft.shared)
    alone = list(draft.alone)
    short = [0] * len(needs)
    on_pages = [made_on(page, needs) for page in shared]
    for i, need in enumerate(needs):
        together = sum(pads[i] for pads in on_pages)
        alone[i] = min(alone[i], max(need.pads - together, 0))
        short[i] = need.pads - together - alone[i]
    for at, page in enumerate(shared):
        made = made_on(page, needs)
        wanted = tuple(max(pads + left, 0) for pads, left in zip(made, short, strict=True))
        shared[at] = smaller = _least(page, wanted, needs)
        short = [left + a - b for left, a, b in zip(short, made, made_on(smaller, needs), strict=True)]
    return Draft(tuple(page for page in shared if any(page.slots)), tuple(alone))


def _least(page: Shared, wanted: Sequence[int], needs: Sequence[Need]) -> Shared:
    """The shortest run that makes the pads wanted in these slots, and no more slots than it then needs."""
    wishes = zip(wanted, page.slots, needs, strict=True)
    run = max((-(-pads // n) * need.depth for pads, n, need in wishes if pads), default=0)
    deep = [pads_in_slot(run, need.depth) for need in needs]
    slots = tuple(-(-pads // each) if pads else 0 for pads, each in zip(wanted, deep, strict=True))
    return replace(page, run=run, slots=slots)
