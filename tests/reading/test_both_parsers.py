"""The fast parser and the one in plain Python give the same, so that no pad depends on how PyYAML was built."""

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.errors import ProblemsError
from padspec.reading.parsing.yaml_reader import parse
from padspec.reading.tree import Mapping

from .test_positions import NESTED, YAML_PIECES

pytestmark = pytest.mark.skipif(not yaml.__with_libyaml__, reason="PyYAML was built without the fast parser")


def read_by(fast: bool, text: str) -> Mapping | None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(yaml, "__with_libyaml__", fast)
        try:
            return parse(text, "f")
        except ProblemsError:
            return None


@pytest.mark.parametrize(
    "text",
    [
        NESTED,
        "a: [b: c, {d, e: }, ? f]\n",
        "? a\n: b\n",
        "a: >+\n  x\n\n   y\n\nb: '''x'\n",
        "a:\n- b\n- - c\n  - d\n",
        "a: &x {b: 1}\nc: [*x, *x]\n",
        '{c: "x", colour: , }',
        "{text: What now?, b: a ? b}",
        "{b: [a? ]}",
    ],
)
def test_they_give_the_same_tree(text: str) -> None:
    tree = read_by(True, text)
    assert tree is not None
    assert tree == read_by(False, text)


@pytest.mark.parametrize("text", ["a:\tb", "a: b\t# c", "k: |#x", "k: |2\t\n   a", "a: 1\n\t\nb: 2"])
def test_what_only_the_fast_one_reads_is_refused(text: str) -> None:
    assert read_by(True, text) is None
    assert read_by(False, text) is None


@settings(deadline=None)
@given(st.lists(YAML_PIECES, max_size=16).map("".join))
def test_they_agree_on_any_heap_of_yaml_signs(text: str) -> None:
    assert read_by(True, "k: " + text) == read_by(False, "k: " + text)
