"""What YAML allows and a maker's file may not hold, each with its place and how to mend it."""

import pytest

from padspec.base.errors import ProblemsError
from padspec.reading.parsing.yaml_reader import parse
from padspec.reading.tree import as_data

from .told import refused, spot


@pytest.mark.parametrize(
    "text", ["0012", "off", "yes", "12:30", "~", "null", "1_000", "0o14", ".inf", "2025-10-31", "1e3"]
)
def test_a_scalar_stays_as_written(text: str) -> None:
    assert as_data(parse(f"a: {text}", "f")) == {"a": text}


def test_a_key_that_stands_twice_names_both_lines() -> None:
    (problem,) = refused("pad: a\nsku: b\npad: c\n")
    assert "lines 1 and 3" in problem.message
    assert spot(problem) == (3, 1, 3)


def test_the_same_key_in_two_mappings_is_no_repetition() -> None:
    assert as_data(parse("a: {x: 1}\nb: {x: 2}", "f")) == {"a": {"x": "1"}, "b": {"x": "2"}}


def test_color_is_read_as_colour() -> None:
    data = as_data(parse("rows: {color: red, checkbox-color: blue}", "f"))
    assert data == {"rows": {"colour": "red", "checkbox-colour": "blue"}}


def test_a_key_that_only_contains_color_is_left_alone() -> None:
    assert as_data(parse("colorful: 1", "f")) == {"colorful": "1"}


def test_both_spellings_in_one_mapping_are_one_key() -> None:
    (problem,) = refused("rows:\n  color: red\n  colour: blue\n")
    assert problem.message == "color and colour are the same key, on lines 2 and 3."
    assert spot(problem) == (3, 3, 6)


def test_names_of_the_makers_own_keep_their_spelling() -> None:
    text = "palette: {accent-color: red}\nblocks: {color-rows: {color: red}}"
    assert as_data(parse(text, "f")) == {
        "palette": {"accent-color": "red"},
        "blocks": {"color-rows": {"colour": "red"}},
    }


@pytest.mark.parametrize(
    ("text", "place"), [("a: !!str 1", (1, 4, 6)), ("a: !mine {b: 1}", (1, 4, 6)), ("b: 1\na: ! x", (2, 4, 2))]
)
def test_an_explicit_tag_is_refused_where_it_stands(text: str, place: tuple[int, int, int]) -> None:
    (problem,) = refused(text)
    assert "tag" in problem.message
    assert spot(problem) == place


def test_a_merge_key_is_refused_by_name() -> None:
    (problem,) = refused("a: &x {b: 1}\nc:\n  <<: *x\n  d: 2\n")
    assert "merge key (<<)" in problem.message
    assert spot(problem) == (3, 3, 2)


@pytest.mark.parametrize("text", ["{a: 1}: b", "? [a]\n: b", "&x a: 1\n*x : 2", "? \n: b"])
def test_a_key_that_is_no_text_is_refused(text: str) -> None:
    (problem,) = refused(text)
    assert "key" in problem.message


def test_a_second_document_is_refused_where_it_starts() -> None:
    (problem,) = refused("a: 1\n---\nb: 2\n")
    assert problem.message.startswith("A second document")
    assert spot(problem) == (2, 1, 3)


def test_one_document_may_be_marked() -> None:
    assert as_data(parse("---\na: 1\n...\n", "f")) == {"a": "1"}


def test_an_anchor_may_be_used_twice() -> None:
    assert as_data(parse("a: &x {b: 1}\nc: *x\nd: *x", "f")) == {"a": {"b": "1"}, "c": {"b": "1"}, "d": {"b": "1"}}


def test_an_alias_without_anchor_is_refused_with_the_nearest() -> None:
    (problem,) = refused("a: &ground red\nb: *grond\n")
    assert spot(problem) == (2, 4, 6)
    assert "*ground" in problem.mend


def test_an_alias_inside_what_it_stands_for_is_refused() -> None:
    (problem,) = refused("a: &x\n  b: [1, *x]\n")
    assert "never end" in problem.message
    assert spot(problem) == (2, 10, 2)


