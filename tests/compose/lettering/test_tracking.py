"""Tracking: air between letters, none after the last, no ligatures, and joined scripts left alone."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.compose.lettering.shaping import shape_line

from .fonts import shelved


@given(st.text("HOMES IN", min_size=1, max_size=12), st.floats(-0.1, 0.5))
def test_every_gap_and_no_end_grows_by_the_tracking(text: str, tracking: float) -> None:
    plain, tracked = shape_line(shelved("Nunito"), text), shape_line(shelved("Nunito"), text, tracking)
    assert tracked.advance == pytest.approx(plain.advance + (len(text) - 1) * tracking, abs=1e-9)


def test_each_letter_moves_by_the_gaps_before_it() -> None:
    plain, tracked = shape_line(shelved(), "HOMES"), shape_line(shelved(), "HOMES", 0.1)
    moved = [b.x - a.x for a, b in zip(plain.letters, tracked.letters, strict=True)]
    assert moved == pytest.approx([0, 0.1, 0.2, 0.3, 0.4], abs=1e-9)


def test_kerning_stays() -> None:
    pair = shape_line(shelved("Nunito"), "AV", 0.1).advance
    apart = shape_line(shelved("Nunito"), "A").advance + shape_line(shelved("Nunito"), "V").advance
    assert pair < apart + 0.1 - 0.01


def test_a_ligature_is_taken_apart() -> None:
    """CSS Text 3, section 8.2: no optional ligatures where letters are spaced. Lora has one for f and i."""
    assert len(shape_line(shelved("Lora"), "fi").letters) == 1
    assert [letter.character for letter in shape_line(shelved("Lora"), "fi", 0.05).letters] == ["f", "i"]


@pytest.mark.parametrize("text", ["\u0642\u0627\u0626\u0645\u0629", "\u0938\u0942\u091a\u0940"])
def test_a_script_whose_letters_join_is_left_as_it_is(text: str) -> None:
    assert shape_line(shelved(), text, 0.3).outline == shape_line(shelved(), text).outline


def test_an_accent_stays_on_its_letter() -> None:
    line = shape_line(shelved("Baloo 2"), "x\u0323\u0302y", 0.5)
    assert [letter.character for letter in line.letters] == ["x", "y"]


def test_hebrew_is_tracked_as_latin_is() -> None:
    word = "\u05e7\u05e0\u05d9"
    assert shape_line(shelved(), word, 0.2).advance == pytest.approx(
        shape_line(shelved(), word).advance + 2 * 0.2, abs=1e-9
    )
