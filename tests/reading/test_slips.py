"""Slips of the keyboard: a space missing or one too many, a comma for a point. Each is told as what it is."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.reading.parsing.yaml_reader import parse_leniently
from padspec.reading.tree import Mapping, as_data

from .told import DESIGN, added, only, spot, told


@pytest.mark.parametrize(
    ("text", "key", "place"),
    [
        ("pad:x\ntrim: {width: 90 mm, height: 190 mm}\n", "pad", (1, 1, 5)),
        ("pad:x\n\n# next\ntrim: {width: 90 mm, height: 190 mm}\n", "pad", (1, 1, 5)),
        (DESIGN + "leaves:50\nrows: {}\n", "leaves", (3, 1, 9)),
        (DESIGN + "leaves:50", "leaves", (3, 1, 9)),
        (DESIGN + "rows:\n  pitch:8 mm # wide\n  weight: 0.3 mm\n", "pitch", (4, 3, 10)),
        (DESIGN + "rows:\n  pitch:8 mm\n", "pitch", (4, 3, 10)),
        ("trim:{width: 90 mm, height: 190 mm}\npad: x\n", "trim", (1, 1, 35)),
        ("pad:x\ntrim:y\n", "pad", (1, 1, 5)),
    ],
)
def test_a_space_missing_after_a_colon_is_told_at_its_key(
    text: str, key: str, place: tuple[int, int, int]
) -> None:
    problem = only(text)
    assert problem.message == f"A space is missing after {key}: here."
    assert "with a space after the colon" in problem.mend
    assert spot(problem) == place


def test_spaces_missing_in_braces_are_told_and_nothing_that_follows_from_them() -> None:
    problems = told("pad: x\ntrim: {width:90 mm, height:190 mm}\n")
    assert [problem.message for problem in problems] == [
        "A space is missing after width: here.",
        "A space is missing after height: here.",
    ]
    assert problems[0].mend == "Write width: 90 mm with a space after the colon."
    assert [spot(problem) for problem in problems] == [(2, 8, 11), (2, 21, 13)]


def test_a_value_behind_a_missing_space_is_judged_too() -> None:
    problems = told(DESIGN + "rows: {pitch:8}")
    assert [spot(problem) for problem in problems] == [(3, 8, 7), (3, 14, 1)]
    assert problems[1].mend == "Did you mean 8 mm?"


def test_a_key_before_a_missing_space_is_judged_too() -> None:
    assert [problem.mend for problem in told(DESIGN + "rows: {pich:8 mm}")][-1] == "Did you mean pitch?"


def test_a_text_in_quotes_behind_a_missing_space_is_read_without_them() -> None:
    tree, problems = parse_leniently('{text:"Hello"}', "f")
    assert tree is not None
    assert as_data(tree) == {"text": "Hello"}
    assert problems[0].mend == 'Write text: "Hello" with a space after the colon.'


def test_a_colon_inside_a_value_is_no_slip() -> None:
    assert told("pad: note:this\ntrim: {width: 90 mm, height: 190 mm}\nheading: {text: a:b}\n") == ()


def test_an_address_on_the_web_is_no_key() -> None:
    assert "is not a key" in added("palette: {}\nart: {http://x}\n").message


@pytest.mark.parametrize(
    ("text", "place", "spaces"),
    [
        ("pad: x\n trim: {width: 90 mm, height: 190 mm}\n", (2, 2, 4), "1 space "),
        ('pad: "x"\n   trim: {width: 90 mm, height: 190 mm}\n', (2, 4, 4), "3 spaces "),
        (DESIGN + "rows:\n  pitch: 8 mm\n   weight: 0.3 mm\n", (5, 4, 6), "1 space "),
        (DESIGN + "rows:\n  pitch: 8 mm\n\n  # thin\n    weight: 0.3 mm\n", (7, 5, 6), "2 spaces "),
        (DESIGN + "sku: a\r\n  leaves: 3\r\n", (4, 3, 6), "2 spaces "),
    ],
)
def test_a_line_indented_too_deep_is_told_by_how_much(text: str, place: tuple[int, int, int], spaces: str) -> None:
    problem = only(text)
    assert f"indented {spaces}deeper than the line above" in problem.message
    assert problem.mend == f"Take {spaces}out in front of it."
    assert spot(problem) == place


def test_a_block_in_a_list_indented_too_deep_is_told_by_how_much() -> None:
    text = "layout: x\nabout: y\nface:\n  - rows:\n      id: r\n       pitch: 8 mm\n"
    assert "indented 1 space deeper" in only(text, "layout").message


def test_a_second_colon_on_one_line_stays_what_it_is() -> None:
    problem = only("pad: Notes: moths\ntrim: {width: 90 mm, height: 190 mm}\n")
    assert problem.message == "A second colon makes this line unclear."


def test_a_word_without_a_colon_is_told_rather_than_the_line_below_it() -> None:
    problem = only("pad\ntrim: {width: 90 mm, height: 190 mm}\n")
    assert "neither a key" in problem.message
    assert spot(problem) == (1, 1, 3)


@pytest.mark.parametrize(
    ("text", "mend", "place"),
    [
        ("rows: {pitch: 8,5 mm, weight: 1 mm}", "Decimals take a point: 8.5 mm.", (3, 15, 6)),
        ("rows: {weight: 0,3mm}", "Decimals take a point: 0.3mm.", (3, 16, 5)),
        ("art: {height: 32,5 %}", "Decimals take a point: 32.5 %.", (3, 15, 6)),
        (
            "ground: {pattern: {kind: dots, angle: 12,5}}",
            "Decimals take a point: 12.5. A text with a comma goes in quotes.",
            (3, 39, 4),
        ),
        (
            "sheet: {gutter: 1,000 mm}",
            "Decimals take a point: 1.000 mm. Thousands take no sign: 1000 mm.",
            (3, 17, 8),
        ),
        ("rows:\n  pitch: 8,5 mm", "Decimals take a point: 8.5 mm.", (4, 10, 6)),
    ],
)
def test_a_decimal_comma_is_told_once_with_the_whole_number(
    text: str, mend: str, place: tuple[int, int, int]
) -> None:
    problem = added(text)
    assert problem.mend == mend
    assert spot(problem) == place


def test_two_decimal_commas_with_the_same_end_are_no_repeated_key() -> None:
    problems = told("pad: x\ntrim: {width: 90,5 mm, height: 190,5 mm}\n")
    assert [problem.mend for problem in problems] == [
        "Decimals take a point: 90.5 mm.",
        "Decimals take a point: 190.5 mm.",
    ]


@pytest.mark.parametrize(
    "text", ["rows: {pitch: 8 mm, 5 mm}", "rows: {pitch: 8, 5 mm}", "heading: {text: Hi,5 a}"]
)
def test_a_key_that_only_looks_like_the_rest_of_a_number_is_no_decimal(text: str) -> None:
    assert not any("Decimals" in problem.mend for problem in told(DESIGN + text))


@given(st.integers(0, 999), st.integers(0, 999), st.sampled_from(["mm", " mm", " %", " in"]))
def test_any_number_with_a_decimal_comma_is_read_on_with_a_point(whole: int, part: int, unit: str) -> None:
    tree, problems = parse_leniently(f"{{a: {whole},{part}{unit}, b: c}}", "f")
    assert isinstance(tree, Mapping)
    assert as_data(tree) == {"a": f"{whole}.{part}{unit}", "b": "c"}
    assert len(problems) == 1
