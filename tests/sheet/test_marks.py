"""Crop marks on the trim lines, slug and scale bar in the room that is left; what finds none is named."""

from itertools import combinations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Sides, Size
from padspec.scene.outline import Line, Move
from padspec.sheet.arrangement import Grid
from padspec.sheet.marks import MARK_LEAST, MARK_MOST, SCALE_BAR
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import tile

from .designs import A4, LEGAL, LETTER, TABLOID, design, parted, tiled

ALL = ("crop-mark", "slug", "scale-bar")

margins = st.builds(Sides, *[st.floats(0, 15)] * 4)
trims = st.builds(Size, st.floats(40, 190), st.floats(40, 250))
papers = st.sampled_from([A4, LETTER, LEGAL, TABLOID])
gutters = st.sampled_from([0.0, 2.0, 4.0, 6.35])
sheets = st.builds(design, trims, papers, margins, gutters, st.floats(1, 4), st.floats(0.5, 1.5))


def made(wish: object) -> Sheet:
    sheet = tile(wish)
    assume(sheet is not None)
    assert sheet is not None
    return sheet


def ink(sheet: Sheet) -> list[Box]:
    return [box for part in ALL for box in parted(sheet, part)]


@settings(max_examples=80, deadline=None)
@given(sheets)
def test_no_mark_touches_the_bleed_of_any_slot(wish: object) -> None:
    sheet = made(wish)
    for box in ink(sheet):
        for slot in sheet.slots:
            assert not any(box.overlaps(printed, slack=1e-6) for printed in slot.printed)


@settings(max_examples=80, deadline=None)
@given(sheets)
def test_every_mark_lies_where_the_printer_reaches(wish: object) -> None:
    sheet = made(wish)
    for box in ink(sheet):
        assert sheet.printable.covers(box, slack=1e-6)


@settings(max_examples=80, deadline=None)
@given(sheets)
def test_no_two_marks_of_different_kinds_overlap(wish: object) -> None:
    sheet = made(wish)
    kinds = [(part, box) for part in ALL for box in parted(sheet, part)]
    for (kind, one), (other_kind, other) in combinations(kinds, 2):
        if kind != other_kind:
            assert not one.overlaps(other, slack=1e-6)


@settings(max_examples=80, deadline=None)
@given(sheets)
def test_crop_marks_stand_exactly_on_the_trim_lines(wish: object) -> None:
    sheet = made(wish)
    upright = {x for slot in sheet.slots for x in (slot.trim.x, slot.trim.right)}
    across = {y for slot in sheet.slots for y in (slot.trim.y, slot.trim.bottom)}
    for node in sheet.marks:
        if node.cause.part == "crop-mark":
            start, end = node.outline
            if start.x == end.x:
                assert min(abs(start.x - x) for x in upright) < 1e-6
            else:
                assert start.y == end.y
                assert min(abs(start.y - y) for y in across) < 1e-6


@settings(max_examples=80, deadline=None)
@given(sheets)
def test_each_side_has_a_mark_for_every_cut_or_is_named_as_having_none(wish: object) -> None:
    sheet = made(wish)
    block = sheet.trim_box.inset(-0.1)
    counts = {"head": 0, "foot": 0, "left": 0, "right": 0}
    for box in parted(sheet, "crop-mark"):
        x, y = box.centre
        side = "head" if y < block.y else "foot" if y > block.bottom else "left" if x < block.x else "right"
        counts[side] += 1
    columns = len({round(x, 6) for slot in sheet.slots for x in (slot.trim.x, slot.trim.right)})
    rows = len({round(y, 6) for slot in sheet.slots for y in (slot.trim.y, slot.trim.bottom)})
    for side, lines in (("head", columns), ("foot", columns), ("left", rows), ("right", rows)):
        missing = f"crop marks {side}" in sheet.left_out
        if isinstance(sheet.arrangement, Grid):
            assert counts[side] == (0 if missing else lines)
        else:
            # A line that ends at another leaf has its mark on the side where nothing stands in its way.
            assert (counts[side] == 0) == missing
            assert counts[side] <= lines


