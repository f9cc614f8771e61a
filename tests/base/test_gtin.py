"""Check digits of trade items against numbers that GS1 organisations print as worked examples, and against the
definition written out another way."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.base.gtin import Gtin, GtinError, check_digit, gtin

#: GS1 UK, Sweden and India print the first three with their sums; the others are from memory.
PUBLISHED = {
    "730001100001": "7",
    "501234567890": "0",
    "890400021003": "7",
    "629104150021": "3",
    "03600024145": "7",
    "03600029145": "2",
    "01234567890": "5",
    "590123412345": "7",
    "978030640615": "7",
    "9638507": "4",
    "7351353": "7",
}


@pytest.mark.parametrize(("body", "digit"), PUBLISHED.items())
def test_a_published_check_digit(body: str, digit: str) -> None:
    assert check_digit(body) == digit


@given(st.text("0123456789", min_size=11, max_size=12))
def test_a_whole_number_weighs_a_multiple_of_ten(body: str) -> None:
    # GS1 General Specifications, section 7.9: the weighted sum of all digits, the check digit with weight 1.
    digits = [int(digit) for digit in body + check_digit(body)]
    weights = [1, 3] * 7
    assert sum(d * w for d, w in zip(reversed(digits), weights, strict=False)) % 10 == 0


@given(st.text("0123456789", min_size=12, max_size=12), st.integers(0, 11), st.integers(1, 9))
def test_one_wrong_digit_is_always_found(body: str, place: int, by: int) -> None:
    whole = body + check_digit(body)
    wrong = whole[:place] + str((int(whole[place]) + by) % 10) + whole[place + 1 :]
    with pytest.raises(GtinError):
        gtin(wrong)


def test_twelve_digits_are_a_upc_a_and_thirteen_an_ean_13_spaces_or_none() -> None:
    assert gtin("036000291452") == Gtin("036000291452", "UPC-A")
    assert gtin("5 012345 678900") == Gtin("5012345678900", "EAN-13")


def test_the_same_item_has_one_key_however_it_is_written() -> None:
    assert gtin("036000291452").key == gtin("0036000291452").key


@pytest.mark.parametrize(
    ("digits", "internal"),
    [
        ("2000000000107", True),
        ("2990000000007", True),
        ("0200000000004", True),
        ("0400000000002", True),
        ("212345678904", True),  # of a UPC-A, the nought in front counts: 02
        ("4006381333931", False),
        ("3012345678901", False),
        ("012345678905", False),
    ],
)
def test_which_numbers_are_for_one_shop_alone(digits: str, internal: bool) -> None:
    body = digits[:-1]
    assert gtin(body + check_digit(body)).is_internal is internal


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("03600029145", 'lacks its check digit, which is 2. Write barcode: "036000291452".'),
        ("5012345678901", "The check digit of 5012345678901 is 1, and should be 0."),
        ("401234567890", 'without its check digit, write "4012345678901".'),
        # These twelve happen to weigh a multiple of ten by themselves, and are no UPC-A all the same.
        ("501234567890", 'If it is an EAN-13 without its check digit, write "5012345678900".'),
        ("1234567", "has 7 digits. A UPC-A has 12 and an EAN-13 has 13"),
        ("50123456789-0", "is no number of a trade item."),
        ("٥٠١٢٣٤٥٦٧٨٩٠٠", "is no number of a trade item."),
    ],
)
def test_a_number_that_cannot_be_is_refused_with_the_right_one(text: str, said: str) -> None:
    with pytest.raises(GtinError) as told:
        gtin(text)
    assert said in f"{told.value.message} {told.value.mend}"
