"""LittleCMS by the made profile against the press model's own equations, and by a profile of others."""

import struct
from io import BytesIO

import numpy as np
import pytest
from PIL import Image, ImageCms
from skimage.color import deltaE_ciede2000

from padspec.press.conversion import Conversion, lab_from_xyz, wanted_lab, xyz_from_lab
from padspec.press.inks import INKS
from padspec.press.lab_planes import lab_from_planes, plane_profile
from padspec.press.profile import INTENTS, Press, read_profile, tags

from .made import model, profile_bytes, separator

RNG = np.random.default_rng(20)
COLOURS = RNG.integers(0, 256, (2000, 3)).astype(np.uint8)
AMOUNTS = RNG.integers(0, 256, (2000, 4)).astype(np.uint8)


def test_inks_print_what_the_press_model_says():
    """The grid of the profile is read between its nodes, so it is near and not equal."""
    off = deltaE_ciede2000(separator().conversion.lab(AMOUNTS), model().printed_lab(AMOUNTS / 255))
    assert off.mean() < 0.4
    assert off.max() < 2.5


def test_at_the_nodes_of_the_grid_inks_print_exactly_what_the_press_model_says():
    """Bare paper and the solids are nodes, whatever the gain between them."""
    nodes = np.array([[255 * (n >> ink & 1) for ink in range(4)] for n in range(16)], np.uint8)
    found, wanted = separator().conversion.lab(nodes), model().printed_lab(nodes / 255)
    assert np.abs(found - wanted).max() < 0.02


def test_black_alone_prints_darker_with_every_step():
    scale = np.zeros((256, 4), np.uint8)
    scale[:, 3] = np.arange(256)
    assert (np.diff(separator().conversion.lab(scale)[:, 0]) < 0).all()


def test_colours_that_the_press_can_print_come_out_as_wanted():
    """Round trip through both tables, judged by the model: colours that its solver reaches."""
    wanted = wanted_lab(COLOURS / 255)
    _, off = model().separated(wanted)
    reached = off < 1
    assert reached.sum() > 300
    inks = separator(black_point=False).conversion.inks(COLOURS[reached])
    errors = deltaE_ciede2000(model().printed_lab(inks / 255), wanted[reached])
    assert errors.mean() < 1.2
    assert np.percentile(errors, 95) < 3.5


def test_a_wanted_colour_is_what_littlecms_makes_of_srgb():
    """Judge: LittleCMS's own sRGB profile into CIELAB of 8 bits, which rounds a* and b* to whole units."""
    to_lab = ImageCms.buildTransform(
        ImageCms.createProfile("sRGB"), ImageCms.createProfile("LAB"), "RGB", "LAB", ImageCms.Intent(1)
    )
    image = ImageCms.applyTransform(Image.fromarray(COLOURS[:, None]), to_lab)
    eight = np.array(image).reshape(-1, 3)
    theirs = np.stack([eight[:, 0] / 2.55, eight[:, 1].astype(np.int8), eight[:, 2].astype(np.int8)], 1)
    assert (np.abs(theirs - wanted_lab(COLOURS / 255)).max(axis=0) < [0.3, 0.7, 0.7]).all()


def test_the_planes_hold_a_colour_to_a_hundredth():
    """sRGB through the three profiles of one channel each, against the equations."""
    planes = []
    for axis in range(3):
        profile = ImageCms.ImageCmsProfile(BytesIO(plane_profile(axis)))
        through = ImageCms.buildTransform(
            ImageCms.createProfile("sRGB"), profile, "RGB", "I;16", ImageCms.Intent(1),
            ImageCms.Flags.NOOPTIMIZE,
        )  # fmt: skip
        planes.append(np.array(ImageCms.applyTransform(Image.fromarray(COLOURS[:, None]), through)).ravel())
    found = lab_from_planes(np.stack(planes, 1).astype(float))
    assert np.abs(found - wanted_lab(COLOURS / 255)).max() < 0.03


