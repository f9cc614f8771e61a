"""The exact search against published instances, an independent recursion, and what geometry demands."""

from functools import cache
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Size
from padspec.sheet.arrangement import Grid, extent, faces, placed
from padspec.sheet.guillotine import Cutting, Piece, best_cutting
from padspec.sheet.slots import make_slots
from padspec.sheet.strokes import strokes

INCH = 25.4
#: Christofides & Whitlock, Operations Research 25 (1977) 30-44, problem 1: width, height, value; sheet 15 × 10.
WHITLOCK = [(8, 4, 66), (3, 7, 35), (8, 2, 24), (3, 4, 17), (3, 3, 11), (3, 2, 8), (2, 1, 2)]


def whitlock(turns: bool) -> list[Piece]:
    return [Piece(Size(w, h), v, turns, item) for item, (w, h, v) in enumerate(WHITLOCK)]


def one_kind(sheet: Size, face: Size, gutter: float = 0.0) -> Cutting:
    return best_cutting(sheet, (Piece(face, 1.0),), gutter)


def test_christofides_and_whitlock_without_counts() -> None:
    """249: Hifi & Zissimopoulos, European Journal of Operational Research 91 (1996) 553-564."""
    found = best_cutting(Size(15, 10), whitlock(turns=False), 0.0)
    assert (found.value, found.proven) == (249, True)


def test_christofides_and_whitlock_with_quarter_turns() -> None:
    """278: computed with an independent exact solver, no published source."""
    assert best_cutting(Size(15, 10), whitlock(turns=True), 0.0).value == 278


@pytest.mark.parametrize(
    ("sheet", "face", "most"),
    [
        # The pinwheel: four of 3 × 2 lie in 5 × 5, but no straight cut parts them; derived.
        (Size(5, 5), Size(3, 2), 3),
        # 47 fit by free placement (a classic of pallet loading, from memory), 46 by straight cuts; computed.
        (Size(40, 25), Size(7, 3), 46),
        # A board of 30 × 40 in: one grid holds 32 or 33 backs of 3.5 × 8.5 in, a mixture 38; derived.
        (Size(30 * INCH, 40 * INCH), Size(3.5 * INCH, 8.5 * INCH), 38),
        (Size(210, 297), Size(74, 105), 8),
        (Size(297, 420), Size(99, 210), 6),
    ],
)
def test_known_optima(sheet: Size, face: Size, most: int) -> None:
    found = one_kind(sheet, face)
    assert found.arrangement is not None
    assert (faces(found.arrangement), found.proven) == (most, True)


@cache
def by_hand(width: int, height: int, pieces: tuple[tuple[int, int, int], ...]) -> int:
    """The recursion at every whole number, with nothing clever about it."""
    best = max((v for w, h, v in pieces if w <= width and h <= height), default=0)
    for k in range(1, width // 2 + 1):
        best = max(best, by_hand(k, height, pieces) + by_hand(width - k, height, pieces))
    for k in range(1, height // 2 + 1):
        best = max(best, by_hand(width, k, pieces) + by_hand(width, height - k, pieces))
    return best


some_pieces = st.lists(st.tuples(st.integers(2, 9), st.integers(2, 9), st.integers(1, 30)), min_size=1, max_size=3)


@settings(max_examples=120, deadline=None)
@given(st.integers(3, 22), st.integers(3, 22), some_pieces, st.booleans(), st.integers(0, 2))
def test_the_plain_recursion_finds_as_much(
    width: int, height: int, pieces: list[tuple[int, int, int]], turns: bool, gutter: int
) -> None:
    found = best_cutting(
        Size(width, height), [Piece(Size(w, h), v, turns, n) for n, (w, h, v) in enumerate(pieces)], gutter
    )
    grown = tuple((w + gutter, h + gutter, v) for w, h, v in pieces)
    both = grown + tuple((h, w, v) for w, h, v in grown) if turns else grown
    assert found.value == by_hand(width + gutter, height + gutter, both)
    assert found.bound == pytest.approx(found.value)


sizes = st.builds(Size, st.floats(30, 120), st.floats(30, 120))


@settings(max_examples=80, deadline=None)
@given(st.builds(Size, st.floats(60, 700), st.floats(60, 1000)), sizes, st.sampled_from([0.0, 3.0, 4.0]))
def test_leaves_lie_on_the_sheet_apart_and_no_fewer_than_in_one_grid(
    sheet: Size, face: Size, gutter: float
) -> None:
    found = one_kind(sheet, face, gutter)
    columns, rows = (
        int((a + gutter + 1e-6) // (b + gutter))
        for a, b in ((sheet.width, face.width), (sheet.height, face.height))
    )
    assert found.value >= columns * rows
    assert found.value <= found.bound + 1e-6
    if found.arrangement is None:
        return
    size = extent(found.arrangement, gutter)
    assert size.width <= sheet.width + 1e-5
    assert size.height <= sheet.height + 1e-5
    assert faces(found.arrangement) == found.value
    slots = make_slots(placed(found.arrangement, 0, 0, gutter), gutter, make_paper(size), 0.0)
    for one, other in combinations([slot.trim.inset(-gutter / 2) for slot in slots[:60]], 2):
        assert not one.overlaps(other, slack=1e-5)


def make_paper(size: Size):  # type: ignore[no-untyped-def]
    from padspec.base.geometry import Box

    return Box(-10, -10, size.width + 20, size.height + 20)


def test_lengths_that_fit_on_paper_fit_in_spite_of_rounding() -> None:
    assert one_kind(Size(0.1 + 0.2, 1.0), Size(0.1, 1.0)).value == 3
    assert one_kind(Size(3 * 25.4 / 64, 1.0), Size(25.4 / 64, 1.0)).value == 3


def test_equal_faces_come_as_one_grid() -> None:
    assert one_kind(Size(198.6, 285.6), Size(90, 190), 4.0).arrangement == Grid(3, 1, Size(190, 90), True)


def test_what_is_cut_short_still_says_how_much_more_there_might_be() -> None:
    whole = one_kind(Size(700, 1000), Size(37.3, 53.1), 4.0)
    short = best_cutting(Size(700, 1000), (Piece(Size(37.3, 53.1), 1.0),), 4.0, most_work=10)
    assert short.value <= whole.value <= short.bound
    assert short.arrangement is not None


def test_the_same_question_has_the_same_answer_whatever_came_before() -> None:
    pieces = whitlock(turns=True)
    first = best_cutting(Size(15, 10), pieces, 0.0)
    best_cutting(Size(40, 25), (Piece(Size(7, 3), 1.0),), 0.0)
    assert best_cutting(Size(15, 10), pieces, 0.0) == first


@pytest.mark.parametrize(
    ("rows", "columns", "butted", "guttered"),
    [(1, 1, 4, 4), (1, 2, 5, 6), (1, 3, 6, 8), (2, 2, 6, 8), (2, 3, 7, 10), (4, 2, 8, 12)],
)
def test_strokes_with_the_stack_kept_together(rows: int, columns: int, butted: int, guttered: int) -> None:
    # Butted (r + 1) + (c + 1): a shared line is cut once. With gutters 2r + 2c. Derived.
    grid = Grid(rows, columns, Size(90, 190), False)
    assert strokes(grid, 0.0) == butted == (rows + 1) + (columns + 1)
    assert strokes(grid, 4.0) == guttered == 2 * rows + 2 * columns
