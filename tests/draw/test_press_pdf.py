"""A press PDF item by item, as other programs read it: what PDF/X-4 asks for, by the clauses that it builds on.

ISO 15930-7:2010 was not opened: that its clause 6 (technical requirements) asks for an item is from memory, and
its subclauses are not numbered here. Clauses and tables of ISO 32000-1 are named where they define the item.
"""

import hashlib
import re
import struct
import subprocess
from dataclasses import replace
from itertools import pairwise

import pypdfium2
import pytest
from press.made import profile_bytes, separator

from padspec.base.geometry import Affine, Size
from padspec.draw.operators import POINTS
from padspec.draw.press.metadata import press_packet
from padspec.draw.press.pdf import press_pdf
from padspec.press.separate import Separator
from padspec.press.single import MARK_ROOM, single_page

from .press_reading import PressFile
from .press_small import DATE, TITLE, small_print, with_everything, written
from .small import BLEED, TRIM, sheet_of, small_scene


def said_by(*command) -> str:
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


# File structure


def test_qpdf_finds_no_fault(press_sheet):
    assert "No syntax or stream encoding errors" in said_by("qpdf", "--check", press_sheet.path)


def test_header_says_1_6_and_binary_bytes_follow(press_sheet):
    """ISO 32000-1, 7.5.2; PDF/X-4 is built on PDF 1.6 (ISO 15930-7, clause 6, from memory)."""
    head = press_sheet.path.read_bytes()[:32].split(b"\n")
    assert head[0] == b"%PDF-1.6"
    assert head[1][:1] == b"%"
    assert sum(byte > 127 for byte in head[1]) >= 4


def test_the_trailer_has_an_id(press_sheet):
    """ISO 32000-1, 14.4: two strings; ISO 15930-7, clause 6, from memory, makes it a must."""
    assert len(press_sheet.trailer["/ID"]) == 2
    assert all(len(part) >= 16 for part in press_sheet.trailer["/ID"])


def test_nothing_is_encrypted(press_sheet):
    """ISO 32000-1, 7.6; poppler says so too."""
    assert "/Encrypt" not in press_sheet.trailer
    assert re.search(r"^Encrypted: +no$", said_by("pdfinfo", press_sheet.path), re.MULTILINE)


@pytest.mark.parametrize("key", ["/OpenAction", "/AA", "/Names", "/AcroForm", "/Outlines", "/Perms", "/XFA"])
def test_the_catalogue_has_no_actions_and_no_forms(press_sheet, key):
    """ISO 32000-1, 12.6 (actions) and 12.7 (forms): forbidden in print files."""
    assert key not in press_sheet.catalogue


def test_no_page_has_annotations(press_sheet):
    """ISO 32000-1, 12.5."""
    assert not any("/Annots" in page for page in press_sheet.pages)


def test_nothing_lies_outside_the_file(press_sheet):
    """ISO 32000-1, 7.3.8.2 (streams in other files), 8.10.4 (reference XObjects), OPI and alternates (8.9.5.4)."""
    assert not press_sheet.all_keys() & {"/F", "/FFilter", "/Ref", "/OPI", "/Alternates", "/EF", "/URI", "/JS"}
    assert not any(value == "/PS" for value in press_sheet.values())


def test_no_stream_is_packed_by_lzw(press_sheet):
    """ISO 32000-1, 7.4.4: forbidden in every part of PDF/X (from memory)."""
    assert "/LZWDecode" not in press_sheet.values()


def test_there_are_no_fonts_that_could_be_missing(press_sheet):
    """ISO 32000-1, 9.9: all lettering is outlines; poppler lists none."""
    assert len(said_by("pdffonts", press_sheet.path).splitlines()) == 2
    assert "/Font" not in press_sheet.all_keys()


# Output intent


def intent(file: PressFile):
    intents = file.follow(file.catalogue["/OutputIntents"])
    found = [file.follow(one) for one in intents]
    assert len(found) == 1
    return found[0]


def test_there_is_one_output_intent_for_print(press_sheet):
    """ISO 32000-1, 14.11.5, table 365."""
    assert (intent(press_sheet)["/Type"], intent(press_sheet)["/S"]) == ("/OutputIntent", "/GTS_PDFX")


