"""Every finding points at the key that caused it: file, line and column, counted by hand in the texts below."""

import pytest
from kit import pad

from .cases import FILES, of

DESIGN = """\
pad: Errands
trim: {width: 90 mm, height: 190 mm}
art: {file: few.png, cutout: auto, height: 75 mm, inset: 4 mm}
heading:
  text: Ж†ↈ
  colour: "#eeeeee"
  size: 7 mm
panel: {inset: 2 mm}
rows:
  colour: "#e8e8e8"
  checkbox-colour: "#f0f0f0"
  weight: 0.1 pt
  pitch: 4 mm
  checkbox: 3.9 mm
ground: {colour: "#99aabb"}
sheet:
  bleed: 0.5 mm
"""
STUDIO = """\
studio: Umberwick Paper
rows:
  colour: "#e8e8e8"
  weight: 0.1 pt
heading: {colour: "#eeeeee"}
panel:
  inset: 1 mm
sheet: {size: A6, gutter: 1 mm}
"""
BARE = "pad: Errands\ntrim: {width: 90 mm, height: 190 mm}\n"


def places(text: str, check: str, studio: str = "") -> list[str]:
    return [str(finding.place) for finding in of(pad(text, studio, FILES), check)]


@pytest.mark.parametrize(
    ("check", "expected"),
    [
        ("rule-contrast", ["x.pad.yaml:10:11"]),
        ("checkbox-contrast", ["x.pad.yaml:11:20"]),
        ("lettering-contrast", ["x.pad.yaml:6:11"]),
        ("line-weight", ["x.pad.yaml:12:11"]),
        ("art-resolution", ["x.pad.yaml:3:44"]),
        ("safe-margin", ["x.pad.yaml:3:58", "x.pad.yaml:8:16"]),
        ("row-room", ["x.pad.yaml:13:10", "x.pad.yaml:14:13"]),
        ("missing-glyph", ["x.pad.yaml:5:9"]),
        ("bleed-room", ["x.pad.yaml:17:10"]),
    ],
)
def test_a_finding_points_at_the_value_in_the_design(check, expected):
    assert places(DESIGN, check) == expected


@pytest.mark.parametrize(
    ("check", "expected"),
    [
        ("rule-contrast", "studio.yaml:3:11"),
        ("checkbox-contrast", "studio.yaml:3:11"),
        ("line-weight", "studio.yaml:4:11"),
        ("lettering-contrast", "studio.yaml:5:19"),
        ("safe-margin", "studio.yaml:7:10"),
    ],
)
def test_a_finding_points_at_the_value_in_the_studio(check, expected):
    assert places(BARE, check, STUDIO) == [expected]


def test_a_gutter_of_the_studio_is_pointed_at():
    studio = "sheet: {size: A4, gutter: 1 mm}\n"
    assert places(BARE, "bleed-room", studio) == ["studio.yaml:1:27"]


def test_the_design_wins_over_the_studio_and_so_does_its_place():
    text = BARE + 'rows: {colour: "#dddddd"}\n'
    assert places(text, "rule-contrast", STUDIO) == ["x.pad.yaml:3:16"]


def test_a_value_set_for_one_block_is_pointed_at_there():
    text = BARE + 'layout: pair\nrows: {colour: "#888888"}\nblocks:\n  second:\n    colour: "#eeeeee"\n'
    assert places(text, "rule-contrast") == ["x.pad.yaml:7:13"]


def test_a_default_is_blamed_on_the_bundle_that_would_hold_it():
    """The pitch is the default; a square too large for it stands in the design."""
    text = BARE + "heading: {text: Errands}\nrows:\n  checkbox-gap: 40 mm\n"
    assert places(text, "row-room") == ["x.pad.yaml:4:1"]


def test_a_default_without_any_bundle_is_blamed_on_the_first_key():
    text = "# a comment\npad: Errands\ntrim: {width: 90 mm, height: 190 mm}\n"
    assert places(text, "line-weight", "printer: {least-line: 0.5 mm}\n") == ["x.pad.yaml:2:1"]


def test_the_pitch_at_fault_is_pointed_at_even_where_the_count_makes_it():
    text = BARE + "rows: {checkbox: none, count: 60}\n"
    assert places(text, "row-room") == ["x.pad.yaml:3:31"]


def test_a_trim_that_does_not_fit_is_pointed_at():
    assert places(BARE, "sheet-fit", STUDIO) == ["x.pad.yaml:2:7"]


def test_marks_without_room_point_at_the_sheet():
    assert places(BARE + "sheet: {bleed: 9 mm}\n", "mark-room") == ["x.pad.yaml:3:1"]


def test_an_uneven_border_points_at_the_wish():
    text = BARE + "art:\n  file: noisy.png\n  cutout: even\n"
    assert places(text, "art-cutout") == ["x.pad.yaml:5:11"]


def test_a_long_heading_points_at_its_words():
    text = BARE + "heading:\n  least-size: 7 mm\n  text: Rhabarberkuchenbäckereibesuch\n"
    assert places(text, "heading-room") == ["x.pad.yaml:5:9"]


def test_a_colour_of_the_palette_is_pointed_at_where_it_is_given():
    text = BARE + 'palette:\n  paper: white\n  rule: "#eeeeee"\n'
    assert places(text, "rule-contrast") == ["x.pad.yaml:5:9"]


def test_findings_come_in_the_order_of_the_file():
    lines = [(f.place.file, f.place.line, f.place.column) for f in pad(DESIGN, "", FILES).findings]
    assert lines == sorted(lines)
    assert len(lines) > 8
