"""Grammage against the trade's tables. Factors by grade, checked against the US Government Paper Specification
Standards (O-63 bond, A55 text, L20 cover, K10 index); trade pages print 1406.5 for the exact 1406.139."""

import doctest

import pytest

from padspec.base import grammage, sleeve_fit, thickness
from padspec.base.errors import UnitError
from padspec.base.grammage import parse_grammage

_TABLE = {
    "16 lb bond": 60.16, "20 lb bond": 75.19, "24 lb bond": 90.23, "28 lb bond": 105.27, "32 lb bond": 120.31,
    "50 lb text": 74.01, "60 lb text": 88.81, "70 lb text": 103.61, "80 lb text": 118.41, "100 lb text": 148.01,
    "65 lb cover": 175.77, "80 lb cover": 216.33, "110 lb cover": 297.45, "130 lb cover": 351.53,
    "90 lb index": 162.72, "110 lb index": 198.88, "140 lb index": 253.11,
    "100 lb tag": 162.75, "125 lb tag": 203.43, "67 lb bristol": 146.92,
}  # fmt: skip


@pytest.mark.parametrize("module", [grammage, sleeve_fit, thickness])
def test_doctests(module):
    assert doctest.testmod(module).failed == 0


@pytest.mark.parametrize(("written", "grams"), _TABLE.items())
def test_pounds_of_a_grade(written, grams):
    assert parse_grammage(written) == pytest.approx(grams, abs=0.005)


def test_28_lb_bond_is_71_1_lb_text():
    """An equivalence of trade tables."""
    assert parse_grammage("28 lb bond") == pytest.approx(parse_grammage("71.1 lb text"), rel=5e-4)


@pytest.mark.parametrize("written", ["100 g/m2", "100 g/m²", "100 gsm", "100.0 g/m2"])
def test_grams_are_themselves(written):
    assert parse_grammage(written) == 100


@pytest.mark.parametrize(
    ("written", "mend"),
    [
        ("100", "100 g/m2"),
        ("28 lb", "bond"),
        ("28 lb bonds", "Did you mean bond?"),
        ("5 g/m2", "20 to 1000"),
        ("80,5 g/m2", "80.5"),
        ("heavy", "100 g/m2"),
    ],
)
def test_what_is_no_grammage_is_told_with_a_mend(written, mend):
    with pytest.raises(UnitError) as told:
        parse_grammage(written)
    assert mend in f"{told.value.message} {told.value.mend}"
