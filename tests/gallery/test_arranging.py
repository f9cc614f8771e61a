"""Faces on a page: none over another, all at one scale, rows from edge to edge, air as even as can be."""

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.gallery.arranging import GUTTER, LEAST_PLACE, OVERHANG, ROW_GAP, arranged, words_width

AREA = Box(16, 40, 178, 236)
NEAR = 1e-3


def words(_n: int, _width: float) -> float:
    return 9.0


def rows_of(boxes: tuple[Box, ...]) -> list[list[Box]]:
    found: dict[float, list[Box]] = {}
    for box in boxes:
        found.setdefault(round(box.bottom, 3), []).append(box)
    return [sorted(row, key=lambda box: box.x) for _, row in sorted(found.items())]


sizes = st.builds(Size, st.integers(50, 210), st.integers(50, 297))


@settings(max_examples=40, deadline=None)
@given(st.lists(sizes, min_size=1, max_size=14))
def test_faces_stay_in_the_area_and_clear_of_each_other_at_one_scale(trims: list[Size]) -> None:
    laid = arranged(trims, AREA, words)
    assert 0 < laid.scale <= 1
    for trim, box in zip(trims, laid.faces, strict=True):
        assert (box.width, box.height) == pytest.approx((trim.width * laid.scale, trim.height * laid.scale))
        assert box.x >= AREA.x - NEAR
        assert box.right <= AREA.right + NEAR
        assert box.y >= AREA.y - NEAR
        assert box.bottom + 9.0 <= AREA.bottom + NEAR
    for one, other in combinations(laid.faces, 2):
        beside = one.right + GUTTER <= other.x + NEAR or other.right + GUTTER <= one.x + NEAR
        above = one.bottom + 9 + ROW_GAP <= other.y + NEAR or other.bottom + 9 + ROW_GAP <= one.y + NEAR
        assert beside or above


def test_six_tall_leaves_stand_in_two_rows_of_three() -> None:
    laid = arranged([Size(90, 190)] * 6, AREA, words)
    assert [len(row) for row in rows_of(laid.faces)] == [3, 3]
    # Two rows, their words and the gap between are as high as the area: by hand (236 - 2 × 9 - 7) / 380.
    assert laid.scale == pytest.approx((236 - 2 * 9 - 7) / 380, abs=2e-6)


def test_the_last_row_of_a_table_keeps_to_its_columns() -> None:
    first, last = rows_of(arranged([Size(90, 190)] * 11, AREA, words).faces)[::2]
    assert len(last) < len(first)
    assert [box.x for box in last] == pytest.approx([box.x for box in first[: len(last)]])


def test_squares_leave_no_lanes_between_their_columns() -> None:
    rows = rows_of(arranged([Size(90, 90)] * 6, AREA, words).faces)
    assert [len(row) for row in rows] == [3, 3]
    assert rows[0][1].x - rows[0][0].right == pytest.approx(GUTTER, abs=NEAR)


def test_rows_of_unlike_faces_run_from_edge_to_edge() -> None:
    trims = [Size(148, 210)] * 4 + [Size(90, 190)] * 6 + [Size(190, 90), Size(90, 90)]
    for row in rows_of(arranged(trims, AREA, words).faces):
        assert row[0].x == pytest.approx(AREA.x)
        assert row[-1].right == pytest.approx(AREA.right, abs=NEAR)


def test_wide_and_narrow_faces_change_rows_for_even_air() -> None:
    # In their own order the best rows leave 8 mm of air in one and 27 mm in another.
    trims = [Size(140, 198)] * 4 + [Size(90, 190)] * 4 + [Size(105, 148)] * 4
    rows = rows_of(arranged(trims, AREA, words).faces)
    air = [after.x - before.right for row in rows for before, after in pairwise(row)]
    assert max(air) - min(air) < 2.5


def test_no_face_is_larger_than_itself() -> None:
    laid = arranged([Size(60, 60)], AREA, words)
    assert laid.scale == pytest.approx(1, abs=1e-5)


def test_words_may_reach_a_little_into_the_air_but_not_to_the_neighbour() -> None:
    assert OVERHANG < GUTTER
    assert words_width(Size(90, 190), 0.5) == 45 + OVERHANG
    assert words_width(Size(20, 190), 0.1) == LEAST_PLACE + OVERHANG


def test_higher_words_make_smaller_faces() -> None:
    trims = [Size(90, 190)] * 6
    assert arranged(trims, AREA, lambda n, _: 20.0 if n == 5 else 9.0).scale < arranged(trims, AREA, words).scale


def test_faces_without_room_are_refused() -> None:
    with pytest.raises(ValueError, match="40 faces have no room"):
        arranged([Size(90, 190)] * 40, Box(0, 0, 30, 30), words)
