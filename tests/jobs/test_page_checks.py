"""Pages that designs share are looked over with what each neighbour prints."""

from dataclasses import replace

import pytest
from kit import pad

from padspec.jobs.page_checks import Looked, look_over
from padspec.jobs.plan import Wanted, make_plan

PAD = 'pad: {sku}\nsku: {sku}\ntrim: {{width: 90 mm, height: 190 mm}}\nground: {{colour: "{colour}"}}\n'


def looked(*colours: str, sheet: str) -> Looked:
    """Three designs of one pad each share one page: three alone would take twenty sheets each."""
    wanted = tuple(
        Wanted(pad(PAD.format(sku=f"S{n}", colour=colour) + f"sheet: {sheet}\n").design, 1)
        for n, colour in enumerate(colours)
    )
    wanted = tuple(replace(one, design=replace(one.design, studio=wanted[0].design.studio)) for one in wanted)
    (page,) = make_plan("Fair", wanted).pages
    assert len(set(page.designs)) == 3
    return look_over(page, wanted)


def names(found: Looked) -> set[str]:
    return {finding.check for finding in found.findings}


BARE = "{gutter: 0 mm, marks: false}"


def test_unlike_neighbours_show_where_the_cut_is_and_when_it_is_off() -> None:
    found = looked("#b04030", "#3050b0", "#40a050", sheet=BARE)
    assert names(found) == {"miscut-shows"}
    (finding,) = found.findings
    assert finding.message.startswith("Page 1: the cut between leaf")
    assert "S0" in finding.message
    assert "2.5 mm" in finding.remedy.text  # twice √(1² + 0.5² + 0.5²) = 1.22 mm, rounded up
    assert {stretch.kind for stretch in found.stretches} == {"telling-before", "telling-after"}


def test_neighbours_of_one_plain_colour_hide_the_cut_and_forgive_it() -> None:
    found = looked("#c0d8e8", "#c0d8e8", "#c0d8e8", sheet=BARE)
    assert names(found) == {"cut-visibility"}
    assert {stretch.kind for stretch in found.stretches} == {"blind"}


def test_end_marks_find_the_cut() -> None:
    assert names(looked("#c0d8e8", "#c0d8e8", "#c0d8e8", sheet="{gutter: 0 mm}")) == set()


def test_leaves_with_a_gutter_have_nothing_to_find() -> None:
    found = looked("#b04030", "#3050b0", "#40a050", sheet="{gutter: 4 mm}")
    assert (found.findings, found.stretches) == ((), ())


def test_a_gutter_too_narrow_for_two_bleeds_is_told() -> None:
    assert names(looked("#b04030", "#3050b0", "#40a050", sheet="{gutter: 1 mm}")) == {"bleed-room"}


@pytest.mark.parametrize("sheet", [BARE, "{gutter: 4 mm}"])
def test_a_page_of_one_design_is_for_its_own_checks(sheet: str) -> None:
    design = pad(PAD.format(sku="S", colour="#b04030") + f"sheet: {sheet}\n").design
    wanted = (Wanted(design, 3),)
    (page,) = make_plan("Fair", wanted).pages
    assert look_over(page, wanted) == Looked(1, (), ())


def test_a_finding_that_every_design_accepts_is_not_drawn() -> None:
    text = PAD.format(sku="S", colour="#c0d8e8") + f"sheet: {BARE}\nallow: {{cut-visibility: measured}}\n"
    design = pad(text).design
    wanted = tuple(Wanted(replace(design, sku=f"S{n}"), 1) for n in range(3))
    (page,) = make_plan("Fair", wanted).pages
    found = look_over(page, wanted)
    assert [finding.allowed for finding in found.findings] == ["measured"]
    assert found.stretches == ()
