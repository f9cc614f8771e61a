"""Layouts: one kind a block, ids of their own, blocks inside panels."""

import pytest

from padspec.reading.document import read
from padspec.resources import layout_names, layout_text

from .told import only, spot, told

HEAD = "layout: x\nabout: y\nface:\n"


@pytest.mark.parametrize("name", layout_names())
def test_every_built_in_layout_is_accepted_and_named_as_its_file(name: str) -> None:
    document = read(layout_text(name), f"{name}.yaml", "layout")
    assert document.root.get("layout") == document.root.entries[0].value
    assert document.text.startswith(f"layout: {name}\n")


def test_every_kind_of_block_is_accepted_with_its_settings() -> None:
    text = HEAD + (
        "- art: {id: a, grow: 1, height: 30 %, overlap: 2 mm}\n- space: {id: s, height: 3 mm}\n"
        "- heading: {id: h, text: Notes}\n"
        "- panel: {id: p, corner: 3 mm, holds: [{rows: {id: r, grow: 10, count: 9}}]}\n"
    )
    assert told(text, "layout") == ()


def test_a_block_needs_an_id() -> None:
    assert only(HEAD + "- rows: {grow: 1}\n", "layout").message == "face.1.rows lacks id."


def test_a_block_has_one_kind() -> None:
    problem = only(HEAD + "- art: {id: a}\n  rows: {id: r}\n", "layout")
    assert problem.message == "face.1 has 2 keys, but takes at most 1."
    assert "{rows: {id: rows, grow: 1}}" in problem.mend


def test_settings_beside_their_kind_are_told_where_they_belong() -> None:
    problems = told(HEAD + "- rows:\n  id: r\n", "layout")
    assert any("It belongs in face.rows" in problem.mend for problem in problems)


def test_an_id_stands_once_panels_included() -> None:
    text = HEAD + "- art: {id: one}\n- panel: {id: two, holds: [{rows: {id: one}}]}\n"
    problem = only(text, "layout")
    assert problem.message == "The id one stands twice in this layout; the first is on line 4."
    assert spot(problem) == (5, 40, 3)


def test_a_block_inside_a_panel_is_checked() -> None:
    problem = only(HEAD + "- panel: {id: p, holds: [{rows: {id: r, pich: 3 mm}}]}\n", "layout")
    assert problem.message == "pich is not a key of face.1.panel.holds.1.rows."
    assert problem.mend == "Did you mean pitch?"


def test_only_a_panel_holds_blocks() -> None:
    assert "holds is not a key of face.1.rows" in only(HEAD + "- rows: {id: r, holds: []}\n", "layout").message


def test_a_face_needs_a_block() -> None:
    assert "at least 1" in only("layout: x\nabout: y\nface: []\n", "layout").message


@pytest.mark.parametrize("key", ["layout", "about", "face"])
def test_a_layout_lacks_none_of_its_three_keys(key: str) -> None:
    lines = {"layout": "layout: x\n", "about": "about: y\n", "face": "face: [{art: {id: a}}]\n"}
    text = "".join(line for name, line in lines.items() if name != key)
    assert only(text, "layout").message == f"the layout lacks {key}."
