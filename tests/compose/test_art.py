"""The picture's box: inside its room, in proportion, where its alignment says."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box
from padspec.compose.art import draw, need
from padspec.compose.face import Room

from .blocks import art, of_pictures

lengths = st.floats(1, 300)
insets = st.floats(0, 20)
frames = st.floats(0, 4)


@settings(deadline=None)
@given(
    lengths,
    lengths,
    insets,
    frames,
    st.floats(1, 200),
    st.floats(1, 300),
    st.sampled_from(["left", "centre", "right"]),
)
def test_the_picture_in_its_frame_never_exceeds_its_room(
    width: float, height: float, inset: float, frame: float, across: float, upright: float, align: str
) -> None:
    room = Box(3, 7, across, upright)
    drawn = draw(art(width, height, inset=inset, frame=frame, align=align), Room(room))
    for box in of_pictures(drawn):
        assert box.x >= room.x + inset - 1e-6
        assert box.right <= room.right - inset + 1e-6
        assert box.y >= room.y + inset - 1e-6
        assert box.bottom <= room.bottom + 1e-6


@settings(deadline=None)
@given(lengths, lengths, insets, st.floats(10, 200), st.floats(10, 300))
def test_a_picture_brought_down_keeps_its_proportions(
    width: float, height: float, inset: float, across: float, upright: float
) -> None:
    block = art(width, height, inset=inset)
    for box in of_pictures(draw(block, Room(Box(0, 0, across, upright)))):
        assert box.width / width == pytest.approx(box.height / height, rel=1e-6)
        assert box.width <= width + 1e-9


@settings(deadline=None)
@given(lengths, lengths, insets, frames)
def test_the_height_a_picture_asks_for_holds_it_whole(
    width: float, height: float, inset: float, frame: float
) -> None:
    block = art(width, height, inset=inset, frame=frame)
    room = Box(0, 0, width + 2 * inset + 2 * frame, need(block))
    drawn = draw(block, Room(room))
    (box,) = of_pictures(drawn)
    assert (box.width, box.height) == (pytest.approx(width, rel=1e-9), pytest.approx(height, rel=1e-9))
    assert drawn.placements[0].short_by == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("align", "x"), [("left", 6), ("centre", 25), ("right", 44)])
def test_the_picture_stands_where_its_alignment_says(align: str, x: float) -> None:
    (box,) = of_pictures(draw(art(40, 30, align=align), Room(Box(0, 0, 90, 36))))
    assert (box.x, box.y) == (x, 6)


def test_a_picture_brought_down_says_by_how_much() -> None:
    drawn = draw(art(40, 30, inset=6), Room(Box(0, 0, 90, 21)))
    (box,) = of_pictures(drawn)
    assert (box.width, box.height) == pytest.approx((20, 15))
    assert drawn.placements[0].short_by == pytest.approx(15)


def test_a_room_of_no_height_shows_no_picture() -> None:
    assert draw(art(40, 30), Room(Box(0, 0, 90, 0))).nodes == ()
