"""Columns: widths by parts that add up, blocks seated in them, and panels that a picture lies over."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box
from padspec.compose.blocks.columns import draw, need
from padspec.compose.face import Drawn, Room
from padspec.compose.stack import Stacked, draw_stack
from padspec.resolve.blocks.space import Space

from .blocks import art, columns, heading, of_part, of_pictures, panel, pile, rows

ROOM = Box(11, 40, 120, 80)
STACKED = Stacked(0.0)
shares = st.lists(st.floats(0.1, 10), min_size=1, max_size=5)


def drawn(*holds: object, room: Room | None = None, **changes: object) -> Drawn:
    return draw(columns(*holds, **changes), room or Room(ROOM), STACKED)


def spaces(count: int, grow: int = 1, height: float | None = None) -> tuple[Space, ...]:
    return tuple(Space(f"space-{n}", grow, height) for n in range(count))


def boxes(some: Drawn) -> list[Box]:
    return [one.box for one in some.placements[1:]]


@settings(deadline=None)
@given(shares, st.floats(0, 8), st.floats(0, 10), st.floats(60, 250))
def test_widths_and_gaps_add_up_to_the_room(parts: list[float], gap: float, inset: float, width: float) -> None:
    found = boxes(
        drawn(*spaces(len(parts)), shares=tuple(parts), gap=gap, inset=inset, room=Room(Box(11, 40, width, 80)))
    )
    assert found[0].x == pytest.approx(11 + inset)
    assert found[-1].right == pytest.approx(11 + width - inset)
    for left, right in pairwise(found):
        assert right.x - left.right == pytest.approx(gap, abs=1e-9)


@settings(deadline=None)
@given(shares)
def test_widths_are_as_their_parts(parts: list[float]) -> None:
    found = boxes(drawn(*spaces(len(parts)), shares=tuple(parts), gap=3.0))
    whole = 120 - 3.0 * (len(parts) - 1)
    assert [box.width for box in found] == pytest.approx([whole * part / sum(parts) for part in parts])


@pytest.mark.parametrize(("seat", "y"), [("head", 40), ("middle", 70), ("foot", 100)])
def test_a_block_less_high_than_its_column_sits_where_the_seat_says(seat: str, y: float) -> None:
    first, second = boxes(drawn(*spaces(1), Space("low", 0, 20.0), seat=seat))
    assert (first.y, first.height) == (40, 80)
    assert (second.y, second.height) == (y, 20)


def test_columns_that_do_not_grow_are_as_high_as_the_tallest_of_them() -> None:
    holds = (Space("low", 0, 12.0), Space("tall", 0, 31.0))
    assert need(columns(*holds, grow=0, inset=2.0), 120, STACKED) == 35


@settings(deadline=None)
@given(st.lists(st.floats(1, 40), min_size=1, max_size=4), st.floats(0, 6))
def test_the_height_columns_ask_for_holds_each_of_them(heights: list[float], inset: float) -> None:
    holds = tuple(Space(f"space-{n}", 0, height) for n, height in enumerate(heights))
    block = columns(*holds, inset=inset)
    found = boxes(draw(block, Room(Box(0, 0, 120, need(block, 120, STACKED))), STACKED))
    assert [box.height for box in found] == pytest.approx(heights)


def test_columns_of_panels_share_their_head_under_a_picture_that_lies_over_both() -> None:
    some = draw_stack((art(40, 30, overlap=5.0), columns(panel(rows(), id="a"), panel(rows(), id="b"), inset=6.0)),
                      Room(Box(0, 0, 150, 200)), 6.0)  # fmt: skip
    (picture,) = of_pictures(some)
    placed = {one.block: one.box for one in some.placements}
    assert placed["a"].y == placed["b"].y == pytest.approx(picture.bottom - 5.0)
    for rule in of_part(some, "rule"):
        assert rule.outline[0].y > picture.bottom


def test_a_picture_over_columns_of_words_stands_clear_of_them() -> None:
    some = draw_stack((art(40, 30, overlap=5.0), columns(rows(id="a"), rows(id="b"), inset=6.0)),
                      Room(Box(0, 0, 150, 200)), 6.0)  # fmt: skip
    (picture,) = of_pictures(some)
    assert min(one.box.y for one in some.placements[1:]) >= picture.bottom


def test_a_picture_beside_words_stands_in_its_own_column() -> None:
    some = drawn(art(30, 30, inset=0.0), heading("Before dark"), shares=(1.0, 2.0), gap=5.0, seat="middle")
    (picture,) = of_pictures(some)
    words = some.placements[-1].box
    assert picture.right <= ROOM.x + (120 - 5) / 3 + 1e-9
    assert words.x == pytest.approx(ROOM.x + (120 - 5) / 3 + 5)


def test_rows_side_by_side_in_columns_of_one_height_line_up() -> None:
    some = drawn(rows(id="a", pitch=8.0), rows(id="b", pitch=8.0))
    ys = {name: [s.outline[0].y for s in of_part(some, "rule") if s.cause.block == name] for name in ("a", "b")}
    assert ys["a"] == ys["b"] != []


def test_columns_without_blocks_draw_nothing() -> None:
    assert drawn().nodes == ()
    assert need(columns(), 120, STACKED) == 0


def test_a_stack_in_a_column_lays_its_blocks_one_under_the_other() -> None:
    some = drawn(pile(*spaces(2, 0, 15.0), gap=4.0), Space("beside", 1, None))
    placed = {one.block: one.box for one in some.placements}
    assert placed["space-1"].y == 40 + 15 + 4
    assert placed["beside"].height == 80
