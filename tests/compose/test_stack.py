"""The stack: heights that add up to the room, head to foot, with nothing between and nothing over."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box
from padspec.compose.face import Drawn, Room
from padspec.compose.stack import draw_stack
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.space import Space

from .blocks import art, columns, grid, heading, marks, of_part, of_pictures, panel, pile, rows

TRIM = Box(0, 0, 90, 190)

spaces = st.builds(lambda grow, height: (grow, height), st.integers(0, 3), st.floats(0, 40))


def stack(*blocks: Block, trim: Box = TRIM, margin: float = 6.0) -> Drawn:
    return draw_stack(blocks, Room(trim), margin)


def filled(parts: list[tuple[int, float]]) -> tuple[Block, ...]:
    return tuple(Space(f"space-{n}", grow, height) for n, (grow, height) in enumerate(parts))


@settings(deadline=None)
@given(st.lists(spaces, min_size=1, max_size=6), st.floats(20, 300))
def test_each_block_begins_where_the_one_above_ends(parts: list[tuple[int, float]], height: float) -> None:
    placed = stack(*filled(parts), trim=Box(0, 0, 90, height)).placements
    assert placed[0].box.y == 0
    for above, below in pairwise(placed):
        assert below.box.y == pytest.approx(above.box.bottom, abs=1e-9)


@settings(deadline=None)
@given(st.lists(spaces, min_size=1, max_size=6), st.floats(20, 300))
def test_the_heights_add_up_to_the_trim_where_a_block_grows_or_all_are_too_high(
    parts: list[tuple[int, float]], height: float
) -> None:
    placed = stack(*filled(parts), trim=Box(0, 0, 90, height)).placements
    total = sum(one.box.height for one in placed)
    wanted = sum(tall for _, tall in parts)
    full = any(grow for grow, _ in parts) or wanted >= height
    assert total == pytest.approx(height if full else wanted, abs=1e-6)


@settings(deadline=None)
@given(st.lists(spaces, min_size=1, max_size=6), st.floats(20, 300))
def test_spare_height_is_shared_by_grow(parts: list[tuple[int, float]], height: float) -> None:
    spare = height - sum(tall for _, tall in parts)
    shares = sum(grow for grow, _ in parts)
    if spare <= 0 or not shares:
        return
    for (grow, tall), one in zip(parts, stack(*filled(parts), trim=Box(0, 0, 90, height)).placements, strict=True):
        assert one.box.height == pytest.approx(tall + spare * grow / shares, abs=1e-6)


@settings(deadline=None)
@given(st.lists(spaces, min_size=1, max_size=6), st.floats(0, 100))
def test_no_block_is_higher_than_it_asked_where_room_lacks(parts: list[tuple[int, float]], height: float) -> None:
    if sum(tall for _, tall in parts) < height:
        return
    for (_, tall), one in zip(parts, stack(*filled(parts), trim=Box(0, 0, 90, height)).placements, strict=True):
        assert -1e-9 <= one.box.height <= tall + 1e-9


@settings(deadline=None)
@given(st.floats(5, 200), st.floats(5, 200), st.floats(0, 30), st.floats(60, 250))
def test_art_and_panel_share_the_trim_less_what_they_overlap(
    width: float, height: float, overlap: float, trim: float
) -> None:
    some = stack(art(min(width, 78), height, overlap=overlap), panel(rows()), trim=Box(0, 0, 90, trim))
    pictures, panels = of_pictures(some), of_part(some, "panel")
    placed = {one.block: one.box for one in some.placements}
    assert len(panels) == 1
    if placed["panel"].height > 0:
        assert placed["panel"].bottom == pytest.approx(trim - 6, abs=1e-6)
    for box in pictures:
        assert box.y >= 6 - 1e-6
        if overlap and placed["panel"].height > 0:
            assert placed["panel"].y == pytest.approx(box.bottom - min(overlap, height), abs=1e-6)


def test_art_at_the_foot_overlaps_nothing_and_keeps_its_inset() -> None:
    some = stack(panel(rows()), art(60, 40, overlap=5.0))
    (box,) = of_pictures(some)
    assert box.bottom == 190 - 6


def test_fixed_rows_take_their_pitches_and_leave_the_rest() -> None:
    some = stack(Space("above", 1, None), rows(grow=0, count=5, pitch=8.0, squares=None), margin=0.0)
    held = some.placements[1]
    assert (held.box.y, held.box.height, held.rows, held.pitch) == (150, 40, 5, 8)


def test_a_block_on_the_bare_ground_keeps_the_margin_on_every_side() -> None:
    some = stack(heading("Before dark"), rows(), margin=6.0)
    lettering, ruled = some.placements
    assert (lettering.box.x, lettering.box.right) == (6, 84)
    assert lettering.box.y >= 6
    assert (ruled.box.x, ruled.box.right, ruled.box.bottom) == (6, 84, 184)


def test_what_rows_leave_over_is_shared_above_and_below_their_heading_and_at_the_foot() -> None:
    """One third each: the words do not cling to the picture while empty paper gathers at the foot."""
    some = stack(heading("Before dark"), rows(pitch=8.0), trim=Box(0, 0, 90, 101), margin=0.0)
    lettering, ruled = some.placements
    left_over = 101 - lettering.box.height - 3 - ruled.rows * 8.0
    assert 0 < left_over < 8
    assert lettering.box.y == pytest.approx(left_over / 3)
    assert 101 - ruled.box.height == pytest.approx(lettering.box.height + 3 + left_over / 3)


def test_a_heading_further_down_keeps_as_much_air_above_as_below() -> None:
    some = stack(rows(grow=0, count=3), heading("To buy"), rows(grow=1), margin=0.0)
    above, lettering, _ = some.placements
    assert lettering.box.y - above.box.bottom >= 3.0


def test_rows_and_headings_that_follow_a_picture_without_a_panel_stand_clear_of_it() -> None:
    for below in (rows(), heading("To do")):
        some = stack(art(60, 40, overlap=12.0), below)
        (picture,) = of_pictures(some)
        assert some.placements[1].box.y >= picture.bottom - 1e-9


def test_too_little_height_takes_rows_first_and_words_last() -> None:
    some = stack(heading("Before dark"), rows(grow=0, count=12), trim=Box(0, 0, 90, 60), margin=0.0)
    lettering, ruled = some.placements
    assert lettering.box.height > 5
    assert ruled.box.y >= lettering.box.bottom
    assert ruled.box.bottom <= 60 + 1e-9


def test_rows_that_come_first_on_the_bare_ground_keep_the_margin_at_the_head() -> None:
    some = stack(rows(), margin=6.0)
    assert some.placements[0].box.y == 6


@pytest.mark.parametrize("first", [grid(), marks(), rows()], ids=["grid", "marks", "rows"])
def test_what_comes_first_on_the_bare_ground_keeps_the_margin_at_the_head(first: Block) -> None:
    box = stack(first, margin=6.0).placements[0].box
    assert (box.x, box.y, box.right, box.bottom) == (6, 6, 84, 184)


def test_two_panels_share_the_distance_between_them() -> None:
    """Six millimetres all round and between, not twelve."""
    first, second = stack(panel(id="first", grow=1), panel(id="second", grow=1)).placements
    assert second.box.y - first.box.bottom == pytest.approx(6)
    assert (first.box.y, second.box.bottom) == pytest.approx((6, 184))


def test_a_panel_and_columns_of_different_insets_keep_the_larger() -> None:
    first, second, *_ = stack(
        panel(id="first", inset=4.0), columns(panel(id="a", inset=0.0), inset=9.0)
    ).placements
    assert second.box.y - first.box.bottom == pytest.approx(9)


def test_a_stack_in_a_stack_keeps_its_gap_between_its_blocks() -> None:
    some = stack(pile(Space("a", 0, 10.0), Space("b", 0, 20.0), Space("c", 0, 5.0), gap=4.0, inset=6.0))
    _, a, b, c = some.placements
    assert (a.box.y, b.box.y, c.box.y) == (6, 20, 44)


@settings(deadline=None)
@given(st.lists(st.floats(1, 30), min_size=1, max_size=4), st.floats(0, 8), st.floats(0, 10))
def test_the_height_that_a_stack_asks_for_is_what_it_fills(heights: list[float], gap: float, inset: float) -> None:
    block = pile(*(Space(f"s{n}", 0, tall) for n, tall in enumerate(heights)), grow=0, gap=gap, inset=inset)
    wanted = sum(heights) + gap * (len(heights) - 1) + 2 * inset
    below = stack(block, Space("below", 1, None)).placements[-1]
    assert below.box.y == pytest.approx(wanted)


@settings(deadline=None)
@given(st.lists(st.integers(1, 4), min_size=2, max_size=4), st.floats(60, 300))
def test_panels_share_the_spare_height_by_their_parts(parts: list[int], height: float) -> None:
    blocks = tuple(panel(id=f"p{n}", grow=part, pad=3.0, corner=0.0) for n, part in enumerate(parts))
    placed = stack(*blocks, trim=Box(0, 0, 90, height)).placements
    spare = height - 6 - sum(6 + 6 for _ in parts)  # insets around and between, pads at head and foot
    if spare > 0:
        for part, one in zip(parts, placed, strict=True):
            assert one.box.height == pytest.approx(6 + spare * part / sum(parts), abs=1e-6)


def test_too_little_height_takes_a_grid_before_marks_and_marks_before_words() -> None:
    some = stack(heading("Before dark"), marks(count=10, grow=0), grid(grow=0), trim=Box(0, 0, 90, 14), margin=0.0)
    lettering, some_marks, some_grid = some.placements
    assert some_grid.box.height == 0
    assert 0 < some_marks.box.height < 5
    assert lettering.box.height > 5


def test_a_picture_that_fills_the_face_has_no_place_in_the_stack() -> None:
    assert stack(art(90, 190, fills="face"), rows()).placements == stack(rows()).placements


@pytest.mark.parametrize("holder", [panel(), columns(), pile()], ids=["panel", "columns", "stack"])
def test_a_holder_without_blocks_is_laid_all_the_same(holder: Block) -> None:
    """As one whose only block is a picture that the design does not have."""
    above, below = stack(holder, Space("below", 0, 20.0)).placements
    assert above.block == holder.id
    assert below.box.bottom == pytest.approx(190)


@pytest.mark.parametrize("above", [(), (art(40, 30, overlap=5.0),)], ids=["alone", "under a picture"])
def test_a_panel_that_does_not_grow_is_as_high_as_what_it_holds(above: tuple[Block, ...]) -> None:
    words = heading("Before dark")
    some = stack(*above, panel(words, grow=0), Space("below", 1, None))
    placed = {one.block: one.box for one in some.placements}
    assert placed["panel"].bottom - placed["heading"].bottom == pytest.approx(words.space + 5.0)


def test_columns_of_panels_that_do_not_grow_hold_their_words_under_a_picture() -> None:
    words = heading("Before dark")
    some = stack(art(40, 30), columns(panel(words, grow=0, inset=0.0), grow=0, inset=6.0), Space("below", 1, None))
    placed = {one.block: one.box for one in some.placements}
    assert placed["panel"].bottom - placed["heading"].bottom == pytest.approx(words.space + 5.0)