def test_the_condition_is_told_in_words(press_sheet):
    """ISO 32000-1, table 365: an identifier of no registry is Custom, and Info is then required."""
    assert intent(press_sheet)["/OutputConditionIdentifier"] == "u:Custom"
    assert intent(press_sheet)["/OutputCondition"] == "u:Invented uncoated press, 280 %"
    assert "Invented uncoated press" in intent(press_sheet)["/Info"]
    assert "/RegistryName" not in intent(press_sheet)


def test_the_profile_is_embedded_whole(press_sheet):
    """ISO 32000-1, 8.6.5.5, table 66; ISO 15930-7, clause 6, from memory: PDF/X-4 embeds, only X-4p refers."""
    reference = intent(press_sheet)["/DestOutputProfile"]
    assert press_sheet.follow(reference)["/N"] == 4
    assert press_sheet.data(reference) == profile_bytes()


def test_the_embedded_profile_is_an_output_profile_for_four_inks(press_sheet):
    """ICC.1:2010, 7.2.5 and 7.2.6, read from its header."""
    data = press_sheet.data(intent(press_sheet)["/DestOutputProfile"])
    assert struct.unpack_from(">4s4s", data, 12) == (b"prtr", b"CMYK")


# Metadata


def test_the_packet_is_readable_without_undoing_filters(press_sheet):
    """ISO 32000-1, 14.3.2."""
    assert "/Filter" not in press_sheet.follow(press_sheet.catalogue["/Metadata"])
    assert press_sheet.packet.encode() in press_sheet.path.read_bytes()


def test_the_packet_says_pdf_x_4(press_sheet):
    """ISO 15930-7, clause 6, from memory: the version key stands in XMP, namespace of the standard's publisher."""
    assert 'xmlns:pdfxid="http://www.npes.org/pdfx/ns/id/"' in press_sheet.packet
    assert "<pdfxid:GTS_PDFXVersion>PDF/X-4</pdfxid:GTS_PDFXVersion>" in press_sheet.packet


@pytest.mark.parametrize("date", ["CreateDate", "ModifyDate", "MetadataDate"])
def test_the_packet_has_its_dates(press_sheet, date):
    """ISO 16684-1; ISO 15930-7, clause 6, from memory."""
    assert f"<xmp:{date}>{DATE}T00:00:00Z</xmp:{date}>" in said_by("pdfinfo", "-meta", press_sheet.path)


def test_the_packet_has_its_identity(press_sheet):
    """ISO 16684-1, media management; ISO 15930-7, clause 6, from memory."""
    assert re.search(r"<xmpMM:DocumentID>uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}</", press_sheet.packet)
    assert "<xmpMM:VersionID>1</xmpMM:VersionID>" in press_sheet.packet
    assert "<xmpMM:RenditionClass>default</xmpMM:RenditionClass>" in press_sheet.packet


def test_the_packet_is_well_formed_and_holds_the_title(press_sheet):
    from defusedxml.ElementTree import fromstring

    root = fromstring(press_sheet.packet.strip().split("?>", 1)[1].rsplit("<?", 1)[0])
    names = {"dc": "http://purl.org/dc/elements/1.1/", "rdf": "http://www.w3.org/1999/02/22-rdf-syntax-ns#"}
    assert [found.text for found in root.findall(".//dc:title/rdf:Alt/rdf:li", names)] == [TITLE]


def test_information_and_packet_say_the_same(press_sheet):
    """ISO 32000-1, 14.3.3, table 317; read by poppler."""
    said = said_by("pdfinfo", "-isodates", press_sheet.path)
    assert re.search(rf"^Title: +{re.escape(TITLE)}$", said, re.MULTILINE)
    assert re.search(rf"^CreationDate: +{DATE}T00:00:00Z$", said, re.MULTILINE)
    assert re.search(rf"^ModDate: +{DATE}T00:00:00Z$", said, re.MULTILINE)


def test_trapped_is_false_in_both_places(press_sheet):
    """ISO 32000-1, 14.11.6 and table 317: true or false, not unknown (ISO 15930-7, clause 6, from memory)."""
    assert press_sheet.info["/Trapped"] == "/False"
    assert "<pdf:Trapped>False</pdf:Trapped>" in press_sheet.packet


def test_the_identity_changes_with_the_drawing_and_with_the_title():
    scenes = small_scene(), small_scene(checkbox_shift=0.5)
    files = [
        press_pdf([(sheet_of(scene, 1), [scene])], separator(), title, DATE)
        for scene, title in ((scenes[0], "A"), (scenes[1], "A"), (scenes[0], "B"))
    ]
    found = {re.search(rb"uuid:[0-9a-f-]+", data).group() for data in files}
    assert len(found) == 3


