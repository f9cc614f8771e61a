"""How many strokes an arrangement takes, against the table of grids and against the edges of the placed leaves."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.sheet.arrangement import Arrangement, Grid, Split, extent, turned
from padspec.sheet.fitting.strokes import a_line, strokes

UPRIGHT, LYING = Size(60, 90), Size(90, 60)
ONE = Grid(1, 1, UPRIGHT, False)


@pytest.mark.parametrize(
    ("rows", "columns", "butted", "guttered"),
    [(1, 1, 4, 4), (1, 2, 5, 6), (1, 3, 6, 8), (2, 2, 6, 8), (2, 3, 7, 10), (4, 2, 8, 12)],
)
def test_a_grid_with_the_stack_kept_together(rows: int, columns: int, butted: int, guttered: int) -> None:
    # Butted (r + 1) + (c + 1): a shared line is cut once. With gutters 2r + 2c. Derived.
    grid = Grid(rows, columns, UPRIGHT, False)
    assert strokes(grid, 0.0) == butted == (rows + 1) + (columns + 1)
    assert strokes(grid, 4.0) == guttered == 2 * rows + 2 * columns


@pytest.mark.parametrize(("gutter", "expected"), [(0.0, 1), (0.1, 2), (4.0, 2)])
def test_neighbours_share_a_line_only_where_they_are_butted(gutter: float, expected: int) -> None:
    assert a_line(gutter) == expected


@pytest.mark.parametrize(
    ("arrangement", "butted", "guttered"),
    [
        # Four outside, one line between (two with a gutter).
        (Split(True, ONE, ONE), 5, 6),
        # The lying one is 30 mm shorter than the upright one beside it: trimmed once more.
        (Split(True, ONE, Grid(1, 1, LYING, True)), 6, 7),
        # Three upright ones above two lying: 180 wide both when butted; with gutters 188 and 184.
        (Split(False, Grid(1, 3, UPRIGHT, False), Grid(1, 2, LYING, True)), 4 + 1 + 2 + 1, 4 + 2 + 4 + 2 + 1),
        # The part that is shorter is itself parted: trimmed whole, before it is.
        (
            Split(True, Grid(2, 1, UPRIGHT, False), Split(False, ONE, Grid(1, 1, LYING, True))),
            4 + 1 + 1 + 1 + 1 + 1,
            4 + 2 + 2 + 1 + 2 + 1,
        ),
    ],
)
def test_a_mixture_counted_by_hand(arrangement: Arrangement, butted: int, guttered: int) -> None:
    assert (strokes(arrangement, 0.0), strokes(arrangement, 4.0)) == (butted, guttered)


def test_lengths_equal_but_for_binary_rounding_take_no_trim() -> None:
    three, one = Grid(3, 1, Size(1.0, 0.1), False), Grid(1, 1, Size(1.0, 0.3), False)
    beside = Split(True, three, one)
    assert strokes(beside, 0.0) == strokes(turned(beside), 0.0) == 4 + 2 + 1


grids = st.builds(
    lambda rows, columns, lies: Grid(rows, columns, LYING if lies else UPRIGHT, lies),
    st.integers(1, 3),
    st.integers(1, 3),
    st.booleans(),
)
arrangements = st.recursive(grids, lambda part: st.builds(Split, st.booleans(), part, part), max_leaves=6)
gutters = st.sampled_from([0.0, 4.0, 30.0])


def inside(low: float, high: float, edges: set[float]) -> int:
    """How many edges lie inside a piece of paper: each is one stroke right across it."""
    return sum(low < edge < high for edge in edges)


def lines(paper: Box, arrangement: Arrangement, gutter: float) -> int:
    """Strokes on a piece of paper, counted from the edges of what lies at its top left corner."""
    size = extent(arrangement, gutter)
    if isinstance(arrangement, Grid):
        across, down = ((arrangement.columns, arrangement.face.width), (arrangement.rows, arrangement.face.height))
        starts = [
            [start + n * (face + gutter) for n in range(number)]
            for start, (number, face) in ((paper.x, across), (paper.y, down))
        ]
        upright = {edge for x in starts[0] for edge in (x, x + across[1])}
        level = {edge for y in starts[1] for edge in (y, y + down[1])}
        return inside(paper.x, paper.right, upright) + inside(paper.y, paper.bottom, level)
    one, other = extent(arrangement.first, gutter), extent(arrangement.second, gutter)
    if arrangement.upright:
        second = Box(paper.x + one.width + gutter, paper.y, other.width, size.height)
        strokes_here = inside(paper.x, paper.right, {paper.x + one.width, second.x, second.right})
        strokes_here += inside(paper.y, paper.bottom, {paper.y + size.height})
        first = Box(paper.x, paper.y, one.width, size.height)
    else:
        second = Box(paper.x, paper.y + one.height + gutter, size.width, other.height)
        strokes_here = inside(paper.y, paper.bottom, {paper.y + one.height, second.y, second.bottom})
        strokes_here += inside(paper.x, paper.right, {paper.x + size.width})
        first = Box(paper.x, paper.y, size.width, one.height)
    return strokes_here + lines(first, arrangement.first, gutter) + lines(second, arrangement.second, gutter)


@settings(max_examples=150, deadline=None)
@given(arrangements, gutters)
def test_one_stroke_for_every_edge_inside_a_piece_of_paper(arrangement: Arrangement, gutter: float) -> None:
    size = extent(arrangement, gutter)
    raw = Box(-10, -10, size.width + 20, size.height + 20)
    outside = inside(raw.x, raw.right, {0.0, size.width}) + inside(raw.y, raw.bottom, {0.0, size.height})
    expected = outside + lines(Box(0, 0, size.width, size.height), arrangement, gutter)
    assert strokes(arrangement, gutter) == expected


@settings(max_examples=80, deadline=None)
@given(arrangements, gutters)
def test_turning_the_sheet_changes_no_stroke(arrangement: Arrangement, gutter: float) -> None:
    assert strokes(turned(arrangement), gutter) == strokes(arrangement, gutter)
