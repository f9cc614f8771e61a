"""A variant has the last word: over the studio, over a kind of block, over one block, over the palette."""

from kit import PLAIN, folder

from padspec.compose.compose import compose
from padspec.pipeline import make
from padspec.reading.parsing.yaml_reader import parse
from padspec.reading.variation import Variation
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import Design, blocks


def varied(settings: str, design: str = "", studio: str = "", **files: bytes) -> Design:
    variation = Variation((("x", "y"),), parse(settings, "collection.yaml"), file="collection.yaml")
    return make("x.pad.yaml", folder(PLAIN + design, studio, files or None), variation=variation).design


def rows_of(design: Design) -> Rows:
    return next(block for block in blocks(design) if isinstance(block, Rows))


def colour(design: Design, name: str) -> str:
    return dict(design.palette)[name].hex


def test_over_what_a_studio_and_a_design_say_of_a_kind():
    made = varied("rows: {pitch: 9 mm}", "rows: {pitch: 8 mm, weight: 0.4 mm}\n", "rows: {pitch: 7 mm}\n")
    assert (rows_of(made).pitch, rows_of(made).weight) == (9, 0.4)


def test_over_what_a_design_says_of_one_block():
    made = varied("rows: {pitch: 9 mm}", "blocks: {rows: {pitch: 8 mm, weight: 0.4 mm}}\n")
    assert (rows_of(made).pitch, rows_of(made).weight) == (9, 0.4)


def test_one_block_of_the_variant_over_the_kind():
    made = varied("rows: {pitch: 9 mm}\nblocks: {rows: {pitch: 10 mm}}", "rows: {pitch: 8 mm}\n")
    assert rows_of(made).pitch == 10


def test_a_colour_of_the_palette_is_replaced_whole():
    made = varied('palette: {ground: "#204060"}', 'palette: {ground: {from: "#ffffff", darken: 20 %}}\n')
    assert colour(made, "ground") == "#204060"


def test_a_colourway_replaces_the_colours_that_the_design_gave_to_roles():
    own = 'palette: {ground: "#204060", mine: "#123456"}\nrows: {colour: mine}\n'
    plain, deeper = varied("leaves: 40", own), varied("colourway: deeper", own)
    assert colour(plain, "ground") == "#204060"
    assert colour(deeper, "ground") == colour(varied("colourway: deeper"), "ground") != "#204060"
    assert colour(deeper, "mine") == "#123456"


def test_a_palette_beside_the_colourway_has_the_last_word():
    assert colour(varied('colourway: deeper\npalette: {ground: "#204060"}'), "ground") == "#204060"


def test_another_layout():
    design = varied("layout: ruled")
    assert design.layout == "ruled"
    assert compose(design).scene.layers


def test_a_finding_points_at_the_line_of_the_collection():
    pad = make(
        "x.pad.yaml",
        folder(PLAIN),
        variation=Variation(
            settings=parse('\nrows: {colour: "#eeeeee"}', "collection.yaml"), file="collection.yaml"
        ),
    )
    found = {(f.place.file, f.place.line) for f in pad.findings if f.check == "rule-contrast"}
    assert found == {("collection.yaml", 2)}


def test_a_remedy_tried_on_a_variant_is_not_undone_by_the_variant():
    """Its change is made after the variant was laid over the design; else it could never cure."""
    pad = make(
        "x.pad.yaml",
        folder(PLAIN),
        variation=Variation(
            settings=parse('rows: {colour: "#eeeeee"}', "collection.yaml"), file="collection.yaml"
        ),
    )
    finding = next(f for f in pad.findings if f.check == "rule-contrast")
    assert finding.remedy.changes
