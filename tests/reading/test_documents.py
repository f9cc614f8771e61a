"""A file read: what YAML refuses and what the schema refuses, told together."""

import doctest
from importlib import import_module
from pkgutil import walk_packages

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import padspec.reading
from padspec.base.errors import ProblemsError
from padspec.reading.checking.schemas import KINDS, known_keys, root
from padspec.reading.describe import known_words
from padspec.reading.document import Document, Kind, read
from padspec.reading.parsing.yaml_reader import parse

from .told import DESIGN, spot, told


def in_braces(mapping: dict[str, str]) -> str:
    return "{" + ", ".join(f"{key}: {value}" for key, value in mapping.items()) + " }"


FULL = """\
pad: Night moth list
sku: NG-MOTH
trim: {width: 90 mm, height: 190 mm}
leaves: 50
layout: checklist
date: 2025-10-31
art: {file: art/moth.png, cutout: auto, height: 32 %}
palette:
  ground: {from: art, rank: 1, lighten: 70 %}
  rule:   {from: art, near: "#7a3b58", darken: 20 %}
  paper:  white
ground:  {colour: ground, pattern: {kind: dots, colour: rule, lighten: 80 %, size: 6 mm}}
heading: {text: Before dark, font: Fredoka One, size: 7.5 mm, colour: rule}
panel:   {colour: paper, corner: 6 mm, inset: 6 mm, pad: 5 mm}
rows:    {pitch: 8 mm, checkbox: 4 mm, weight: 0.3 mm, colour: rule}
space:   {height: 5 %}
blocks:  {rows: {pitch: 7 mm}, heading: {text: ""}}
sheet:   {size: A4, gutter: 4 mm, bleed: 3 mm}
limits:  {rule-contrast: {error: 1.5, warning: 2}}
allow:   {harsh-rules: black on purpose}
"""


def test_a_design_with_every_key_is_read() -> None:
    assert read(FULL, "moth.pad.yaml", "design") == Document(
        "design", "moth.pad.yaml", FULL, parse(FULL, "moth.pad.yaml")
    )


def test_faults_of_yaml_and_of_the_schema_are_told_together_in_order() -> None:
    text = DESIGN + "leaves: 0\nleaves: 9\nrows: {pitch: 8}\nsku: !x y\nfoo: 1\n"
    assert [spot(problem)[0] for problem in told(text)] == [3, 4, 5, 6, 7]


def test_the_places_of_problems_count_in_the_text_of_the_document() -> None:
    assert read("\ufeff" + DESIGN, "f", "design").text == DESIGN


def test_a_file_that_cannot_be_parsed_is_a_problems_error() -> None:
    with pytest.raises(ProblemsError, match="f:1:1"):
        read("- a", "f", "design")


def test_a_spot_that_yaml_refused_is_not_told_a_second_time() -> None:
    assert len(told(DESIGN + "leaves: *none\n")) == 1


WORDS = sorted({part for word in known_words() for part in word.split(".")} | {"pich", "Rows", "9", "x-y"})
TEXTS = (
    "",
    "8 mm",
    "8",
    "-3 mm",
    "30 %",
    "#fff",
    '"#fff"',
    "art",
    "none",
    "dots",
    "true",
    "A4",
    "~",
    "'12'",
    "1e3",
    "0x",
    "&a 1",
)
VALUES = st.recursive(
    st.sampled_from(TEXTS),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3).map(lambda items: f"[{', '.join(items)}]"),
        st.dictionaries(st.sampled_from(WORDS), inner, max_size=4).map(in_braces),
    ),
    max_leaves=12,
)


@settings(deadline=None)
@given(kind=st.sampled_from(KINDS), data=st.data())
def test_any_tree_of_known_words_gives_a_document_or_problems(kind: Kind, data: st.DataObject) -> None:
    """Each value lies at a path that leads there, so that every branch of the schemas is met."""
    path = data.draw(st.sampled_from([path for path, _ in known_keys(root(kind))]))
    text = data.draw(VALUES)
    for key in reversed(path):
        text = in_braces({key: text})
    problems = told(text[1:-1], kind)
    assert all(problem.message and problem.mend for problem in problems)


_MODULES = [module.name for module in walk_packages(padspec.reading.__path__, "padspec.reading.")]


@pytest.mark.parametrize("name", _MODULES)
def test_examples_in_docstrings_hold(name: str) -> None:
    failed, _ = doctest.testmod(import_module(name))
    assert failed == 0
