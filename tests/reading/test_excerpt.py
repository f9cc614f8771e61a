import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.place import Place
from padspec.reading.excerpt import excerpt


def test_carets_stand_under_the_whole_token() -> None:
    text = "pad: x\nrows: {pich: 8 mm}\n"
    assert excerpt(text, Place("f", 2, 8, 4)) == "2 | rows: {pich: 8 mm}\n  |        ^^^^"


def test_the_gutter_is_as_wide_as_the_line_number() -> None:
    assert excerpt("\n" * 99 + "a: 1", Place("f", 100, 4)) == "100 | a: 1\n    |    ^"


def test_a_tab_is_opened_to_a_stop_of_four() -> None:
    assert excerpt("a:\tb", Place("f", 1, 4)) == "1 | a:  b\n  |     ^"


def test_a_tab_itself_is_marked_over_all_its_columns() -> None:
    assert excerpt("\tb: 1", Place("f", 1, 1)) == "1 |     b: 1\n  | ^^^^"


def test_wide_characters_take_two_columns() -> None:
    assert excerpt("夜: 8", Place("f", 1, 4)) == "1 | 夜: 8\n  |     ^"
    assert excerpt("a: 夜間", Place("f", 1, 4, 2)) == "1 | a: 夜間\n  |    ^^^^"


def test_combining_marks_take_no_column() -> None:
    assert excerpt("e\u0301: 8", Place("f", 1, 5)) == "1 | e\u0301: 8\n  |    ^"


def test_a_caret_may_stand_behind_the_end_of_the_line() -> None:
    assert excerpt("a:", Place("f", 1, 3)) == "1 | a:\n  |   ^"


def test_a_long_line_is_cut_to_a_window_around_the_caret() -> None:
    first, second = excerpt("x" * 300 + "HERE" + "y" * 300, Place("f", 1, 301, 4)).splitlines()
    assert len(first) < 110
    assert first.startswith("1 | …")
    assert first.endswith("…")
    assert first[second.index("^") :][: second.count("^")] == "HERE"


def test_control_characters_are_not_printed() -> None:
    assert "\x1b" not in excerpt("a: \x1b[31m", Place("f", 1, 4))


@pytest.mark.parametrize("place", [Place("f", 0, 0), Place("f", 3, 1), Place("f", -1, 1)])
def test_a_place_that_is_no_line_gives_nothing(place: Place) -> None:
    assert excerpt("a: 1\nb: 2", place) == ""


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_lines_are_counted_whatever_ends_them(end: str) -> None:
    assert excerpt(f"a{end}b{end}c", Place("f", 2, 1)).startswith("2 | b")


@settings(deadline=None)
@given(st.text(alphabet="a\tbß夜\u0301 ", max_size=250), st.integers(1, 260), st.integers(1, 40))
def test_the_caret_stands_under_the_character_of_any_line(line: str, column: int, length: int) -> None:
    told = excerpt(line, Place("f", 1, column, length)).split("\n")
    assert len(told) == 2
    assert "^" in told[1]
    assert len(told[0]) <= 4 + 2 + 4 * 100
