"""The picture's box: inside its room, in proportion, where its alignment says."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kit import MULBERRY, pad, png

from padspec.base.geometry import Box
from padspec.compose.blocks.art import draw, draw_whole, need
from padspec.compose.face import Drawn, Room
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.resolve.pictures import PictureWish, fitted
from padspec.scene.nodes import Group, Picture
from padspec.scene.outline import bounds

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


@settings(deadline=None)
@given(st.floats(0.2, 5), st.floats(60, 210), st.floats(60, 297), st.floats(0, 5))
def test_a_picture_that_fills_the_face_covers_the_bleed_whatever_its_shape(
    aspect: float, width: float, height: float, bleed: float
) -> None:
    """Its size is worked out by what wants the picture, its place by what draws it."""
    wish = PictureWish("a.png", width + 2 * bleed, height + 2 * bleed, "none", False, False, 0.0, covers=True)
    placed = fitted(aspect * 1000, 1000, wish, 0.0)
    whole = Box(0, 0, width, height).inset(-bleed)
    (box,) = of_pictures_inside(draw_whole(art(*placed, fills="face"), whole))
    assert box.x <= whole.x + 1e-6
    assert box.y <= whole.y + 1e-6
    assert box.right >= whole.right - 1e-6
    assert box.bottom >= whole.bottom - 1e-6
    assert box.width / box.height == pytest.approx(aspect)


def test_a_picture_that_fills_the_face_is_no_larger_than_it_must_be_and_in_the_middle() -> None:
    wish = PictureWish("a.png", 93.0, 193.0, "none", False, False, 0.0, covers=True)
    whole = Box(-1.5, -1.5, 93, 193)
    (box,) = of_pictures_inside(draw_whole(art(*fitted(200, 100, wish, 0.0), fills="face"), whole))
    assert (box.width, box.height) == pytest.approx((386, 193))
    assert box.centre == pytest.approx(whole.centre)


def test_a_picture_that_fills_the_face_is_cropped_to_the_bleed() -> None:
    whole = Box(-1.5, -1.5, 93, 193)
    ((layer, group),) = draw_whole(art(386, 193, fills="face"), whole).nodes
    assert layer == "ground"
    assert isinstance(group, Group)
    assert group.clip is not None
    assert bounds(group.clip) == whole


WHOLE = """layout: full-picture
pad: Out
trim: {width: 90 mm, height: 120 mm}
art: {file: a.png}
"""


@pytest.mark.parametrize(("width", "height"), [(400, 100), (100, 400), (200, 200)])
def test_no_ground_is_seen_beside_a_picture_that_fills_the_face(width: int, height: int) -> None:
    """By pdfium: out to the corners of the bleed there is the picture's one colour, and nothing of the ground."""
    plum = np.full((height, width, 3), MULBERRY, np.uint8)
    made = pad(WHOLE + "ground: {colour: '#00ff00'}\n", files={"a.png": png(plum)})
    page = rasterise(face_pdf(made.face.scene), 72).astype(int)
    assert page[0, 0].tolist() == page[-1, -1].tolist() == page[0, -1].tolist() == [*MULBERRY]
    assert (page[..., 1] - page[..., 0]).max() < 60  # nowhere green


def test_a_picture_that_fills_the_face_lies_under_its_panel() -> None:
    """In the middle of the panel the picture shows through by a tenth: 0.1 × plum + 0.9 × paper."""
    plum = np.full((300, 300, 3), MULBERRY, np.uint8)
    made = pad(WHOLE + "panel: {opacity: 90 %}\nheading: {text: Out}\n", files={"a.png": png(plum)})
    box = made.face.placement("panel").box
    page = rasterise(face_pdf(made.face.scene), 72)
    bleed = made.face.scene.bleed
    x, y = ((box.x + 2 + bleed) / 25.4 * 72, (box.bottom - 30 + bleed) / 25.4 * 72)
    assert page[int(y), int(x)].tolist() == pytest.approx([0.1 * c + 0.9 * 255 for c in MULBERRY], abs=2)


def test_a_picture_that_fills_the_face_takes_no_height_from_what_follows() -> None:
    plum = np.full((300, 300, 3), MULBERRY, np.uint8)
    with_one = pad(WHOLE, files={"a.png": png(plum)})
    without = pad(WHOLE.replace("art: {file: a.png}\n", ""))
    assert with_one.face.placement("panel") == without.face.placement("panel")


def of_pictures_inside(drawn: Drawn) -> list[Box]:
    return [
        child.box
        for _, node in drawn.nodes
        if isinstance(node, Group)
        for child in node.children
        if isinstance(child, Picture)
    ]
