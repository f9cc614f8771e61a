"""The kinds of block: schema, reader and composer of each agree, and no setting is left unread."""

from functools import cache
from typing import Any

import pytest
from kit import disc, disc_on_ground, folder

from padspec.compose.blocks.table import KINDS
from padspec.compose.compose import compose
from padspec.reading.block_keys import block_keys
from padspec.reading.checking.schemas import BLOCKS, SCHEMAS, schema_data
from padspec.reading.gather import gather
from padspec.resolve.blocks.block import opened
from padspec.resolve.blocks.table import HOLDERS, READERS
from padspec.resolve.design import Design
from padspec.resolve.resolve import resolve

#: A value other than the usual one for each setting of each kind, and what else must be set for it to matter.
CHANGED: dict[str, dict[str, Any]] = {
    "art": {
        "file": "other.png",
        "cutout": ("none", {"file": "b.png"}),
        "trim-empty": "false",
        "height": "21 mm",
        "width": "20 %",
        "overlap": "1 mm",
        "inset": "9 mm",
        "align": "right",
        "corner": "2 mm",
        "frame": "1 mm",
        "frame-colour": ("'#123456'", {"frame": "1 mm"}),
        "keep-vector": ("true", {"file": "c.svg"}),
        "fills": "face",
    },
    "panel": {
        "colour": "'#fdf6ee'",
        "corner": "3 mm",
        "inset": "9 mm",
        "pad": "8 mm",
        "opacity": "60 %",
    },
    "columns": {"gap": "9 mm", "shares": "[1, 3]", "inset": "3 mm", "seat": "foot"},
    "stack": {"gap": "4 mm", "inset": "3 mm"},
    "repeat": {
        "titles": "[Una, Due]",
        "first": ("Due", {"titles": "[Una, Due]"}),
        "last": ("[Note]", {"titles": "[Una, Due]"}),
        "times": "2",
        "columns": "2",
        "order": ("down", {"columns": "2", "titles": "[Una, Due, Tre]"}),
        "gap": ("9 mm", {"columns": "2"}),
        "row-gap": "4 mm",
        "inset": "3 mm",
    },
    "rows": {
        "pitch": "7 mm",
        "count": "5",
        "checkbox": "3 mm",
        "checkbox-shape": "circle",
        "checkbox-line": "double",
        "checkbox-count": "2",
        "checkbox-between": ("2 mm", {"checkbox-count": "2"}),
        "checkbox-corner": "0 mm",
        "checkbox-seat": "centre",
        "checkbox-gap": "4 mm",
        "checkbox-colour": "'#345678'",
        "colour": "'#876543'",
        "weight": "0.5 mm",
        "ends": "round",
        "line": "dashed",
        "heavy-every": "2",
        "heavy-weight": ("1 mm", {"heavy-every": "2"}),
        "labels": "numbers",
        "label-first": ("7", {"labels": "numbers"}),
        "label-every": ("2", {"labels": "numbers"}),
        "label-font": ("Lora", {"labels": "numbers"}),
        "label-weight": ("400", {"labels": "numbers"}),
        "label-size": ("2.5 mm", {"labels": "numbers"}),
        "label-colour": ("'#345678'", {"labels": "numbers"}),
        "label-width": ("14 mm", {"labels": "numbers"}),
        "quantity": "12 mm",
        "priority": "3",
    },
    "grid": {
        "pitch": "4 mm",
        "mark": "crosses",
        "weight": "0.4 mm",
        "dot": ("1 mm", {"mark": "dots"}),
        "colour": "'#876543'",
        "heavy-every": "4",
    },
    "marks": {
        "count": "12",
        "across": "6",
        "size": "6 mm",
        "gap": ("2 mm", {"size": "8 mm"}),
        "shape": "square",
        "numbered": "false",
        "numeral": "40 %",
        "font": "Lora",
        "font-weight": "400",
        "colour": "'#876543'",
        "numeral-colour": "'#345678'",
        "weight": "0.5 mm",
    },
    "space": {"height": "11 mm"},
}
LETTERED: dict[str, Any] = {
    "text": "Another",
    "font": "Lora",
    "font-weight": ("500", {"font": "Lora"}),
    "size": "6 mm",
    "least-size": ("1.5 mm", {"text": "A long title that must shrink to find its room here"}),
    "lines": ("3", {"text": "A long title that must break to find its room here"}),
    "colour": "'#345678'",
    "align": "right",
    "space": "7 mm",
}

