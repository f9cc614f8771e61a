"""A maker's own limits, and findings that a maker accepts."""

import pytest
from kit import PLAIN, pad, problems

from padspec.base.findings import Severity, worst
from padspec.checks.table import CHECKS
from padspec.report import finding_data

from .cases import FILES, edited, made, of

FAINT = {"rows.colour": "#bbbbbb", "rows.checkbox": "none"}  # 1.92 : 1 on white


def severities(settings: dict[str, object], check: str = "rule-contrast", studio: str = "") -> list[str]:
    return [finding.severity.word for finding in of(made(edited(PLAIN, settings), studio), check)]


def test_a_bare_limit_sets_the_warning():
    assert severities({**FAINT, "limits.rule-contrast": 2}) == ["warning"]


def test_a_bare_limit_leaves_the_error_alone():
    assert severities({"rows.colour": "#dddddd", "limits.rule-contrast": 2}) == ["error"]


def test_a_bare_limit_sets_the_only_level_of_a_check_that_has_one():
    assert severities({"rows.colour": "#767676", "limits.harsh-rules": 4}, "harsh-rules") == ["note"]


def test_a_limit_may_be_set_for_each_level():
    assert severities({**FAINT, "limits.rule-contrast": {"error": 2, "warning": 3}}) == ["error"]


def test_a_limit_may_be_lowered():
    assert severities({"rows.colour": "#cccccc", "limits.rule-contrast": 1.6}) == []


def test_a_limit_in_millimetres_is_read_with_its_unit():
    assert severities({"rows.weight": "0.35 mm", "limits.line-weight": "1 pt"}, "line-weight") == ["warning"]


def test_a_limit_as_a_share_is_read_with_its_sign():
    limits = {"limits.row-room": {"error": "40 %"}}
    assert severities({"rows.checkbox": "4 mm", **limits}, "row-room") == ["error"]


def test_a_design_has_its_own_limit_over_what_the_printer_holds():
    settings = {"rows.weight": "0.3 mm", "limits.line-weight": "0.28 mm"}
    assert severities(settings, "line-weight", "printer: {least-screened-line: 0.4 mm}\n") == []


def test_a_limit_of_the_studio_holds_for_every_design():
    assert severities(FAINT, studio="limits: {rule-contrast: 2.5}\n") == ["warning"]


def test_the_limit_of_a_design_wins_over_the_studio():
    assert severities({**FAINT, "limits.rule-contrast": 1.6}, studio="limits: {rule-contrast: 2.5}\n") == []


def test_a_finding_tells_whose_limit_it_missed_and_the_usual_one():
    finding = of(made(edited(PLAIN, {**FAINT, "limits.rule-contrast": 2})), "rule-contrast")[0]
    assert finding.limit == "2 : 1 (your limit; usually 1.8 : 1)"


@pytest.mark.parametrize(
    ("limit", "place", "said"),
    [
        ("line-weight: 0.3", "x.pad.yaml:3:23", "0.3 mm"),
        ("line-weight: 30 %", "x.pad.yaml:3:23", ""),
        ("rule-contrast: 2 mm", "x.pad.yaml:3:25", "bare number"),
        ("art-resolution: 300 mm", "x.pad.yaml:3:26", "bare number"),
        ("row-room: {error: 4 mm}", "x.pad.yaml:3:28", "%"),
        ("harsh-rules: {error: 4}", "x.pad.yaml:3:31", "note"),
        ("checkbox-contrast: {note: 2}", "x.pad.yaml:3:36", "warning"),
    ],
)
def test_a_limit_of_the_wrong_kind_is_refused_with_its_place(limit, place, said):
    found = problems(f"{PLAIN}limits: {{{limit}}}\n", files=FILES)
    assert len(found) == 1
    assert found[0].startswith(place)
    assert said in found[0]


@pytest.mark.parametrize("check", [check.name for check in CHECKS if not check.usual])
def test_a_limit_for_a_check_without_one_is_refused_with_its_place(check):
    found = problems(f"{PLAIN}limits:\n  {check}: 2\n", files=FILES)
    assert found
    assert found[0].startswith("x.pad.yaml:4:")


def test_an_unknown_check_is_refused_with_the_nearest_one():
    assert "rule-contrast" in problems(f"{PLAIN}limits: {{rule-contrst: 2}}\n")[0]


def test_an_allowed_finding_is_shown_with_its_reason_and_does_not_count():
    settings = {"rows.colour": "#dddddd", "allow.rule-contrast": "a whisper, on purpose"}
    found = of(made(edited(PLAIN, settings)), "rule-contrast")
    assert [(f.severity.word, f.allowed, f.counts) for f in found] == [("error", "a whisper, on purpose", False)]


def test_a_design_whose_only_error_is_allowed_has_not_failed():
    settings = {"rows.colour": "#dddddd", "rows.checkbox": "none"}
    assert made(edited(PLAIN, settings)).failed
    assert not made(edited(PLAIN, {**settings, "allow.rule-contrast": "a whisper, on purpose"})).failed


def test_allowing_one_check_leaves_the_others_alone():
    pad = made(edited(PLAIN, {"rows.colour": "#dddddd", "allow.rule-contrast": "a whisper, on purpose"}))
    assert worst(pad.findings) == Severity.WARNING
    assert all(finding.counts for finding in of(pad, "checkbox-contrast"))


def test_an_allowance_where_there_is_no_finding_changes_nothing():
    assert made(edited(PLAIN, {"allow.rule-contrast": "just in case"})).findings == ()


def test_the_reason_goes_into_the_data():
    settings = {"rows.colour": "black", "allow.harsh-rules": "black on purpose"}
    finding = of(made(edited(PLAIN, settings)), "harsh-rules")[0]
    assert finding_data(finding)["allowed"] == "black on purpose"


@pytest.mark.parametrize("check", [check.name for check in CHECKS if check.may_be_allowed])
def test_the_schema_takes_an_allowance_of_every_check_that_may_be_allowed(check):
    pad(f"{PLAIN}allow:\n  {check}: for a reason\n", files=FILES)


@pytest.mark.parametrize("check", [check.name for check in CHECKS if not check.may_be_allowed])
def test_what_cannot_be_allowed_is_refused_with_its_place(check):
    found = problems(f"{PLAIN}allow:\n  {check}: for a reason\n")
    assert len(found) == 1
    assert found[0].startswith("x.pad.yaml:4:")
    assert check in found[0]


def test_a_reason_has_to_be_given():
    assert problems(f"{PLAIN}allow: {{rule-contrast: ''}}\n")[0].startswith("x.pad.yaml:3:")
