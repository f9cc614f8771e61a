"""The picture itself: the face in it, the thickness, the shadow, the file."""

from dataclasses import replace
from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from padspec.base.colour import Colour, linear_from_srgb
from padspec.base.contrast import delta_e
from padspec.base.geometry import Size
from padspec.flat_lay.arrangements import arranged, fitted
from padspec.flat_lay.backdrop import fitting_colour
from padspec.flat_lay.edge import leaf_lines
from padspec.flat_lay.geometry import LEAN, View, Window, side_map, top_map
from padspec.flat_lay.grain import bytes_of, coarse
from padspec.flat_lay.light import CAST
from padspec.flat_lay.picture import face_ppi, flat_lay, flat_lay_pixels
from padspec.flat_lay.shadow import light_left
from padspec.flat_lay.wish import GREY, KRAFT

from .looks import GREEN, patched_look, plain_look, wish


def seen(pads, asked):
    slabs = arranged(pads, asked)
    return slabs, fitted(slabs, asked)


@pytest.mark.parametrize("turn", [-7.0, 0.0, 31.0])
def test_the_face_in_the_picture_is_the_face(turn):
    """Un-warped: the middle of each of the 24 fields against its own colour, by CIEDE2000.

    The light over the picture may make it a little lighter or darker; a wrong field is 10 or more away.
    """
    pad, asked = patched_look(), wish(turn=turn)
    pixels = flat_lay_pixels((pad,), asked)
    (slab,), view = seen([pad], asked)
    by = top_map(slab, view)
    differences = []
    for row in range(6):
        for column in range(4):
            x, y = (int(part) for part in by.of(15 * column + 7.5, 15 * row + 7.5))
            there = pixels[y - 2 : y + 3, x - 2 : x + 3].reshape(-1, 3).mean(axis=0)
            differences.append(
                delta_e(
                    Colour(*np.rint(there).astype(int)),
                    Colour(*map(int, pad.face[60 * row + 30, 60 * column + 30])),
                )
            )
    assert max(differences) < 4
    assert sum(differences) / len(differences) < 2


def test_the_thickness_in_the_picture_is_leaves_times_caliper_times_scale_times_lean():
    """Down a column through the foot, which is paler than the dark face and lies on a board of no thickness.

    100 leaves of 0.12 mm: 12 mm, seen at 0.44 of that. Within a pixel and a half for the two soft edges.
    """
    pad, asked = replace(plain_look((30, 30, 40), leaves=100), board=0.0), wish(size=600)
    pixels = flat_lay_pixels((pad,), asked)
    (slab,), view = seen([pad], asked)
    x, y = side_map(slab, "foot", view).of(30, 0)
    column = pixels[:, round(x)].astype(float)
    # Paper is near to grey, and the backdrop is green.
    paper = (column.min(axis=1) > 90) & (column[:, 1] - column[:, 0] < 12)
    rows = np.flatnonzero(paper[round(y) - 3 : round(y) + 60])
    assert rows.size == pytest.approx(12 * view.scale * LEAN[1], abs=1.5)


def test_a_thicker_pad_shows_more_of_its_side():
    thin, thick = (side_map(*seen([plain_look(leaves=n)], wish())[0], "foot", View(1.0)) for n in (25, 100))
    assert thin.d == thick.d
    assert plain_look(leaves=100).block == pytest.approx(4 * plain_look(leaves=25).block)


def test_the_shadow_falls_away_from_the_light():
    """At the same distance from the pad, below it and to its right it is darker than above and to its left."""
    (slab,), view = seen([plain_look()], wish(size=400))
    left = light_left([slab], None, view, Window(0, 0, 400, 400))
    x, y = slab.plan(0, 0)
    to_x, to_y = slab.plan(60, 90)
    middle = view.seen(0, 0, 0)

    def at(x, y):
        return float(left[int(y), int(x)].mean())

    gap = 3 * view.scale
    (west, north), (east, south) = view.seen(x, y, 0), view.seen(to_x, to_y, 0)
    assert at(middle[0], south + gap) < at(middle[0], north - gap) - 0.2
    assert at(east + gap, middle[1]) < at(west - gap, middle[1]) - 0.2
    assert min(CAST) > 0


def test_a_shadow_is_softer_the_higher_it_falls_from():
    """The steepest step of a shadow's edge, of a pad on the table and of one 20 mm up."""
    (slab,), view = seen([plain_look()], wish(size=400))
    steepest = []
    for lift in (0.0, 20.0):
        left = light_left([replace(slab, left=lift, right=lift)], None, view, Window(0, 0, 400, 400))
        steepest.append(np.abs(np.diff(left.mean(axis=2), axis=0)).max())
    assert steepest[1] < steepest[0] / 2


def test_nothing_above_takes_no_light():
    assert light_left([], None, View(1.0), Window(0, 0, 9, 9)) is None


