"""Gaps in texts: {column} and doubled braces."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.reading.fill import columns_in, filled, filled_bundle, filled_text, gaps_in, unknown_columns
from padspec.reading.parsing.yaml_reader import parse
from padspec.reading.tree import as_data

CELLS = {"first": "Ada", "pitch": "7 mm", "odd": "{first}"}


@pytest.mark.parametrize(
    ("text", "made"),
    [
        ("{first}'s list", "Ada's list"),
        ("{first} & {first}", "Ada & Ada"),
        ("{{first}}", "{first}"),
        ("{{{first}}}", "{Ada}"),
        ("{last}", "{last}"),
        ("{odd}", "{first}"),
        ("}} {{", "} {"),
        ("plain", "plain"),
    ],
)
def test_gaps_are_filled_once(text, made):
    assert filled_text(text, CELLS) == made


@given(st.text())
def test_doubled_braces_keep_any_text_as_it_is(text):
    """As in Python's own format strings, which are the outside judge."""
    doubled = text.replace("{", "{{").replace("}", "}}")
    assert filled_text(doubled, CELLS) == text == doubled.format(**CELLS)


def test_a_tree_is_filled_in_every_value_and_keeps_its_places():
    tree = parse('heading: {text: "{first}"}\nrows: {labels: ["{first} 1", 2]}\n', "f")
    made = filled_bundle(tree, CELLS)
    assert as_data(made) == {"heading": {"text": "Ada"}, "rows": {"labels": ["Ada 1", "2"]}}
    assert made.get("rows").place == tree.get("rows").place


def test_a_value_that_is_one_gap_counts_as_written_without_quotes():
    """So that a column may hold a length or a number."""
    tree = parse('a: "{pitch}"\nb: "{first} {pitch}"\n', "f")
    made = filled(tree, CELLS)
    assert (made.get("a").plain, made.get("b").plain) == (True, False)


def test_columns_are_named_once_in_order():
    tree = parse('a: "{b} {a}"\nc: ["{a}", "{{d}}"]\n', "f")
    assert columns_in(tree) == ("b", "a")
    assert gaps_in("{a}{{b}}{c}") == ("a", "c")


def test_an_unknown_column_gets_the_nearest():
    problems = [*unknown_columns(parse('a: "{frst}"\n', "f"), ["first", "last"])]
    assert [str(problem) for problem in problems] == ["f:1:4: The table has no column frst. Did you mean first?"]