@pytest.mark.parametrize(
    ("text", "place", "words"),
    [
        ("a: 1\n\tb: 2", (2, 1), "tab"),
        ("a:\n  b: 1\n\tc: 2", (3, 1), "tab"),
        ("a:\tb", (1, 3), "tab"),
        ("a: b: c", (1, 5), "colon"),
        ("a: 1\nword\nb: 2", (2, 1), "neither a key"),
        ('a: 1\nb: "open\nc: 2', (2, 4), "never closed"),
        ("a: {b: 1\nc: 2", (2, 2), "}"),
        ("a: [1, 2\nc: ]x", (2, 2), "]"),
        ("a:\n    b: 1\n  c: 2", (3, 3), "indentation"),
        ("a: @x", (1, 4), "@"),
        ("a: *", (1, 4), "*"),
        ('a: "\\q"', (1, 6), "backslash"),
        ("a: - b", (1, 4), "-"),
        ("a: | x\n  y", (1, 4), "|"),
        ("a: %x", (1, 4), "%"),
        ("a: `x", (1, 4), "`"),
        ("a: }", (1, 4), "value"),
    ],
)
def test_broken_yaml_is_told_in_plain_words(text: str, place: tuple[int, int], words: str) -> None:
    (problem,) = refused(text)
    assert words in problem.message
    assert (problem.place.line, problem.place.column) == place
    assert problem.mend


def test_a_bare_hex_colour_in_braces_is_recognised_though_it_breaks_the_braces() -> None:
    (problem,) = refused("ground: {colour: #fff, pattern: none}\nleaves: 50\n")
    assert '"#fff"' in problem.mend
    assert spot(problem) == (1, 18, 4)


@pytest.mark.parametrize(
    "text", ["a: 'x\ty'", 'a: "x\ty"', "a: |\n  x\ty\n", "a: 1 # x\ty\n# \tz", "a: ' # '\nb: 1 #\t"]
)
def test_a_tab_inside_quotes_or_comments_is_no_fault(text: str) -> None:
    assert refused(text) == ()


@pytest.mark.parametrize(
    ("text", "message"), [("", "empty"), ("# only\n", "empty"), ("- a", "key"), ("word", "key"), ("---\n", "key")]
)
def test_a_file_that_holds_no_mapping_is_refused(text: str, message: str) -> None:
    (problem,) = refused(text)
    assert message in problem.message


@pytest.mark.parametrize(
    ("text", "code", "place"),
    [
        ("a: \x00", "U+0000", (1, 4)),
        ("a: 1\nb: '\x1b[0m'", "U+001B", (2, 5)),
        ("a: x\u2028y", "U+2028", (1, 5)),
        ("a: \ufeffx", "U+FEFF", (1, 4)),
        ("a: \ud800", "U+D800", (1, 4)),
    ],
)
def test_a_control_character_is_refused_by_its_code(text: str, code: str, place: tuple[int, int]) -> None:
    (problem,) = refused(text)
    assert code in problem.message
    assert (problem.place.line, problem.place.column) == place


def test_several_refusals_are_all_told() -> None:
    problems = refused("a: !x 1\nb: 1\nb: 2\n<<: 3\nc: *none\n")
    assert [problem.place.line for problem in problems] == [1, 3, 4, 5]


def test_what_was_refused_before_a_syntax_error_is_told_with_it() -> None:
    assert [problem.place.line for problem in refused("b: 1\nb: 2\nc: @")] == [2, 3]


def test_parse_raises_with_problems_in_order_of_place() -> None:
    with pytest.raises(ProblemsError) as caught:
        parse("a: &x {b: 1, b: 2}\na: !y 1", "f")
    places = [(problem.place.line, problem.place.column) for problem in caught.value.problems]
    assert places == sorted(places)


@pytest.mark.parametrize("escape", [r"\0", r"\a", r"\x1b", r"\uFFFE", r"\ud800"])
def test_an_escape_for_a_character_that_no_file_can_hold_is_refused(escape: str) -> None:
    """XML 1.0, section 2.2: such a title would make a face that no program opens."""
    with pytest.raises(ProblemsError) as refused:
        parse(f'pad: "Moth{escape} list"\n', "x.pad.yaml")
    assert str(refused.value).startswith("x.pad.yaml:1:6: This text hides a character")
