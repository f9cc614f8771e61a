"""Edges compared place by place."""

import numpy as np
import pytest

from padspec.base.edges import differences, different, longest, spans, taken_by


def test_black_and_white_differ_by_a_hundred() -> None:
    """CIEDE2000 between L* 0 and 100: ΔL' ÷ S_L with S_L = 1, for the mean lightness is 50."""
    assert differences(np.zeros((1, 3)), np.ones((1, 3))) == pytest.approx([100.0], abs=1e-5)


def test_colours_just_five_apart_are_not_told_apart() -> None:
    assert list(different(np.array([4.9, 5.0, 5.000001]))) == [False, False, True]


def test_stretches_are_where_the_flag_stands() -> None:
    flags = np.array([False, True, True, False, True])
    assert spans(flags, np.array([0.0, 1, 2, 3, 4, 5])) == ((1.0, 3.0), (4.0, 5.0))


def test_no_flag_makes_no_stretch() -> None:
    assert spans(np.array([False, False]), np.array([0.0, 1, 2])) == ()


def test_stretches_are_added_up_and_the_longest_found() -> None:
    assert taken_by(((1.0, 3.0), (4.0, 5.0))) == 3.0
    assert longest(((1.0, 3.0), (4.0, 5.0))) == 2.0
    assert longest(()) == 0.0
