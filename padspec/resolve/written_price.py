"""How the studio writes a price: `money.written` of studio.yaml in, the parts of a price as they are set out."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from padspec.base.money import CurrencyError, minor_digits, rounded
from padspec.base.nearest import did_you_mean
from padspec.reading.defaults import defaults
from padspec.reading.tree import Mapping
from padspec.resolve.settings import Settings, Troubles, merge

_AMOUNT, _CURRENCY = "{amount}", "{currency}"
_KNOWN = (_AMOUNT, _CURRENCY)


@dataclass(frozen=True, slots=True)
class PriceText:
    """A price in its parts: what stands before the amount, the amount, and what stands after it."""

    before: str
    amount: str
    after: str

    @property
    def text(self) -> str:
        """All of it."""
        return self.before + self.amount + self.after


@dataclass(frozen=True, slots=True)
class WrittenPrice:
    """How prices are written: the currency, what stands around the amount, and the sign before its coins."""

    currency: str
    before: str
    after: str
    sign: Literal[".", ","]

    def of(self, amount: Decimal) -> PriceText:
        """An amount in the coins of the currency."""
        digits = f"{rounded(amount, minor_digits(self.currency)):f}"
        return PriceText(self.before, digits.replace(".", self.sign), self.after)


def read_written_price(root: Mapping, troubles: Troubles) -> WrittenPrice:
    """How a studio writes prices; what is wrong with it is a trouble."""
    money = Settings(merge(defaults("studio"), root), troubles).section("money")
    currency, written = money.text("currency"), money.text("written")
    try:
        minor_digits(currency)
    except CurrencyError as error:
        troubles.add(money.place("currency"), str(error.args[0]), str(error.args[1]))
    fault = _fault(written)
    if fault is not None:
        troubles.add(money.place("written"), *fault)
    before, _, after = written.replace(_CURRENCY, currency).partition(_AMOUNT)
    return WrittenPrice(currency, before, after, "," if money.text("coins-after") == "comma" else ".")


def _fault(written: str) -> tuple[str, str] | None:
    """What is wrong with the way a price is written, and how to mend it."""
    times = written.count(_AMOUNT)
    if times != 1:
        message = f"{_AMOUNT} stands {times} times in {written!r}, and belongs there once."
        return message, f'Write, say, "${_AMOUNT}" or "{_AMOUNT} {_CURRENCY}".'
    rest = written
    for word in _KNOWN:
        rest = rest.replace(word, "")
    if "{" in rest or "}" in rest:
        start = rest.find("{")
        word = rest[start : rest.find("}", start) + 1] if start >= 0 else "}"
        return f"{word or rest[start:]} means nothing in a price.", did_you_mean(word, _KNOWN)
    return None
