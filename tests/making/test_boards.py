"""Backs from big sheets: known optima of straight cuts, and every layout carried out cut by cut."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kit import pad

from padspec.base.geometry import Size
from padspec.making.boards import boards_of
from padspec.making.strips import Rest, shared_sheets
from padspec.sheet.arrangement import extent, placed
from padspec.sheet.cutting.carry_out import carry_out


def design(trim="width: 90 mm, height: 190 mm", sheet="width: 30 in, height: 40 in", more=""):
    text = f"pad: List\ntrim: {{{trim}}}\nlayout: blank\nsheet: {{size: A3}}\n"
    return pad(text, f"board: {{sheet: {{{sheet}}}{more}}}\n").design


@pytest.mark.parametrize(
    ("sheet", "trim", "each"),
    [
        # Grids alone give 32 or 33; mixed orientation 38, the area 40.3: computed with an exact solver.
        ("width: 30 in, height: 40 in", "width: 3 1/2 in, height: 8 1/2 in", 38),
        ("width: 210 mm, height: 297 mm", "width: 74 mm, height: 105 mm", 8),
        ("width: 297 mm, height: 420 mm", "width: 99 mm, height: 210 mm", 6),
        # The pinwheel: four of 3 × 2 lie in 5 × 5, but no straight cut parts them.
        ("width: 100 mm, height: 100 mm", "width: 60 mm, height: 40 mm", 3),
        # A classic of pallet loading (47 by free placement, from memory): 46 by straight cuts.
        ("width: 800 mm, height: 500 mm", "width: 140 mm, height: 60 mm", 46),
    ],
)
def test_a_big_sheet_gives_as_many_as_straight_cuts_can(sheet, trim, each):
    boards = boards_of([(design(trim, sheet), 1)])
    assert boards.sizes[0].each == boards.sizes[0].bound == each


def _made(boards):
    made = [0] * len(boards.sizes)
    for layout in boards.layouts:
        for item, number in layout.gives:
            made[item] += number * layout.sheets
    return made


@pytest.mark.parametrize("wanted", [1, 44, 45, 88, 100])
def test_whole_sheets_are_fetched_and_not_one_more(wanted):
    boards = boards_of([(design(), wanted)])
    assert boards.sheets == -(-wanted // 44)
    assert _made(boards)[0] >= wanted


def test_the_cuts_carried_out_leave_every_back():
    for layout in boards_of([(design(), 50), (design("width: 92 mm, height: 136 mm"), 8)]).layouts:
        left = carry_out(layout.cuts.cuts, layout.sheet).leaves
        assert len(left) == sum(number for _, number in layout.gives)


def test_the_boards_own_edges_are_used_and_not_cut():
    """4 × 190 = 760 of 762 wide, 11 × 90 = 990 of 1016 high: 4 + 11 cuts and not one at the raw edges."""
    cuts = boards_of([(design(), 44)]).layouts[0].cuts.cuts
    assert len(cuts) == 15
    assert all(cut.at > 1 for cut in cuts)


def test_a_few_backs_of_several_sizes_share_a_sheet():
    sizes = [design(), design("width: 82.5 mm, height: 190.5 mm"), design("width: 92 mm, height: 136 mm")]
    boards = boards_of(list(zip(sizes, (28, 6, 8), strict=True)))
    assert boards.sheets == boards.bound == 1
    assert all(made >= size.wanted for made, size in zip(_made(boards), boards.sizes, strict=True))


def test_pads_without_board_have_none():
    assert boards_of([(design(more=", thickness: 0 mm"), 4)]) is None


def test_a_back_larger_than_the_board_is_told():
    boards = boards_of([(design(sheet="width: 100 mm, height: 150 mm"), 4)])
    assert (boards.misfits, boards.sheets) == ((Size(90, 190),), 0)


_SIDES = st.integers(2, 12).map(lambda n: n * 25.0)


@settings(max_examples=60)
@given(st.lists(st.tuples(_SIDES, _SIDES, st.integers(1, 60)), min_size=1, max_size=5))
def test_strips_hold_every_rest_inside_the_sheet_and_touch_nothing(sizes):
    board = Size(700, 1000)
    rests = [Rest(item, Size(width, height), number) for item, (width, height, number) in enumerate(sizes)]
    made = [0] * len(rests)
    for arrangement in shared_sheets(rests, board):
        size = extent(arrangement, 0.0)
        assert size.width <= board.width + 1e-6
        assert size.height <= board.height + 1e-6
        boxes = placed(arrangement, 0.0, 0.0, 0.0)
        assert not any(a.box.overlaps(b.box) for n, a in enumerate(boxes) for b in boxes[:n])
        for one in boxes:
            made[one.grid.item] += one.grid.rows * one.grid.columns
            trim = rests[one.grid.item].trim
            assert one.grid.face == (trim.turned() if one.grid.turned else trim)
    assert all(number >= rest.number for number, rest in zip(made, rests, strict=True))
