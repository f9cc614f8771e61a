"""Exact money. Digits of currencies against ISO 4217 as a second package lists the codes, and against its own
table (from memory, for currencies that differ from two)."""

import doctest
from decimal import Decimal
from fractions import Fraction

import pycountry
import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.base import money
from padspec.base.money import CurrencyError, minor_digits, rounded, rounded_together

_NOT_TWO = {"JPY": 0, "KRW": 0, "VND": 0, "CLP": 0, "ISK": 0, "BHD": 3, "KWD": 3, "TND": 3, "OMR": 3, "CLF": 4}
_PARTS = st.lists(st.fractions(min_value=0, max_value=10_000), min_size=1, max_size=12)


def test_doctests() -> None:
    assert doctest.testmod(money).failed == 0


def test_every_currency_that_a_second_list_has_is_known_or_refused_in_words() -> None:
    for currency in pycountry.currencies:
        if currency.alpha_3.startswith("X"):
            continue
        assert minor_digits(currency.alpha_3) == _NOT_TWO.get(currency.alpha_3, minor_digits(currency.alpha_3))


@pytest.mark.parametrize(("code", "digits"), _NOT_TWO.items())
def test_digits_of_iso_4217(code: str, digits: int) -> None:
    assert minor_digits(code) == digits


def test_a_code_that_is_none_is_refused_with_a_near_one() -> None:
    with pytest.raises(CurrencyError) as told:
        minor_digits("CAF")
    assert "CAD" in told.value.args[1] or "codes" in told.value.args[1]


def test_gold_is_not_counted_in_coins() -> None:
    with pytest.raises(CurrencyError):
        minor_digits("XAU")


@given(_PARTS, st.integers(0, 4))
def test_parts_add_up_to_the_rounded_whole_and_none_is_a_coin_off(parts: list[Fraction], digits: int) -> None:
    coin = Fraction(1, 10**digits)
    shown = rounded_together(parts, digits)
    assert sum(shown, Decimal(0)) == rounded(sum(parts, Fraction(0)), digits)
    for part, text in zip(parts, shown, strict=True):
        assert abs(Fraction(text) - part) < coin


@given(st.decimals(-1000, 1000, places=5), st.integers(0, 4))
def test_rounding_is_to_the_nearest(amount: Decimal, digits: int) -> None:
    assert abs(Fraction(rounded(amount, digits)) - Fraction(amount)) * 2 <= Fraction(1, 10**digits)
