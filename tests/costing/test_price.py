"""Prices against definitions and worked examples: margin and markup, gross-up of a fee, keystone, break-even."""

import doctest
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.costing import price
from padspec.costing.price import Cost, aimed_price, break_even, brings, ended, price_for, wholesale
from padspec.resolve.money import Aim, Fee, MarketDay, Money, Tax


def money(**keys):
    plain = Money(
        currency="CAD",
        wage=Decimal(20),
        overhead=Decimal(0),
        spoilage=Fraction(0),
        aim=Aim(Fraction(1, 2), None),
        fee=Fee(Fraction(0), Decimal(0)),
        wholesale=Fraction(1, 2),
        ending="none",
        tax=Tax(Fraction(0), False),
        market_day=MarketDay(None, Decimal(0)),
    )
    return replace(plain, **keys)


def cost(whole, labour=0, hours=0):
    return Cost(Fraction(whole), Fraction(whole) - Fraction(labour), Fraction(hours))


CARD = Fee(Fraction("0.026"), Decimal("0.10"))


def test_doctests():
    assert doctest.testmod(price).failed == 0


@pytest.mark.parametrize(
    ("margin", "markup"),
    [("1/5", "1/4"), ("1/4", "1/3"), ("1/3", "1/2"), ("2/5", "2/3"), ("1/2", "1"), ("3/5", "3/2")],
)
def test_margin_and_markup(margin, markup):
    """m = (P − C) ÷ P and k = (P − C) ÷ C, so k = m ÷ (1 − m): by definition."""
    whole = Fraction(600)  # large, so that a coin of rounding up is nothing
    shown = price_for(whole, Fraction(margin), money())
    found = brings(shown, cost(whole), money())
    assert float(found.margin) == pytest.approx(float(Fraction(margin)), abs=1e-4)
    assert float(found.markup) == pytest.approx(float(Fraction(markup)), abs=1e-4)


def test_keystone_from_maker_to_shop_to_shelf():
    """Twice at each step: 2.40 → 4.80 → 9.60 (a university's marketing dictionary)."""
    shown = price_for(Fraction("2.40"), Fraction(3, 4), money())
    assert shown == Decimal("9.60")
    shop = wholesale(shown, cost("2.40"), money())
    assert (shop.shown, shop.margin) == (Decimal("4.80"), Fraction(1, 2))


def test_what_a_card_reader_leaves():
    """8.00 × (1 − 2.6 %) − 0.10 = 7.692: by definition."""
    found = brings(Decimal("8.00"), cost(0), money(fee=CARD))
    assert Fraction(found.shown) - found.fee == Fraction("7.692")


def test_a_price_that_leaves_five():
    """(5 + 0.10) ÷ (1 − 2.6 %) = 5.236140, up to the next coin."""
    assert price_for(Fraction(5), Fraction(0), money(fee=CARD)) == Decimal("5.24")


def test_pads_that_pay_for_a_market_day():
    """60 ÷ (8 × 0.974 − 0.10 − 2.40) = 11.338: 12."""
    found = brings(Decimal("8.00"), cost("2.40"), money(fee=CARD))
    assert break_even(found, Fraction(60)) == 12


def test_no_number_of_pads_pays_for_a_day_when_each_loses_money():
    assert break_even(brings(Decimal("2.00"), cost("2.40"), money()), Fraction(60)) is None


def test_tax_on_top_and_tax_inside_come_to_the_same_for_the_customer():
    on_top, inside = (money(tax=Tax(Fraction("0.05"), inside)) for inside in (False, True))
    first = brings(price_for(Fraction(4), Fraction(1, 2), on_top), cost(4), on_top)
    second = brings(price_for(Fraction(4), Fraction(1, 2), inside), cost(4), inside)
    assert (first.shown, second.shown) == (Decimal("8.00"), Decimal("8.40"))
    assert first.paid == second.paid == Fraction("8.40")
    assert first.tax == second.tax == Fraction("0.40")


_COSTS = st.fractions(min_value=Fraction(1, 100), max_value=200, max_denominator=1000)
_FEES = st.builds(Fee, st.fractions(0, Fraction(1, 10), max_denominator=1000), st.decimals(0, 1, places=2))
_TAXES = st.builds(Tax, st.fractions(0, Fraction(1, 4), max_denominator=100), st.booleans())
_ENDINGS = st.sampled_from(["none", ".00", ".50", ".95", ".99"])


@given(_COSTS, st.fractions(0, Fraction(3, 5), max_denominator=100), _FEES, _TAXES, _ENDINGS)
def test_the_aimed_price_brings_its_margin_and_none_that_ends_so_and_is_lower_does(
    whole, margin, fee, tax, ending
):
    till = money(aim=Aim(margin, None), fee=fee, tax=tax, ending=ending)
    one = cost(whole)
    shown = aimed_price(one, till)
    assert brings(shown, one, till).margin >= margin
    step = {"none": "0.01", ".50": "0.50"}.get(ending, "1.00")
    lower = shown - Decimal(step)
    if lower > 0:
        assert brings(lower, one, till).margin < margin


@given(_COSTS, st.fractions(Fraction(1, 60), 2, max_denominator=600), st.decimals(1, 80, places=2), _FEES)
def test_a_price_for_an_hourly_aim_brings_that_much_an_hour(whole, hours, hourly, fee):
    till = money(aim=Aim(None, hourly), fee=fee)
    one = Cost(whole + 20 * hours, whole, hours)
    assert brings(aimed_price(one, till), one, till).hourly >= Fraction(hourly)


@given(st.fractions(0, 500, max_denominator=997), _ENDINGS, st.integers(2, 3))
def test_a_price_ends_as_it_should_and_is_the_least_that_does(amount, ending, digits):
    shown = ended(amount, ending, digits)
    text = f"{shown:.2f}"
    assert Fraction(shown) >= amount
    assert ending == "none" or text[-3:] in {".50": (".50", ".00")}.get(ending, (ending,))
    assert Fraction(shown) - amount < {"none": Fraction(1, 10**digits), ".50": Fraction(1, 2)}.get(ending, 1)


def test_yen_have_no_coins():
    assert price_for(Fraction("612.3"), Fraction(1, 2), money(currency="JPY")) == Decimal(1225)
