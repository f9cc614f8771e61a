"""Slots: inside what the printer reaches, clear of each other, with bleed that stays at home."""

from itertools import combinations, product

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from kit import PLAIN, apply, pad

from padspec.base.geometry import Sides, Size
from padspec.scene.outline import bounds
from padspec.sheet.arrangement import Grid, Split
from padspec.sheet.copies import copies_to_print
from padspec.sheet.fitting.fit import best_fit
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import tile

from .designs import A4, LEGAL, LETTER, TABLOID, design, tiled

margins = st.builds(Sides, *[st.floats(0, 15)] * 4)
trims = st.builds(Size, st.floats(30, 190), st.floats(30, 250))
papers = st.sampled_from([A4, LETTER, LEGAL, TABLOID])
gutters = st.sampled_from([0.0, 0.0, 2.0, 4.0, 6.35, 10.0])
bleeds = st.floats(0, 5)
sheets = st.builds(design, trims, papers, margins, gutters, bleeds, st.floats(0, 3), st.just(False))


def made(wish: object) -> Sheet:
    sheet = tile(wish)
    assume(sheet is not None)
    assert sheet is not None
    return sheet


@settings(max_examples=100, deadline=None)
@given(sheets)
def test_every_trim_lies_in_the_printable_area_with_its_least_bleed(wish: object) -> None:
    sheet = made(wish)
    for slot in sheet.slots:
        assert sheet.printable.covers(slot.trim.inset(-wish.sheet.least_bleed if sheet.gutter else 0), slack=1e-6)
    assert sheet.printable.covers(sheet.trim_box.inset(-wish.sheet.least_bleed), slack=1e-6)


@settings(max_examples=100, deadline=None)
@given(sheets)
def test_all_that_prints_lies_in_the_printable_area(wish: object) -> None:
    sheet = made(wish)
    assert sheet.printable.covers(sheet.bleed_box, slack=1e-6)


@settings(max_examples=100, deadline=None)
@given(sheets)
def test_no_two_slots_overlap_and_no_bleed_reaches_into_a_neighbour(wish: object) -> None:
    sheet = made(wish)
    for one, other in combinations(sheet.slots, 2):
        assert not one.trim.overlaps(other.trim, slack=1e-6)
        for a, b in product(one.printed, other.printed):
            # Where grids of unequal width meet, bleed may meet bleed at a corner, never a leaf.
            assert not a.overlaps(b, slack=1e-6) or isinstance(sheet.arrangement, Split)
            assert not a.overlaps(other.trim, slack=1e-6)
            assert not b.overlaps(one.trim, slack=1e-6)


@settings(max_examples=100, deadline=None)
@given(sheets)
def test_bleed_in_a_gutter_is_half_of_it_at_most_and_never_more_than_wished(wish: object) -> None:
    sheet = made(wish)
    for slot in sheet.slots:
        trim, printed = slot.trim, slot.printed[0]
        assert not (slot.butted and sheet.gutter)
        assert slot.bleed.least() <= min(wish.sheet.bleed, sheet.gutter / 2) + 1e-9 or sheet.n_up == 1
        sides = (trim.x - printed.x, trim.y - printed.y, printed.right - trim.right, printed.bottom - trim.bottom)
        assert all(-1e-9 <= side <= wish.sheet.bleed + 1e-9 for side in sides)


@settings(max_examples=100, deadline=None)
@given(sheets)
def test_slots_stand_a_gutter_apart_and_are_as_large_as_the_trim(wish: object) -> None:
    sheet = made(wish)
    grid = sheet.arrangement
    assume(isinstance(grid, Grid))
    face = wish.trim.turned() if grid.turned else wish.trim
    first = sheet.slots[0].trim
    for n, slot in enumerate(sheet.slots):
        row, column = divmod(n, grid.columns)
        assert (slot.trim.width, slot.trim.height) == (face.width, face.height)
        assert slot.trim.x == pytest.approx(first.x + column * (face.width + sheet.gutter), abs=1e-9)
        assert slot.trim.y == pytest.approx(first.y + row * (face.height + sheet.gutter), abs=1e-9)


@settings(max_examples=100, deadline=None)
@given(sheets)
def test_the_transform_lands_the_face_on_its_trim(wish: object) -> None:
    sheet = made(wish)
    for slot in sheet.slots:
        ends = [slot.transform.of(0, 0), slot.transform.of(wish.trim.width, wish.trim.height)]
        (left, right), (top, bottom) = (sorted(values) for values in zip(*ends, strict=True))
        box = slot.trim
        assert (left, top, right, bottom) == pytest.approx((box.x, box.y, box.right, box.bottom), abs=1e-9)


