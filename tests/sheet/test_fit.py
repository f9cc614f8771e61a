"""How many faces a sheet holds, against published sums and against trying everything.

Gang-up count per axis: n = ⌊(P − 2b + g) ÷ (f + g)⌋ with P the printable length, b the bleed outside, g the
gutter, f the face. Derived; the cases are those where a rule of thumb promises more than the margins leave.
"""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Sides, Size
from padspec.sheet.fit import beds, best_grid, count, cut_count, grids, largest_trims, taken

from .designs import A4, LEGAL, LETTER, TABLOID, design

INCH = 25.4
QUARTER, EIGHTH = Sides.all(INCH / 4), INCH / 8
THREE = Sides.all(3.0)


def size(width: float, height: float) -> Size:
    return Size(width * INCH, height * INCH)


@pytest.mark.parametrize(
    ("sheet", "margins", "bleed", "face", "guttered", "butted"),
    [
        (LETTER, QUARTER, EIGHTH, size(3.5, 8.5), (2, 0), (2, 0)),
        (LETTER, QUARTER, EIGHTH, size(4.25, 5.5), (1, 2), (1, 2)),
        (LETTER, QUARTER, EIGHTH, size(3.75, 5), (4, 2), (4, 2)),
        (LEGAL, QUARTER, EIGHTH, size(3.5, 8.5), (2, 0), (2, 0)),
        (TABLOID, QUARTER, EIGHTH, size(3.5, 8.5), (2, 4), (2, 4)),
        (TABLOID, QUARTER, EIGHTH, size(3.75, 5), (6, 8), (6, 8)),
        (A4, THREE, 3.0, Size(99, 210), (1, 0), (2, 0)),
        (A4, THREE, 3.0, Size(74, 105), (4, 3), (4, 3)),
    ],
)
def test_a_sheet_holds_as_many_faces_as_the_sum_says(
    sheet: Size, margins: Sides, bleed: float, face: Size, guttered: tuple[int, int], butted: tuple[int, int]
) -> None:
    for gutter, (upright, turned) in ((2 * bleed, guttered), (0.0, butted)):
        wish = design(face, sheet, margins, gutter, bleed, least_bleed=bleed)
        bed = beds(wish)[0].printable
        per_axis = [
            count(bed.width, f.width, gutter, bleed) * count(bed.height, f.height, gutter, bleed)
            for f in (face, face.turned())
        ]
        assert per_axis == [upright, turned]
        grid = best_grid(wish)
        assert grid is not None
        assert grid.n_up == max(upright, turned)


def test_a_whole_number_of_faces_fits_in_spite_of_rounding() -> None:
    # 3 × 0.1 is a little more than 0.3 in binary; 30 rows of 5 mm and the like must still fit.
    assert count(0.1 + 0.2, 0.1, 0.0, 0.0) == 3
    assert count(3 * 99.0, 99.0, 0.0, 0.0) == 3


@pytest.mark.parametrize("length", [0.0, 2.9, -5.0])
def test_no_length_holds_less_than_nothing(length: float) -> None:
    assert count(length, 90.0, 4.0, 1.5) == 0


@settings(deadline=None)
@given(st.floats(1, 2000), st.floats(5, 300), st.floats(0, 20), st.floats(0, 6))
def test_the_count_is_the_largest_that_fits(length: float, face: float, gutter: float, least: float) -> None:
    n = count(length, face, gutter, least)
    assert n == 0 or taken(n, face, gutter) + 2 * least <= length + 1e-6
    assert taken(n + 1, face, gutter) + 2 * least > length - 1e-6


@pytest.mark.parametrize(
    ("rows", "columns", "butted", "guttered"),
    [(1, 1, 4, 4), (1, 2, 5, 6), (1, 3, 6, 8), (2, 2, 6, 8), (2, 3, 7, 10), (4, 2, 8, 12)],
)
def test_strokes_with_the_stack_kept_together(rows: int, columns: int, butted: int, guttered: int) -> None:
    # Butted (r + 1) + (c + 1): a shared line is cut once. With gutters 2r + 2c. Derived.
    assert cut_count(rows, columns, 0.0) == butted == (rows + 1) + (columns + 1)
    assert cut_count(rows, columns, 4.0) == guttered == 2 * rows + 2 * columns


margins = st.builds(Sides, *[st.floats(0, 20)] * 4)
trims = st.builds(Size, st.floats(30, 250), st.floats(30, 320))
papers = st.sampled_from([A4, LETTER, LEGAL, TABLOID])
gutters = st.sampled_from([0.0, 0.0, 2.0, 4.0, 6.35])


@settings(max_examples=150, deadline=None)
@given(trims, papers, margins, gutters, st.floats(0, 3))
def test_no_grid_of_either_orientation_of_sheet_and_face_holds_more(
    trim: Size, paper: Size, margin: Sides, gutter: float, least: float
) -> None:
    wish = design(trim, paper, margin, gutter, 3.0, least)
    most = 0
    for bed in beds(wish):
        for face in (trim, trim.turned()):
            for rows in range(1, 16):
                for columns in range(1, 16):
                    wide = columns * face.width + (columns - 1) * gutter + 2 * least
                    high = rows * face.height + (rows - 1) * gutter + 2 * least
                    if wide <= bed.printable.width + 1e-9 and high <= bed.printable.height + 1e-9:
                        most = max(most, rows * columns)
    grid = best_grid(wish)
    assert (grid.n_up if grid else 0) == most


@settings(deadline=None)
@given(trims, papers, margins, gutters)
def test_of_the_fullest_grids_the_one_with_the_fewest_cuts_wins(
    trim: Size, paper: Size, margin: Sides, gutter: float
) -> None:
    wish = design(trim, paper, margin, gutter)
    found = grids(wish)
    assume(found)
    best = best_grid(wish)
    assert best is not None
    equals = [(grid, spare) for grid, spare in found if grid.n_up == best.n_up]
    assert best.cuts == min(grid.cuts for grid, _ in equals)
    left = {spare for grid, spare in equals if grid == best}
    assert max(left) >= max(spare for grid, spare in equals if grid.cuts == best.cuts) - 1e-5


def test_where_all_else_is_equal_sheet_and_face_stay_upright() -> None:
    grid = best_grid(design(Size(100, 100), Size(210, 210), gutter=0.0))
    assert grid is not None
    assert (grid.sheet_turned, grid.face_turned) == (False, False)


def test_a_turned_sheet_takes_the_larger_margin_of_each_pair_on_both_sides() -> None:
    upright, turned = beds(design(Size(90, 190), margins=Sides(left=3, top=4, right=5, bottom=12)))
    assert upright.printable == Size(210 - 8, 297 - 16)
    assert turned.size == Size(297, 210)
    assert turned.margins == Sides(left=12, top=5, right=12, bottom=5)


@settings(deadline=None)
@given(papers, margins, st.floats(0, 3))
def test_the_largest_trim_that_is_named_fits_and_a_larger_one_does_not(
    paper: Size, margin: Sides, least: float
) -> None:
    sizes = largest_trims(design(Size(400, 500), paper, margin, 4.0, 3.0, least))
    assert sizes
    for largest in sizes:
        assert best_grid(design(largest, paper, margin, 4.0, 3.0, least)) is not None
    wider = max(sizes, key=lambda s: s.width)
    too_wide = Size(max(wider.width, wider.height) + 0.01, max(wider.width, wider.height) + 0.01)
    assert best_grid(design(too_wide, paper, margin, 4.0, 3.0, least)) is None
