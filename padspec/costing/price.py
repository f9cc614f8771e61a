"""What a pad costs in, what to ask for it out: exact sums, with fee, tax, wholesale and how a price ends.

With a price P before tax, tax share t, fee r of what the customer pays and f each time, the customer pays
P (1 + t), and P − r P (1 + t) − f is left before costs. A margin m asks that this less the cost C be m P, so
P = (C + f) ÷ (1 − m − r (1 + t)). With no margin and the hours of hands counted in C at the wanted rate it is the
price that brings that rate. Where the price on the pad includes the tax it is P (1 + t).
"""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from padspec.base.money import minor_digits, rounded
from padspec.resolve.money import Ending, Money


@dataclass(frozen=True, slots=True)
class Cost:
    """One good pad: all that it costs, what it costs without labour, and its hours of hands."""

    whole: Fraction
    without_labour: Fraction
    hours: Fraction


@dataclass(frozen=True, slots=True)
class Price:
    """A price and what it brings. `shown` stands on the pad; `paid` is what the customer pays, `tax` and `fee`
    what goes of it, `kept` what is left when the pad is paid for too. `margin` is kept ÷ price before tax, and
    `markup` kept ÷ cost; `hourly` is what is left for an hour of hands if labour is no cost, None without hours.
    """

    shown: Decimal
    paid: Fraction
    tax: Fraction
    fee: Fraction
    kept: Fraction
    margin: Fraction
    markup: Fraction | None
    hourly: Fraction | None


def aimed_price(cost: Cost, money: Money) -> Decimal:
    """The price on the pad that brings what the studio aims at, rounded up to how its prices end."""
    aim = money.aim
    if aim.hourly is not None:
        base = cost.without_labour + cost.hours * Fraction(aim.hourly)
        return price_for(base, Fraction(0), money)
    return price_for(cost.whole, aim.margin or Fraction(0), money)


def price_for(cost: Fraction, margin: Fraction, money: Money) -> Decimal:
    """The price on the pad that leaves this margin over this cost, rounded up to how prices end.

    That margin, fee and tax leave something of a price is seen to where the studio is read.
    """
    tax, fee = money.tax.share, money.fee
    left = 1 - margin - fee.share * (1 + tax)
    before_tax = (cost + Fraction(fee.each)) / left
    shown = before_tax * (1 + tax) if money.tax.in_price else before_tax
    return ended(shown, money.ending, minor_digits(money.currency))


def ended(amount: Fraction, ending: Ending, digits: int) -> Decimal:
    """The least price of this ending that is no less: .00 a whole, .50 a whole or a half, .95 and .99 those.

    >>> [str(ended(Fraction("6.02"), ending, 2)) for ending in ("none", ".00", ".50", ".95", ".99")]
    ['6.02', '7.00', '6.50', '6.95', '6.99']
    >>> str(ended(Fraction("6.995"), ".99", 2)), str(ended(Fraction(1, 3), "none", 0))
    ('7.99', '1')
    """
    coin = Fraction(1, 10**digits)
    step, past = {
        "none": (coin, Fraction(0)),
        ".00": (Fraction(1), Fraction(0)),
        ".50": (Fraction(1, 2), Fraction(0)),
        ".95": (Fraction(1), Fraction(95, 100)),
        ".99": (Fraction(1), Fraction(99, 100)),
    }[ending]
    steps = -(-(amount - past) // step)
    return rounded(steps * step + past, digits)


def brings(shown: Decimal, cost: Cost, money: Money) -> Price:
    """What a price on the pad brings at retail."""
    tax, fee = money.tax.share, money.fee
    before_tax = Fraction(shown) / (1 + tax) if money.tax.in_price else Fraction(shown)
    paid = before_tax * (1 + tax)
    taken = paid * fee.share + Fraction(fee.each)
    return _price(shown, before_tax, paid, taken, cost)


def wholesale(shown: Decimal, cost: Cost, money: Money) -> Price:
    """What shops pay for it, before tax and without a fee, and what that brings: a share of retail before tax."""
    before_tax = Fraction(shown) / (1 + money.tax.share) if money.tax.in_price else Fraction(shown)
    price = rounded(before_tax * money.wholesale, minor_digits(money.currency))
    return _price(price, Fraction(price), Fraction(price), Fraction(0), cost)


def _price(shown: Decimal, before_tax: Fraction, paid: Fraction, fee: Fraction, cost: Cost) -> Price:
    left = before_tax - fee
    kept = left - cost.whole
    return Price(
        shown=shown,
        paid=paid,
        tax=paid - before_tax,
        fee=fee,
        kept=kept,
        margin=kept / before_tax if before_tax else Fraction(0),
        markup=kept / cost.whole if cost.whole else None,
        hourly=(left - cost.without_labour) / cost.hours if cost.hours else None,
    )


def break_even(price: Price, fixed: Fraction) -> int | None:
    """How many pads pay for a market day that costs `fixed`: n = ⌈fixed ÷ kept⌉; None where no number does."""
    if price.kept <= 0:
        return 0 if fixed <= 0 else None
    return int(-(-fixed // price.kept))
