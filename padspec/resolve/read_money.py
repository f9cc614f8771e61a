"""The money of studio.yaml, typed; a currency that is none, or a price ending that it cannot have, is told."""

from decimal import Decimal
from fractions import Fraction
from typing import cast

from padspec.base.money import CurrencyError, minor_digits
from padspec.base.numbers import percent_text
from padspec.base.place import Place
from padspec.base.units import exact_share
from padspec.resolve.money import Aim, Ending, Fee, MarketDay, Money, Tax
from padspec.resolve.price import price_of
from padspec.resolve.settings import Settings

#: What every installation can take without asking the list of currencies, so that a build stays quick.
_USUAL = ("EUR", "CAD", "USD", "GBP", "AUD", "NZD", "CHF", "SEK", "NOK", "DKK")


def read_money(money: Settings) -> Money:
    """Everything under `money`, defaults beneath."""
    ending = cast(Ending, money.text("ending"))
    currency = money.text("currency")
    _look_at_currency(money, currency, ending)
    fee, tax, day = money.section("fee"), money.section("tax"), money.section("market-day")
    aim = _aim(money.section("aim"))
    kept_back = _share(fee, "share") * (1 + _share(tax, "share"))
    if (aim.margin or Fraction(0)) + kept_back >= 1:
        most = percent_text(float(1 - kept_back))
        message = (
            f"The fee leaves {most} of a price, and no margin of {percent_text(float(aim.margin or 0))} in it."
        )
        money.troubles.add(_aim_place(money), message, f"Aim for less than {most}, or look at the fee.")
        aim = Aim(Fraction(0), None)
    return Money(
        currency=currency,
        wage=price_of(money, "wage"),
        overhead=money.amount("overhead"),
        spoilage=_spoilage(money),
        aim=aim,
        fee=Fee(_share(fee, "share"), fee.amount("each")),
        wholesale=_share(money, "wholesale"),
        ending=ending,
        tax=Tax(_share(tax, "share"), tax.flag("in-price")),
        market_day=MarketDay(price_of(day, "fee"), Decimal(day.text("hours"))),
    )


def _look_at_currency(money: Settings, currency: str, ending: Ending) -> None:
    if currency in _USUAL:
        return
    try:
        digits = minor_digits(currency)
    except CurrencyError as error:
        money.troubles.add(money.place("currency"), *error.args)
        return
    if ending not in ("none", ".00") and digits < 2:
        message = f"{currency} is counted in {digits} digits after the point: no price can end in {ending}."
        money.troubles.add(money.place("ending"), message, "Write none or .00.")


def _aim(aim: Settings) -> Aim:
    """What the maker wrote wins over the default that lies beneath it."""
    written = next((entry.key for entry in aim.bundle.entries if entry.value.place.line), "margin")
    if written == "hourly":
        return Aim(None, aim.amount("hourly"))
    return Aim(_share(aim, "margin"), None)


def _aim_place(money: Settings) -> Place:
    place = money.place("aim")
    return place if place.line else money.section("fee").place("share")


def _spoilage(money: Settings) -> Fraction:
    share = _share(money, "spoilage")
    if share >= 1:
        message = "If all pads are spoilt, none is left to bear the cost."
        money.troubles.add(money.place("spoilage"), message, "Write less than 100 %, such as 2 %.")
        return Fraction(0)
    return share


def _share(settings: Settings, key: str) -> Fraction:
    settings.share(key)  # tells what is wrong with it
    return exact_share(settings.text(key))
