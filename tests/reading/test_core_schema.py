"""Numbers and truth values as YAML 1.2.2, section 10.3.2, writes them."""

import pytest

from padspec.reading.checking.core_schema import boolean, integer, number


@pytest.mark.parametrize(
    ("text", "value"), [("0", 0), ("-0", 0), ("+12", 12), ("012", 12), ("0o14", 12), ("0xC", 12), ("0x1f", 31)]
)
def test_whole_numbers(text: str, value: int) -> None:
    assert integer(text) == value


@pytest.mark.parametrize(
    "text", ["", "1.0", "1_000", "12:30", "0b1", "0O14", "-0x1", "1e3", " 1", "٣", "9" * 5000]
)
def test_what_is_no_whole_number(text: str) -> None:
    assert integer(text) is None


@pytest.mark.parametrize(
    ("text", "value"),
    [("1", 1.0), (".5", 0.5), ("5.", 5.0), ("-45", -45.0), ("1e3", 1000.0), ("1.5E-2", 0.015), ("0x10", 16.0)],
)
def test_numbers(text: str, value: float) -> None:
    assert number(text) == value


@pytest.mark.parametrize(
    "text", ["", ".", "e3", "1e999", ".inf", "-.inf", ".nan", "nan", "inf", "1,5", "8 mm", "1" * 99]
)
def test_what_is_no_finite_number(text: str) -> None:
    assert number(text) is None


@pytest.mark.parametrize(
    ("text", "value"),
    [("true", True), ("false", False), ("True", None), ("yes", None), ("off", None), ("1", None)],
)
def test_truth_values(text: str, value: bool | None) -> None:
    assert boolean(text) is value
