"""Pictures in the PDF: one object each however often they are used, in their own colours, in their place."""

import io
import subprocess

import cairosvg
import numpy as np
import pikepdf
import pytest

from padspec.base.geometry import Box, Size
from padspec.draw.pdf import face_pdf, sheet_pdf, sheets_pdf
from padspec.draw.png import rasterise
from padspec.scene.nodes import Cause, Layer, Picture, Raster, Scene, Vector

from .small import GROUND, PICTURE_BOX, TILES, sheet_of, small_face_pdf, small_scene

CAUSE = Cause("header", "art")
VECTOR_SVG = b"""<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20" viewBox="0 0 40 20">
<rect width="10" height="20" fill="#c03040"/><rect x="30" width="10" height="10" fill="#2060a0"/></svg>"""
RED, BLUE, PAPER = [0xC0, 0x30, 0x40], [0x20, 0x60, 0xA0], [255, 255, 255]


def vector(pdf: bytes | None = None) -> Vector:
    return Vector("flag", "5eed5eed", pdf or cairosvg.svg2pdf(VECTOR_SVG), VECTOR_SVG)


def scene_with(*art: Picture) -> Scene:
    return Scene(Size(50.8, 50.8), 0, (Layer("art", art),))


def at(pixels, x: float, y: float) -> list[int]:
    """The pixel at a place in mm of a page drawn at 254 ppi."""
    return pixels[round(y * 10), round(x * 10)].tolist()


def images_listed(pdf: bytes, tmp_path) -> set[tuple[str, str]]:
    """Kind and object number of every image that poppler lists."""
    path = tmp_path / "listed.pdf"
    path.write_bytes(pdf)
    said = subprocess.run(["pdfimages", "-list", path], capture_output=True, text=True, check=True).stdout
    return {(row.split()[2], row.split()[10]) for row in said.splitlines()[2:]}


def test_three_slots_share_one_picture_and_one_soft_mask(tmp_path):
    scene = small_scene()
    listed = images_listed(sheet_pdf(scene, sheet_of(scene)), tmp_path)
    assert sorted(kind for kind, _ in listed) == ["image", "smask"]


def test_different_faces_share_their_picture(tmp_path):
    one, other = small_scene(), small_scene(checkbox_shift=0.5)
    sheet = sheet_of(one)
    listed = images_listed(sheets_pdf([(sheet, [one, other, one]), (sheet, [other] * 3)]), tmp_path)
    assert sorted(kind for kind, _ in listed) == ["image", "smask"]


def test_two_pictures_of_a_face_are_two_objects(tmp_path):
    pictures = [
        Picture(Raster("dot", digest, 1, 1, bytes([9, 99, 199]), None), Box(place, 0, 9, 9), CAUSE)
        for place, digest in ((0, "00000001"), (20, "00000002"))
    ]
    listed = images_listed(face_pdf(scene_with(*pictures)), tmp_path)
    assert [kind for kind, _ in listed] == ["image", "image"]


def test_pixels_come_out_of_the_file_as_they_went_in():
    """Judge: pikepdf's image extraction, over more rows and columns than any filter needs."""
    rng = np.random.default_rng(7)
    rgb = rng.integers(0, 256, (23, 17, 3), np.uint8)
    alpha = np.arange(23 * 17, dtype=np.uint8).reshape(23, 17)
    raster = Raster("noise", "12ab34cd", 17, 23, rgb.tobytes(), alpha.tobytes())
    pdf = face_pdf(scene_with(Picture(raster, Box(5, 5, 34, 46), CAUSE)))
    with pikepdf.open(io.BytesIO(pdf)) as document:
        image = document.pages[0].Resources.XObject["/Face"].Resources.XObject["/Raster-12ab34cd"]
        assert np.array_equal(np.asarray(pikepdf.PdfImage(image).as_pil_image().convert("RGB")), rgb)
        assert np.array_equal(np.asarray(pikepdf.PdfImage(image.SMask).as_pil_image()), alpha)


