"""CIEDE2000 of many pairs at once: against the 34 published pairs, and against two other programs.

G. Sharma, W. Wu, E. N. Dalal: Color Research and Application 30 (2005) 21-30, table 1. colormath takes one colour
against many, and is itself off by up to 0.0002 among blues; coloraide takes one pair at a time.
"""

import numpy as np
import pytest
from coloraide import Color
from colormath.color_diff_matrix import delta_e_cie2000

from padspec.base.difference import ciede2000

from .test_colour_difference import PAIRS

ROWS = np.array(PAIRS)


@pytest.mark.parametrize("row", range(34), ids=range(1, 35))
def test_a_published_pair_has_its_difference_either_way(row: int) -> None:
    one, other, published = ROWS[row, :3], ROWS[row, 3:6], ROWS[row, 6]
    assert ciede2000(one, other) == pytest.approx(published, abs=1e-4)
    assert ciede2000(other, one) == pytest.approx(published, abs=1e-4)


def test_all_pairs_at_once_have_their_differences() -> None:
    assert ciede2000(ROWS[:, :3], ROWS[:, 3:6]) == pytest.approx(ROWS[:, 6], abs=1e-4)


def any_colours() -> np.ndarray:
    chosen = np.random.default_rng(5)
    return np.stack([chosen.uniform(0, 100, 300), *chosen.uniform(-110, 110, (2, 300))], axis=-1)


def test_any_colours_differ_as_colormath_says() -> None:
    some = any_colours()
    for one in some[:20]:
        assert ciede2000(one, some) == pytest.approx(delta_e_cie2000(one, some), abs=1e-3)


def test_any_colours_differ_as_coloraide_says() -> None:
    some = any_colours()
    theirs = [
        Color("lab-d65", one).delta_e(Color("lab-d65", other), method="2000", space="lab-d65")
        for one, other in zip(some, some[::-1], strict=True)
    ]
    assert ciede2000(some, some[::-1]) == pytest.approx(theirs, abs=1e-9)


def test_a_table_of_pairs_keeps_its_shape() -> None:
    table = ROWS[:, :3].reshape(2, 17, 3)
    assert ciede2000(table, table[:, :1]).shape == (2, 17)


def test_a_colour_does_not_differ_from_itself() -> None:
    assert ciede2000(ROWS[:, :3], ROWS[:, :3]) == pytest.approx(np.zeros(34), abs=1e-12)
