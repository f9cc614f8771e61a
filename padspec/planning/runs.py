"""Run lengths worth trying, and what a slot yields at each.

A run only matters where it ends one more pad somewhere, so all that count are multiples of the stack depths, up to
the run that makes all pads of an order in one slot.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.planning.quantities import Need


@dataclass(frozen=True, slots=True, eq=False)
class Runs:
    """Run lengths, ascending, and the pads that one slot makes: a row for each run, a column for each need.

    No slot is reckoned to make more pads than were ordered.
    """

    lengths: tuple[int, ...]
    yields: NDArray[np.int64]


def all_runs(needs: Sequence[Need]) -> tuple[int, ...]:
    """Every run length that counts."""
    return tuple(sorted({need.depth * pads for need in needs for pads in range(1, need.pads + 1)}))


def yields_of(lengths: Sequence[int], needs: Sequence[Need]) -> Runs:
    """The pads of a slot for each of these runs."""
    run = np.array(lengths, np.int64)[:, None]
    depth = np.array([need.depth for need in needs], np.int64)
    return Runs(tuple(lengths), np.minimum(run // depth, np.array([need.pads for need in needs], np.int64)))


def telling_runs(needs: Sequence[Need], most: int) -> tuple[int, ...]:
    """Of the run lengths that count those at which most orders come out even, in so many slots: first the best.

    An order comes out even at a run where whole slots make just its pads, or fewer spare ones than slots.
    """
    score: dict[int, float] = {}
    for need in needs:
        for slots in range(1, max(need.n_up, 1) + 1):
            deep = -(-need.pads // slots)
            run, spare = need.depth * deep, slots * deep - need.pads
            score[run] = score.get(run, 0.0) + 1.0 / (slots * (1 + spare))
    return tuple(sorted(score, key=lambda run: (-round(score[run], 9), run))[:most])
