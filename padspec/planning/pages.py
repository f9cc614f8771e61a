"""A draft becomes pages: every slot gets its design."""

from collections.abc import Sequence

from padspec.planning.drafts import Draft, Shared
from padspec.planning.layouts import Layout, Layouts, items_of
from padspec.planning.orders import Page
from padspec.planning.quantities import Need, joined_pads, joined_run, pads_in_slot, shared_out


def pages_of(
    draft: Draft, needs: Sequence[Need], layouts: Layouts, items: Sequence[int], test_sheets: int
) -> tuple[Page, ...]:
    """The shared pages, longest run first, then the pages of one design in the order of the needs."""
    shared = [_shared(page, needs, layouts.found[page.layout], items, test_sheets) for page in draft.shared]
    alone = [
        _alone(pads, need, layouts.fullest[need.kind], test_sheets)
        for pads, need in zip(draft.alone, needs, strict=True)
        if pads
    ]
    return (*shared, *alone)


def _shared(page: Shared, needs: Sequence[Need], layout: Layout, items: Sequence[int], test_sheets: int) -> Page:
    waiting = [_filled(kind, page, needs, n) for kind, n in enumerate(layout.mixture)]
    takers = [waiting[items.index(item)].pop(0) for item in items_of(layout.arrangement)]
    return Page(
        layout.arrangement,
        tuple(need.order for need in takers),
        page.run,
        test_sheets,
        tuple(pads_in_slot(page.run, need.depth) for need in takers),
        joined=False,
    )


def _filled(kind: int, page: Shared, needs: Sequence[Need], slots: int) -> list[Need]:
    """Who gets the slots of one trim; a slot that nobody needs goes to the design with most of them here."""
    members = [(need, page.slots[i]) for i, need in enumerate(needs) if need.kind == kind]
    left = slots - sum(n for _, n in members)
    # One whose stack comes out whole in this run, if there is any: its pads are spare, not waste.
    first = max(members, key=lambda member: (member[0].depth <= page.run, member[1], member[0].pads))[0]
    return [need for need, n in members for _ in range(n + (left if need == first else 0))]


def _alone(pads: int, need: Need, layout: Layout, test_sheets: int) -> Page:
    run = joined_run(pads, need.use, need.n_up)
    made = max(joined_pads(run, need.use, need.n_up), pads)
    return Page(layout.arrangement, (need.order,) * need.n_up, run, test_sheets, shared_out(made, need.n_up), True)
