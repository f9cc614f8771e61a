"""The fewest inks for a thin line: a line of one ink needs no other to fall on it, and stays sharp.

Common practice, no published source: each further ink of a thin line shows when the plates do not register.
"""

from collections.abc import Callable
from functools import cache
from itertools import combinations, product

import numpy as np
from numpy.typing import NDArray

from padspec.base.colour import Floats
from padspec.base.difference import ciede2000
from padspec.press.inks import INKS, STEPS, Inks

Steps = NDArray[np.uint8]
LabOf = Callable[[Steps], Floats]

#: Distance of the amounts that are tried first, by the number of inks; each divides 255.
_FIRST_STEP = {1: 1, 2: 15, 3: 17}
_FINER = (8, 4, 2, 1)


def fewest_inks(target: Floats, lab_of: LabOf, tolerance: float) -> Inks | None:
    """The amounts with the fewest inks, three at most, that print within `tolerance` (CIEDE2000) of a colour.

    Of those with as many inks, the nearest to `target` (CIELAB under D50). None where three do not reach it.
    `lab_of` gives the CIELAB that rows of amounts, shape (n, 4), print.
    """
    for count in _FIRST_STEP:
        found = [_nearest(inks, target, lab_of) for inks in combinations(range(len(INKS)), count)]
        distance, amounts = min(found)
        if distance <= tolerance:
            return Inks(*amounts)
    return None


def _nearest(inks: tuple[int, ...], target: Floats, lab_of: LabOf) -> tuple[float, tuple[int, ...]]:
    """The amounts of these inks that print nearest to the target, and how far off they are."""
    best = _best(_first_tries(inks), target, lab_of)
    for step in _FINER if _FIRST_STEP[len(inks)] > 1 else ():
        nearer = _best(_around(best[1], inks, step), target, lab_of)
        while nearer < best:
            best = nearer
            nearer = _best(_around(best[1], inks, step), target, lab_of)
    return best


@cache
def _first_tries(inks: tuple[int, ...]) -> Steps:
    """A coarse grid of amounts, none of them 0: a line of no ink would be no line."""
    step = _FIRST_STEP[len(inks)]
    grid = list(product(range(step, STEPS + 1, step), repeat=len(inks)))
    tries = np.zeros((len(grid), len(INKS)), np.uint8)
    tries[:, inks] = grid
    return tries


def _around(amounts: tuple[int, ...], inks: tuple[int, ...], step: int) -> Steps:
    ways = list(product((0, -step, step), repeat=len(inks)))
    tries = np.tile(np.array(amounts), (len(ways), 1))
    tries[:, inks] += np.array(ways)
    tries[:, inks] = tries[:, inks].clip(1, STEPS)
    return tries.astype(np.uint8)


def _best(tries: Steps, target: Floats, lab_of: LabOf) -> tuple[float, tuple[int, ...]]:
    distances = np.round(ciede2000(target, lab_of(tries)), 6)
    place = int(distances.argmin())
    return float(distances[place]), tuple(int(amount) for amount in tries[place])
