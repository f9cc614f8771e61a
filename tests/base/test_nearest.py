"""Which known word a misspelt one was meant to be.

The likeness of names is that of M. A. Jaro, Advances in record-linkage methodology (1989), with W. E. Winkler's
weight for a common beginning (1990); the figures below are the examples usually given for it, from memory.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.base import nearest as module
from padspec.base.nearest import did_you_mean, nearest

KEYS = (
    "pad",
    "trim",
    "leaves",
    "layout",
    "art",
    "palette",
    "ground",
    "heading",
    "panel",
    "rows",
    "space",
    "sheet",
)


@pytest.mark.parametrize(("one", "two", "likeness"), [("martha", "marhta", 0.9444), ("dwayne", "duane", 0.8222)])
def test_letters_out_of_place_count_less(one: str, two: str, likeness: float) -> None:
    assert module._jaro(one, two) == pytest.approx(likeness, abs=5e-5)


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("heder", "heading"),
        ("grund", "ground"),
        ("haeding", "heading"),
        ("layuot", "layout"),
        ("rws", "rows"),
        ("leafs", "leaves"),
        ("PANNEL", "panel"),
    ],
)
def test_the_word_that_was_meant_is_found(word: str, meant: str) -> None:
    assert nearest(word, KEYS) == meant


@pytest.mark.parametrize("word", ["title", "sleeve", "price", "zzz", "trim-marks-please", ""])
def test_a_word_like_none_is_near_none(word: str) -> None:
    assert nearest(word, KEYS) == ""


def test_a_part_of_a_word_with_a_hyphen_means_the_whole() -> None:
    assert nearest("weight", ["text", "font-weight"]) == "font-weight"


def test_of_two_words_alike_the_first_is_taken() -> None:
    assert nearest("list", ["lists", "listz"]) == "lists"


def test_without_a_near_word_all_are_listed() -> None:
    assert did_you_mean("zzz", ["dots", "stripes"]) == "Known here: dots, stripes."


@given(st.text(max_size=12), st.lists(st.text(min_size=1, max_size=12), max_size=5))
def test_what_is_near_is_always_a_known_word(word: str, known: list[str]) -> None:
    assert nearest(word, known) in (*known, "")


@given(st.lists(st.text("abcdef", min_size=1, max_size=12), min_size=1, max_size=5), st.data())
def test_a_known_word_is_nearest_to_itself(known: list[str], data: st.DataObject) -> None:
    word = data.draw(st.sampled_from(known))
    assert nearest(word, known) == word