@settings(max_examples=80, deadline=None)
@given(sheets)
def test_what_is_left_out_is_named_and_nothing_else(wish: object) -> None:
    sheet = made(wish)
    assert ("slug" in sheet.left_out) == (not parted(sheet, "slug"))
    assert ("scale bar" in sheet.left_out) == (not parted(sheet, "scale-bar"))
    assert len(set(sheet.left_out)) == len(sheet.left_out)


@settings(max_examples=80, deadline=None)
@given(sheets)
def test_crop_marks_are_2_to_5_mm_long(wish: object) -> None:
    # Common practice; published guides ask for 3 to 6 mm, and 0.25 pt.
    for box in parted(made(wish), "crop-mark"):
        assert MARK_LEAST - 1e-6 <= max(box.width, box.height) <= MARK_MOST + 1e-6
        assert min(box.width, box.height) == pytest.approx(0.25 * 25.4 / 72, abs=1e-9)


def test_cut_lines_of_a_guttered_sheet_have_a_mark_on_each_side_of_the_gutter() -> None:
    sheet = tiled(Size(80, 120), gutter=4.0)
    assert (sheet.arrangement.rows, sheet.arrangement.columns) == (2, 2)
    upright = [box.centre[0] for box in parted(sheet, "crop-mark") if box.height > box.width]
    assert sorted({round(x, 6) for x in upright}) == [23, 103, 107, 187]


def test_the_scale_bar_is_100_mm_between_the_middles_of_its_outer_ticks() -> None:
    for trim, paper in ((Size(90, 190), A4), (Size(82.55, 190.5), LETTER), (Size(92, 136), A4)):
        sheet = tiled(trim, paper)
        (bar,) = [n for n in sheet.marks if n.cause.part == "scale-bar" and n.stroke is not None]
        moves = [step for step in bar.outline if isinstance(step, Move)][1:]
        lines = [step for step in bar.outline if isinstance(step, Line)][1:]
        ticks = [((m.x + line.x) / 2, (m.y + line.y) / 2) for m, line in zip(moves, lines, strict=True)]
        assert len(ticks) == 11
        for n, (x, y) in enumerate(ticks):
            length = max(abs(x - ticks[0][0]), abs(y - ticks[0][1]))
            assert length == pytest.approx(SCALE_BAR * n / 10, abs=1e-9)
        assert SCALE_BAR == 100


def test_the_line_of_the_first_tick_lies_in_the_printable_area_to_its_edge() -> None:
    # 2.2 mm are left at head and foot: too little for crop marks, enough for the bar, which begins at the edge.
    sheet = tiled(Size(190, 281.2), bleed=1.5)
    assert "crop marks foot" in sheet.left_out
    bars = parted(sheet, "scale-bar")
    assert bars
    assert all(sheet.printable.covers(box) for box in bars)


def test_a_sheet_without_room_leaves_its_marks_out_and_names_them() -> None:
    # 2 × 100 mm and 1.5 mm of bleed on each side take all of 203 mm across; along, 4 mm are left at each end.
    sheet = tiled(Size(100, 280), margins=Sides.all(3.5), gutter=0.0, bleed=1.5)
    assert {"crop marks left", "crop marks right"} <= set(sheet.left_out)
    assert "crop marks head" not in sheet.left_out


def test_a_sheet_that_takes_all_the_room_names_every_mark() -> None:
    sheet = tiled(Size(203, 290), margins=Sides.all(3.5), gutter=0.0, bleed=0.0)
    assert sheet.marks == ()
    assert sheet.left_out == (
        "crop marks foot",
        "crop marks head",
        "crop marks left",
        "crop marks right",
        "slug",
        "scale bar",
    )


def test_a_design_that_wants_no_marks_has_none_and_misses_none() -> None:
    sheet = tiled(Size(90, 190), marks=False)
    assert (sheet.marks, sheet.left_out) == ((), ())
