"""SVG and PDF of one face, drawn by renderers that wrote neither, show the same picture.

The limit is measured on this face: clean, resvg, cairosvg and Chromium differ from pdfium by 20 to 23 of
255 (where the edge of the picture falls inside a pixel, which pdfium rounds outwards); with one checkbox
0.05 mm aside it is 42, with 0.1 mm 78.
"""

import base64

import cairosvg
import pytest

from padspec.draw.png import picture_png, rasterise
from padspec.draw.svg import face_svg
from padspec.scene.nodes import Raster, Scene

from .reading_back import largest_difference, png_pixels, svg_pixels
from .small import small_face_pdf, small_scene

LIMIT = 32
PIXELS_A_TILE = 100  # fine enough that no renderer smooths one tile into the next by a visible amount


def embedded(image: Raster) -> str:
    return "data:image/png;base64," + base64.b64encode(picture_png(image)).decode()


def svg_text(scene: Scene) -> str:
    return face_svg(scene, "A face", embedded)


@pytest.fixture(scope="module")
def page():
    return rasterise(small_face_pdf(PIXELS_A_TILE), 600)


def test_resvg_and_pdfium_see_the_same_face(page):
    svg = svg_text(small_scene(PIXELS_A_TILE))
    assert largest_difference(svg_pixels(svg, 600), page) < LIMIT


def test_cairosvg_and_pdfium_see_the_same_face(page):
    svg = svg_text(small_scene(PIXELS_A_TILE)).encode()
    pixels = png_pixels(cairosvg.svg2png(svg, dpi=600, background_color="#ffffff"))
    assert largest_difference(pixels, page) < LIMIT


def test_one_checkbox_a_tenth_of_a_millimetre_aside_is_seen(page):
    svg = svg_text(small_scene(PIXELS_A_TILE, checkbox_shift=0.1))
    assert largest_difference(svg_pixels(svg, 600), page) > 2 * LIMIT