LAYOUTS = {
    "art": "- art: {id: it}\n  - panel: {id: p, grow: 1, holds: [{rows: {id: r, grow: 1}}]}",
    "heading": "- panel: {id: p, grow: 1, holds: [{heading: {id: it, text: To do}}, {rows: {id: r, grow: 1}}]}",
    "label": "- panel: {id: p, grow: 1, holds: [{label: {id: it, text: To do}}, {rows: {id: r, grow: 1}}]}",
    "brand": "- panel: {id: p, grow: 1, holds: [{brand: {id: it, text: Us}}, {rows: {id: r, grow: 1}}]}",
    "panel": "- panel: {id: it, grow: 1, holds: [{rows: {id: r, grow: 1}}]}",
    "columns": "- columns: {id: it, grow: 1, holds: [{rows: {id: r, grow: 1}}, {heading: {id: h, text: Low}}]}",
    "stack": "- stack: {id: it, grow: 1, holds: [{space: {id: s, height: 5 mm}}, {rows: {id: r, grow: 1}}]}",
    "repeat": "- panel: {id: p, grow: 1, holds: [{repeat: {id: it, grow: 1, holds: [{label: {id: t}}, "
    "{rows: {id: r, grow: 1}}]}}]}",
    "rows": "- rows: {id: it, grow: 1}",
    "grid": "- grid: {id: it, grow: 1}",
    "marks": "- marks: {id: it, grow: 1}",
    "space": "- space: {id: it}\n  - rows: {id: r, grow: 1}",
}
SVG = b"""<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20"><circle cx="20" cy="10" r="9"/></svg>"""


@cache
def pictures() -> dict[str, bytes]:
    return {"a.png": disc(), "other.png": disc(120, 240), "b.png": disc_on_ground(), "c.svg": SVG}


def made(kind: str, settings: dict[str, str]) -> Design:
    """A leaf with one block of a kind that matters, its settings in the design."""
    layout = f"layout: one\nabout: One block.\nface:\n  {LAYOUTS[kind]}\n"
    if kind == "art":
        settings = {"file": "a.png", **settings}
    written = ", ".join(f"{key}: {value}" for key, value in settings.items())
    design = f"layout: one\npad: One\ntrim: {{width: 90 mm, height: 150 mm}}\nblocks: {{it: {{{written}}}}}\n"
    text = design if settings else design.replace("blocks: {it: {}}\n", "")
    held = folder(text, files={"layouts/one.yaml": layout.encode(), **pictures()})
    return resolve(gather("x.pad.yaml", held), held)


def cases() -> list[tuple[str, str]]:
    return [(kind, key) for kind in BLOCKS for key in changed(kind)]


def changed(kind: str) -> dict[str, Any]:
    return LETTERED if kind in ("heading", "label", "brand") else CHANGED[kind]


def test_every_kind_has_a_schema() -> None:
    for kind in BLOCKS:
        assert f"block-{kind}" in SCHEMAS
        assert schema_data(f"block-{kind}")["type"] == "object"


def test_every_kind_has_one_reader_but_the_one_that_is_structure_alone() -> None:
    assert {*READERS, *HOLDERS, "repeat"} == set(BLOCKS)
    assert set(READERS) & set(HOLDERS) == set()


def test_what_holds_others_says_so_in_its_schema_and_nothing_else_does() -> None:
    held = {kind for kind in BLOCKS if "holds" in schema_data(f"block-{kind}").get("$defs", {})}
    assert held == {*HOLDERS, "repeat"}


@pytest.mark.parametrize("kind", BLOCKS)
def test_what_a_reader_reads_can_be_composed(kind: str) -> None:
    for block in opened(made(kind, {}).face):
        assert type(block) in KINDS


def test_there_is_no_composer_that_nothing_is_read_for() -> None:
    assert {type(block) for kind in BLOCKS for block in opened(made(kind, {}).face)} == set(KINDS)


@pytest.mark.parametrize("kind", BLOCKS)
def test_the_settings_tried_here_are_those_of_the_schema(kind: str) -> None:
    """A new setting needs a line above; those of lettering alone are tried with the lettering."""
    own = set(block_keys()[kind])
    if kind in ("heading", "label", "brand"):
        assert set(changed(kind)) <= own
    else:
        assert set(changed(kind)) == own


@pytest.mark.parametrize(("kind", "key"), cases(), ids=lambda value: value)
def test_each_setting_of_a_block_changes_what_comes_of_it(kind: str, key: str) -> None:
    if key not in block_keys()[kind]:
        pytest.skip("a setting of other lettering")
    value = changed(kind)[key]
    value, also = value if isinstance(value, tuple) else (value, {})
    before, after = made(kind, also), made(kind, {**also, key: value})
    assert before.face != after.face or compose(before) != compose(after)
