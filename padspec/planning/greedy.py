"""Plans made page by page, each time the page that uses its sheets best: good ones to start from.

A sequential heuristic in the manner of Haessler (Operations Research 23, 1975).
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.planning.drafts import Draft, Shared, cost
from padspec.planning.mixtures import Mixture
from padspec.planning.quantities import Need
from padspec.planning.runs import Runs, all_runs, yields_of

#: A page is charged so many times its test sheets: the dearer a page, the longer the runs that are chosen.
_CHARGES = (1, 5, 25)
#: Runs that one choice looks at.
_MOST_RUNS = 400


@dataclass(frozen=True, slots=True, eq=False)
class _Filled:
    """For every run, slots of one kind given one after the other to the design that gains most.

    `gain`: a row for each run, a column for 0, 1, 2, … slots; `who`: the need that each slot went to.
    """

    gain: NDArray[np.float64]
    who: NDArray[np.int64]


def greedy_drafts(needs: Sequence[Need], mixtures: Sequence[Mixture], test_sheets: int) -> tuple[Draft, ...]:
    """One draft for each charge; where a page of its own does better for the rest, the rest gets that."""
    return tuple(_draft(needs, mixtures, test_sheets, charge * max(test_sheets, 1)) for charge in _CHARGES)


def even_drafts(needs: Sequence[Need], mixtures: Sequence[Mixture]) -> tuple[Draft, ...]:
    """Each design in slots in proportion to its order, all on one page: the shortest such run, if any."""
    for length in all_runs(needs):
        deep = [min(length // need.depth, need.pads) for need in needs]
        if not all(deep):
            continue
        slots = tuple(-(-need.pads // each) for need, each in zip(needs, deep, strict=True))
        taken = [
            sum(n for n, need in zip(slots, needs, strict=True) if need.kind == k) for k in range(len(mixtures[0]))
        ]
        for q, mixture in enumerate(mixtures):
            if all(t <= n for t, n in zip(taken, mixture, strict=True)):
                return (Draft((Shared(length, q, slots),), (0,) * len(needs)),)
    return ()


def _draft(needs: Sequence[Need], mixtures: Sequence[Mixture], test_sheets: int, charge: int) -> Draft:
    left = np.array([need.pads for need in needs], np.int64)
    pages: list[Shared] = []
    drafts = [Draft((), tuple(map(int, left)))]
    runs = yields_of(_thinned(all_runs(needs)), needs)
    while left.any():
        page = _best_page(left, runs, needs, mixtures, charge)
        pages.append(page)
        made = np.array(page.slots) * np.array([page.run // need.depth for need in needs])
        left = np.maximum(left - made, 0)
        drafts.append(Draft(tuple(pages), tuple(map(int, left))))
    return min(drafts, key=lambda draft: cost(draft, needs, test_sheets))


def _thinned(lengths: tuple[int, ...]) -> tuple[int, ...]:
    step = -(-len(lengths) // _MOST_RUNS)
    return lengths[::step]


def _best_page(
    left: NDArray[np.int64], runs: Runs, needs: Sequence[Need], mixtures: Sequence[Mixture], charge: int
) -> Shared:
    """The page whose sheets are best used for pads still wanted; of equals the longer run."""
    slots_of = np.array(mixtures)
    filled = [_fill(kind, left, runs, needs, int(slots_of[:, kind].max())) for kind in range(slots_of.shape[1])]
    gain = sum(part.gain[:, slots_of[:, kind]] for kind, part in enumerate(filled))
    ratio = np.round(gain / (np.array(runs.lengths)[:, None] + charge), 9)
    at = len(runs.lengths) - 1 - int(np.argmax(ratio.max(axis=1)[::-1]))
    layout = int(np.argmax(ratio[at]))
    slots = [0] * len(needs)
    for kind, part in enumerate(filled):
        for who in part.who[at, : slots_of[layout, kind]]:
            slots[who] += int(who >= 0)
    return Shared(runs.lengths[at], layout, tuple(slots))


def _fill(kind: int, left: NDArray[np.int64], runs: Runs, needs: Sequence[Need], slots: int) -> _Filled:
    members = np.array([i for i, need in enumerate(needs) if need.kind == kind])
    share = np.array([needs[i].use / needs[i].n_up for i in members])
    rest = np.repeat(left[members][None, :], len(runs.lengths), axis=0)
    each = runs.yields[:, members]
    gain, who = np.zeros((len(rest), slots + 1)), np.full((len(rest), slots), -1, np.int64)
    rows = np.arange(len(rest))
    for slot in range(slots):
        useful = np.round(np.minimum(each, rest) * share, 9)
        best = np.argmax(useful, axis=1)
        gain[:, slot + 1] = gain[:, slot] + useful[rows, best]
        who[:, slot] = np.where(useful[rows, best] > 0, members[best], -1)
        rest[rows, best] = np.maximum(rest[rows, best] - each[rows, best], 0)
    return _Filled(gain, who)
