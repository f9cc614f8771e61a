"""What the normal distribution is asked for here: its tail, the tail of two at once, the mean of a function of it.

All of it takes arrays, and adds tails up instead of taking them from one, so that a chance of one in a million
keeps its digits.
"""

from collections.abc import Callable, Iterable
from functools import cache
from math import asin, erfc, pi, sqrt

import numpy as np

from padspec.base.colour import Floats

#: Past this many σ nothing is counted: 2 × 10⁻¹⁹.
REACH = 9.0
#: One Gauss–Legendre rule serves all, on pieces small enough for it.
_POINTS = 16
#: Where the arc of `both_beyond` is parted, as shares of it: finer towards its end, where two almost opposite
#: (or almost equal) normals turn sharply.
_ARC = (0.0, *(1 - 0.25**step for step in range(1, 6)), 1.0)


def tail(z: Floats) -> Floats:
    """P(Z > z) = erfc(z ÷ √2) ÷ 2, closed form.

    >>> tail(np.array([0.0, 1.96])).round(6).tolist()
    [0.5, 0.024998]
    """
    flat = [erfc(value / sqrt(2)) / 2 for value in np.ravel(z).tolist()]
    return np.array(flat).reshape(np.shape(z))


def both_beyond(h: Floats, k: Floats, correlation: float) -> Floats:
    """P(U > h and V > k) of two standard normals of this correlation; h and k are finite.

    Its derivative by the correlation is the density at (h, k) (R. L. Plackett 1954, from memory), hence
    Q(h) Q(k) + 1/2π ∫ exp(−(h² + k² − 2hk sin t) ÷ 2 cos² t) dt from 0 to asin of the correlation: quadrature,
    good to 1e-13. Closed form where the two are independent, equal or opposite.

    >>> both_beyond(np.zeros(1), np.zeros(1), 0.5).round(12).tolist()
    [0.333333333333]
    """
    if abs(correlation) >= 1 - 1e-12:
        return tail(np.maximum(h, k)) if correlation > 0 else np.maximum(tail(h) - tail(-k), 0.0)
    apart = tail(h) * tail(k)
    if correlation == 0:
        return apart
    shares, weights = _rule(_ARC)
    end = asin(correlation)
    a, b, sine = h[..., None], k[..., None], np.sin(shares * end)
    power = -(a * a + b * b - 2 * a * b * sine) / (2 * (1 - sine * sine))
    return np.asarray(np.maximum(apart + np.exp(power) @ weights * end / (2 * pi), 0.0), np.float64)


def mean_over_normal(of: Callable[[Floats], Floats], breaks: Iterable[float]) -> float:
    """The mean of `of`(Z) over a standard normal Z, by quadrature: exact to about 1e-12 for a function that is
    smooth between the whole numbers and `breaks`.
    """
    whole = np.arange(-REACH, REACH + 0.5)
    inside = [at for at in breaks if -REACH < at < REACH]
    z, weights = _rule(tuple(sorted({*whole.tolist(), *inside})))
    density = np.exp(-z * z / 2) / sqrt(2 * pi)
    return float(np.sum(of(z) * density * weights))


@cache
def _legendre() -> tuple[Floats, Floats]:
    nodes, weights = np.polynomial.legendre.leggauss(_POINTS)
    return (nodes + 1) / 2, weights / 2


def _rule(ends: tuple[float, ...]) -> tuple[Floats, Floats]:
    """Places and weights of the Gauss–Legendre rule on each piece between two ends."""
    nodes, weights = _legendre()
    starts, lengths = np.array(ends[:-1]), np.diff(ends)
    return (starts[:, None] + lengths[:, None] * nodes).ravel(), (lengths[:, None] * weights).ravel()
