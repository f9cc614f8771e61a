"""A few pages of a plan at a time, made anew by a small master: for plans too large for one.

The pages taken are neighbours by run length, for such are the ones whose slots can change places.
"""

from collections.abc import Sequence
from dataclasses import replace

from padspec.planning.drafts import Draft, Shared, cost, made_on, meets, polished
from padspec.planning.masters import Master, draft_of, fewest_sheets, values_of
from padspec.planning.mixtures import Mixture
from padspec.planning.orders import Effort
from padspec.planning.programme import solve_whole
from padspec.planning.quantities import Need, joined_run
from padspec.planning.runs import all_runs, telling_runs, yields_of

#: A page is a shared one, or the page of one design alone, by its place among the needs.
_Any = Shared | int
#: Windows of so many pages, and more pages as long as they are of few designs.
_LEAST_PAGES, _MOST_PAGES, _FEW_DESIGNS = 2, 4, 9


def reworked(
    draft: Draft, needs: tuple[Need, ...], mixtures: tuple[Mixture, ...], test_sheets: int, effort: Effort
) -> Draft:
    """A plan no worse than the draft, after so many windows of neighbouring pages as the effort allows.

    Once no window of its size makes anything better, windows grow by a page.
    """
    at, least, gained = 0, _LEAST_PAGES, False
    for _ in range(effort.windows):
        pages = _by_run(draft, needs)
        if at + 1 >= len(pages):
            at, least, gained = 0, least + (not gained), False
        if least > min(_MOST_PAGES, len(pages)):
            break
        taken = _window(pages, at, least)
        at += max(len(taken) // 2, 1)
        anew = _anew(draft, taken, needs, mixtures, test_sheets, effort)
        if cost(anew, needs, test_sheets) < cost(draft, needs, test_sheets):
            draft, gained = anew, True
    return draft


def _by_run(draft: Draft, needs: Sequence[Need]) -> list[_Any]:
    pages: list[tuple[int, _Any]] = [(page.run, page) for page in draft.shared]
    for i, (pads, need) in enumerate(zip(draft.alone, needs, strict=True)):
        if pads:
            pages.append((joined_run(pads, need.use, need.n_up), i))
    return [page for _, page in sorted(pages, key=lambda entry: -entry[0])]


def _users(page: _Any) -> set[int]:
    return {page} if isinstance(page, int) else {i for i, n in enumerate(page.slots) if n}


def _window(pages: Sequence[_Any], at: int, least: int) -> list[_Any]:
    """So many pages from here on, and more as long as they are of few designs."""
    taken = list(pages[at : at + least])
    for page in pages[at + least : at + _MOST_PAGES + 1]:
        if len(set().union(*map(_users, [*taken, page]))) > _FEW_DESIGNS:
            break
        taken.append(page)
    return taken


def _anew(
    draft: Draft,
    taken: Sequence[_Any],
    needs: tuple[Need, ...],
    mixtures: tuple[Mixture, ...],
    test_sheets: int,
    effort: Effort,
) -> Draft:
    """The draft with the pages taken made anew for what all the others leave to do."""
    shared = [page for page in taken if not isinstance(page, int)]
    kept = Draft(
        tuple(page for page in draft.shared if page not in shared),
        tuple(0 if i in taken else pads for i, pads in enumerate(draft.alone)),
    )
    left = [need.pads - pads for need, pads in zip(needs, kept.alone, strict=True)]
    for page in kept.shared:
        left = [rest - pads for rest, pads in zip(left, made_on(page, needs), strict=True)]
    users = [i for i, rest in enumerate(left) if rest > 0]
    part = tuple(replace(needs[i], pads=left[i]) for i in users)
    old = Draft(
        tuple(replace(page, slots=tuple(page.slots[i] for i in users)) for page in shared),
        tuple(draft.alone[i] if i in taken else 0 for i in users),
    )
    new = _solved(old, part, mixtures, test_sheets, effort) if part else Draft((), ())
    return polished(_joined(kept, new, users), needs, mixtures)


def _solved(
    old: Draft, part: tuple[Need, ...], mixtures: tuple[Mixture, ...], test_sheets: int, effort: Effort
) -> Draft:
    most = max(effort.window_cells // (len(part) + len(mixtures)), 4)
    every = all_runs(part)
    lengths = every if len(every) <= most else telling_runs(part, most)
    lengths = tuple(sorted({*lengths, *(page.run for page in old.shared)}))
    master = Master(part, mixtures, yields_of(lengths, part), test_sheets)
    solved = solve_whole(fewest_sheets(master, then_pages=True), effort.window_nodes, values_of(old, master))
    new = old if solved.values is None else draft_of(solved.values, master)
    return new if meets(new, part) else old


def _joined(kept: Draft, new: Draft, users: Sequence[int]) -> Draft:
    alone, shared = list(kept.alone), list(kept.shared)
    for i, pads in zip(users, new.alone, strict=True):
        alone[i] += pads
    for page in new.shared:
        slots = [0] * len(alone)
        for i, n in zip(users, page.slots, strict=True):
            slots[i] = n
        shared.append(replace(page, slots=tuple(slots)))
    return Draft(tuple(shared), tuple(alone))