def test_a_title_is_escaped_in_the_packet():
    assert "A &lt;b&gt; &amp; c" in press_packet("A <b> & c", DATE, "x")


# Boxes


@pytest.mark.parametrize("made", ["press_sheet", "press_single"])
def test_a_page_has_a_trim_box_and_no_art_box(made, request):
    """ISO 15930-7, clause 6, from memory: exactly one of the two (the rule is quoted for PDF/X-3 as well)."""
    for page in request.getfixturevalue(made).pages:
        assert "/TrimBox" in page
        assert "/ArtBox" not in page


@pytest.mark.parametrize("made", ["press_sheet", "press_single"])
def test_the_boxes_are_nested(made, request):
    """ISO 32000-1, 14.11.2; read by pdfium."""
    page = pypdfium2.PdfDocument(request.getfixturevalue(made).path)[0]
    boxes = [page.get_mediabox(), page.get_cropbox(), page.get_bleedbox(), page.get_trimbox()]
    for outer, inner in pairwise(boxes):
        assert outer[0] <= inner[0] < inner[2] <= outer[2]
        assert outer[1] <= inner[1] < inner[3] <= outer[3]


def test_a_single_face_has_its_trim_and_bleed_inside_room_for_marks(press_single):
    """By hand, in mm from the left foot; read by poppler."""
    said = said_by("pdfinfo", "-box", press_single.path)
    found = {
        name: [float(edge) / POINTS for edge in rest.split()]
        for name, rest in re.findall(r"^(\w+Box): +(.+)$", said, re.MULTILINE)
    }
    past = MARK_ROOM + BLEED
    assert found["MediaBox"] == pytest.approx([0, 0, TRIM.width + 2 * past, TRIM.height + 2 * past], abs=0.01)
    assert found["CropBox"] == found["MediaBox"]
    bleed = [MARK_ROOM, MARK_ROOM, past + TRIM.width + BLEED, past + TRIM.height + BLEED]
    assert found["BleedBox"] == pytest.approx(bleed, abs=0.01)
    assert found["TrimBox"] == pytest.approx([past, past, past + TRIM.width, past + TRIM.height], abs=0.01)


def test_a_sheet_has_the_box_around_its_trims(press_sheet):
    page = pypdfium2.PdfDocument(press_sheet.path)[0]
    trim = sheet_of(small_scene(), 2).trim_box
    edges = trim.x, 210 - trim.bottom, trim.right, 210 - trim.y
    assert page.get_trimbox() == pytest.approx([edge * POINTS for edge in edges], abs=0.001)


# Use


def test_a_correction_for_a_home_printer_is_left_out():
    scene = small_scene()
    sheet = sheet_of(scene)
    moved = replace(sheet, correction=Affine.move(3, 4))
    files = [press_pdf([(one, [scene] * 3)], separator(), "A", DATE) for one in (sheet, moved)]
    assert files[0] == files[1]


def test_several_singles_are_several_pages(tmp_path):
    scene, other = small_scene(), small_scene(checkbox_shift=0.5)
    page = single_page(TRIM, BLEED, "A", "A", small_print())
    file = written(tmp_path, [(page, [scene]), (page, [other])])
    assert len(file.pages) == 2


def test_no_pages_and_no_title_are_refused():
    with pytest.raises(ValueError, match="at least one sheet"):
        press_pdf([], separator(), "A", DATE)
    scene = small_scene()
    with pytest.raises(ValueError, match="needs a title"):
        press_pdf([(sheet_of(scene, 1), [scene])], separator(), "", DATE)


def test_a_face_that_fills_its_page_leaves_all_marks_but_crops_out():
    slug = "a slug that is much too long for a face of twenty millimetres"
    page = single_page(Size(20, 20), 1, "A", slug, small_print())
    assert "slug" in page.left_out
    assert not any("crop" in name for name in page.left_out)


def test_the_same_pages_give_the_same_bytes():
    def digest() -> str:
        scene = with_everything()
        again = Separator(separator().press)
        return hashlib.sha256(press_pdf([(sheet_of(scene), [scene] * 3)], again, TITLE, DATE)).hexdigest()

    assert digest() == digest()
