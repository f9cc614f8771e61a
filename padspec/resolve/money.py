"""What prices are made from, typed. Amounts and shares are exact: no coin is lost in a float."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

Ending = Literal["none", ".00", ".50", ".95", ".99"]


@dataclass(frozen=True, slots=True)
class Aim:
    """What a price is to bring: a `margin` of the price before tax, or so much an hour; one of them is None."""

    margin: Fraction | None
    hourly: Decimal | None


@dataclass(frozen=True, slots=True)
class Fee:
    """What is kept of each sale: a share of what the customer pays, and so much each time."""

    share: Fraction
    each: Decimal


@dataclass(frozen=True, slots=True)
class Tax:
    """The tax on a sale as the maker entered it, and whether the price on the pad includes it."""

    share: Fraction
    in_price: bool


@dataclass(frozen=True, slots=True)
class MarketDay:
    """What a day at the market costs (None where it is not stated), and the maker's own hours of it."""

    fee: Decimal | None
    hours: Decimal


@dataclass(frozen=True, slots=True)
class Money:
    """The currency and everything that prices are worked out from; the wage is None where it is not stated.

    `overhead` is what every pad bears; `spoilage` the share of finished pads that cannot be sold; `wholesale` what
    shops pay, as a share of the retail price before tax.
    """

    currency: str
    wage: Decimal | None
    overhead: Decimal
    spoilage: Fraction
    aim: Aim
    fee: Fee
    wholesale: Fraction
    ending: Ending
    tax: Tax
    market_day: MarketDay