def test_a_pad_of_a_fan_casts_its_shadow_on_the_one_before():
    first, second = arranged([plain_look()] * 2, wish("fan"))
    view = fitted((first, second), wish("fan"))
    left = light_left([second], first, view, Window(0, 0, 300, 300))
    x, y = second.plan(-1, 60)
    covered_x, covered_y = view.seen(x, y, first.height_at(x, y))
    far_x, far_y = view.seen(*first.plan(5, 30), first.thickness)
    assert left[int(covered_y), int(covered_x)].mean() < left[int(far_y), int(far_x)].mean() - 0.1


def test_the_backdrop_is_the_colour_that_was_asked_for():
    """Half-way up the left edge, far from the pad and its shadow, within the light's fall-off."""
    pixels = flat_lay_pixels((plain_look(),), wish())
    there = pixels[120:180, 5:25].reshape(-1, 3).mean(axis=0)
    assert delta_e(Colour(*np.rint(there).astype(int)), GREEN) < 4


def test_the_light_falls_off_from_the_upper_left_to_the_lower_right():
    pixels = flat_lay_pixels((plain_look(),), wish()).astype(float)
    assert pixels[5:25, 5:25].mean() > pixels[-25:-5, -25:-5].mean() + 5


@pytest.mark.parametrize(("arrange", "count"), [("single", 1), ("stack", 1), ("fan", 3)])
def test_the_same_wish_gives_the_same_bytes(arrange, count):
    pads = (patched_look(),) * count
    assert flat_lay(pads, wish(arrange)) == flat_lay(pads, wish(arrange))


@pytest.mark.parametrize("shape", ["square", "portrait", "landscape"])
def test_the_file_is_a_png_of_the_size_asked_for(shape):
    asked = wish(size=250, shape=shape)
    with Image.open(BytesIO(flat_lay((plain_look(),), asked))) as image:
        image.load()
        assert (image.format, image.mode, image.size) == ("PNG", "RGB", asked.frame)


def test_the_file_says_that_it_is_srgb():
    """The chunk stands before the pixels (ISO/IEC 15948, 5.6) and its checksum is right: the reader takes it."""
    data = flat_lay((plain_look(),), wish(size=200))
    assert data.index(b"sRGB") < data.index(b"IDAT")
    with Image.open(BytesIO(data)) as image:
        image.load()
        assert image.info["srgb"] == 0


def test_faces_are_wanted_at_twice_the_resolution_they_are_seen_at():
    pad, asked = plain_look(), wish()
    _, view = seen([pad], asked)
    assert face_ppi([pad.trim], [pad.thickness], asked) == pytest.approx(view.scale * 2 * 25.4)


def test_a_pad_as_tall_as_a_sheet_and_one_leaf_thick_is_drawn():
    pixels = flat_lay_pixels((plain_look(trim=Size(60, 297), leaves=1),), wish(size=200))
    assert pixels.shape == (200, 200, 3)


def test_the_board_shows_under_the_leaves():
    """The lowest seventh of the side is board (1 mm of 7), kraft or grey, and what is above is paper."""
    for colour in (KRAFT, GREY):
        side = leaf_lines(replace(plain_look(), board_colour=colour), 60, (120, 70), 1).astype(float)
        board, leaves = side[64:].mean(axis=(0, 1)), side[:58].mean(axis=(0, 1))
        assert board == pytest.approx([colour.red, colour.green, colour.blue], abs=12)
        assert leaves.min() > 190


def test_leaf_lines_run_along_the_side():
    """Rows differ from each other far more than pixels along a row do."""
    side = leaf_lines(replace(plain_look(), board=0.0), 60, (200, 100), 1)[..., 0].astype(float)
    assert np.abs(np.diff(side, axis=0)).mean() > 3 * np.abs(np.diff(side, axis=1)).mean()


def test_a_light_pad_gets_a_backdrop_across_the_colour_circle():
    """A pale pink lies on a green: a (of OKLab) changes its sign, and it is darker than the pad."""
    pink = (255, 215, 220)
    backdrop = fitting_colour([plain_look(pink)])
    assert backdrop.green > max(backdrop.red, backdrop.blue) - 12
    assert backdrop.red < backdrop.green
    assert linear_from_srgb(backdrop.unit).mean() < linear_from_srgb(np.array(pink) / 255).mean()


def test_a_dark_pad_gets_a_lighter_backdrop_than_a_light_one():
    dark, light = (fitting_colour([plain_look(colour)]) for colour in ((40, 60, 70), (210, 230, 240)))
    assert sum(dark.unit) > sum(light.unit)


def test_a_grey_pad_lies_on_the_warm_hue_of_paper():
    backdrop = fitting_colour([plain_look((240, 240, 240))])
    assert backdrop.red > backdrop.green > backdrop.blue


def test_grain_is_the_stream_of_pcg64():
    """The first word of PCG64 seeded with 20117, its bytes from the least: the same on every machine."""
    word = int(np.random.PCG64(20117).random_raw())
    assert bytes_of(20117, 2, 4).ravel().tolist() == list(word.to_bytes(8, "little"))


def test_coarse_grain_changes_slowly():
    fine, slow = coarse(1, (80, 80), 1), coarse(1, (80, 80), 12)
    assert np.abs(np.diff(slow, axis=1)).mean() < np.abs(np.diff(fine, axis=1)).mean() / 5
