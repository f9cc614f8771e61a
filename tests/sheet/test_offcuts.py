"""Offcuts: clean, real, and counted by hand."""

from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.resolve.studio import Offcut
from padspec.scene.outline import bounds
from padspec.sheet.cutting.carry_out import carry_out
from padspec.sheet.cutting.offcuts import clean_rectangles, holds
from padspec.sheet.cutting.wording import cut_lines

from .cutting_kit import NESTED, laid, plan_of, sheets
from .designs import tiled

SWATCH, TAG = Offcut("swatch", Size(40.0, 40.0)), Offcut("gift tag", Size(50.0, 90.0))
BOOKMARK = Offcut("bookmark", Size(45.0, 150.0))

places = st.integers(0, 20).map(float)
boxes = st.builds(lambda x, y, w, h: Box(x, y, w + 1, h + 1), places, places, places, places)


def test_strips_above_and_below_are_counted_out():
    # Two faces of 180 × 100 on A4: 46.5 mm stay free above and below; less 3 mm bleed and 0.5 mm, 43 is clean.
    sheet = tiled(Size(100.0, 180.0), marks=False)
    found = plan_of(sheet, things=(SWATCH, BOOKMARK)).offcuts
    assert [
        (one.name, one.count, one.cut, round(one.box.width, 6), round(one.box.height, 6)) for one in found
    ] == [
        ("swatch", 4, 3, 180, 43),
        ("swatch", 4, 4, 180, 43),
    ]


def test_a_piece_may_lie_either_way_round():
    # The strip beside the block is taller than wide, the tag too: 50 × 90 in 53.0 × 297.
    sheet = laid(NESTED, 0.0, margin=56.5, marks=False)
    found = [one for one in plan_of(sheet, things=(TAG,)).offcuts if one.cut in (1, 4)]
    # Right: 53 wide and 270 + 113 high, four one above the other. Head: 150 wide and 53 high, one on its side.
    assert [(one.cut, one.count) for one in found] == [(1, 4), (4, 1)]


def test_waste_beside_a_shorter_piece_is_found():
    # 90 × 80 come off below piece B–C; 3.5 mm on two sides stay printed or too near to print.
    found = [one for one in plan_of(laid(NESTED, 0.0), things=(SWATCH,)).offcuts if one.cut == 8]
    assert [(one.box.width, one.box.height, one.count) for one in found] == [(86.5, 76.5, 2)]


@settings(max_examples=40, deadline=None)
@given(sheet=sheets)
def test_an_offcut_is_clean_and_lies_in_what_comes_off_with_its_cut(sheet):
    plan = plan_of(sheet, things=(Offcut("slip", Size(11.0, 17.0)), SWATCH))
    waste = carry_out(plan.cuts, sheet).waste
    ink = [box for slot in sheet.slots for box in slot.printed] + [bounds(node.outline) for node in sheet.marks]
    for found in plan.offcuts:
        assert any(piece.cut == found.cut and piece.box.covers(found.box, 1e-6) for piece in waste)
        assert not any(found.box.inset(-0.4).overlaps(box) for box in ink)
        assert found.count == holds(found.box.size, found.each) > 0


@settings(max_examples=200, deadline=None)
@given(taken=st.lists(boxes, max_size=4), wish=boxes)
def test_any_clean_place_lies_in_a_clean_rectangle_that_is_listed(taken, wish):
    paper = Box(0, 0, 42, 42)
    is_clean = paper.covers(wish) and not any(box.overlaps(wish) for box in taken)
    listed = any(found.covers(wish) for found in clean_rectangles(paper, taken, 1.0))
    assert listed == is_clean


def test_a_studio_that_makes_nothing_of_offcuts_finds_none():
    assert plan_of(laid(NESTED)).offcuts == ()


def test_the_words_name_what_could_be_made_and_its_size():
    lines = cut_lines(plan_of(laid(NESTED, 4.0), things=(TAG, SWATCH)))
    assert (
        "Left over by cut 11: clean paper of 90 × 76.5 mm a sheet, "
        "enough for 1 × gift tag of 50 × 90 mm or 2 × swatch of 40 × 40 mm." in lines
    )
