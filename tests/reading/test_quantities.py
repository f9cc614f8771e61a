"""What is right by a format is right by the schema's pattern beside it, and the other way round."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.paper import sheet_names
from padspec.reading.checking.quantities import FORMATS, fault, outside
from padspec.reading.checking.schemas import schema_data

DEFINITIONS = {data["format"]: data for data in schema_data("common")["$defs"].values() if "format" in data}


@pytest.mark.parametrize(
    ("form", "text"),
    [
        ("length", "8 mm"),
        ("length", "0.8cm"),
        ("length", "3 5/8 in"),
        ("length", "9/32 in"),
        ("length", ".5 pt"),
        ("length", "3⅝ in"),
        ("length", "½ in"),
        ("length", "3 5⁄8 in"),
        ("length", "0 mm"),
        ("share", "100 %"),
        ("share", "7.5%"),
        ("length-or-share", "32 %"),
        ("length-or-share", "48 mm"),
        ("limit", "1.5"),
        ("limit", "0.25 pt"),
        ("limit", "60 %"),
        ("colour", "#fff"),
        ("colour", "#7A3B58"),
        ("colour", "rebeccapurple"),
        ("sheet-name", "jis b5"),
        ("sheet-name", "Letter"),
        ("date", "2024-02-29"),
    ],
)
def test_right_by_format_and_pattern(form: str, text: str) -> None:
    assert fault(form, text) is None
    assert re.search(DEFINITIONS[form]["pattern"], text)


@pytest.mark.parametrize(
    ("form", "text", "words"),
    [
        ("length", "8", "Did you mean 8 mm?"),
        ("length", "8 inch", "Did you mean 8 in?"),
        ("length", "8,5 mm", "8.5 mm"),
        ("length", "8 furlong", "unit furlong"),
        ("length", "1/0 in", "divides by zero"),
        ("share", "0.7", "Did you mean 70 %?"),
        ("share", "101 %", "0 % to 100 %"),
        ("length-or-share", "-1 %", "0 % to 100 %"),
        ("colour", "7a3b58", 'Did you mean "#7a3b58"?'),
        ("colour", "#7a3b5880", 'Write "#7a3b58"'),
        ("colour", "#fff8", 'Write "#fff"'),
        ("colour", "rgb(1,2,3)", "not a colour"),
        ("sheet-name", "A44", "Did you mean A4?"),
        ("date", "2023-02-29", "calendar"),
        ("date", "31.10.2025", "2025-10-31"),
        ("length", "1" * 61, "too long"),
    ],
)
def test_wrong_by_format_is_told_with_a_mend(form: str, text: str, words: str) -> None:
    error = fault(form, text)
    assert error is not None
    assert words in f"{error.message} {error.mend}"


@pytest.mark.parametrize("name", sheet_names())
def test_every_sheet_size_passes_format_and_pattern(name: str) -> None:
    assert fault("sheet-name", name) is None
    assert re.search(DEFINITIONS["sheet-name"]["pattern"], name)
    assert name in DEFINITIONS["sheet-name"]["examples"]


QUANTITIES = st.builds(
    "{}{}{}{}".format,
    st.sampled_from(["", "+"]),
    st.sampled_from(
        ["8", "0.5", ".5", "3 5/8", "5/8", "3⅝", "3 ⅝", "⅞", "⅟", "²", "5⁄8", "100", "1234567", "1.", "x", ""]
    ),
    st.sampled_from(["", " ", "  "]),
    st.sampled_from(["mm", "cm", "in", "pt", "%", "", "m", "MM", "inch"]),
)


@pytest.mark.parametrize("form", ["length", "length-or-share"])
@settings(deadline=None)
@given(text=QUANTITIES.filter(lambda text: not ("%" in text and text.strip("+").startswith("1234567"))))
def test_editors_accept_what_padspec_accepts(form: str, text: str) -> None:
    assert (fault(form, text) is None) == bool(re.search(DEFINITIONS[form]["pattern"], text))


def test_every_format_of_the_schemas_is_judged() -> None:
    assert set(DEFINITIONS) == set(FORMATS)


@pytest.mark.parametrize(
    ("text", "bound", "is_least", "expected"),
    [
        ("1 mm", "1 mm", True, False),
        ("0.99 mm", "1 mm", True, True),
        ("25.4 mm", "1 in", False, False),
        ("1.01 in", "25.4 mm", False, True),
        ("900 %", "1 mm", False, False),
        ("0 %", "1 mm", True, True),
        ("0.1 %", "1 mm", True, False),
        ("0 %", "0 mm", True, False),
        ("-3 mm", "0 mm", True, True),
    ],
)
def test_bounds_compare_lengths_of_any_unit(text: str, bound: str, is_least: bool, expected: bool) -> None:
    assert outside(text, bound, is_least) is expected
