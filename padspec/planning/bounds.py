"""What no plan can take less than: by column generation over runs and patterns, and by counting pages and leaves.

Mixtures here are all that might fit, doubtful ones included, so that a bound holds whatever the oracle missed.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

import numpy as np

from padspec.planning.cutting_stock import SLACK, Column, Priced, Prices, relax
from padspec.planning.mixtures import Mixture
from padspec.planning.quantities import Need, joined_run
from padspec.planning.runs import Runs, all_runs, yields_of

#: Columns that join the master in one round.
_AT_ONCE = 12


@dataclass(frozen=True, slots=True)
class Bounds:
    """Lower bounds on sheets (test sheets included) and on different pages, and runs that the relaxation used."""

    sheets: int
    pages: int
    runs: tuple[int, ...]


def lower_bounds(needs: Sequence[Need], mixtures: Sequence[Mixture], test_sheets: int, most_rounds: int) -> Bounds:
    """The best bound of two: the relaxed plan over all runs and patterns; fewest pages and fewest leaves apart."""
    kinds = range(len(mixtures[0]))
    of_a_kind = [sum(1.0 for need in needs if need.kind == kind) for kind in kinds]
    leaves = [sum(need.pads * need.use for need in needs if need.kind == kind) for kind in kinds]
    pages = ceil(_fewest(of_a_kind, mixtures) - SLACK)
    apart = ceil(_fewest(leaves, mixtures) - SLACK) + test_sheets * pages
    sheets, runs = _relaxed(needs, mixtures, test_sheets, most_rounds)
    return Bounds(max(apart, sheets), pages, runs)


def _fewest(demand: Sequence[float], mixtures: Sequence[Mixture]) -> float:
    """Sheets, in fractions, whose slots meet a demand for slots of each kind."""
    columns = [Column(1.0, tuple(map(float, mixture))) for mixture in mixtures]
    return relax(demand, columns, lambda prices: Priced((), max(column.worth(prices) for column in columns))).bound


def _relaxed(
    needs: Sequence[Need], mixtures: Sequence[Mixture], test_sheets: int, most_rounds: int
) -> tuple[int, tuple[int, ...]]:
    runs = yields_of(all_runs(needs), needs)
    alone = [_alone(i, needs, test_sheets) for i in range(len(needs))]

    def pricing(prices: Prices) -> Priced:
        shared = _best_patterns(prices, runs, needs, mixtures, test_sheets)
        ratios = [column.worth(prices) / column.cost for column in (*alone, *shared)]
        return Priced(tuple(shared), max(ratios))

    relaxation = relax([float(need.pads) for need in needs], alone, pricing, most_rounds)
    used = {
        column.label[0] for column, use in zip(relaxation.columns, relaxation.uses, strict=True) if use > SLACK
    }
    return ceil(relaxation.bound - SLACK), tuple(sorted(used - {0}))


def _alone(i: int, needs: Sequence[Need], test_sheets: int) -> Column:
    """The page of one design at which a pad takes fewest sheets."""
    need = needs[i]
    costs = [(joined_run(pads, need.use, need.n_up) + test_sheets, pads) for pads in range(1, need.pads + 1)]
    sheets, pads = min(costs, key=lambda cost: (round(cost[0] / cost[1], 9), -cost[1]))
    return Column(float(sheets), tuple(float(pads) if j == i else 0.0 for j in range(len(needs))), (0,))


def _best_patterns(
    prices: Prices, runs: Runs, needs: Sequence[Need], mixtures: Sequence[Mixture], test_sheets: int
) -> list[Column]:
    """For the runs at which a sheet is worth most for its cost: the most valuable pattern.

    In each slot lies the design of its kind that is worth most there; so a mixture is worth what its slots are.
    """
    worth = runs.yields * np.array(prices)
    kinds = [[i for i, need in enumerate(needs) if need.kind == kind] for kind in range(len(mixtures[0]))]
    chosen = [np.array(members)[np.argmax(np.round(worth[:, members], 9), axis=1)] for members in kinds]
    slot = np.stack([worth[np.arange(len(worth)), best] for best in chosen], axis=1)
    ratio = np.round((slot @ np.array(mixtures).T) / (np.array(runs.lengths)[:, None] + test_sheets), 12)
    best_mixture = np.argmax(ratio, axis=1)
    order = np.argsort(-ratio.max(axis=1), kind="stable")[:_AT_ONCE]
    columns = []
    for r in order:
        makes = [0.0] * len(needs)
        for kind, n in enumerate(mixtures[best_mixture[r]]):
            makes[chosen[kind][r]] += float(n * runs.yields[r, chosen[kind][r]])
        length = runs.lengths[r]
        columns.append(Column(float(length + test_sheets), tuple(makes), (length,)))
    return columns
