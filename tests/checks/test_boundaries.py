"""A limit that is exactly met passes, one missed by the least step does not, and nothing is rounded before."""

import pytest

from padspec.base.colour import Colour
from padspec.base.contrast import contrast

from .cases import BARE, Case, of

WHITE = Colour(255, 255, 255)


def severity(check: str, settings: dict[str, object], studio: str = "") -> str:
    found = of(Case(check, "", "", settings, studio).made(), check)
    return found[0].severity.word if found else ""


@pytest.mark.parametrize(
    ("colour", "ratio", "expected"),
    [
        # WCAG 2's formula on white, each pair of neighbouring greys one step of 255 apart.
        ("#d2d2d2", 1.5119, "warning"),
        ("#d3d3d3", 1.4985, "error"),
        ("#c0c0c0", 1.8205, ""),
        ("#c2c2c2", 1.7823, "warning"),
    ],
)
def test_rules_are_judged_to_the_last_step_of_grey(colour, ratio, expected):
    assert contrast(Colour.from_hex(colour), WHITE) == pytest.approx(ratio, abs=0.003)
    assert severity("rule-contrast", {"rows.colour": colour}) == expected


@pytest.mark.parametrize(("colour", "expected"), [("#949494", ""), ("#959595", "warning")])
def test_squares_of_2_995_to_1_do_not_pass_3_to_1(colour, expected):
    """Understanding SC 1.4.11 of WCAG 2.2: 2.999 : 1 fails 3 : 1. #959595 on white is 2.9953."""
    assert severity("checkbox-contrast", {"rows.colour": colour}) == expected


@pytest.mark.parametrize(("colour", "expected"), [("#767676", ""), ("#777777", "warning")])
def test_small_lettering_of_4_478_to_1_does_not_pass_4_5_to_1(colour, expected):
    """WCAG 2.2 SC 1.4.3; #777777 on white is 4.4781, #767676 is 4.5422."""
    assert severity("lettering-contrast", {"heading.size": "5 mm", "heading.colour": colour}) == expected


@pytest.mark.parametrize(("size", "expected"), [("18 pt", ""), ("17.9 pt", "warning")])
def test_lettering_is_large_from_18_pt(size, expected):
    """WCAG 2.2, large scale; #949494 on white is 3.0335."""
    assert severity("lettering-contrast", {"heading.size": size, "heading.colour": "#949494"}) == expected


@pytest.mark.parametrize(("colour", "expected"), [("#444444", ""), ("#3b3b3b", "note")])
def test_rules_are_harsh_above_10_to_1(colour, expected):
    """#444444 on white is 9.74, #3b3b3b is 11.22."""
    assert severity("harsh-rules", {"rows.colour": colour}) == expected


def test_a_contrast_that_is_exactly_the_limit_passes():
    ratio = contrast(Colour.from_hex("#bbbbbb"), WHITE)
    settings = {"rows.colour": "#bbbbbb", "limits.rule-contrast": f"{ratio:.9f}"}
    # The limit is written to nine digits, so it is met to a billionth.
    assert severity("rule-contrast", settings) == ""


@pytest.mark.parametrize(
    ("weight", "colour", "expected"),
    [
        ("0.25 pt", "black", ""),
        ("0.249 pt", "black", "error"),
        ("0.75 pt", "#666666", ""),
        ("0.749 pt", "#666666", "warning"),
        ("0.25 pt", "#666666", "warning"),
        ("0.249 pt", "#666666", "error"),
        ("0.25 pt", "cyan", ""),
        ("0.25 pt", "#00fffe", "warning"),
    ],
)
def test_line_weights_are_judged_in_points(weight, colour, expected):
    assert severity("line-weight", {"rows.weight": weight, "rows.colour": colour}) == expected


