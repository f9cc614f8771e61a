"""The finished sheet as other programs see it: whole, its boxes, its one picture."""

import io
import re
import subprocess

import pikepdf
import pytest

from .pads import DESIGNS, made, sheet_file

MM = 25.4 / 72
NAMES = list(DESIGNS)


@pytest.fixture(scope="module", params=NAMES)
def name(request):
    return request.param


@pytest.fixture(scope="module")
def file(name, tmp_path_factory):
    path = tmp_path_factory.mktemp("sheet") / "sheet.pdf"
    path.write_bytes(sheet_file(name))
    return path


def said_by(*command) -> str:
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def test_qpdf_finds_no_fault(file):
    assert "No syntax or stream encoding errors" in said_by("qpdf", "--check", file)


def box_in_mm(box: str, said: str) -> list[float]:
    line = re.search(rf"^{box}: +(.*)$", said, re.MULTILINE).group(1)
    return [float(value) * MM for value in line.split()]


@pytest.mark.parametrize("box", ["MediaBox", "CropBox", "BleedBox", "TrimBox"])
def test_poppler_reads_the_boxes_of_the_sheet(name, file, box):
    """ISO 32000-1, 14.11.2; pdfinfo prints two digits of a point, 0.0018 mm."""
    sheet = made(name).sheet
    wanted = {"TrimBox": sheet.trim_box, "BleedBox": sheet.bleed_box}.get(box)
    edges = [0, 0, sheet.size.width, sheet.size.height]
    if wanted is not None:
        height = sheet.size.height
        edges = [wanted.x, height - wanted.bottom, wanted.right, height - wanted.y]
    assert box_in_mm(box, said_by("pdfinfo", "-box", file)) == pytest.approx(edges, abs=0.002)


def test_the_boxes_lie_in_each_other(name):
    """ISO 32000-1, 14.11.2: media ⊇ crop ⊇ bleed ⊇ trim; read by pikepdf."""
    with pikepdf.open(io.BytesIO(sheet_file(name))) as document:
        page = document.pages[0].obj
        media, crop, bleed, trim = (
            [float(v) for v in page[box]] for box in ("/MediaBox", "/CropBox", "/BleedBox", "/TrimBox")
        )
    for outer, inner in ((media, crop), (crop, bleed), (bleed, trim)):
        assert outer[0] <= inner[0]
        assert outer[1] <= inner[1]
        assert outer[2] >= inner[2]
        assert outer[3] >= inner[3]


def test_trims_stay_inside_what_the_printer_reaches(name):
    """The studio's margins: left 3.3, right 4.2, top 3, bottom 7.5 mm."""
    with pikepdf.open(io.BytesIO(sheet_file(name))) as document:
        page = document.pages[0].obj
        left, foot, right, head = (float(v) * MM for v in page["/BleedBox"])
        width, height = (float(page["/MediaBox"][n]) * MM for n in (2, 3))
    margins = (3.3, 7.5, 4.2, 3.0)
    reached = (left, foot, width - right, height - head)
    assert all(mm >= margin - 0.002 for mm, margin in zip(reached, margins, strict=True))


def test_one_picture_with_its_soft_mask_however_many_leaves(name, file):
    """poppler's list: the object numbers of images and masks."""
    lines = [line.split() for line in said_by("pdfimages", "-list", file).splitlines()[2:]]
    has_art = "art.file" in DESIGNS[name]
    objects = {kind: {line[10] for line in lines if line[2] == kind} for kind in ("image", "smask")}
    assert {kind: len(found) for kind, found in objects.items()} == {"image": int(has_art), "smask": int(has_art)}


def test_the_picture_prints_at_no_more_than_450_ppi_and_no_less_than_300(file):
    lines = [line.split() for line in said_by("pdfimages", "-list", file).splitlines()[2:]]
    for line in lines:
        assert 300 <= int(line[12]) <= 455, line
        assert line[12] == line[13], "not stretched"


def test_the_number_of_copies_is_that_of_the_sheet(name):
    with pikepdf.open(io.BytesIO(sheet_file(name))) as document:
        assert document.Root.ViewerPreferences.NumCopies == made(name).sheet.copies


def test_every_leaf_places_one_and_the_same_form(name):
    with pikepdf.open(io.BytesIO(sheet_file(name))) as document:
        done = [
            str(line.operands[0])
            for line in pikepdf.parse_content_stream(document.pages[0])
            if str(line.operator) == "Do"
        ]
    assert len(done) == made(name).sheet.n_up
    assert len(set(done)) == 1
