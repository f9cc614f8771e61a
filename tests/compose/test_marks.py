"""Marks to fill in: all of them or none, in even lines, flush at both sides, each number in its middle."""

from itertools import groupby, pairwise
from math import ceil

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box
from padspec.compose.blocks.marks import array_in, draw, need
from padspec.compose.face import Drawn, Room
from padspec.scene.outline import bounds

from .blocks import ink_boxes, marks, of_part

wide_rooms = st.builds(Box, st.just(11.0), st.just(40.0), st.floats(20, 180), st.floats(20, 200))
counts = st.integers(1, 60)
sizes, gaps = st.floats(2, 12), st.floats(0, 4)


def drawn(box: Box, **changes: object) -> Drawn:
    return draw(marks(**changes), Room(box), 0.0)


def circles(some: Drawn) -> list[Box]:
    return list(ink_boxes(of_part(some, "checkbox")))


def in_lines(found: list[Box]) -> list[list[Box]]:
    return [list(line) for _, line in groupby(found, key=lambda box: round(box.y, 6))]


@settings(deadline=None)
@given(wide_rooms, counts, sizes, gaps)
def test_all_marks_are_drawn_inside_their_room_or_none(box: Box, count: int, size: float, gap: float) -> None:
    some = drawn(box, count=count, size=size, gap=gap, numbered=False)
    found = circles(some)
    assert len(found) in (0, count)
    assert (len(found) == 0) == (some.placements[0].rows == 0)
    for one in found:
        assert one.x >= box.x - 1e-6
        assert one.right <= box.right + 1e-6
        assert one.y >= box.y - 1e-6
        assert one.bottom <= box.bottom + 1e-6


@settings(deadline=None)
@given(wide_rooms, counts, sizes, gaps)
def test_marks_keep_their_gap_and_their_size(box: Box, count: int, size: float, gap: float) -> None:
    found = circles(drawn(box, count=count, size=size, gap=gap, numbered=False))
    for one in found:
        assert (one.width, one.height) == pytest.approx((size, size))
    for line in in_lines(found):
        for left, right in pairwise(line):
            assert right.x - left.right >= gap - 1e-6
    for above, below in pairwise(in_lines(found)):
        assert below[0].y - above[0].bottom >= gap - 1e-6


@settings(deadline=None)
@given(wide_rooms, counts, sizes, gaps)
def test_lines_are_as_few_as_the_width_allows_and_filled_alike(
    box: Box, count: int, size: float, gap: float
) -> None:
    """No line but the last is shorter; one mark fewer in each line would need a line more."""
    lines = in_lines(circles(drawn(box, count=count, size=size, gap=gap, numbered=False)))
    if not lines:
        return
    across = len(lines[0])
    assert all(len(line) == across for line in lines[:-1])
    most = max(int((box.width + gap) / (size + gap) + 1e-9), 1)
    assert len(lines) == ceil(count / most)
    assert across == 1 or ceil(count / (across - 1)) > len(lines)


@settings(deadline=None)
@given(wide_rooms, st.integers(2, 60), sizes, gaps)
def test_the_first_and_the_last_of_a_full_line_end_flush(box: Box, count: int, size: float, gap: float) -> None:
    lines = in_lines(circles(drawn(box, count=count, size=size, gap=gap, numbered=False)))
    for line in lines:
        assert line[0].x == pytest.approx(box.x)
    if lines and len(lines[0]) > 1:
        assert lines[0][-1].right == pytest.approx(box.right)


@settings(deadline=None)
@given(wide_rooms, st.integers(2, 60), sizes, gaps)
def test_marks_stand_under_each_other_at_even_distances(box: Box, count: int, size: float, gap: float) -> None:
    lines = in_lines(circles(drawn(box, count=count, size=size, gap=gap, numbered=False)))
    for line in lines[1:]:
        assert [one.x for one in line] == pytest.approx([one.x for one in lines[0][: len(line)]])
    drops = [below[0].y - above[0].y for above, below in pairwise(lines)]
    assert drops == pytest.approx(drops[:1] * len(drops))