def test_an_unpacked_file_shows_the_same_pixels():
    scene = small_scene(100)
    assert np.array_equal(rasterise(face_pdf(scene, packed=False), 254), rasterise(face_pdf(scene), 254))


@pytest.mark.parametrize(("tile", "column", "row"), [(0, 0, 0), (1, 1, 0), (3, 1, 1)])
def test_an_opaque_tile_is_seen_in_its_own_colour_and_place(tile, column, row):
    pixels = rasterise(small_face_pdf(100), 254)
    x = PICTURE_BOX.x + (0.25 + column / 2) * PICTURE_BOX.width + 2.54
    y = PICTURE_BOX.y + (0.25 + row / 2) * PICTURE_BOX.height + 2.54
    assert at(pixels, x, y) == pytest.approx(TILES[tile][:3], abs=1)


def test_a_half_transparent_tile_mixes_with_the_ground():
    """ISO 32000-1, 11.3.6: the sum of both, weighted by the soft mask."""
    pixels = rasterise(small_face_pdf(100), 254)
    *over, alpha = TILES[2]
    under = GROUND.red, GROUND.green, GROUND.blue
    wanted = [(o * alpha + u * (255 - alpha)) / 255 for o, u in zip(over, under, strict=True)]
    x, y = PICTURE_BOX.x + PICTURE_BOX.width / 4 + 2.54, PICTURE_BOX.y + PICTURE_BOX.height * 0.6 + 2.54
    assert at(pixels, x, y) == pytest.approx(wanted, abs=1)


def test_a_vector_picture_fills_its_box():
    pixels = rasterise(face_pdf(scene_with(Picture(vector(), Box(5, 10, 40, 30), CAUSE))), 254)
    red = (pixels == RED).all(axis=2).nonzero()
    assert [red[1].min() / 10, red[0].min() / 10] == pytest.approx([5, 10], abs=0.11)
    assert [red[1].max() / 10, red[0].max() / 10] == pytest.approx([15, 40], abs=0.11)


@pytest.mark.parametrize(
    ("x", "y", "colour"), [(10, 25, RED), (40, 17, BLUE), (40, 33, PAPER), (20, 25, PAPER), (3, 25, PAPER)]
)
def test_a_vector_picture_is_upright_and_in_its_own_colours(x, y, colour):
    pixels = rasterise(face_pdf(scene_with(Picture(vector(), Box(5, 10, 40, 30), CAUSE))), 254)
    assert at(pixels, x, y) == colour


def test_a_vector_picture_from_a_turned_page_with_an_offset_box_fills_its_box_as_its_viewer_shows_it():
    """ISO 32000-1, table 30: a page is shown turned clockwise by /Rotate, and from the corner of its box."""
    with pikepdf.open(io.BytesIO(cairosvg.svg2pdf(VECTOR_SVG))) as document:
        page = document.pages[0]
        right, top = float(page.mediabox[2]), float(page.mediabox[3])
        page.mediabox = [right / 2, 0, right, top]  # the right half: blank, then blue in its upper quarter
        page.Rotate = 90
        out = io.BytesIO()
        document.save(out)
    pixels = rasterise(face_pdf(scene_with(Picture(vector(out.getvalue()), Box(0, 0, 40, 40), CAUSE))), 254)
    assert at(pixels, 30, 30) == BLUE
    assert at(pixels, 30, 10) == at(pixels, 10, 10) == at(pixels, 10, 30) == PAPER


def test_a_vector_picture_used_twice_is_one_form():
    art = [Picture(vector(), Box(place, 0, 20, 20), CAUSE) for place in (0, 25)]
    with pikepdf.open(io.BytesIO(face_pdf(scene_with(*art)))) as document:
        forms = [o for o in document.objects if isinstance(o, pikepdf.Stream) and o.get("/Subtype") == "/Form"]
        assert len(forms) == 2  # the face and the picture