def test_xyz_and_lab_are_each_other_s_inverse():
    lab = RNG.uniform([0, -80, -80], [100, 80, 80], (500, 3))
    assert np.abs(lab_from_xyz(xyz_from_lab(lab)) - lab).max() < 1e-9


def test_lab_under_d50_is_the_published_one():
    """Worked pair of a mathematics package's documentation: XYZ (0.25, 0.40, 0.10) under D50."""
    found = lab_from_xyz(np.array([0.25, 0.40, 0.10]))
    assert found == pytest.approx([69.4695, -49.5717, 48.3864], abs=0.02)


@pytest.mark.parametrize("intent", INTENTS)
@pytest.mark.parametrize("outside", [False, True])
def test_white_is_the_bare_paper(intent, outside):
    rgb = np.array([[255, 255, 255], [255, 255, 254]], np.uint8)
    assert separator(intent, outside=outside).conversion.inks(rgb)[0].tolist() == [0, 0, 0, 0]


def test_white_is_the_bare_paper_even_where_a_profile_would_tint_it():
    """The output curves of the colorimetric table are lifted: no ink becomes a sixteenth.

    For relative colorimetric LittleCMS puts white right by itself; for absolute it does not.
    """
    data = bytearray(profile_bytes())
    entry = 132 + 12 * tags(bytes(data)).index("B2A1")
    start, size = struct.unpack_from(">II", data, entry + 4)
    end = start + size
    data[end - 16 : end] = struct.pack(">8H", *(0x1000, 0xFFFF) * 4)
    conversion = Conversion(Press(read_profile(bytes(data), "tinted.icc"), "absolute"))
    white, cream = conversion.inks(np.array([[255, 255, 255], [255, 255, 250]], np.uint8))
    assert white.tolist() == [0, 0, 0, 0]
    assert cream.min() > 10


@pytest.mark.parametrize("outside", [False, True])
def test_intents_separate_differently(outside):
    inks = {intent: separator(intent, outside=outside).conversion.inks(COLOURS).tobytes() for intent in INTENTS}
    assert inks["relative"] != inks["absolute"]
    assert inks["relative"] != inks["perceptual"]


@pytest.mark.parametrize("outside", [False, True])
def test_black_point_compensation_keeps_shadows_apart(outside):
    """ISO 18619: without it, all that is darker than the press's black falls together on it."""
    shadows = np.repeat(np.arange(0, 20, dtype=np.uint8)[:, None], 3, 1)
    light = {
        on: separator("relative", on, outside).conversion
        for on in (True, False)
    }  # fmt: skip
    spread = {on: np.ptp(c.lab(c.inks(shadows))[:, 0]) for on, c in light.items()}
    assert spread[True] > spread[False] + 0.5


def test_absolute_shows_the_paper_and_relative_does_not():
    paper = np.zeros((1, 4), np.uint8)
    assert separator("relative").conversion.lab(paper)[0] == pytest.approx([100, 0, 0], abs=0.01)
    wanted = lab_from_xyz(model().PAPER)
    assert separator("absolute").conversion.lab(paper)[0] == pytest.approx(wanted, abs=0.05)


def test_a_colour_and_a_picture_of_it_take_the_same_inks():
    conversion = separator().conversion
    picture = np.broadcast_to(COLOURS[7], (40, 30, 3))
    assert (conversion.inks(picture) == conversion.inks(COLOURS[7])).all()


def test_no_place_takes_more_ink_than_the_profile_s_limit():
    cover = separator().conversion.inks(COLOURS).sum(axis=1) / 255
    assert cover.max() <= model().MOST_INK + 0.02


def test_the_inks_stand_in_the_order_of_the_pdf_operators():
    """ISO 32000-1, 8.6.4.4: each solid ink is told by its colour."""
    assert INKS == ("cyan", "magenta", "yellow", "black")
    lab = separator(outside=True).conversion.lab(np.eye(4, dtype=np.uint8) * 255)
    assert lab[0, 1] < -20
    assert lab[1, 1] > 50
    assert lab[2, 2] > 60
    assert lab[3, 0] < 30
