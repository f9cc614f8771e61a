"""Cutting stock by column generation: patterns are not listed but found one by one, each by its worth.

A linear master over the patterns known so far puts a price on every item; an oracle answers with the pattern worth
most at these prices; when none is worth more than it costs, the master's optimum holds for all patterns there are
(Gilmore and Gomory, Operations Research 9, 1961). Prices that are scaled down until no pattern is worth more than
it costs give a lower bound at any time (Farley, Operations Research 38, 1990).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil, floor, inf

from padspec.planning.programme import Programme, Row, solve_relaxed, solve_whole

#: A pattern joins the master when it is worth this much more than it costs.
_GAIN = 1e-9
#: Bounds are made whole numbers with this much slack for the solver's arithmetic.
SLACK = 1e-6

Prices = tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Column:
    """A way to cut: what it costs and how much of each item it makes; `label` is the caller's own."""

    cost: float
    makes: tuple[float, ...]
    label: tuple[int, ...] = ()

    def worth(self, prices: Prices) -> float:
        """What it makes, at these prices."""
        return sum(price * made for price, made in zip(prices, self.makes, strict=True))


@dataclass(frozen=True, slots=True)
class Priced:
    """An oracle's answer: good columns, and what no column's worth over its cost exceeds."""

    columns: tuple[Column, ...]
    most: float


@dataclass(frozen=True, slots=True)
class Relaxation:
    """The linear master at its end: all columns, how often each is used, and the proved lower bound."""

    columns: tuple[Column, ...]
    uses: tuple[float, ...]
    bound: float


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """Patterns with how often to cut each, how many pieces of stock that takes, and the fewest there can be."""

    patterns: tuple[tuple[int, ...], ...]
    times: tuple[int, ...]
    stock: int
    relaxed: float
    bound: int


def relax(
    demand: Sequence[float],
    start: Sequence[Column],
    pricing: Callable[[Prices], Priced],
    most_rounds: int = 1000,
) -> Relaxation:
    """Least cost, in fractions of columns, that makes at least the demand. `start` must be able to meet it."""
    columns, bound = list(dict.fromkeys(start)), 0.0
    for _ in range(most_rounds):
        solved = solve_relaxed(_cover(columns, demand))
        prices = tuple(round(max(price, 0.0), 9) for price in solved.prices)
        priced = pricing(prices)
        worth = sum(price * wanted for price, wanted in zip(prices, demand, strict=True))
        bound = max(bound, worth / max(priced.most, 1.0))
        known = set(columns)
        fresh = [
            c for c in dict.fromkeys(priced.columns) if c.worth(prices) > c.cost * (1 + _GAIN) and c not in known
        ]
        if not fresh:
            break
        columns += fresh
    uses = solved.values + (0.0,) * (len(columns) - len(solved.values))
    return Relaxation(tuple(columns), uses, bound)


def cutting_stock(
    demand: Sequence[int],
    most_valuable: Callable[[Prices], tuple[int, ...]],
    most_nodes: int = 1000,
) -> CuttingPlan:
    """The fewest pieces of stock that make at least the demand, each cut by a pattern.

    `most_valuable` answers prices with the pattern (how many of each item) that is worth most; a price for one
    item alone must bring a pattern that holds it.
    """

    def pricing(prices: Prices) -> Priced:
        column = Column(1.0, tuple(map(float, most_valuable(prices))))
        return Priced((column,), column.worth(prices))

    singles = [tuple(float(i == item) for i in range(len(demand))) for item in range(len(demand))]
    columns = [column for single in singles for column in pricing(single).columns]
    first = relax(demand, columns, pricing)
    bound = ceil(first.bound - SLACK)
    columns, times = _rounded(demand, first, pricing)
    programme = _cover(columns, demand)
    found = solve_whole(programme, most_nodes, times).values if sum(times) > bound else None
    best = min((found or times, times), key=sum)
    used = sorted(((column.makes, n) for column, n in zip(columns, best, strict=True) if n), reverse=True)
    patterns = tuple(tuple(map(int, makes)) for makes, _ in used)
    return CuttingPlan(patterns, tuple(n for _, n in used), sum(best), first.bound, bound)


def _rounded(
    demand: Sequence[int], first: Relaxation, pricing: Callable[[Prices], Priced]
) -> tuple[list[Column], tuple[int, ...]]:
    """Whole uses, by keeping the whole part of the fractions and solving again for what is then still wanted.

    What is found for the rests is of use beyond them: the columns that a whole-number optimum needs and the first
    relaxation does not.
    """
    columns, uses, left = list(first.columns), list(first.uses), list(map(float, demand))
    times = [0] * len(columns)
    while any(wanted > 0 for wanted in left):
        whole = [floor(use + SLACK) for use in uses]
        if not any(whole):
            whole[max(range(len(uses)), key=lambda j: (round(uses[j], 6), -j))] = 1
        times = [n + more for n, more in zip(times, whole, strict=True)]
        for column, n in zip(columns, whole, strict=True):
            left = [max(wanted - n * made, 0.0) for wanted, made in zip(left, column.makes, strict=True)]
        if any(left):
            rest = relax(left, columns, pricing)
            columns, uses = list(rest.columns), list(rest.uses)
            times += [0] * (len(columns) - len(times))
    return columns, tuple(times)


def _cover(columns: Sequence[Column], demand: Sequence[float]) -> Programme:
    rows = []
    for item, wanted in enumerate(demand):
        held = [(j, column.makes[item]) for j, column in enumerate(columns) if column.makes[item]]
        rows.append(Row(tuple(j for j, _ in held), tuple(made for _, made in held), wanted))
    return Programme(tuple(column.cost for column in columns), (inf,) * len(columns), tuple(rows))
