"""Which of several settings wins: default, layout, studio, kind of block, block; the last of them."""

import pytest
from kit import PLAIN, apply, pad, problems

from padspec.base.colour import Colour
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import Design, blocks

LAYOUT = """\
layout: mine
about: A panel of two lists.
face:
  - panel:
      id: panel
      grow: 1
      holds:
        - heading: {id: heading, text: From the layout}
        - rows: {id: upper, grow: 1, pitch: 9 mm}
        - rows: {id: lower, grow: 1, pitch: 9 mm}
"""
MINE = apply(PLAIN, {"layout": "mine"})


def made(changes: dict[str, object], studio: str = "") -> Design:
    return pad(apply(MINE, changes), studio, {"layouts/mine.yaml": LAYOUT.encode()}).design


def pitches(design: Design) -> dict[str, float]:
    return {block.id: block.pitch for block in blocks(design) if isinstance(block, Rows)}


def heading(design: Design) -> Heading:
    return next(block for block in blocks(design) if isinstance(block, Heading))


def panel(design: Design) -> Panel:
    return next(block for block in blocks(design) if isinstance(block, Panel))


STUDIO = "studio: Umberwick Paper\nrows: {pitch: 7.5 mm, weight: 0.4 mm}\nheading: {text: From the studio}\n"


def test_the_default_holds_where_nothing_is_written() -> None:
    rows = next(block for block in blocks(pad().design) if isinstance(block, Rows))
    assert (rows.pitch, rows.squares.size, rows.weight, rows.count) == (8, 4, 0.3, None)


def test_the_layout_wins_over_the_default() -> None:
    assert pitches(made({})) == {"upper": 9, "lower": 9}
    assert heading(made({})).text == "From the layout"


def test_the_studio_wins_over_the_layout() -> None:
    design = made({}, STUDIO)
    assert pitches(design) == {"upper": 7.5, "lower": 7.5}
    assert heading(design).text == "From the studio"


def test_the_kind_in_the_design_wins_over_the_studio() -> None:
    assert pitches(made({"rows.pitch": "6.5 mm"}, STUDIO)) == {"upper": 6.5, "lower": 6.5}


def test_the_block_wins_over_its_kind() -> None:
    design = made({"rows.pitch": "6.5 mm", "blocks.lower.pitch": "5.5 mm"}, STUDIO)
    assert pitches(design) == {"upper": 6.5, "lower": 5.5}


def test_bundles_merge_key_by_key() -> None:
    design = made({"rows.pitch": "6.5 mm", "blocks.lower.checkbox": "3 mm"}, STUDIO)
    lower = next(block for block in blocks(design) if block.id == "lower")
    assert isinstance(lower, Rows)
    assert (lower.pitch, lower.squares.size, lower.weight) == (6.5, 3, 0.4)


def test_a_colour_replaces_another_whole_and_keeps_no_lightening_of_it() -> None:
    studio = 'studio: Umberwick Paper\npanel: {colour: {from: "#204060", lighten: 80 %}}\n'
    assert panel(made({}, studio)).colour != Colour.from_hex("#204060")
    assert panel(made({"panel.colour.from": "#604020"}, studio)).colour == Colour.from_hex("#604020")


def test_a_palette_name_of_the_design_replaces_the_studios_whole() -> None:
    studio = 'studio: Umberwick Paper\npalette: {ink: {from: "#204060", darken: 30 %}, wash: "#ddeeff"}\n'
    palette = dict(made({"palette.ink.from": "#604020"}, studio).palette)
    assert palette["ink"] == Colour.from_hex("#604020")
    assert palette["wash"] == Colour.from_hex("#ddeeff")


def test_a_named_sheet_replaces_a_sheet_of_width_and_height_whole() -> None:
    studio = "studio: Umberwick Paper\nsheet: {size: {width: 300 mm, height: 400 mm}, gutter: 5 mm}\n"
    assert made({}, studio).sheet.size.width == 300
    design = made({"sheet.size": "letter"}, studio)
    assert (design.sheet.size_name, design.sheet.size.width) == ("letter", 215.9)
    assert design.sheet.gutter == 5


def test_the_studios_leaves_and_ground_hold_until_the_design_says_otherwise() -> None:
    studio = 'studio: Umberwick Paper\nleaves: 80\nground: {colour: "#ddeeff"}\n'
    assert (made({}, studio).leaves, made({}, studio).ground.colour.hex) == (80, "#ddeeff")
    own = made({"leaves": "25", "ground.colour": "#ffeedd"}, studio)
    assert (own.leaves, own.ground.colour.hex) == (25, "#ffeedd")


def test_a_layout_of_the_makers_own_wins_over_the_built_in_one_of_its_name() -> None:
    own = LAYOUT.replace("layout: mine", "layout: checklist")
    design = pad(PLAIN, files={"layouts/checklist.yaml": own.encode()}).design
    assert set(pitches(design)) == {"upper", "lower"}


def test_the_bleed_that_must_print_is_never_more_than_the_bleed_wished() -> None:
    assert made({"sheet.bleed": "1 mm"}).sheet.least_bleed == 1


def test_a_block_that_the_layout_lacks_is_refused_with_the_nearest() -> None:
    text = apply(PLAIN, {"blocks.row.pitch": "7 mm"})
    assert problems(text) == ["x.pad.yaml:6:3 The layout has no block row. Did you mean rows?"]


def test_a_key_that_the_kind_of_block_lacks_is_refused_with_the_nearest() -> None:
    (problem,) = problems(apply(PLAIN, {"blocks.rows.pich": "7 mm"}))
    assert "pich" in problem
    assert "Did you mean pitch?" in problem


@pytest.mark.parametrize(
    ("edge", "sides"),
    [("head", (3, 6, 3, 3)), ("left", (6, 3, 3, 3)), ("foot", (3, 3, 3, 6)), ("right", (3, 3, 6, 3))],
)
def test_the_safe_margin_is_wider_along_the_glue_edge(edge: str, sides: tuple[float, ...]) -> None:
    safe = made({}, f"studio: Umberwick Paper\nglue-edge: {{edge: {edge}, margin: 6 mm}}\n").safe
    assert (safe.left, safe.top, safe.right, safe.bottom) == sides


STRIPED = "ground: {pattern: {kind: stripes, colour: '#808080', lighten: 80 %}}\n"


def test_a_darken_of_the_design_replaces_a_lighten_of_the_studio() -> None:
    darker = pad(
        apply(PLAIN, {"ground.pattern": {"kind": "stripes", "darken": "80 %"}}), STRIPED
    ).design.ground.pattern
    assert darker is not None
    assert darker.colour.red < 128


def test_a_colour_of_the_design_leaves_the_studios_mixing_behind() -> None:
    own = apply(PLAIN, {"ground.pattern": {"kind": "stripes", "colour": "#000000"}})
    pattern = pad(own, STRIPED).design.ground.pattern
    assert pattern is not None
    assert pattern.colour.hex == "#000000"


def test_a_studio_may_hold_palette_names_for_other_designs() -> None:
    assert pad(PLAIN, "palette: {ruler: '#112233', papers: white}\n").design.ground.pattern is None
