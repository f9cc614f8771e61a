"""Numbers as text, and rounding that may not miss a limit."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.numbers import mm_text, number_text, round_down, round_up

finite = st.floats(-1e6, 1e6, allow_nan=False)
steps = st.sampled_from([0.01, 0.1, 0.25, 0.5, 1.0, 5.0])


@pytest.mark.parametrize(
    ("value", "text"),
    [(8.5, "8.5"), (90, "90"), (100.0, "100"), (-0.00001, "0"), (0.0, "0"), (1 / 3, "0.3333"), (-2.5, "-2.5")],
)
def test_a_number_has_no_needless_zeros(value: float, text: str) -> None:
    assert number_text(value) == text


@settings(deadline=None)
@given(finite, st.integers(0, 9))
def test_the_text_is_the_number_to_half_a_unit_of_its_last_digit(value: float, digits: int) -> None:
    off = abs(Fraction(number_text(value, digits)) - Fraction(value))
    assert off <= Fraction(1, 2 * 10**digits)


@settings(deadline=None)
@given(finite, st.integers(0, 9))
def test_the_text_is_plain_decimal_without_trailing_zeros(value: float, digits: int) -> None:
    text = number_text(value, digits)
    assert "e" not in text.lower()
    assert text != "-0"
    assert "." not in text or text[-1] not in "0."
    assert -Decimal(text).as_tuple().exponent <= digits


@settings(deadline=None)
@given(finite)
def test_a_number_read_back_writes_the_same_text(value: float) -> None:
    assert number_text(float(number_text(value))) == number_text(value)


def test_a_length_for_a_person_has_two_digits_and_its_unit() -> None:
    assert (mm_text(7.14375), mm_text(90.0), mm_text(0.088, 3)) == ("7.14 mm", "90 mm", "0.088 mm")


@settings(deadline=None)
@given(st.floats(0, 1e4), steps)
def test_rounding_up_never_falls_below_the_value(value: float, step: float) -> None:
    rounded = round_up(value, step)
    assert value - 1e-6 <= rounded < value + step + 1e-6
    assert rounded / step == pytest.approx(round(rounded / step), abs=1e-6)


@settings(deadline=None)
@given(st.floats(0, 1e4), steps)
def test_rounding_down_never_rises_above_the_value(value: float, step: float) -> None:
    rounded = round_down(value, step)
    assert value - step - 1e-6 < rounded <= value + 1e-6
    assert rounded / step == pytest.approx(round(rounded / step), abs=1e-6)


@settings(deadline=None)
@given(st.integers(0, 10_000), steps)
def test_a_multiple_of_the_step_stays_as_it_is(n: int, step: float) -> None:
    value = n * step
    assert round_up(value, step) == pytest.approx(value, abs=1e-9)
    assert round_down(value, step) == pytest.approx(value, abs=1e-9)