@pytest.mark.parametrize("limit", [150, 300])
def test_a_picture_of_exactly_the_pixels_asked_for_passes(limit):
    """240 visible pixels at 240 / limit inches."""
    from kit import apply, bands

    from padspec.pipeline import make
    from padspec.workspace import MemoryWorkspace

    text = apply(
        "pad: Errands\ntrim: {width: 150 mm, height: 230 mm}\n",
        {"art": {"file": "b.png", "cutout": "none", "trim-empty": False, "height": f"{240 / limit:g} in"}},
    )
    files = {"x.pad.yaml": text.encode(), "b.png": bands((120, 60, 90), (30, 90, 60))}
    found = of(make("x.pad.yaml", MemoryWorkspace(files)), "art-resolution")
    assert [finding.severity.word for finding in found] == (["warning"] if limit == 150 else [])


@pytest.mark.parametrize(
    ("inset", "expected"),
    [("5 mm", ""), ("4.999 mm", "warning")],
)
def test_5_mm_at_the_glue_edge_are_enough(inset, expected):
    assert severity("safe-margin", {"panel.inset": inset}) == expected


@pytest.mark.parametrize(("inset", "expected"), [("3 mm", ""), ("2.999 mm", "warning")])
def test_3_mm_are_enough_where_no_edge_is_glued_wider(inset, expected):
    studio = "glue-edge: {edge: head, margin: 3 mm}\n"
    assert severity("safe-margin", {"panel.inset": inset}, studio) == expected


@pytest.mark.parametrize(("pitch", "expected"), [("5 mm", ""), ("4.999 mm", "warning")])
def test_a_pitch_of_5_mm_is_wide_enough(pitch, expected):
    assert severity("row-room", {"rows.pitch": pitch, "rows.checkbox": "3 mm"}) == expected


@pytest.mark.parametrize(("square", "expected"), [("6.4 mm", ""), ("6.401 mm", "error")])
def test_a_square_may_take_80_per_cent_of_the_pitch(square, expected):
    assert severity("row-room", {"rows.pitch": "8 mm", "rows.checkbox": square}) == expected


@pytest.mark.parametrize(("gap", "expected"), [("34 mm", ""), ("34.001 mm", "warning")])
def test_30_mm_of_rule_are_long_enough(gap, expected):
    """90 mm less twice 6 mm of inset and 5 mm of pad leave 68 mm; a square of 4 mm and its gap take the rest."""
    assert severity("row-room", {"rows.checkbox-gap": gap}) == expected


@pytest.mark.parametrize(("height", "expected"), [("285.6 mm", ""), ("285.601 mm", "error")])
def test_a_leaf_that_fills_the_printable_area_to_the_last_micrometre_fits(height, expected):
    """A4 less two margins of 4.2 mm and two least bleeds of 1.5 mm leaves 297 − 8.4 − 3 = 285.6 mm."""
    assert severity("sheet-fit", {"trim.width": "198.6 mm", "trim.height": height}) == expected


@pytest.mark.parametrize(("bleed", "expected"), [("1.225 mm", ""), ("1.224 mm", "warning")])
def test_bleed_is_held_to_the_root_of_the_sum_of_squares(bleed, expected):
    """√(1² + 0.5² + 0.5²) = 1.2247 mm, the studio's usual errors."""
    settings = {"sheet": {"bleed": bleed, "least-bleed": bleed}, "ground.colour": "#c0d8e8"}
    assert severity("bleed-room", settings) == expected


@pytest.mark.parametrize(("gutter", "expected"), [("2.45 mm", ""), ("2.44 mm", "warning")])
def test_a_gutter_holds_two_bleeds(gutter, expected):
    settings = {"sheet.gutter": gutter, "ground.colour": "#c0d8e8"}
    assert severity("bleed-room", settings) == expected


def test_a_pattern_on_white_needs_bleed():
    pattern = {"kind": "stripes", "colour": "#99bbcc", "angle": 90}
    assert severity("bleed-room", {**BARE, "ground.pattern": pattern, "sheet.bleed": "0.5 mm"}) == "warning"
