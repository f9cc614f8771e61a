"""Lengths and shares: every unit, exact fractions, and refusals that say what was likely meant.

1 in = 25.4 mm exactly (international yard and pound agreement, 1959); 1 pt = 1/72 in (ISO 32000-1, 8.3.2.3).
"""

import unicodedata
from contextlib import suppress
from fractions import Fraction
from math import isfinite

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.errors import UnitError
from padspec.base.units import is_share, parse_length, parse_share

MM = {"mm": Fraction(1), "cm": Fraction(10), "in": Fraction(127, 5), "pt": Fraction(127, 360)}
units = st.sampled_from(sorted(MM))


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("8 mm", Fraction(8)),
        ("8mm", Fraction(8)),
        ("0.8 cm", Fraction(8)),
        (".5 in", Fraction(127, 10)),
        ("1 in", Fraction(127, 5)),
        ("72 pt", Fraction(127, 5)),
        ("12 pt", Fraction(127, 30)),
        ("9/32 in", Fraction(9 * 127, 32 * 5)),
        ("11/32 in", Fraction(11 * 127, 32 * 5)),
        ("3 5/8 in", Fraction(29 * 127, 8 * 5)),
        ("  3  5/8   in ", Fraction(29 * 127, 8 * 5)),
        ("3⅝ in", Fraction(29 * 127, 8 * 5)),
        ("3 ⅝in", Fraction(29 * 127, 8 * 5)),
        ("3 5⁄8 in", Fraction(29 * 127, 8 * 5)),
        ("⅓ in", Fraction(127, 15)),
        ("-½ cm", Fraction(-5)),
        ("2⅞ pt", Fraction(23 * 127, 8 * 360)),
        ("-2 mm", Fraction(-2)),
        ("−2 mm", Fraction(-2)),
        ("+2 mm", Fraction(2)),
        ("-1 1/2 cm", Fraction(-15)),
        ("0 mm", Fraction(0)),
    ],
)
def test_a_length_is_the_nearest_float_of_the_exact_fraction(text: str, mm: Fraction) -> None:
    assert parse_length(text) == float(mm)


@pytest.mark.parametrize("sign", "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞")
def test_a_fraction_of_one_character_is_as_large_as_unicode_says(sign: str) -> None:
    """The character's numeric value in the Unicode Character Database, a float."""
    assert parse_length(f"{sign} mm") == pytest.approx(unicodedata.numeric(sign), abs=1e-15)


@settings(deadline=None)
@given(st.integers(0, 999_999), st.integers(0, 9), units)
def test_a_decimal_reads_as_its_exact_fraction(digits: int, places: int, unit: str) -> None:
    exact = Fraction(digits, 10**places)
    text = f"{digits:0{places + 1}d}"
    written = f"{text[:-places]}.{text[-places:]}" if places else text
    assert parse_length(f"{written} {unit}") == float(exact * MM[unit])


@settings(deadline=None)
@given(st.integers(0, 999_999), st.integers(0, 9999), st.integers(1, 9999), units)
def test_a_mixed_fraction_reads_exactly(whole: int, over: int, under: int, unit: str) -> None:
    assert parse_length(f"{whole} {over}/{under} {unit}") == float((whole + Fraction(over, under)) * MM[unit])


@settings(deadline=None)
@given(st.integers(0, 9999), st.integers(1, 9999), units)
def test_a_length_and_its_opposite_differ_in_sign_only(over: int, under: int, unit: str) -> None:
    assert parse_length(f"-{over}/{under} {unit}") == -parse_length(f"{over}/{under} {unit}")


@settings(deadline=None)
@given(st.integers(0, 13_000))
def test_an_inch_is_72_points_and_2_54_centimetres(n: int) -> None:
    inches = parse_length(f"{n} in")
    assert parse_length(f"{n * 72} pt") == inches
    assert parse_length(f"{n * 254 // 100}.{n * 254 % 100:02d} cm") == inches


@pytest.mark.parametrize(
    ("text", "message", "mend"),
    [
        ("8", "8 has no unit.", "Did you mean 8 mm?"),
        ("0.3", "0.3 has no unit.", "Did you mean 0.3 mm? Or 30 % where a share is allowed."),
        ('3 5/8"', 'the unit " is not known here', "Did you mean 3 5/8 in?"),
        ("3″", "the unit ″ is not known here", "Did you mean 3 in?"),
        ("2 inches", "the unit inches is not known here", "Did you mean 2 in?"),
        ("8 MM", "the unit MM is not known here", "Did you mean 8 mm?"),
        ("3mmm", "the unit mmm is not known here", "Did you mean 3 mm?"),
        ("3⅝ ins", "the unit ins is not known here", "Did you mean 3 5/8 in?"),
        ("2 centimeters", "the unit centimeters is not known here", "Did you mean 2 cm?"),
        ("8 px", "the unit px is not known here", "Write a number and a unit"),
        ("8 %", "the unit % is not known here", "Write a number and a unit"),
        ("0,8 cm", "'0,8 cm' is not a quantity.", "Decimals take a point: 0.8 cm."),
        (
            "1,000 mm",
            "'1,000 mm' is not a quantity.",
            "Decimals take a point: 1.000 mm. Thousands take no sign: 1000 mm.",
        ),
        ("eight mm", "'eight mm' is not a quantity.", "Write a number and a unit"),
        ("1/0 in", "1/0 in divides by zero.", "Write a number and a unit"),
        ("", "'' is not a quantity.", "Write a number and a unit"),
        ("1e3 mm", "'1e3 mm' is not a quantity.", "Write a number and a unit"),
        ("nan mm", "'nan mm' is not a quantity.", "Write a number and a unit"),
    ],
)
def test_what_is_no_length_is_refused_with_its_likely_meaning(text: str, message: str, mend: str) -> None:
    with pytest.raises(UnitError) as caught:
        parse_length(text)
    assert message in caught.value.message
    assert caught.value.mend.startswith(mend)


@settings(deadline=None)
@given(st.text(max_size=20))
def test_no_text_whatever_raises_anything_but_a_unit_error(text: str) -> None:
    for parse in (parse_length, parse_share):
        with suppress(UnitError):
            assert isfinite(parse(text))


@pytest.mark.parametrize(
    ("text", "share"), [("32 %", 0.32), ("7.5%", 0.075), ("100 %", 1.0), ("0 %", 0.0), ("1/3 %", 1 / 300)]
)
def test_a_percentage_is_a_share_of_one(text: str, share: float) -> None:
    assert parse_share(text) == share


@pytest.mark.parametrize(
    ("text", "mend"), [("0.7", "Did you mean 70 %?"), ("70", "Did you mean 70 %?"), ("70 mm", "Write 70 %.")]
)
def test_what_is_no_percentage_is_refused_with_its_likely_meaning(text: str, mend: str) -> None:
    with pytest.raises(UnitError) as caught:
        parse_share(text)
    assert caught.value.mend == mend


def test_the_per_cent_sign_alone_makes_a_share() -> None:
    assert [is_share(text) for text in ("30 %", "30%", "30 % ", "30 mm", "30")] == [True, True, True, False, False]
