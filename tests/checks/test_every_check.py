"""Every check has a design that it finds fault with, one that it passes, and a text that says what it holds to."""

import inspect
import re

import pytest

from padspec.checks.table import CHECKS

from .cases import FAILING, PASSING, Case, made, mended, named, of


@pytest.fixture(params=CHECKS, ids=lambda check: check.name)
def check(request):
    return request.param


def test_a_check_has_a_failing_case(check):
    assert any(case.check == check.name for case in FAILING)


def test_a_check_has_a_passing_case(check):
    assert any(case.check == check.name for case in PASSING)


def test_a_check_has_a_case_for_each_of_its_levels(check):
    severities = {case.severity for case in FAILING if case.check == check.name}
    assert {usual.severity.word for usual in check.usual} <= severities


def test_the_text_of_a_check_names_its_limits(check):
    """Each as a number in the unit that makers use, and what missing it comes to."""
    text = inspect.getdoc(check.run)
    assert re.search(r"error|warning|note", text, re.IGNORECASE)
    for usual in check.usual:
        assert usual.severity.word in text.lower()
        as_said = {
            f"{n:.2f}".rstrip("0").rstrip(".") for n in (usual.value, usual.value * 100, usual.value * 72 / 25.4)
        }
        assert as_said & set(re.findall(r"\d+(?:\.\d+)?", text))


def test_the_text_of_a_check_names_its_source(check):
    """A published source, or that there is none."""
    text = inspect.getdoc(check.run)
    assert re.search(
        r"WCAG|common practice|published source|geometry|guides|OpenType|handbooks|usual rule", text, re.IGNORECASE
    )


def test_the_text_of_a_check_tells_a_remedy(check):
    assert "remedy" in inspect.getdoc(check.run).lower()


def test_names_of_checks_are_told_apart():
    assert len({check.name for check in CHECKS}) == len(CHECKS)


def test_a_case_names_a_check_that_there_is():
    assert {case.check for case in FAILING + PASSING} == {check.name for check in CHECKS}


@pytest.mark.parametrize("case", FAILING, ids=str)
def test_a_faulty_design_is_found_and_what_is_offered_cures_it(case: Case):
    found = of(case.made(), case.check)
    assert [finding.severity.word for finding in found][:1] == [case.severity], found
    finding = found[0]
    assert finding.remedy is not None, "a finding without a remedy leaves the maker alone"
    assert bool(finding.remedy.changes) == case.mends, finding.remedy
    if case.mends:
        again = of(made(mended(case.yaml, finding), case.studio), case.check)
        assert finding.message not in [other.message for other in again]
        assert finding.place.line == 0 or len(again) < len(found), again


@pytest.mark.parametrize("case", FAILING, ids=str)
def test_a_finding_tells_what_was_measured_and_the_limit(case: Case):
    finding = of(case.made(), case.check)[0]
    assert re.search(r"\d", finding.measured)
    assert re.search(r"\d", finding.limit)


@pytest.mark.parametrize("case", [case for case in FAILING if case.mends], ids=str)
def test_the_words_of_a_remedy_hold_the_value_that_is_set(case: Case):
    remedy = of(case.made(), case.check)[0].remedy
    for _, value in remedy.changes:
        assert value in remedy.text


@pytest.mark.parametrize("case", PASSING, ids=str)
def test_a_sound_design_passes(case: Case):
    assert of(case.made(), case.check) == []


def test_the_plain_design_has_no_finding_at_all():
    assert made("pad: Errands\ntrim: {width: 90 mm, height: 190 mm}\n").findings == ()


def test_a_check_is_found_by_its_name():
    assert named("harsh-rules").name == "harsh-rules"
