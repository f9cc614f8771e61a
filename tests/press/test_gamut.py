"""How far off colours print, against the press model."""

import numpy as np
import pytest

from padspec.base.colour import BLACK, WHITE, Colour
from padspec.base.difference import ciede2000
from padspec.base.geometry import Affine, Box
from padspec.press.conversion import wanted_lab
from padspec.press.gamut import MOST_SAMPLES, flat_misses, picture_misses
from padspec.scene.nodes import Cause, Group, Picture, Raster, Shape, Stroke
from padspec.scene.outline import line, rectangle

from .made import model, scene_of, separator

VIVID, PALE = Colour(0, 255, 0), Colour(0xE8, 0xDD, 0xE4)
BOX = Box(0, 0, 20, 20)


def area(colour: Colour, block: str = "ground") -> Shape:
    return Shape(rectangle(BOX), Cause(block, "ground"), fill=colour)


def rule(colour: Colour) -> Shape:
    return Shape(line(0, 0, 9, 0), Cause("rows", "rule"), stroke=Stroke(colour, 0.3))


def picture(rgb: np.ndarray, alpha: np.ndarray | None = None) -> Picture:
    height, width, _ = rgb.shape
    raster = Raster("owl", "12345678", width, height, rgb.tobytes(), None if alpha is None else alpha.tobytes())
    return Picture(raster, BOX, Cause("header", "art"))


def test_a_green_that_no_ink_makes_is_far_off():
    (miss,) = flat_misses(scene_of(ground=(area(VIVID),)), separator(black_point=False))
    inks = np.array([miss.inks.shares])
    wanted = ciede2000(wanted_lab(VIVID.unit)[None], model().printed_lab(inks))
    assert miss.delta_e == pytest.approx(float(wanted[0]), abs=0.5)
    assert miss.delta_e > 10


def test_a_pale_colour_is_near():
    (miss,) = flat_misses(scene_of(ground=(area(PALE),)), separator())
    assert miss.delta_e < 3


@pytest.mark.parametrize("black_point", [True, False])
@pytest.mark.parametrize("outside", [True, False])
def test_black_lettering_and_near_black_are_no_alarm(black_point, outside):
    scene = scene_of(lettering=(area(BLACK), area(Colour(0, 0, 1)), area(Colour(30, 30, 30))))
    assert flat_misses(scene, separator("relative", black_point, outside))[0].delta_e < 5


def test_white_is_paper_and_not_looked_at():
    assert flat_misses(scene_of(panel=(area(WHITE),)), separator()) == ()


def test_the_worst_comes_first_with_its_layer_and_block():
    found = flat_misses(scene_of(ground=(area(PALE),), rules=(rule(VIVID),)), separator())
    assert [(m.colour, m.layer, m.block) for m in found] == [
        (VIVID, "rules", "rows"), (PALE, "ground", "ground")
    ]  # fmt: skip


def test_colours_inside_groups_are_found():
    group = Group((area(VIVID),), Affine.move(1, 1))
    assert [miss.colour for miss in flat_misses(scene_of(ground=(group,)), separator())] == [VIVID]


def test_a_colour_is_told_once_a_layer():
    scene = scene_of(ground=(area(PALE), area(PALE, "other")), rules=(rule(PALE),))
    assert [miss.layer for miss in flat_misses(scene, separator())] in (["rules", "ground"], ["ground", "rules"])


def test_the_share_of_a_picture_that_cannot_print_is_counted():
    """By hand: 3 of 8 rows are vivid."""
    rgb = np.full((8, 8, 3), (PALE.red, PALE.green, PALE.blue), np.uint8)
    rgb[:3] = VIVID.red, VIVID.green, VIVID.blue
    (found,) = picture_misses(scene_of(art=(picture(rgb),)), separator(), 5)
    assert (found.share_above, found.colour, found.name) == (3 / 8, VIVID, "owl")


def test_what_is_transparent_does_not_count():
    rgb = np.full((8, 8, 3), (VIVID.red, VIVID.green, VIVID.blue), np.uint8)
    alpha = np.zeros((8, 8), np.uint8)
    assert picture_misses(scene_of(art=(picture(rgb, alpha),)), separator(), 5) == ()


def test_a_large_picture_is_sampled_evenly():
    rgb = np.full((400, 500, 3), (PALE.red, PALE.green, PALE.blue), np.uint8)
    rgb[:100] = VIVID.red, VIVID.green, VIVID.blue
    assert rgb.size / 3 > MOST_SAMPLES
    (found,) = picture_misses(scene_of(art=(picture(rgb),)), separator(), 5)
    assert found.share_above == pytest.approx(0.25, abs=0.001)
