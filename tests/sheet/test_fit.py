"""How many faces a sheet holds, against published sums and against trying everything.

Gang-up count per axis: n = ⌊(P − 2b + g) ÷ (f + g)⌋ with P the printable length, b the bleed outside, g the
gutter, f the face. Derived; the cases are those where a rule of thumb promises more than the margins leave.
"""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Sides, Size
from padspec.sheet.arrangement import Grid, taken
from padspec.sheet.bed import bed_of
from padspec.sheet.fitting.fit import best_fit, count, fits, largest_grid

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
        bed = bed_of(wish).printable
        per_axis = [
            count(bed.width, f.width, gutter, bleed) * count(bed.height, f.height, gutter, bleed)
            for f in (face, face.turned())
        ]
        assert per_axis == [upright, turned]
        fit = best_fit(wish)
        assert fit is not None
        assert fit.n_up >= max(upright, turned)
        assert {f.n_up for f in fits(wish) if isinstance(f.arrangement, Grid)} == {upright, turned} - {0}


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


margins = st.builds(Sides, *[st.floats(0, 20)] * 4)
trims = st.builds(Size, st.floats(30, 250), st.floats(30, 320))
papers = st.sampled_from([A4, LETTER, LEGAL, TABLOID])
gutters = st.sampled_from([0.0, 0.0, 2.0, 4.0, 6.35])


@settings(max_examples=150, deadline=None)
@given(trims, papers, margins, gutters, st.floats(0, 3))
def test_no_grid_of_either_orientation_of_the_face_holds_more(
    trim: Size, paper: Size, margin: Sides, gutter: float, least: float
) -> None:
    wish = design(trim, paper, margin, gutter, 3.0, least)
    most, printable = 0, bed_of(wish).printable
    for face in (trim, trim.turned()):
        for rows in range(1, 16):
            for columns in range(1, 16):
                wide = columns * face.width + (columns - 1) * gutter + 2 * least
                high = rows * face.height + (rows - 1) * gutter + 2 * least
                if wide <= printable.width + 1e-9 and high <= printable.height + 1e-9:
                    most = max(most, rows * columns)
    fit = best_fit(wish)
    assert (fit.n_up if fit else 0) >= most
    assert (fit is None) == (most == 0)


@settings(max_examples=60, deadline=None)
@given(trims, papers, margins, gutters)
def test_on_its_side_the_paper_holds_as_many(trim: Size, paper: Size, margin: Sides, gutter: float) -> None:
    """Both orientations of the sheet are the same question: turning the paper is turning every face."""
    upright = best_fit(design(trim, paper, margin, gutter, turn="left"))
    wide = best_fit(design(trim, paper.turned(), margin, gutter, turn="left"))
    assert (upright and (upright.n_up, upright.cuts)) == (wide and (wide.n_up, wide.cuts))


@settings(deadline=None)
@given(trims, papers, margins, gutters)
def test_of_the_fullest_fits_the_one_with_the_fewest_cuts_wins(
    trim: Size, paper: Size, margin: Sides, gutter: float
) -> None:
    wish = design(trim, paper, margin, gutter)
    found = fits(wish)
    assume(found)
    best = best_fit(wish)
    assert best is not None
    equals = [fit for fit in found if fit.n_up == best.n_up]
    assert best.cuts == min(fit.cuts for fit in equals)
    assert best.spare >= max(fit.spare for fit in equals if fit.cuts == best.cuts) - 1e-5


def test_where_all_else_is_equal_the_face_stays_upright() -> None:
    fit = best_fit(design(Size(100, 100), Size(212, 212), gutter=0.0))
    assert fit is not None
    assert fit.arrangement == Grid(2, 2, Size(100, 100), False)


def test_faces_of_both_orientations_share_a_sheet_where_that_holds_more() -> None:
    # 198.6 × 285.6 mm for trims, butted. 75 × 105 upright: 2 × 2 = 4, with 285.6 − 210 = 75.6 left below, just
    # enough for one on its side; turned: 1 × 3 = 3.
    fit = best_fit(design(Size(75, 105), gutter=0.0))
    assert fit is not None
    assert fit.n_up == 5
    assert not isinstance(fit.arrangement, Grid)


def test_a_wide_page_keeps_the_larger_margin_of_each_pair_until_its_turn_is_known() -> None:
    margins = Sides(left=3, top=4, right=5, bottom=12)
    wide = Size(297, 210)
    assert bed_of(design(Size(90, 190), wide, margins)).margins == Sides(left=12, top=5, right=12, bottom=5)
    left = bed_of(design(Size(90, 190), wide, margins, turn="left"))
    right = bed_of(design(Size(90, 190), wide, margins, turn="right"))
    # Turned to the left, the head of the page lies along the left edge of the sheet as fed, its left at the foot.
    assert left.margins == Sides(left=12, top=3, right=4, bottom=5)
    assert right.margins == Sides(left=4, top=5, right=12, bottom=3)


@settings(deadline=None)
@given(papers, margins, st.floats(0, 3))
def test_the_largest_trim_that_is_named_fits_and_a_larger_one_does_not(
    paper: Size, margin: Sides, least: float
) -> None:
    grid = largest_grid(design(Size(400, 500), paper, margin, 4.0, 3.0, least))
    assert grid is not None
    largest = grid.face
    assert best_fit(design(largest, paper, margin, 4.0, 3.0, least)) is not None
    side = max(largest.width, largest.height) + 0.01
    assert best_fit(design(Size(side, side), paper, margin, 4.0, 3.0, least)) is None
