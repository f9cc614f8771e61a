"""A sheet PDF as other programs see it: whole, with its boxes, its printing wishes and what it is called."""

import io
import re
import subprocess
from dataclasses import replace

import numpy as np
import pikepdf
import pypdfium2
import pytest

from padspec.base.colour import BLACK, Colour
from padspec.base.geometry import Box
from padspec.draw.metadata import xmp_packet
from padspec.draw.operators import POINTS
from padspec.draw.pdf import face_pdf, sheet_pdf, sheets_pdf
from padspec.draw.png import rasterise
from padspec.scene.nodes import Cause, Layer, Picture, Scene, Shape
from padspec.scene.outline import rectangle

from .small import BLEED, TILES, TRIM, sheet_of, small_face_pdf, small_scene, tiles


@pytest.fixture(scope="module")
def sheet():
    return sheet_of(small_scene())


@pytest.fixture(scope="module")
def pdf(sheet):
    return sheet_pdf(small_scene(), sheet)


@pytest.fixture(scope="module")
def file(pdf, tmp_path_factory):
    path = tmp_path_factory.mktemp("sheet") / "sheet.pdf"
    path.write_bytes(pdf)
    return path


def said_by(*command) -> str:
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def on_page(box: Box, height: float) -> list[float]:
    """By hand: millimetres from the top to points from the foot."""
    edges = box.x, height - box.bottom, box.right, height - box.y
    return [edge / 25.4 * 72 for edge in edges]


def test_qpdf_finds_no_fault_in_a_sheet(file):
    assert "No syntax or stream encoding errors" in said_by("qpdf", "--check", file)


def test_qpdf_finds_no_fault_in_a_face(tmp_path):
    path = tmp_path / "face.pdf"
    path.write_bytes(small_face_pdf())
    assert "No syntax or stream encoding errors" in said_by("qpdf", "--check", path)


def test_the_boxes_are_nested(pdf):
    """ISO 32000-1, 14.11.2: each box lies in the one before; read by pdfium."""
    page = pypdfium2.PdfDocument(pdf)[0]
    media, bleed, trim = page.get_mediabox(), page.get_bleedbox(), page.get_trimbox()
    assert media[0] < bleed[0] < trim[0] < trim[2] < bleed[2] < media[2]
    assert media[1] < bleed[1] < trim[1] < trim[3] < bleed[3] < media[3]


@pytest.mark.parametrize(
    ("name", "box"),
    [
        ("/MediaBox", lambda _: Box(0, 0, 297, 210)),
        ("/CropBox", lambda _: Box(0, 0, 297, 210)),
        ("/BleedBox", lambda sheet: sheet.bleed_box),
        ("/TrimBox", lambda sheet: sheet.trim_box),
    ],
)
def test_a_box_is_where_the_sheet_has_it(pdf, sheet, name, box):
    with pikepdf.open(io.BytesIO(pdf)) as document:
        found = [float(edge) for edge in document.pages[0].obj[name]]
    assert found == pytest.approx(on_page(box(sheet), 210), abs=0.001)


def test_a_face_has_its_trim_inside_its_bleed():
    page = pypdfium2.PdfDocument(small_face_pdf())[0]
    assert page.get_bleedbox() == pytest.approx((0, 0, 144, 216), abs=0.001)
    assert page.get_trimbox() == pytest.approx((7.2, 7.2, 136.8, 208.8), abs=0.001)


def test_printing_wishes_are_seen_by_another_reader(pdf):
    """ISO 32000-1, table 150; read by pdfium."""
    document = pypdfium2.PdfDocument(pdf)
    assert not pypdfium2.raw.FPDF_VIEWERREF_GetPrintScaling(document)
    assert pypdfium2.raw.FPDF_VIEWERREF_GetNumCopies(document) == 17


def test_the_window_shows_the_title_and_not_the_file_name(pdf):
    with pikepdf.open(io.BytesIO(pdf)) as document:
        assert document.Root.ViewerPreferences.DisplayDocTitle is True


def test_title_creator_and_version_are_seen_by_another_reader(file):
    said = said_by("pdfinfo", file)
    assert re.search(r"^Title: +Lint & Ömkel <small>$", said, re.MULTILINE)
    assert re.search(r"^Creator: +padspec$", said, re.MULTILINE)
    assert re.search(r"^PDF version: +1\.6$", said, re.MULTILINE)


def test_metadata_packet_says_what_the_information_says(pdf):
    """ISO 16684-1; read by pikepdf's own parser."""
    with pikepdf.open(io.BytesIO(pdf)) as document, document.open_metadata() as packet:
        assert packet["dc:title"] == str(document.docinfo.Title)
        assert packet["xmp:CreatorTool"] == str(document.docinfo.Creator)
        assert packet["pdf:Producer"] == str(document.docinfo.Producer)


def test_metadata_packet_stands_in_the_file_as_it_was_written(pdf, sheet):
    with pikepdf.open(io.BytesIO(pdf)) as document:
        assert document.Root.Metadata.read_bytes() == xmp_packet(sheet.title, None).encode()


def test_without_a_date_no_time_is_written(pdf):
    with pikepdf.open(io.BytesIO(pdf)) as document:
        assert "/CreationDate" not in document.docinfo
        assert b"Date" not in document.Root.Metadata.read_bytes()


def test_a_date_stands_in_both_places(sheet, tmp_path):
    path = tmp_path / "dated.pdf"
    path.write_bytes(sheet_pdf(small_scene(), sheet, date="2031-04-05"))
    assert "2031-04-05T00:00:00Z" in said_by("pdfinfo", "-isodates", path)
    assert "<xmp:CreateDate>2031-04-05T00:00:00Z<" in said_by("pdfinfo", "-meta", path)


