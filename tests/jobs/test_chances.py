"""Chances on a page that is turned on its way to the printer are those of the same leaves as fed."""

from dataclasses import replace

import pytest
from sheet.designs import A4, design

from padspec.base.geometry import Size
from padspec.jobs.chances import chances_of
from padspec.jobs.plan import Wanted, make_plan
from padspec.resolve.design import Design


def chances(wish: Design):  # type: ignore[no-untyped-def]
    printer = replace(wish.studio.printer, placement_error=0.8, skew_error=1.5)
    wish = replace(wish, studio=replace(wish.studio, printer=printer))
    (page,) = make_plan("Fair", (Wanted(wish, 4),)).pages
    return chances_of(page, wish.studio)


@pytest.mark.parametrize("turn", ["left", "right"])
def test_a_wide_page_has_the_chances_of_the_sheet_as_fed(turn: str) -> None:
    upright = chances(design(Size(90, 190), A4))
    wide = chances(design(Size(90, 190), A4.turned(), turn=turn))
    assert wide.sliver.worst == pytest.approx(upright.sliver.worst, abs=1e-9)
    assert wide.off_centre.worst == pytest.approx(upright.off_centre.worst, abs=1e-9)
    assert wide.bleed == upright.bleed


def test_where_the_turn_is_unknown_the_worse_of_both_is_told() -> None:
    known = [chances(design(Size(90, 140), A4.turned(), turn=turn)).sliver.worst for turn in ("left", "right")]
    assert chances(design(Size(90, 140), A4.turned())).sliver.worst >= max(known) - 1e-12
