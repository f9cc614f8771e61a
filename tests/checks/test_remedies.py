"""Whatever the design: a value that a remedy offers makes its finding go away, and is the least change."""

import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st
from kit import PLAIN, pad

from padspec.base.colour import Colour
from padspec.base.contrast import delta_e
from padspec.base.errors import ProblemsError
from padspec.base.mixing import lch
from padspec.base.units import parse_length

from .cases import FILES, Case, edited, made, mended, of


def hexes() -> st.SearchStrategy[str]:
    channel = st.sampled_from(range(0, 256, 5))
    return st.tuples(channel, channel, channel).map(lambda rgb: "#" + bytes(rgb).hex())


def mm(least: float, most: float) -> st.SearchStrategy[str]:
    return st.integers(round(least * 10), round(most * 10)).map(lambda tenths: f"{tenths / 10:g} mm")


DESIGNS = st.fixed_dictionaries(
    {
        "trim.width": mm(30, 110),
        "trim.height": mm(50, 160),
        "layout": st.sampled_from(["checklist", "open", "ruled"]),
        "rows.colour": hexes(),
        "rows.weight": mm(0.1, 0.6),
        "rows.pitch": mm(2, 14),
        "heading.size": mm(3, 14),
        "heading.least-size": mm(2, 12),
        "panel.inset": mm(0, 8),
        "sheet.gutter": st.just("0 mm") | mm(0.5, 8),
        "sheet.bleed": mm(0, 9),
        "sheet.least-bleed": mm(0, 3),
        "sheet.size": st.sampled_from(["A4", "A5", "A6", "letter", "JIS B6"]),
    },
    optional={
        "rows.checkbox": mm(0.5, 9),
        "rows.checkbox-colour": hexes(),
        "rows.count": st.integers(1, 60),
        "heading.colour": hexes(),
        "heading.text": st.sampled_from(["To do", "Rhabarberkuchenbäckereibesuch", "Before dark, mind the owl"]),
        "palette.paper": hexes(),
        "palette.ground": hexes(),
        "limits.rule-contrast": st.sampled_from([1.2, 2.5, {"error": 2, "warning": 1.5}]),
    },
)  # fmt: skip


def agreeing(design: dict[str, object]) -> dict[str, object]:
    """Least values no greater than what they are the least of: the reverse is refused before any check."""
    size, bleed = str(design["heading.size"]), str(design["sheet.bleed"])
    least = min(str(design["heading.least-size"]), size, key=parse_length)
    return design | {
        "heading.least-size": least,
        "sheet.least-bleed": min(str(design["sheet.least-bleed"]), bleed, key=parse_length),
    }


STUDIOS = st.fixed_dictionaries(
    {"margins": mm(0, 12), "placement": mm(0, 2), "cutter": mm(0, 2), "safe": mm(0, 8)}
).map(
    lambda s: (
        f"printer: {{margins: {{left: {s['margins']}, right: 4.2 mm}}, placement-error: {s['placement']}}}\n"
        f"cutter: {{error: {s['cutter']}}}\nsafe-margin: {s['safe']}\n"
    )
)


