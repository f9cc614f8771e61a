"""How likely it is that a leaf shows a white sliver, or a panel off its middle, and the bleed that prevents it.

Print and cut are off independently. The printer shifts the whole print (placement) and turns it a little about the
middle of the edge that leads (skew, so much at the far end of the sheet); each cut is off for itself. Each error
is normal, its ± limit held 95 % of the time: σ = limit ÷ 1.96. For a given turn, two edges across from each other
share the shift: both clear of white is a bivariate normal probability (Drezner and Wesolowsky 1990, from
memory); the turn is then averaged over by quadrature. Good to 1e-6.
"""

from dataclasses import dataclass
from math import inf, pi, sqrt

import numpy as np
from numpy.typing import NDArray

from padspec.base.geometry import Box, Size
from padspec.base.numbers import round_up

#: A normal error stays within this many σ 95 % of the time.
SIGMAS = 1.959963984540054
#: Past this many σ nothing is counted.
_REACH = 8.0
MOST_BLEED = 50.0

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Errors:
    """± limits in mm: placement of the print, skew at the far end of the sheet, each cut."""

    placement: float
    skew: float
    cutter: float


@dataclass(frozen=True, slots=True)
class Edges:
    """The bleed that prints past each edge of a leaf; None where a butted neighbour lies, which shows no white."""

    left: float | None
    head: float | None
    right: float | None
    foot: float | None

    @classmethod
    def all(cls, bleed: float) -> "Edges":
        """The same on every edge."""
        return cls(bleed, bleed, bleed, bleed)


def chance_of_sliver(leaf: Box, sheet: Size, bleed: Edges, errors: Errors, limit: float = 0.0) -> float:
    """The chance, as a share of one, that a leaf shows white wider than `limit` at any of its edges."""
    turns, weights = _turns(errors, sheet)
    placement, cutter = errors.placement / SIGMAS, errors.cutter / SIGMAS
    x, y = sheet.width / 2, 0.0
    # Turned by t, a point moves by -t × its way down and by t × its way right, as seen from the pivot.
    left = np.maximum(-turns * (leaf.y - y), -turns * (leaf.bottom - y))
    right = np.maximum(turns * (leaf.y - y), turns * (leaf.bottom - y))
    head = np.maximum(turns * (leaf.x - x), turns * (leaf.right - x))
    foot = np.maximum(-turns * (leaf.x - x), -turns * (leaf.right - x))
    across = _both_clear(_room(bleed.left, limit) - left, _room(bleed.right, limit) - right, placement, cutter)
    down = _both_clear(_room(bleed.head, limit) - head, _room(bleed.foot, limit) - foot, placement, cutter)
    return _share(1.0 - float(weights @ (across * down)))


def chance_off_centre(leaf: Box, sheet: Size, errors: Errors, limit: float) -> float:
    """The chance that the middle of the print lies more than `limit` off the middle of the leaf, either way."""
    turns, weights = _turns(errors, sheet)
    x, y = leaf.centre
    # The middle of the leaf is the mean of two cuts.
    spread = sqrt((errors.placement / SIGMAS) ** 2 + (errors.cutter / SIGMAS) ** 2 / 2)
    across = _within(-turns * y, limit, spread)
    down = _within(turns * (x - sheet.width / 2), limit, spread)
    return _share(1.0 - float(weights @ (across * down)))


def bleed_for_chance(leaf: Box, sheet: Size, free: Edges, errors: Errors, limit: float, chance: float) -> float:
    """The least bleed, in tenths of a millimetre, that brings slivers at the free edges (those not None) to at
    most `chance`; MOST_BLEED where none does.
    """
    low, high = 0, round(MOST_BLEED * 10)
    while low < high:
        middle = (low + high) // 2
        if chance_of_sliver(leaf, sheet, _with(free, middle / 10), errors, limit) <= chance:
            high = middle
        else:
            low = middle + 1
    return round_up(high / 10, 0.1)


def _with(free: Edges, bleed: float) -> Edges:
    return Edges(*(None if edge is None else bleed for edge in (free.left, free.head, free.right, free.foot)))


def _room(bleed: float | None, limit: float) -> float:
    return inf if bleed is None else bleed + limit


def _share(value: float) -> float:
    return min(max(round(value, 9), 0.0), 1.0)


def _turns(errors: Errors, sheet: Size) -> tuple[Floats, Floats]:
    """Angles of the skew with their weights: a rule for each sign, for what shows at an edge bends at 0."""
    if errors.skew == 0:
        return np.zeros(1), np.ones(1)
    nodes, weights = np.polynomial.legendre.leggauss(48)
    z = (nodes + 1) * _REACH / 2
    density = np.exp(-z * z / 2) / sqrt(2 * pi) * weights * _REACH / 2
    sigma = errors.skew / SIGMAS / sheet.height
    shares = np.concatenate([density, density])
    return np.concatenate([-z, z]) * sigma, shares / shares.sum()


def _both_clear(one: Floats, other: Floats, placement: float, cutter: float) -> Floats:
    """P(X − c ≤ one and c' − X ≤ other) for a shift X and two cuts c and c', at each turn."""
    spread = sqrt(placement**2 + cutter**2)
    if spread == 0:
        return ((one >= 0) & (other >= 0)).astype(float)
    h, k = one / spread, other / spread
    if cutter == 0:
        return np.maximum(_normal(h) - _normal(-k), 0.0)
    return _bivariate(h, k, -(placement**2) / spread**2)


def _within(middle: Floats, limit: float, spread: float) -> Floats:
    if spread == 0:
        return (np.abs(middle) <= limit).astype(float)
    return _normal((limit - middle) / spread) - _normal((-limit - middle) / spread)


def _bivariate(h: Floats, k: Floats, correlation: float) -> Floats:
    """P(U ≤ h, V ≤ k) of two standard normals:
    Φ(h) Φ(k) + 1/2π ∫ exp(−(h² + k² − 2hk sin t) / 2cos² t) dt from 0 to asin of the correlation.
    """
    product = _normal(h) * _normal(k)
    finite = np.isfinite(h) & np.isfinite(k)
    nodes, weights = np.polynomial.legendre.leggauss(96)
    end = float(np.arcsin(correlation))
    t = (nodes + 1) / 2 * end
    a, b = np.where(finite, h, 0.0)[:, None], np.where(finite, k, 0.0)[:, None]
    power = -(a * a + b * b - 2 * a * b * np.sin(t)) / (2 * np.cos(t) ** 2)
    extra = np.exp(power) @ weights * end / 2 / (2 * pi)
    return np.where(finite, product + extra, product)


def _normal(z: Floats) -> Floats:
    from math import erfc

    return np.array([0.5 * erfc(-value / sqrt(2)) for value in np.ravel(z)]).reshape(np.shape(z))
