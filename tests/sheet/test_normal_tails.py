"""Tails of the normal distribution, one, two and averaged over, against scipy.stats and closed forms."""

from math import asin, pi

import numpy as np
import pytest
from scipy import stats

from padspec.sheet.chances.normal_tails import both_beyond, mean_over_normal, tail


def test_the_tail_is_scipys_far_out_as_well() -> None:
    z = np.array([-3.0, 0.0, 1.96, 5.0, 12.0])
    assert tail(z) == pytest.approx(stats.norm.sf(z), rel=1e-12)


@pytest.mark.parametrize("correlation", [-0.99, -0.8, -0.3, 0.4, 0.95])
@pytest.mark.parametrize(("h", "k"), [(0.0, 0.0), (1.0, -0.9), (2.0, 2.5), (-1.0, 3.0)])
def test_two_tails_at_once_are_scipys_bivariate_normal(h: float, k: float, correlation: float) -> None:
    ours = both_beyond(np.array([h]), np.array([k]), correlation)[0]
    theirs = stats.multivariate_normal([0, 0], [[1, correlation], [correlation, 1]]).cdf([-h, -k])
    assert ours == pytest.approx(theirs, abs=1e-9)


@pytest.mark.parametrize("correlation", [-0.999999, -0.9999, -0.5, 0.0, 0.7, 0.999999])
def test_both_above_their_middle_is_sheppards_closed_form(correlation: float) -> None:
    """1/4 + asin ρ ÷ 2π (W. F. Sheppard 1899, from memory)."""
    ours = both_beyond(np.zeros(1), np.zeros(1), correlation)[0]
    assert ours == pytest.approx(0.25 + asin(correlation) / (2 * pi), abs=1e-13)


@pytest.mark.parametrize(("h", "k"), [(0.5, -0.6), (1.0, -0.9), (-0.2, 0.3)])
def test_almost_opposite_normals_come_close_to_opposite_ones(h: float, k: float) -> None:
    opposite = max(stats.norm.sf(h) - stats.norm.sf(-k), 0)
    one, other = np.array([h]), np.array([k])
    assert both_beyond(one, other, -1.0)[0] == pytest.approx(opposite, abs=1e-15)
    assert both_beyond(one, other, -(1 - 1e-7))[0] == pytest.approx(opposite, abs=1e-9)


def test_equal_normals_are_beyond_both_when_beyond_the_further() -> None:
    assert both_beyond(np.array([1.0]), np.array([2.0]), 1.0)[0] == pytest.approx(stats.norm.sf(2))


def test_the_mean_of_an_even_power_is_a_product_of_odd_numbers() -> None:
    """E Z⁶ = 5 · 3 · 1."""
    assert mean_over_normal(lambda z: z**6, ()) == pytest.approx(15, rel=1e-12)


def test_the_mean_over_a_bend_at_0_is_exact() -> None:
    """E |Z| = √(2 ÷ π)."""
    assert mean_over_normal(np.abs, ()) == pytest.approx((2 / pi) ** 0.5, rel=1e-13)


def test_the_mean_over_a_bend_elsewhere_is_exact_where_the_break_is_named() -> None:
    """E max(Z − a, 0) = φ(a) − a Q(a)."""
    wanted = stats.norm.pdf(0.3) - 0.3 * stats.norm.sf(0.3)
    assert mean_over_normal(lambda z: np.maximum(z - 0.3, 0), (0.3,)) == pytest.approx(wanted, rel=1e-13)
