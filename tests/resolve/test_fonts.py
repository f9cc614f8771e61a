"""Fonts by family and by file; WOFF2 and CFF files are made here from an installed family."""

from functools import cache
from io import BytesIO

import brotli
import pytest
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.ttLib import TTFont
from kit import PLAIN, apply, pad, problems

from padspec.compose.lettering.shaping import cap_height, shape_line
from padspec.fonts import BUNDLED, families, family_file
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.coverage import missing_characters
from padspec.resolve.font import Font

FILE = apply(PLAIN, {"heading.font": "fonts/hand.ttf"})


def heading_font(text: str, files: dict[str, bytes] | None = None) -> Font:
    block = pad(text, files=files).design.face[0].holds[0]
    assert isinstance(block, Heading)
    return block.font


def family(name: str) -> bytes:
    data = family_file(name)
    assert data is not None
    return data


@cache
def woff2() -> bytes:
    font, packed = TTFont(BytesIO(family("Fredoka One"))), BytesIO()
    font.flavor = "woff2"
    font.save(packed)
    return packed.getvalue()


@cache
def otf() -> bytes:
    """A font of PostScript outlines with one letter, an H of 700 units."""
    builder = FontBuilder(1000, isTTF=False)
    builder.setupGlyphOrder([".notdef", "space", "H"])
    builder.setupCharacterMap({32: "space", 72: "H"})
    pen = T2CharStringPen(600, None)
    pen.moveTo((50, 0))
    pen.lineTo((50, 700))
    pen.lineTo((550, 700))
    pen.lineTo((550, 0))
    pen.closePath()
    empty = T2CharStringPen(600, None).getCharString()
    shapes = {".notdef": empty, "space": empty, "H": pen.getCharString()}
    builder.setupCFF("Plank", {"FullName": "Plank"}, shapes, {})
    builder.setupHorizontalMetrics(dict.fromkeys((".notdef", "space", "H"), (600, 0)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Plank", "styleName": "Regular"})
    builder.setupOS2()
    builder.setupPost()
    file = BytesIO()
    builder.save(file)
    return file.getvalue()


@pytest.mark.parametrize("name", sorted(BUNDLED))
def test_a_family_that_padspec_brings_is_found_by_its_name(name: str) -> None:
    font = heading_font(apply(PLAIN, {"heading.font": name}))
    assert font.name == name
    assert missing_characters(font, "Before dark & 9 more") == ""


def test_a_family_of_any_other_installed_package_is_found_too() -> None:
    """Delius comes with the tests alone."""
    assert "Delius" in families()
    assert heading_font(apply(PLAIN, {"heading.font": "Delius"})).data == family_file("Delius")


def test_a_truetype_file_of_the_makers_is_taken_as_it_is() -> None:
    data = family("Fredoka One")
    assert heading_font(FILE, {"fonts/hand.ttf": data}).data == data


def test_a_file_is_seen_from_the_folder_of_the_design() -> None:
    made = pad(FILE, files={"cards/fonts/hand.ttf": family("Fredoka One")}, path="cards/x.pad.yaml")
    assert made.design.face[0].holds[0].font.data == family("Fredoka One")


def test_a_woff2_file_is_unpacked_to_the_same_letters() -> None:
    packed = heading_font(apply(PLAIN, {"heading.font": "fonts/hand.woff2"}), {"fonts/hand.woff2": woff2()})
    plain = heading_font(FILE, {"fonts/hand.ttf": family("Fredoka One")})
    assert packed.data != woff2()
    assert shape_line(packed, "Before dark").outline == shape_line(plain, "Before dark").outline


def test_a_file_of_postscript_outlines_is_shaped() -> None:
    font = heading_font(apply(PLAIN, {"heading.font": "plank.otf", "heading.text": "HH"}), {"plank.otf": otf()})
    shaped = shape_line(font, "HH")
    assert (shaped.advance, shaped.ink.x, shaped.ink.width) == pytest.approx((1.2, 0.05, 1.1), abs=1e-9)
    assert cap_height(font) == pytest.approx(0.7, abs=1e-9)


def test_a_variable_font_follows_its_weight() -> None:
    def width(weight: int) -> float:
        font = heading_font(apply(PLAIN, {"heading.font": "Nunito", "heading.font-weight": weight}))
        return shape_line(font, "Before dark").ink.width

    assert width(200) < width(500) < width(900)


@pytest.mark.parametrize(
    ("data", "why"),
    [
        (b"", "empty"),
        (b"not a font at all", "text"),
        (b"\x00\x01\x00\x00" + b"\xff" * 400, "a table directory of nonsense"),
        (family_file("Fredoka One")[:3000], "cut short"),
        (woff2()[:2000], "packed and cut short"),
    ],
    ids=["empty", "text", "nonsense", "short", "short-woff2"],
)
def test_a_broken_file_is_refused_where_it_is_named(data: bytes, why: str) -> None:
    (problem,) = problems(FILE, files={"fonts/hand.ttf": data})
    assert problem.startswith("x.pad.yaml:6:9 fonts/hand.ttf cannot be read as a font ("), why
    assert problem.endswith("Use a whole TTF, OTF or WOFF2 file.")


def test_a_file_that_is_not_there_is_refused_with_its_path() -> None:
    assert problems(FILE)[0].startswith("x.pad.yaml:6:9 There is no font file fonts/hand.ttf.")


def test_a_file_outside_the_project_is_refused() -> None:
    text = apply(PLAIN, {"heading.font": "../../hand.ttf"})
    assert "../../hand.ttf leads outside the project folder." in problems(text)[0]


def test_an_unknown_family_is_refused_with_the_nearest() -> None:
    (problem,) = problems(apply(PLAIN, {"heading.font": "Fredokka"}))
    assert "No installed package holds the font Fredokka. Did you mean Fredoka?" in problem


def woff2_with_junk(stated: int, junk: int) -> bytes:
    """A WOFF2 of one made-up table of zeros whose header states this unpacked size (W3C WOFF2, section 4)."""
    packed = brotli.compress(bytes(junk))
    number = b"".join(bytes([(junk >> shift) & 0x7F | 0x80]) for shift in (28, 21, 14, 7)).lstrip(b"\x80")
    directory = b"\x3fJUNK" + number + bytes([junk & 0x7F])
    sizes = [48 + len(directory) + len(packed), 1 << 16, stated, len(packed)]
    head = b"wOF2\0\1\0\0" + b"".join(size.to_bytes(4, "big") for size in sizes)
    return head.ljust(48, b"\0") + directory + packed


@pytest.mark.parametrize("stated", [900_000_000, 1000])
def test_a_small_file_that_unpacks_to_a_giant_is_refused_whatever_its_header_says(stated: int) -> None:
    junk = 70_000_000
    (problem,) = problems(FILE, files={"fonts/hand.ttf": woff2_with_junk(stated, junk)})
    assert "would unpack to more than 60 MB" in problem


def test_a_file_whose_directory_never_ends_is_no_font() -> None:
    (problem,) = problems(
        FILE, files={"fonts/hand.ttf": b"wOF2".ljust(12, b"\0") + b"\xff\xff" + bytes(34) + b"\xff" * 60}
    )
    assert "cannot be read as a font" in problem
