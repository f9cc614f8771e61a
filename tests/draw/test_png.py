"""PNG files as another library reads them, and pixels that are where the page has them."""

import io

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from padspec.base.colour import BLACK
from padspec.base.geometry import Box, Size
from padspec.draw.pdf import face_pdf
from padspec.draw.png import mark_failed, picture_png, png_file, proof_png, rasterise
from padspec.scene.nodes import Cause, Layer, Raster, Scene, Shape
from padspec.scene.outline import rectangle

from .small import small_face_pdf, tiles


@settings(max_examples=60)
@given(st.integers(1, 12), st.integers(1, 12), st.sampled_from([3, 4]), st.integers(0, 2**32 - 1), st.booleans())
def test_pixels_read_by_another_library_are_those_written(height, width, channels, seed, smooth):
    """Judge: Pillow. Smooth pictures and noise take different row filters."""
    pixels = np.random.default_rng(seed).integers(0, 256, (height, width, channels), np.uint8)
    if smooth:
        pixels = np.cumsum(pixels // 60, axis=seed % 2, dtype=np.uint8)
    assert np.array_equal(np.asarray(Image.open(io.BytesIO(png_file(pixels)))), pixels)


def test_a_picture_keeps_its_transparency():
    raster = tiles(3)
    read = np.asarray(Image.open(io.BytesIO(picture_png(raster))))
    assert read[..., :3].tobytes() == raster.rgb
    assert read[..., 3].tobytes() == raster.alpha


def test_a_picture_without_transparency_is_plain_rgb():
    raster = Raster("plain", "00000000", 2, 1, bytes([1, 2, 3, 250, 251, 252]), None)
    image = Image.open(io.BytesIO(picture_png(raster)))
    assert (image.mode, image.tobytes()) == ("RGB", raster.rgb)


@pytest.mark.parametrize("ppi", [150, 96.5])
def test_a_proof_knows_its_resolution(ppi):
    image = Image.open(io.BytesIO(proof_png(small_face_pdf(), ppi)))
    assert image.info["dpi"] == pytest.approx((ppi, ppi), abs=0.02)


def test_a_proof_shows_the_page_itself():
    image = np.asarray(Image.open(io.BytesIO(proof_png(small_face_pdf(), 120))))
    assert np.array_equal(image, rasterise(small_face_pdf(), 120))


def test_a_face_of_two_by_three_inches_has_that_many_pixels():
    assert rasterise(small_face_pdf(), 100).shape == (300, 200, 3)


def test_an_edge_inside_a_pixel_is_left_out_and_never_paler():
    ground = Shape(rectangle(Box(-1, -1, 12.1, 12.1)), Cause("ground", "ground"), BLACK)
    pixels = rasterise(face_pdf(Scene(Size(10.1, 10.1), 0, (Layer("ground", (ground,)),))), 30)
    assert pixels.shape == (11, 11, 3)  # 10.1 mm are 11.93 pixels
    assert pixels.max() == 0


def test_the_scale_is_true_to_the_far_edge_of_a_page_of_broken_pixels():
    bar = Shape(rectangle(Box(299, 0, 0.5, 3)), Cause("a", "rule"), BLACK)
    pixels = rasterise(face_pdf(Scene(Size(300.03, 3), 0, (Layer("rules", (bar,)),))), 254)
    dark = (255 - pixels[10, :, 0].astype(float)) / 255
    middle = (dark * (np.arange(len(dark)) + 0.5)).sum() / dark.sum() / 10
    assert middle == pytest.approx(299.25, abs=0.01)


def test_a_failed_proof_is_framed_and_crossed_in_red():
    page = np.full((400, 300, 3), 255, np.uint8)
    marked = mark_failed(page)
    red = (marked[..., 0] > 200) & (marked[..., 1] < 60)
    assert red[0].all()
    assert red[-1].all()
    assert red[:, 0].all()
    assert red[:, -1].all()
    for share in (0.1, 0.3, 0.5, 0.7, 0.9):  # the band follows the falling diagonal
        y, x = round(share * 400), round(share * 300)
        assert red[y - 10 : y + 10, x - 10 : x + 10].any()
    assert red[200, 117]  # the band has a solid edge a tenth of the width beside its middle
    assert red[200, 183]


def test_a_failed_proof_still_shows_the_design():
    page = np.full((400, 300, 3), 255, np.uint8)
    marked = mark_failed(page)
    assert 0.6 < (marked == 255).all(axis=2).mean() < 0.9


def test_marking_leaves_the_proof_itself_alone():
    page = np.full((40, 30, 3), 255, np.uint8)
    mark_failed(page)
    assert page.min() == 255
