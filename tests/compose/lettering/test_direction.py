"""Which way the parts of a line run, by the Unicode Bidirectional Algorithm (UAX #9).

The expected orders are worked out by hand from the rules named beside them; python-bidi's own display of the whole
line is a second judge where no brackets are paired (it leaves rule N0 out).
"""

import pytest
from bidi.algorithm import get_display
from hypothesis import given
from hypothesis import strategies as st

from padspec.compose.lettering.direction import visual_runs

LIST = "\u05e7\u05e0\u05d9\u05d5\u05ea"  # Hebrew letters, right to left
ARABIC = "\u0642\u0627\u0626\u0645\u0629"


def seen(text: str) -> str:
    """The line as it is seen from left to right, each leftward run reversed."""
    return "".join(run.text[::-1] if run.leftwards else run.text for run in visual_runs(text))


def test_latin_is_one_run_as_it_stands() -> None:
    assert [(run.text, run.leftwards) for run in visual_runs("Before dark 7")] == [("Before dark 7", False)]


@pytest.mark.parametrize("word", [LIST, ARABIC])
def test_digits_keep_their_order_after_a_word_that_runs_leftwards(word: str) -> None:
    """European numbers stay left to right (rules W2 and I2); 2026 never prints as 6202."""
    runs = visual_runs(f"{word} 2026")
    assert runs[0].text == "2026"
    assert not runs[0].leftwards
    assert runs[1].leftwards


def test_latin_inside_hebrew_keeps_its_order() -> None:
    assert "Notes" in seen(f"{LIST} Notes")


def test_hebrew_inside_latin_runs_leftwards_in_its_place() -> None:
    assert seen(f"Notes {LIST}") == f"Notes {LIST[::-1]}"


def test_paired_brackets_take_the_direction_of_the_line() -> None:
    """Rule N0: around Latin in a line that runs leftwards both brackets run leftwards."""
    runs = visual_runs(f"{LIST} (Anna) 12")
    assert [run.text for run in runs if not run.leftwards] == ["12", "Anna"]


def test_a_change_of_script_begins_a_new_run() -> None:
    """HarfBuzz shapes one script at a time: Devanagari conjuncts break when shaped as Latin."""
    assert [run.text for run in visual_runs("Notes \u0928\u094b\u091f")] == ["Notes ", "\u0928\u094b\u091f"]


@given(st.text(alphabet=f"ab 12.,{LIST}{ARABIC}", min_size=1, max_size=24))
def test_the_order_is_that_of_a_second_implementation(text: str) -> None:
    assert seen(text) == get_display(text)


@given(
    st.text(
        alphabet=f"a1( {LIST[:2]}\u202a\u202b\u202c\u202d\u202e\u200f\u2066\u2067\u2068\u2069\u0301", max_size=12
    )
)
def test_no_invisible_character_breaks_the_order(text: str) -> None:
    shown = "".join(run.text for run in visual_runs(text))
    assert {c for c in text if c in "a1("} <= set(shown)


def test_a_character_that_no_table_knows_yet_runs_rightwards() -> None:
    """U+12544, unassigned in Unicode 14, after an Arabic digit; its default class is L (UAX #9, table 4)."""
    assert "\U00012544" in seen("\u0660\U00012544")
