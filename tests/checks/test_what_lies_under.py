"""Contrast is measured against the pixels under a line, not against the colour that nominally is its ground."""

import pytest
from kit import PLAIN, apply

from .cases import made, of

STRIPED = {
    "layout": "open",
    "ground.colour": "white",
    "rows.colour": "#8a8a8a",
    "rows.checkbox": "none",
}


def stripes(share: str, angle: float = 0) -> dict[str, object]:
    pattern = {"kind": "stripes", "colour": "#808080", "size": "10 mm", "mark": share, "angle": angle}
    return {"ground.pattern": pattern}


def ratio(finding) -> float:
    return float(finding.measured.split()[0])


def test_a_rule_on_a_pale_ground_passes():
    assert of(made(apply(PLAIN, STRIPED)), "rule-contrast") == []


def test_a_rule_over_dark_stripes_is_caught_though_its_ground_is_pale():
    found = of(made(apply(PLAIN, {**STRIPED, **stripes("30 %")})), "rule-contrast")
    assert [finding.severity.word for finding in found] == ["error"]
    # #8a8a8a on #808080: (0.2542 + 0.05) / (0.2159 + 0.05), by WCAG 2's formula.
    assert ratio(found[0]) == pytest.approx(1.144, abs=0.005)


def test_a_speck_of_pattern_under_a_rule_does_not_decide():
    """4 % of the way is less than the 5th percentile looks at."""
    assert of(made(apply(PLAIN, {**STRIPED, **stripes("4 %")})), "rule-contrast") == []


def test_one_rule_that_lies_along_a_dark_stripe_is_enough():
    found = of(made(apply(PLAIN, {**STRIPED, **stripes("25 %", 90)})), "rule-contrast")
    assert [finding.severity.word for finding in found] == ["error"]


def test_stripes_under_a_panel_do_not_matter():
    settings = {**STRIPED, **stripes("60 %"), "layout": "checklist"}
    assert of(made(apply(PLAIN, settings)), "rule-contrast") == []


def test_lettering_over_stripes_of_its_own_colour_is_caught():
    settings = {"layout": "open", "ground.colour": "white", **stripes("50 %"), "heading.colour": "#777777"}
    found = of(made(apply(PLAIN, settings)), "lettering-contrast")
    assert [finding.severity.word for finding in found] == ["warning"]
    assert ratio(found[0]) < 1.2


def test_the_rules_themselves_are_not_what_lies_under_them():
    """Black rules on white stand out 21 : 1, not 1 : 1 as against their own ink."""
    found = of(made(apply(PLAIN, {"rows.colour": "black"})), "harsh-rules")
    assert ratio(found[0]) == pytest.approx(21.0)


def test_where_no_shade_passes_everywhere_the_remedy_says_so_and_sets_nothing():
    """Black and white stripes: what stands out 8 : 1 from one cannot from the other, 21 being the whole range."""
    settings = {**STRIPED, "rows.colour": "#777777", "limits.rule-contrast": 8}
    settings |= {"ground.pattern": {"kind": "stripes", "colour": "black", "size": "10 mm", "mark": "50 %"}}
    finding = of(made(apply(PLAIN, settings)), "rule-contrast")[0]
    assert finding.remedy.changes == ()
    assert "8 : 1" in finding.remedy.text