@settings(max_examples=100, deadline=None)
@given(sheets)
def test_the_block_is_centred_on_the_sheet_where_that_clears_the_margins(wish: object) -> None:
    sheet = made(wish)
    block, (x, y) = sheet.trim_box, sheet.trim_box.centre
    middle = (sheet.size.width / 2, sheet.size.height / 2)
    centred = block.moved(middle[0] - x, middle[1] - y).inset(-wish.sheet.least_bleed)
    if sheet.printable.covers(centred, slack=-1e-6):
        assert (x, y) == pytest.approx(middle, abs=1e-6)
    elif not sheet.printable.covers(centred, slack=1e-6):
        assert (x, y) == pytest.approx(sheet.printable.centre, abs=1e-6)


def test_unequal_margins_push_the_block_off_the_middle_of_the_sheet_only_as_they_must() -> None:
    # 3 × 90 + 2 × 4 = 278 mm along 297: centred it would end 9.5 mm from the foot, and 12 cannot be printed.
    sheet = tiled(Size(90, 190), margins=Sides(left=4.2, top=3, right=4.2, bottom=12))
    assert sheet.arrangement.rows == 3
    assert sheet.trim_box.centre[1] == pytest.approx((3 + 297 - 12) / 2)
    area = sheet.printable
    assert (area.x, area.y, area.width, area.height) == pytest.approx((4.2, 3, 201.6, 282))


@pytest.mark.parametrize("trim", [Size(283, 190), Size(138, 95), Size(190, 90)])
def test_a_face_that_lies_is_turned_rather_than_the_paper(trim: Size) -> None:
    sheet, upright = tiled(trim), tiled(trim.turned())
    assert (sheet.size, sheet.n_up) == (A4, upright.n_up)
    assert sheet.slots[0].turned != upright.slots[0].turned


@pytest.mark.parametrize("trim", [Size(300, 300), Size(205, 292), Size(90, 289)])
def test_a_face_that_does_not_fit_makes_no_sheet(trim: Size) -> None:
    assert best_fit(design(trim)) is None
    assert tile(design(trim)) is None


def test_a_butted_sheet_prints_no_bleed_between_its_leaves() -> None:
    sheet = tiled(Size(90, 190), gutter=0.0)
    assert (sheet.n_up, sheet.cuts) == (3, 6)
    one, other, _ = sheet.slots
    assert one.printed[0].bottom == other.printed[0].y == one.trim.bottom
    assert (one.butted, other.butted) == (("foot",), ("head", "foot"))


def test_copies_worked_by_hand() -> None:
    # 4 pads of 50 leaves: 200; 5 % over: 210; 2 test sheets of 3 faces: 216; three a sheet: 72.
    assert copies_to_print(4, 50, 3, 0.05, 2) == 72
    # 1 pad of 50: 52.5 + 6 = 58.5 faces, 19.5 sheets: 20.
    assert copies_to_print(1, 50, 3, 0.05, 2) == 20
    # Nothing over: 50 faces, three a sheet, 16.67: 17.
    assert copies_to_print(1, 50, 3, 0.0, 0) == 17


def test_copies_that_come_out_even_are_not_rounded_up_by_a_hair() -> None:
    # 100 × 1.1 is 110.00000000000001 in binary.
    assert copies_to_print(2, 50, 1, 0.1, 0) == 110


@settings(deadline=None)
@given(st.integers(1, 40), st.integers(1, 200), st.integers(1, 20), st.floats(0, 0.5), st.integers(0, 10))
def test_the_copies_hold_every_leaf_with_its_overs_and_one_sheet_less_does_not(
    pads: int, leaves: int, n_up: int, overs: float, tests: int
) -> None:
    copies = copies_to_print(pads, leaves, n_up, overs, tests)
    wanted = pads * leaves * (1 + overs)
    assert (copies - tests) * n_up >= wanted - 1e-6
    assert (copies - tests - 1) * n_up < wanted


def test_a_remark_without_room_for_a_slug_stands_on_a_leaf() -> None:
    """What is printed despite errors says so, even where the maker wants no marks."""
    sheet = tile(pad(apply(PLAIN, {"sheet.marks": "false"})).design, remark="PRINTED DESPITE ERRORS")
    assert sheet is not None
    (shape,) = sheet.marks
    assert sheet.slots[0].trim.covers(bounds(shape.outline))
