"""Every place points at the very text, counted as an editor counts: lines and columns from 1."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.reading.parsing.yaml_reader import parse
from padspec.reading.tree import Mapping, Node, Scalar, Sequence

NESTED = """\
# a comment
pad: Night moth list
art: {file: art/moth.png, height:   32 %}
rows:
    pitch: "8 mm"
    'weight': 0.3 mm   # thin
designs:
  - a.yaml
  -   [b, "c d"]
"""


def at(root: Node, *path: str | int) -> Node:
    for part in path:
        if isinstance(root, Mapping) and isinstance(part, str):
            found = root.get(part)
            assert found is not None
            root = found
        else:
            assert isinstance(root, Sequence)
            assert isinstance(part, int)
            root = root.items[part]
    return root


@pytest.mark.parametrize(
    ("path", "text", "line", "column", "length"),
    [
        (("pad",), "Night moth list", 2, 6, 15),
        (("art", "file"), "art/moth.png", 3, 13, 12),
        (("art", "height"), "32 %", 3, 37, 4),
        (("rows", "pitch"), "8 mm", 5, 12, 6),
        (("rows", "weight"), "0.3 mm", 6, 15, 6),
        (("designs", 0), "a.yaml", 8, 5, 6),
        (("designs", 1, 0), "b", 9, 8, 1),
        (("designs", 1, 1), "c d", 9, 11, 5),
    ],
)
def test_a_scalar_stands_where_its_text_starts(
    path: tuple[str | int, ...], text: str, line: int, column: int, length: int
) -> None:
    node = at(parse(NESTED, "f.yaml"), *path)
    assert isinstance(node, Scalar)
    assert (node.text, node.place) == (text, Place("f.yaml", line, column, length))


def test_a_key_stands_where_it_starts_quotes_included() -> None:
    rows = at(parse(NESTED, "f"), "rows")
    assert isinstance(rows, Mapping)
    assert [entry.key_place for entry in rows.entries] == [Place("f", 5, 5, 5), Place("f", 6, 5, 8)]


def test_a_mapping_in_braces_reaches_from_brace_to_brace() -> None:
    assert at(parse(NESTED, "f"), "art").place == Place("f", 3, 6, 36)


def test_a_mapping_without_braces_stands_at_its_first_key() -> None:
    assert at(parse(NESTED, "f"), "rows").place == Place("f", 5, 5, 5)


def test_a_list_without_brackets_stands_at_its_first_dash() -> None:
    assert at(parse(NESTED, "f"), "designs").place == Place("f", 8, 3, 1)


def test_a_mapping_over_several_lines_is_as_long_as_its_first_line() -> None:
    assert at(parse("a: {b: 1,\n  c: 2}", "f"), "a").place == Place("f", 1, 4, 6)


def test_a_text_in_quotes_over_several_lines_starts_at_its_quote() -> None:
    node = at(parse('a: "one\n  two"', "f"), "a")
    assert node == Scalar("one two", Place("f", 1, 4, 4), plain=False)


def test_a_plain_text_over_several_lines_starts_at_its_first_word() -> None:
    assert at(parse("a: one\n  two\nb: 1", "f"), "a") == Scalar("one two", Place("f", 1, 4, 3))


def test_a_block_text_starts_at_its_sign() -> None:
    assert at(parse("a: |\n  one\n  two\n", "f"), "a") == Scalar("one\ntwo\n", Place("f", 1, 4, 1), plain=False)


def test_a_value_behind_an_anchor_starts_behind_it() -> None:
    assert at(parse("a: &name  8 mm", "f"), "a").place == Place("f", 1, 11, 4)


def test_a_mapping_behind_an_anchor_starts_behind_it() -> None:
    assert at(parse("a: &name # why\n  {b: c}", "f"), "a").place == Place("f", 2, 3, 6)


def test_an_alias_keeps_the_place_of_what_it_stands_for() -> None:
    assert at(parse("a: &x 8 mm\nb: *x", "f"), "b").place == Place("f", 1, 7, 4)


@pytest.mark.parametrize("text", ["a:", "a:   ", "a:\n", "a: # nothing", "{a: }", "{a: , b: 1}"])
def test_a_missing_value_stands_right_behind_the_colon(text: str) -> None:
    node = at(parse(text, "f"), "a")
    assert node == Scalar("", Place("f", 1, text.index(":") + 2, 1))


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_lines_end_as_editors_end_them(end: str) -> None:
    assert at(parse(f"a: 1{end}{end}bc: 2{end}", "f"), "bc").place == Place("f", 3, 5, 1)


def test_columns_count_characters_not_bytes() -> None:
    assert at(parse("{é😀: ü, b: 3}", "f"), "b").place == Place("f", 1, 12, 1)


def test_a_byte_order_mark_takes_no_column() -> None:
    assert at(parse("\ufeffa: 1", "f"), "a").place == Place("f", 1, 4, 1)


def scalars(node: Node) -> list[Scalar]:
    if isinstance(node, Scalar):
        return [node]
    inner = node.items if isinstance(node, Sequence) else tuple(entry.value for entry in node.entries)
    return [scalar for child in inner for scalar in scalars(child)]


WORDS = st.text("abcäß😀 .%-", min_size=1, max_size=8).map(str.strip).filter(lambda s: s[:1] in set("abcäß"))
VALUES = st.one_of(
    WORDS,
    WORDS.map("'{}'".format),
    WORDS.map('"{}"'.format),
    WORDS.map("&x {}".format),
    st.lists(WORDS, max_size=3).map(lambda words: f"[{', '.join(words)}]"),
    st.lists(WORDS, min_size=1, max_size=3).map(lambda words: "\n" + "\n".join(f"   - {word}" for word in words)),
    WORDS.map("{{in:  {}}}".format),
    WORDS.map("\n  deep:\n     er: {}".format),
)


@settings(deadline=None)
@given(st.lists(VALUES, min_size=1, max_size=6), st.sampled_from(["\n", "\r\n"]))
def test_every_scalar_points_at_text_that_starts_there(values: list[str], end: str) -> None:
    text = "".join(f"k{i}: {value}\n" for i, value in enumerate(values)).replace("\n", end)
    lines = text.split(end)
    for scalar in scalars(parse(text, "f")):
        there = lines[scalar.place.line - 1][scalar.place.column - 1 :][: scalar.place.length]
        assert there.strip("'\"") == scalar.text


def tree_or_problems(text: str) -> Mapping | tuple[Problem, ...]:
    """What parsing gives; any exception but ProblemsError is let through."""
    try:
        return parse(text, "f")
    except ProblemsError as error:
        return error.problems


@settings(deadline=None)
@given(st.text(max_size=60))
def test_any_text_gives_a_tree_or_problems(text: str) -> None:
    found = tree_or_problems(text)
    assert isinstance(found, Mapping) or (found and all(problem.message and problem.mend for problem in found))


_LETTERS = ("a", "b: ", "color: ", "1\n", "é", "😀", "\x00", "\\", "#", " #x")
_WHITE = ("\n", "\n  ", "\r\n", " ", "\t")
_SIGNS = (
    "- ",
    "? ",
    ":",
    ", ",
    "{",
    "}",
    "[",
    "]",
    "'",
    '"',
    "|\n  ",
    "|2",
    ">-\n ",
    "&a ",
    "*a",
    "!!str ",
    "<<: ",
)
_OTHERS = ("%", "@", "~", "---", "...")
YAML_PIECES = st.sampled_from((*_LETTERS, *_WHITE, *_SIGNS, *_OTHERS))


@settings(deadline=None)
@given(st.lists(YAML_PIECES, max_size=20).map("".join))
def test_problems_of_any_heap_of_yaml_signs_have_a_place_in_the_text(text: str) -> None:
    found = tree_or_problems("k: " + text)
    lines = ("k: " + text).replace("\r\n", "\n").replace("\r", "\n").split("\n")
    for problem in found if isinstance(found, tuple) else ():
        assert 1 <= problem.place.line <= len(lines)
        assert 1 <= problem.place.column <= len(lines[problem.place.line - 1]) + 1