def test_the_page_blends_its_colours_as_rgb(pdf):
    """ISO 32000-1, 11.6.6: a page with transparency names the colour space it is composed in."""
    with pikepdf.open(io.BytesIO(pdf)) as document:
        group = document.pages[0].obj.Group
        assert (group.S, group.CS) == ("/Transparency", "/DeviceRGB")


def test_three_slots_place_one_form(pdf):
    with pikepdf.open(io.BytesIO(pdf)) as document:
        page = document.pages[0]
        names = [
            str(line.operands[0]) for line in pikepdf.parse_content_stream(page) if str(line.operator) == "Do"
        ]
        assert len(names) == 3
        assert set(names) == set(page.obj.Resources.XObject.keys())
        assert len(set(names)) == 1


def test_sheets_of_several_faces_carry_each_face_once_a_sheet(sheet):
    one, other = small_scene(), small_scene(checkbox_shift=0.5)
    with pikepdf.open(io.BytesIO(sheets_pdf([(sheet, [one, other, one]), (sheet, [other] * 3)]))) as document:
        assert [len(page.obj.Resources.XObject) for page in document.pages] == [2, 1]


def test_a_shared_layer_is_drawn_once_in_the_file(sheet):
    faces = [small_scene(checkbox_shift=shift) for shift in (0.0, 0.5, 1.0)]
    shared = [layer for layer in faces[0].layers if layer.name != "rules"]
    pdf = sheets_pdf([(sheet, faces), (sheet, faces)], shared)
    with pikepdf.open(io.BytesIO(pdf)) as document:
        forms = [o for o in document.objects if isinstance(o, pikepdf.Stream) and o.get("/Subtype") == "/Form"]
        assert len(forms) == 4 + 2 * 3


def test_sharing_layers_changes_no_pixel(sheet):
    faces = [small_scene(checkbox_shift=shift) for shift in (0.0, 0.5, 1.0)]
    shared = [layer for layer in faces[0].layers if layer.name != "rules"]
    plain, shorter = (rasterise(sheets_pdf([(sheet, faces)], layers), 150) for layers in ((), shared))
    assert np.array_equal(plain, shorter)


def test_a_sheet_with_too_few_scenes_is_refused(sheet):
    with pytest.raises(ValueError, match="zip"):
        sheets_pdf([(sheet, [small_scene()])])


def test_no_sheets_at_all_are_refused():
    with pytest.raises(ValueError, match="at least one sheet"):
        sheets_pdf([])


def test_nothing_prints_outside_the_printed_box_of_a_slot():
    scene = small_scene()
    sheet = sheet_of(scene, n_up=1, gutter=1.0)  # prints 0.5 mm of the 2.54 mm of bleed
    pixels = rasterise(sheet_pdf(scene, sheet), 254)  # ten pixels a millimetre
    assert sheet.slots[0].printed == (Box(11.5, 29.5, TRIM.height + 1, TRIM.width + 1),)
    row = pixels[310, :, 0]  # 31 mm down, below the crop mark and above the dots
    coloured = (row < 255).nonzero()[0] / 10
    assert coloured.min() == pytest.approx(11.5, abs=0.11)
    assert coloured.max() == pytest.approx(11.5 + TRIM.height + 1, abs=0.11)


def test_the_face_ends_at_its_bleed_even_where_its_ground_and_the_slot_reach_farther():
    endless = Shape(rectangle(Box(-20, -20, 99, 99)), Cause("ground", "ground"), BLACK)
    scene = Scene(TRIM, BLEED, (Layer("ground", (endless,)),))
    sheet = sheet_of(scene, n_up=1)
    slot = replace(sheet.slots[0], printed=(sheet.slots[0].trim.inset(-8),))
    pixels = rasterise(sheet_pdf(scene, replace(sheet, slots=(slot,))), 254)
    coloured = (pixels[400, :, 0] < 255).nonzero()[0] / 10
    assert coloured.min() == pytest.approx(12 - BLEED, abs=0.11)


def test_marks_may_hold_a_picture(sheet):
    picture = Picture(tiles(20), Box(200, 150, 20, 20), Cause("sheet", "slug"))
    pixels = rasterise(sheet_pdf(small_scene(), replace(sheet, marks=(picture,))), 25.4)
    assert pixels[155, 205].tolist() == list(TILES[0][:3])


def test_title_and_copies_are_those_of_the_first_sheet(sheet):
    scenes = [small_scene()] * 3
    last = replace(sheet, title="Last", copies=2)
    with pikepdf.open(io.BytesIO(sheets_pdf([(sheet, scenes), (last, scenes)]))) as document:
        assert document.docinfo.Title == sheet.title
        assert document.Root.ViewerPreferences.NumCopies == 17


@pytest.mark.parametrize("kind", ["page", "form"])
def test_every_state_that_is_saved_is_restored(pdf, kind):
    """ISO 32000-1, 8.4.2: q and Q balance within a stream."""
    with pikepdf.open(io.BytesIO(pdf)) as document:
        page = document.pages[0]
        stream = page if kind == "page" else page.obj.Resources.XObject["/Face-1"]
        depth = 0
        for line in pikepdf.parse_content_stream(stream):
            depth += {"q": 1, "Q": -1}.get(str(line.operator), 0)
            assert depth >= 0
        assert depth == 0


def test_the_background_of_a_face_is_seen_where_the_face_draws_nothing():
    scene = small_scene()
    bare = type(scene)(scene.size, scene.bleed, scene.layers[1:])
    assert rasterise(face_pdf(bare, Colour(12, 34, 56)), 100)[2, 2].tolist() == [12, 34, 56]


def test_points_are_a_seventy_second_of_an_inch():
    """ISO 32000-1, 8.3.2.3."""
    assert pytest.approx(72) == 25.4 * POINTS
