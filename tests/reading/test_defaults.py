"""The defaults that every pad starts from, as the schemas give them."""

import pytest

from padspec.base.place import Place
from padspec.reading.checking import schemas
from padspec.reading.defaults import block_defaults, defaults
from padspec.reading.tree import Mapping, Scalar, as_data

BLOCKS = {
    "art": {
        "cutout": "auto",
        "trim-empty": "true",
        "height": "30 %",
        "width": "100 %",
        "overlap": "auto",
        "inset": "auto",
        "fills": "block",
        "align": "centre",
        "corner": "auto",
        "frame": "auto",
        "frame-colour": "paper",
        "keep-vector": "false",
    },
    "heading": {
        "text": "To do",
        "font": "Fredoka",
        "font-weight": "600",
        "size": "auto",
        "least-size": "auto",
        "most-size": "auto",
        "fit": "size",
        "tracking": "0",
        "lines": "2",
        "arc": "0",
        "colour": "lettering",
        "outline": "none",
        "outline-colour": "paper",
        "align": "centre",
        "seat": "head",
        "space": "3 mm",
    },
    "panel": {"colour": "paper", "opacity": "100 %", "corner": "auto", "inset": "auto", "pad": "auto"},
    "rows": {
        "pitch": "8 mm",
        "checkbox": "4 mm",
        "checkbox-shape": "square",
        "checkbox-line": "single",
        "checkbox-count": "1",
        "checkbox-between": "1.2 mm",
        "checkbox-corner": "0.8 mm",
        "checkbox-seat": "rule",
        "checkbox-gap": "2.5 mm",
        "colour": "rule",
        "weight": "0.3 mm",
        "ends": "butt",
        "line": "solid",
        "heavy-every": "0",
        "labels": "none",
        "label-first": "1",
        "label-every": "1",
        "label-font": "Nunito",
        "label-weight": "700",
        "label-size": "auto",
        "label-colour": "lettering",
        "label-width": "auto",
        "quantity": "none",
        "priority": "0",
    },
    "space": {},
}


@pytest.mark.parametrize("kind", BLOCKS)
def test_defaults_of_a_block(kind: str) -> None:
    assert as_data(block_defaults(kind)) == BLOCKS[kind]


@pytest.mark.parametrize("kind", [kind for kind in BLOCKS if kind != "space"])
def test_a_design_gives_a_block_the_same_defaults(kind: str) -> None:
    assert as_data(defaults("design", kind)) == BLOCKS[kind]