@settings(
    # Each is a design with half a dozen remedies, and every one of them is built and checked again.
    max_examples=10,
    deadline=None,
    derandomize=True,
    database=None,
    phases=(Phase.generate,),
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
@given(DESIGNS.map(agreeing), STUDIOS)
def test_every_value_offered_cures_its_finding(design, studio):
    text = edited(PLAIN, design)
    found = pad(text, studio, FILES).findings
    offers = [finding for finding in found if finding.remedy and finding.remedy.changes]
    assume(offers)
    for finding in offers:
        cured = pad(mended(text, finding), studio, FILES)
        left = [other for other in of(cured, finding.check) if other.place.file == finding.place.file]
        before = of_kind(found, finding)
        assert len(of_kind(cured.findings, finding)) < len(before), (finding, left)


def of_kind(findings, like):
    """The findings that say the same as one: same check, same key to set."""
    keys = {path for path, _ in like.remedy.changes}
    return [
        other
        for other in findings
        if other.check == like.check and other.remedy and keys == {path for path, _ in other.remedy.changes}
    ]


@pytest.mark.parametrize("colour", ["#dddddd", "#ffd0e0", "#e8f4c0", "#d0e8ff"])
def test_the_colour_offered_keeps_the_hue_and_is_no_further_than_it_need_be(colour):
    """One step of 0.01 in OKLab lightness nearer to the colour that the maker chose does not pass."""
    design = edited(PLAIN, {"rows.colour": colour})
    offered = of(made(design), "rule-contrast")[0].remedy.changes[0][1]
    was, now = lch(Colour.from_hex(colour)), lch(Colour.from_hex(offered))
    if was[1] > 0.02:
        assert abs((now[2] - was[2] + 180) % 360 - 180) < 4
    nearer = nudged(colour, offered)
    assert of(made(edited(PLAIN, {"rows.colour": nearer})), "rule-contrast") != []


def nudged(colour: str, offered: str) -> str:
    """The offered colour moved a hundredth of lightness back towards the maker's."""
    from padspec.base.mixing import from_lch

    lightness, chroma, hue = lch(Colour.from_hex(offered))
    target = lch(Colour.from_hex(colour))[0]
    back = from_lch(lightness + (0.01 if target > lightness else -0.01), chroma, hue)
    assert delta_e(back, Colour.from_hex(colour)) < delta_e(Colour.from_hex(offered), Colour.from_hex(colour))
    return back.hex


def test_the_height_offered_for_few_pixels_loses_less_than_a_tenth_of_a_millimetre():
    case = Case("art-resolution", "", "", {"art.file": "few.png", "art.height": "30 mm"})
    offered = float(of(case.made(), "art-resolution")[0].remedy.changes[0][1].removesuffix(" mm"))
    a_little_more = edited(case.yaml, {"art.height": f"{offered + 0.1:.1f} mm"})
    assert of(made(a_little_more), "art-resolution") != []


def test_the_pixels_asked_for_are_enough():
    """`use a picture of at least W × H pixels`: exactly so many pass."""
    import re

    from kit import bands

    case = Case("art-resolution", "", "", {"art.file": "few.png", "art.height": "30 mm", "art.cutout": "none"})
    text = of(case.made(), "art-resolution")[0].remedy.text
    width, height = (int(n) for n in re.search(r"(\d+) × (\d+) pixels", text).groups())
    files = {**FILES, "few.png": bands((90, 60, 30), (30, 60, 90), width=width, height=height)}
    assert of(pad(case.yaml, files=files), "art-resolution") == []


def test_the_leaf_that_the_message_names_is_the_least_that_holds_a_row():
    """A picture of a length of its own, which does not grow along with the leaf."""
    import re

    settings = {
        "trim.height": "95 mm",
        "rows.pitch": "55 mm",
        "art.file": "moth.png",
        "art.height": "28 mm",
        "panel": {"inset": "6 mm", "pad": "5 mm", "corner": "6 mm"},
        "heading.size": "7.5 mm",
        "art.inset": "6 mm",
    }
    case = Case("row-room", "", "", settings)
    text = of(case.made(), "row-room")[0].remedy.text
    wide, tall = (float(side) for side in re.search(r"leaf of ([\d.]+) mm × ([\d.]+) mm", text).groups())
    assert wide == 90
    assert of(made(edited(case.yaml, {"trim.height": f"{tall} mm"})), "row-room") == []
    assert of(made(edited(case.yaml, {"trim.height": f"{tall - 1} mm"})), "row-room") != []


def test_the_largest_trim_named_is_within_half_a_millimetre_of_what_does_not_fit():
    """A4 less margins and least bleed: 198.6 × 285.6 mm; the offer is rounded down to half millimetres."""
    case = Case("sheet-fit", "", "", {"trim.width": "230 mm", "trim.height": "290 mm"})
    changes = dict(of(case.made(), "sheet-fit")[0].remedy.changes)
    assert changes == {("trim", "width"): "198.5 mm", ("trim", "height"): "285.5 mm"}


def test_a_warning_set_below_the_error_is_no_target():
    """Error 2, warning 1.5: a colour of 1.7 : 1 would pass the warning and still be an error."""
    text = edited(PLAIN, {"rows.colour": "#dddddd", "limits.rule-contrast": {"error": 2, "warning": 1.5}})
    finding = of(made(text), "rule-contrast")[0]
    assert of(made(mended(text, finding)), "rule-contrast") == []


def test_a_remedy_never_asks_for_what_the_schema_refuses():
    """Squares may be no smaller than 0.5 mm and least sizes no smaller than 1 mm."""
    crowded = edited(PLAIN, {"rows.count": 200, "rows.checkbox": "4 mm"})
    for finding in made(crowded).findings:
        try:
            made(mended(crowded, finding))
        except ProblemsError as error:
            pytest.fail(f"{finding.remedy}: {error}")
