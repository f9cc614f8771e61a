"""Before, now and the difference as pixels."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from kit import PLAIN, apply, pad
from scipy import ndimage

from padspec.base.colour import Colour
from padspec.base.geometry import Box, Size
from padspec.comparing.picture import CHANGED, panels
from padspec.comparing.regions import regions
from padspec.scene.nodes import Cause, Layer, Scene, Shape
from padspec.scene.outline import rectangle

CAUSE = Cause("x", "panel")
SIZE = Size(50.0, 80.0)


def scene(*boxes: tuple[Box, str], size: Size = SIZE, bleed: float = 0.0) -> Scene:
    """Filled boxes on white."""
    shapes = (Shape(rectangle(box), CAUSE, fill=Colour.from_hex(colour)) for box, colour in boxes)
    return Scene(size, bleed, (Layer("panel", tuple(shapes)),))


def marked(pixels: np.ndarray) -> np.ndarray:
    """The pixels that are not grey."""
    return (pixels[..., 0] != pixels[..., 1]) | (pixels[..., 1] != pixels[..., 2])


def test_just_what_changed_is_marked() -> None:
    # 12 mm square at 20 mm from the left and 30 mm down turns from black to red, among others that stay.
    stays = (Box(2.0, 2.0, 10.0, 10.0), "#00aa55")
    box = Box(20.0, 30.0, 12.0, 12.0)
    found = panels(scene(stays, (box, "#000000")), scene(stays, (box, "#ff0000")))
    per_mm = found.difference.shape[1] / found.width
    rows, columns = np.nonzero(marked(found.difference))
    edges = np.array([columns.min(), rows.min(), columns.max() + 1, rows.max() + 1]) / per_mm
    assert edges == pytest.approx([20, 30, 32, 42], abs=1 / per_mm)
    assert marked(found.difference).sum() == pytest.approx((12 * per_mm) ** 2, rel=0.02)


def test_a_great_difference_has_the_whole_colour_and_a_slight_one_less() -> None:
    box = Box(10.0, 10.0, 10.0, 10.0)

    def middle(after: str) -> tuple[int, ...]:
        pixels = panels(scene((box, "#7a3b58")), scene((box, after))).difference
        return tuple(
            int(channel) for channel in pixels[pixels.shape[0] * 15 // 80, pixels.shape[1] * 15 // 50, :3]
        )

    assert middle("#ffffff") == CHANGED
    slight = middle("#7a3b5c")
    assert slight[1] > CHANGED[1]
    assert slight[0] > slight[1]


def test_a_face_where_the_other_has_none_has_the_whole_colour_even_where_it_is_black() -> None:
    size = Size(80.0, 80.0)
    found = panels(scene(), scene((Box(50.0, 0.0, 30.0, 80.0), "#000000"), size=size))
    assert tuple(found.difference[40, -40, :3]) == CHANGED


def test_the_least_step_of_a_colour_is_marked() -> None:
    box = Box(10.0, 10.0, 10.0, 10.0)
    found = panels(scene((box, "#808080")), scene((box, "#808081")))
    assert found.share == pytest.approx(100 / 4000, rel=0.02)


def test_the_share_is_that_of_the_area_that_changed() -> None:
    found = panels(scene(), scene((Box(0.0, 0.0, 25.0, 80.0), "#123456")))
    assert found.share == pytest.approx(0.5, abs=0.005)


def test_the_places_of_changes_are_told_from_the_trim_the_largest_first() -> None:
    small, large = Box(5.0, 5.0, 4.0, 4.0), Box(20.0, 50.0, 20.0, 10.0)
    found = panels(scene(bleed=3.0), scene((small, "#000000"), (large, "#000000"), bleed=3.0))
    for box, place in zip((large, small), found.places, strict=True):
        assert [place.x, place.y, place.width, place.height] == pytest.approx(
            [box.x, box.y, box.width, box.height], abs=0.2
        )


def test_faces_of_two_sizes_lie_trim_on_trim_at_the_top_left() -> None:
    box = (Box(10.0, 10.0, 10.0, 10.0), "#000000")
    found = panels(scene(box, bleed=1.0), scene(box, size=Size(60.0, 90.0), bleed=4.0))
    assert (found.width, found.height) == pytest.approx((68, 98), abs=0.2)
    per_mm = found.now.shape[1] / found.width
    inner = (slice(round(4 * per_mm) + 2, round(80 * per_mm)), slice(round(4 * per_mm) + 2, round(50 * per_mm)))
    # The dark square itself lies on itself: none of its middle changed.
    y, x = round((4 + 15) * per_mm), round((4 + 15) * per_mm)
    assert not marked(found.difference)[y, x]
    assert marked(found.difference)[inner].mean() < 0.004
    assert found.before[-1, -1, 3] == 0
    assert found.now[-1, -1, 3] == 255
    assert marked(found.difference)[-1, -1]


def test_two_pads_that_are_the_same_have_no_mark_at_all() -> None:
    one = pad(PLAIN).face.scene
    found = panels(one, one)
    assert (found.share, found.places) == (0.0, ())
    assert not marked(found.difference).any()


def test_a_heading_that_changed_is_found_where_it_stands() -> None:
    before, after = (pad(apply(PLAIN, {"heading.text": text})) for text in ("Moths", "Owls"))
    found = panels(before.face.scene, after.face.scene)
    stands = after.face.placement("heading").box
    (place,) = found.places
    assert stands.y - 2 < place.y
    assert place.bottom < stands.bottom + 2


@given(st.lists(st.tuples(st.integers(0, 5), st.integers(0, 5)), min_size=1, max_size=6, unique=True))
def test_regions_are_those_that_scipy_finds_where_they_stand_clear(spots: list[tuple[int, int]]) -> None:
    # Judge: scipy.ndimage.label and find_objects. Spots stand at least 12 pixels apart, more than two cells of 4.
    changed = np.zeros((130, 130), bool)
    for number, (row, column) in enumerate(spots):
        changed[row * 20 : row * 20 + 3 + number, column * 20 : column * 20 + 4] = True
    labels, number = ndimage.label(changed, np.ones((3, 3)))
    judged = {
        (s[1].start, s[0].start, s[1].stop - s[1].start, s[0].stop - s[0].start): int((labels == n + 1).sum())
        for n, s in enumerate(ndimage.find_objects(labels, number))
    }
    found = regions(changed, 1.0, most=10)
    assert {(box.x, box.y, box.width, box.height) for box in found} == set(judged)
    sizes = [judged[box.x, box.y, box.width, box.height] for box in found]
    assert sizes == sorted(sizes, reverse=True)


def test_letters_of_one_line_are_one_region() -> None:
    changed = np.zeros((60, 200), bool)
    for start in range(10, 180, 12):
        changed[20:30, start : start + 9] = True
    assert len(regions(changed, 4.0)) == 1