def test_defaults_of_a_studio() -> None:
    own = {key: value for key, value in as_data(defaults("studio")).items() if key not in schemas.BLOCKS}  # type: ignore[union-attr]
    assert own == {
        "studio": "My studio",
        "colourway": "natural",
        "sheet": {
            "size": "A4",
            "n-up": "most",
            "gutter": "4 mm",
            "bleed": "3 mm",
            "least-bleed": "1.5 mm",
            "marks": "true",
        },
        "printer": {
            "margins": {"left": "4.2 mm", "right": "4.2 mm", "top": "4.2 mm", "bottom": "4.2 mm"},
            "offset": {"x": "0 mm", "y": "0 mm"},
            "scale": {"x": "100 %", "y": "100 %"},
            "turn": "unknown",
            "placement-error": "1 mm",
            "skew-error": "0.5 mm",
            "least-line": "0.25 pt",
            "least-screened-line": "0.75 pt",
            "sheet-minutes": "1.5",
        },
        "cutter": {
            "kind": "knife",
            "error": "0.5 mm",
            "sheets-at-once": "usual",
            "clamp-height": "40 mm",
            "stroke-seconds": "usual",
        },
        "overs": {"share": "5 %", "test-sheets": "2"},
        "stock": {
            "grammage": "100 g/m2",
            "caliper": "0.12 mm",
            "bulk": "unknown",
            "tolerance": "7 %",
            "price": "unknown",
            "ink-limit": "260 %",
        },
        "board": {
            "thickness": "0.6 mm",
            "density": "0.65",
            "tolerance": "5 %",
            "sheet": {"width": "762 mm", "height": "1016 mm"},
            "price": "unknown",
            "stroke-seconds": "40",
        },
        "adhesive": {
            "coats": "2",
            "rate": "200",
            "dry-minutes": "15",
            "set-minutes": "60",
            "pad-seconds": "5",
            "price": "unknown",
        },
        "clamp": {"height": "150 mm", "count": "1", "load-minutes": "4"},
        "magnets": {
            "count": "0",
            "width": "25 mm",
            "height": "60 mm",
            "thickness": "0.76 mm",
            "density": "3.7",
            "pull": "usual",
            "slide": "20 %",
            "safety": "1.5",
            "seconds": "15",
            "price": "unknown",
        },
        "sleeves": [],
        "sleeve-ease": {"width": "3 mm", "length": "6 mm", "seconds": "20"},
        "extras": [{"name": "label", "price": "unknown", "seconds": "10"}],
        "times": {
            "page-minutes": "3",
            "ink-dry-minutes": "15",
            "count-seconds": "40",
            "slit-seconds": "15",
            "trim-strokes": "0",
            "check-seconds": "10",
        },
        "other-sheets": [],
        "tolerance": {"sliver": "0 mm", "off-centre": "1.5 mm", "chance": "1 %"},
        "offcuts": [
            {"name": "bookmark", "width": "45 mm", "height": "150 mm"},
            {"name": "gift tag", "width": "50 mm", "height": "90 mm"},
            {"name": "swatch", "width": "40 mm", "height": "40 mm"},
        ],
        "ink": {"allowance": "20 %"},
        "money": {
            "currency": "EUR",
            "written": "{amount} {currency}",
            "coins-after": "point",
            "wage": "unknown",
            "overhead": "0",
            "spoilage": "2 %",
            "aim": {"margin": "50 %"},
            "fee": {"share": "0 %", "each": "0"},
            "wholesale": "50 %",
            "ending": "none",
            "tax": {"share": "0 %", "in-price": "false"},
            "market-day": {"fee": "unknown", "hours": "0"},
        },
        "restock": {"chance": "90 %", "markets": "1", "least": "0"},
        "tag-sheets": [],
        "stamp": {"text": [], "width": "60 mm", "font": "Fredoka", "art-height": "18 mm", "threshold": "50 %"},
        "press": {"intent": "relative", "black-point": "true", "pages": "face"},
        "safe-margin": "3 mm",
        "glue-edge": {"edge": "head", "margin": "5 mm"},
        "leaves": "50",
        "layout": "checklist",
        "ground": {"colour": "ground", "pattern": "none"},
    }


def test_defaults_at_a_path() -> None:
    assert as_data(defaults("studio", "printer", "margins")) == dict.fromkeys(
        ("left", "right", "top", "bottom"), "4.2 mm"
    )


def test_defaults_of_a_pattern_though_there_is_none_by_default() -> None:
    assert as_data(defaults("design", "ground")) == {"colour": "ground", "pattern": "none"}
    assert as_data(defaults("design", "ground", "pattern")) == {
        "colour": "pattern",
        "colours": ["paper"],
        "size": "auto",
        "mark": "auto",
        "angle": "auto",
        "phase": "centred",
        "seed": "1",
        "turn": "0",
        "jitter": "0 %",
    }


def test_a_key_without_a_default_is_absent() -> None:
    assert defaults("design").get("pad") is None
    assert defaults("design").get("palette") is None
    assert block_defaults("rows").get("count") is None


def test_defaults_know_that_they_stand_in_no_file() -> None:
    assert defaults("design").get("leaves") == Scalar("50", Place("padspec's default", 0, 0))


def test_defaults_are_built_once() -> None:
    assert defaults("design", "rows") is defaults("design", "rows")


def test_a_path_that_is_not_known_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        defaults("design", "rows", "pich")


@pytest.mark.parametrize("word", ["sheet", "colour", "length"])
def test_only_blocks_have_block_defaults(word: str) -> None:
    with pytest.raises(KeyError):
        block_defaults(word)


def test_sub_keys_come_as_mappings() -> None:
    assert isinstance(defaults("studio").get("printer"), Mapping)
