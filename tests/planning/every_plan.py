"""The best plan by trying all: for sheets of a few slots and a handful of pads.

Written from the rules alone, with nothing of the planner in it: what is left to make, and the least that takes.
"""

from collections.abc import Iterable
from functools import cache
from itertools import combinations_with_replacement, product
from math import ceil

Cost = tuple[int, int]
Wanted = tuple[tuple[int, int, int], ...]  # pads, leaves and trim of each design


def least(wanted: Wanted, mixtures: tuple[tuple[int, ...], ...], overs: float, test_sheets: int) -> Cost:
    """Fewest sheets, test sheets included, and then fewest pages."""
    use = [leaves * (1 + overs) for _, leaves, _ in wanted]
    deep = [ceil(each - 1e-9) for each in use]
    most = [max(mixture[item] for mixture in mixtures) for _, _, item in wanted]
    patterns = {pattern for mixture in mixtures for pattern in _patterns(wanted, mixture)}

    @cache
    def of(left: tuple[int, ...]) -> Cost:
        if not any(left):
            return 0, 0
        found = [_more(of(_without(left, i, n)), ceil(n * use[i] / most[i] - 1e-9)) for i, n in _alone(left)]
        for pattern in patterns:
            for run in {deep[i] * n for i in set(pattern) for n in range(1, left[i] + 1)}:
                rest = tuple(max(n - pattern.count(i) * (run // deep[i]), 0) for i, n in enumerate(left))
                found.append(_more(of(rest), run))
        return min(found)

    def _more(cost: Cost, run: int) -> Cost:
        return cost[0] + run + test_sheets, cost[1] + 1

    return of(tuple(pads for pads, _, _ in wanted))


def _patterns(wanted: Wanted, mixture: tuple[int, ...]) -> Iterable[tuple[int, ...]]:
    """Every way to give the slots of a mixture to designs of the right trim; which slot of a trim is all one."""
    choices = []
    for item, slots in enumerate(mixture):
        designs = [i for i, (_, _, of) in enumerate(wanted) if of == item]
        choices.append(list(combinations_with_replacement(designs, slots)))
    for parts in product(*choices):
        yield tuple(sorted(design for part in parts for design in part))


def _alone(left: tuple[int, ...]) -> Iterable[tuple[int, int]]:
    return ((i, n) for i, pads in enumerate(left) for n in range(1, pads + 1))


def _without(left: tuple[int, ...], i: int, pads: int) -> tuple[int, ...]:
    return (*left[:i], left[i] - pads, *left[i + 1 :])
