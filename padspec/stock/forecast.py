"""How many pads will be wanted at the next markets: a gamma-Poisson forecast with a prior that the pads share.

On one selling day a pad is wanted Poisson(λ) times, each pad with its own λ, which nobody knows. Before any of its
sales are seen, λ is Gamma(a, b) (shape a, rate b) with a ÷ b the mean of all pads a day and b = 1: what other pads
do weighs as much as one day of its own, so it is all a new pad has and soon means little to an old one. After s
sold on n days λ is Gamma(a + s, b + n), and over m market days of one λ the number wanted is negative binomial:

    P(Y = k) = Γ(r + k) ÷ (Γ(r) k!) × p^r × (1 − p)^k,   r = a + s,   p = (b + n) ÷ (b + n + m)

The pads to have are the least k with P(Y ≤ k) ≥ the chance asked for. Source: conjugacy of gamma and Poisson, any
text on Bayesian statistics (Gelman et al., Bayesian Data Analysis, 2.6; from memory).

What it does not know: that days differ by weather and season (`spread` shows by how much they did), that a day
that sold out might have sold more (its sales count as they are, so the forecast is rather too low), and any trend.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import exp, lgamma, log, log1p

from padspec.stock.selling_days import SellingDay, SkuDay

#: What the prior weighs, in selling days.
PRIOR_DAYS = 1
#: Sums of probabilities are good to this much on any processor, and are compared no finer.
_CLOSE = 1e-9
#: Degrees of freedom from which the spread means anything.
_LEAST_FREEDOM = 5


@dataclass(frozen=True, slots=True)
class History:
    """What one pad has done: selling days that it was on hand, pads sold on them, days on which it sold out."""

    sku: str
    days: int
    sold: int
    sold_out: int


@dataclass(frozen=True, slots=True)
class Forecast:
    """The negative binomial that a pad's next markets follow, `shape` r and `chance` p of the docstring above."""

    history: History
    shape: float
    p: float

    @property
    def mean(self) -> float:
        """Pads wanted on average."""
        return self.shape * (1 - self.p) / self.p

    def enough(self, chance: float) -> int:
        """The fewest pads that last with this chance, above 0 and below 1."""
        return quantile(chance, self.shape, self.p)


def histories(days: Sequence[SellingDay], skus: Iterable[str]) -> tuple[History, ...]:
    """What each of some pads has done, in their order."""
    by_sku = _by_sku(days)
    return tuple(_history(sku, by_sku.get(sku, [])) for sku in skus)


def pooled_mean(days: Sequence[SellingDay]) -> float:
    """Pads sold of one pad on one day, over all pads and days; 0 where nothing was sold."""
    seen = [pad for day in days for pad in day.pads]
    return sum(pad.sold for pad in seen) / len(seen) if seen else 0.0


def forecast(history: History, mean: float, markets: int) -> Forecast:
    """What a pad's next `markets` days follow, with the mean of all pads (over 0) as its prior."""
    seen = PRIOR_DAYS + history.days
    return Forecast(history, mean * PRIOR_DAYS + history.sold, seen / (seen + markets))


def quantile(chance: float, shape: float, p: float) -> int:
    """The least k with P(Y ≤ k) ≥ chance of a negative binomial; shape over 0, p between 0 and 1.

    >>> quantile(0.9, 1.0, 0.5), quantile(0.5, 20.0, 0.8)
    (3, 5)
    """
    log_p, log_q, below, k = log(p), log1p(-p), 0.0, 0
    while True:
        below += exp(lgamma(shape + k) - lgamma(shape) - lgamma(k + 1) + shape * log_p + k * log_q)
        if below >= chance - _CLOSE:
            return k
        k += 1


def spread(days: Sequence[SellingDay]) -> float | None:
    """How much more sales differ from day to day than a Poisson's would: Pearson's χ² over its degrees of freedom.

    1 is pure chance. Days that sold out are left out; None where too few days are left to say.
    """
    sales = [[float(day.sold) for day in some if not day.sold_out] for some in _by_sku(days).values()]
    told = [some for some in sales if len(some) > 1 and sum(some) > 0]
    freedom = sum(len(some) - 1 for some in told)
    if freedom < _LEAST_FREEDOM:
        return None
    means = [sum(some) / len(some) for some in told]
    return sum((y - mean) ** 2 / mean for some, mean in zip(told, means, strict=True) for y in some) / freedom


def _by_sku(days: Sequence[SellingDay]) -> dict[str, list[SkuDay]]:
    found: dict[str, list[SkuDay]] = {}
    for day in days:
        for pad in day.pads:
            found.setdefault(pad.sku, []).append(pad)
    return found


def _history(sku: str, days: Sequence[SkuDay]) -> History:
    return History(sku, len(days), sum(day.sold for day in days), sum(day.sold_out for day in days))