@settings(deadline=None)
@given(wide_rooms, st.integers(2, 60), sizes, gaps)
def test_the_lines_together_are_in_the_middle_of_their_room(box: Box, count: int, size: float, gap: float) -> None:
    found = circles(drawn(box, count=count, size=size, gap=gap, numbered=False))
    if found:
        assert found[0].y - box.y == pytest.approx(box.bottom - found[-1].bottom, abs=1e-6)


def test_a_month_stands_in_lines_of_eleven_where_fourteen_would_fit() -> None:
    """31 in three lines: 11 + 11 + 9 rather than 14 + 14 + 3."""
    lines = in_lines(circles(drawn(Box(0, 0, 83.5, 60), count=31, size=5.0, gap=1.0)))
    assert [len(line) for line in lines] == [11, 11, 9]


def test_so_many_across_as_were_asked_for() -> None:
    lines = in_lines(circles(drawn(Box(0, 0, 83, 60), count=31, across=7)))
    assert [len(line) for line in lines] == [7, 7, 7, 7, 3]


def test_lines_are_no_further_apart_than_marks_in_a_line() -> None:
    array = array_in(marks(count=31, size=5.0), Box(0, 0, 83, 190))
    assert array.drop == pytest.approx(array.step)


@pytest.mark.parametrize("numbered", [True, False])
def test_a_number_is_in_each_mark_where_they_are_numbered(numbered: bool) -> None:
    some = drawn(Box(0, 0, 83, 60), count=31, numbered=numbered)
    assert len(of_part(some, "lettering")) == (31 if numbered else 0)


@settings(deadline=None, max_examples=25)
@given(st.floats(3, 12), st.floats(0.3, 0.6), st.integers(1, 120))
def test_the_ink_of_a_number_is_in_the_middle_of_its_mark(size: float, numeral: float, count: int) -> None:
    """Exactly across; upright by the height of figures, which a round one overshoots by a hundredth."""
    some = drawn(Box(0, 0, 160, 400), count=count, size=size, numeral=numeral)
    found = circles(some)
    letters = [bounds(shape.outline) for shape in of_part(some, "lettering")]
    assert len(letters) == len(found)
    for mark, number in zip(found, letters, strict=True):
        assert number.centre[0] == pytest.approx(mark.centre[0], abs=1e-6)
        assert number.centre[1] == pytest.approx(mark.centre[1], abs=0.02 * size)


def test_numbers_of_three_figures_stay_inside_their_circles() -> None:
    some = drawn(Box(0, 0, 160, 200), count=120, size=5.0)
    for mark, shape in zip(circles(some), of_part(some, "lettering"), strict=True):
        box, (x, y) = bounds(shape.outline), mark.centre
        reach = ((box.width / 2) ** 2 + (box.height / 2) ** 2) ** 0.5
        assert abs(box.centre[0] - x) + abs(box.centre[1] - y) < 0.1
        assert reach < 5.0 / 2 - 0.3


def test_a_square_mark_has_its_outer_size_line_included() -> None:
    (one,) = circles(drawn(Box(0, 0, 20, 20), count=1, shape="square", size=6.0, weight=0.5, numbered=False))
    assert (one.width, one.height) == pytest.approx((6.0, 6.0))


def test_marks_short_of_height_are_left_out_and_tell_how_much_they_lack() -> None:
    """Three lines of 5 mm and two gaps of 1 mm need 17 mm."""
    some = drawn(Box(0, 0, 68, 15), count=31)
    assert some.nodes == ()
    assert some.placements[0].short_by == pytest.approx(2.0)


def test_a_mark_wider_than_its_room_is_left_out() -> None:
    some = drawn(Box(0, 0, 4, 200), count=3, size=5.0)
    assert some.nodes == ()
    assert some.placements[0].rows == 0


@settings(deadline=None)
@given(st.floats(30, 180), counts, sizes, gaps, st.sampled_from([0.0, 6.0]))
def test_the_height_that_marks_ask_for_holds_them_all(
    width: float, count: int, size: float, gap: float, margin: float
) -> None:
    assume(width - 2 * margin >= size)
    block = marks(count=count, size=size, gap=gap, numbered=False)
    some = draw(block, Room(Box(0, 0, width, need(block, width, margin))), margin)
    assert len(circles(some)) == count
