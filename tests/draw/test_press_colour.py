"""The colours of a press PDF as other programs read them: inks alone, overprint only where it is meant.

Clauses and tables are those of ISO 32000-1; what ISO 15930-7:2010, clause 6, asks for is from memory.
"""

import re
import subprocess

import numpy as np
import pdfplumber
import pytest
from press.made import separator

from padspec.base.colour import Colour
from padspec.draw.operators import POINTS
from padspec.press.single import MARK_ROOM

from .press_reading import PressFile
from .press_small import GREY
from .small import BLEED, GROUND, TILES, TRIM

#: Operators that set a colour in a space other than those meant here (table 74), and inline images.
OTHER_COLOURS = {"rg", "RG", "g", "G", "sc", "SC", "sh", "BI", "ri"}


def said_by(*command) -> str:
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


# Colour


@pytest.mark.parametrize("made", ["press_sheet", "press_single"])
def test_no_operator_sets_a_colour_that_the_output_intent_does_not_define(made, request):
    """ISO 32000-1, table 74: k and K are DeviceCMYK, scn and SCN are those of the marks' space."""
    used = request.getfixturevalue(made).operators()
    assert not used & OTHER_COLOURS
    assert {"k", "K"} <= used


def test_the_scan_for_operators_sees_every_stream(press_sheet):
    """It finds what must be there: a page, the face, and the operators of both."""
    assert len(list(press_sheet.contents())) == 2
    assert {"q", "Q", "cm", "Do", "W", "n", "m", "l", "c", "h", "f", "S", "gs"} <= press_sheet.operators()


def test_no_device_colour_but_ink_is_named_anywhere(press_sheet):
    """ISO 32000-1, 8.6.4: neither DeviceRGB nor a calibrated one; DeviceGray only in soft masks (11.6.5.3)."""
    found = {value for value in press_sheet.values() if isinstance(value, str)}
    assert not found & {"/DeviceRGB", "/CalRGB", "/CalGray", "/ICCBased", "/Lab", "/Indexed", "/Pattern", "/RGB"}
    masks = {value["/SMask"] for _, value in press_sheet.dictionaries() if "/SMask" in value}
    greys = {
        f"{number}" for number, value in press_sheet.dictionaries() if value.get("/ColorSpace") == "/DeviceGray"
    }
    assert greys == masks


def test_the_page_blends_in_ink(press_sheet):
    """ISO 32000-1, 11.6.6; the space of the output intent (ISO 15930-7, clause 6, from memory)."""
    assert all(page["/Group"]["/CS"] == "/DeviceCMYK" for page in press_sheet.pages)


def test_pictures_are_ink_with_their_soft_mask(press_sheet):
    """Listed by poppler: the tiles are half transparent, the drawing of vectors is opaque."""
    rows = [row.split() for row in said_by("pdfimages", "-list", press_sheet.path).splitlines()[2:]]
    assert {(row[2], row[5], row[6]) for row in rows} == {("image", "cmyk", "4"), ("smask", "gray", "1")}
    assert len({row[10] for row in rows if row[2] == "image"}) == 2
    assert len({row[10] for row in rows if row[2] == "smask"}) == 1


def test_a_picture_has_the_inks_of_its_pixels_and_its_own_mask(press_sheet):
    """The tiles, read by qpdf, in the order of ISO 32000-1, 8.6.4.4: white is 0 there."""
    number, image = next(
        (n, v) for n, v in press_sheet.dictionaries() if v.get("/Subtype") == "/Image" and "/SMask" in v
    )
    inks = np.frombuffer(press_sheet.data(number), np.uint8).reshape(40, 40, 4)
    mask = np.frombuffer(press_sheet.data(image["/SMask"]), np.uint8).reshape(40, 40)
    for tile, (row, column) in enumerate(((0, 0), (0, 20), (20, 0), (20, 20))):
        assert inks[row, column].tolist() == list(separator().area(Colour(*TILES[tile][:3])).steps)
        assert mask[row, column] == TILES[tile][3]


def test_a_picture_of_vectors_becomes_pixels_fine_enough_for_print(press_sheet):
    rows = [row.split() for row in said_by("pdfimages", "-list", press_sheet.path).splitlines()[2:]]
    (row,) = {tuple(row[3:5]) for row in rows if row[2] == "image" and row[3] != "40"}
    assert [int(side) for side in row] == [round(20 / 25.4 * 450), round(10 / 25.4 * 450)]


def test_another_reader_sees_the_inks_of_a_ground(press_sheet):
    """pdfplumber's colour of the largest filled box: the ground, as the profile has it."""
    with pdfplumber.open(press_sheet.path) as document:
        page = document.pages[0]
        largest = max(page.rects, key=lambda rect: rect["width"] * rect["height"])
    assert largest["non_stroking_color"] == pytest.approx(separator().area(GROUND).shares, abs=1e-4)


def test_grey_and_black_lines_are_black_alone_for_another_reader(press_sheet):
    with pdfplumber.open(press_sheet.path) as document:
        drawn = document.pages[0].lines + document.pages[0].curves + document.pages[0].rects
    greys = {found["stroking_color"] for found in drawn if found["stroke"]}
    grey = separator().line(GREY).shares
    assert tuple(round(share, 4) for share in grey) in greys
    assert (0, 0, 0, 1) in greys


# Overprint


def state_of(file: PressFile, wanted: list[str]) -> dict:
    """The graphics state that holds where these operands set a colour."""
    for content in file.contents():
        for at in range(len(content) - len(wanted)):
            if content[at : at + len(wanted)] == wanted:
                name = content[:at][::-1][content[:at][::-1].index("gs") + 1]
                return next(file.resources())["/ExtGState"][name]
    raise AssertionError(f"{wanted} is not in the file")


def operands(colour: Colour, layer: str, operator: str) -> list[str]:
    return [f"{round(share, 4):g}" for share in separator().inks(colour, layer).shares] + [operator]


def test_black_lettering_overprints(press_sheet):
    """ISO 32000-1, 8.6.7 and table 58: op for fills, and mode 1, in which a zero leaves what is there."""
    state = state_of(press_sheet, ["0", "0", "0", "1", "k"])
    assert (state["/op"], state["/OPM"]) == (True, 1)


def test_a_grey_rule_on_pale_ground_overprints(press_sheet):
    state = state_of(press_sheet, operands(GREY, "rules", "K"))
    assert (state["/OP"], state["/OPM"]) == (True, 1)


@pytest.mark.parametrize(("colour", "operator"), [("#7a3b58", "k"), ("#7a3b58", "K"), ("#ffffff", "k")])
def test_coloured_and_white_lettering_knocks_out(press_sheet, colour, operator):
    state = state_of(press_sheet, operands(Colour.from_hex(colour), "lettering", operator))
    assert (state["/OP"], state["/op"]) == (False, False)


def test_the_ground_knocks_out(press_sheet):
    state = state_of(press_sheet, operands(Colour(0xE8, 0xDD, 0xE4), "ground", "k"))
    assert (state["/OP"], state["/op"]) == (False, False)


def test_where_fill_and_stroke_differ_each_has_its_own_overprint(press_sheet):
    """White filled and black stroked: the fill must cover, the stroke must not."""
    content = next(content for content in press_sheet.contents() if "/Overprint-strokes" in content)
    at = content.index("/Overprint-strokes")
    assert content[at : at + 7] == ["/Overprint-strokes", "gs", "0", "0", "0", "0", "k"]
    state = next(press_sheet.resources())["/ExtGState"]["/Overprint-strokes"]
    assert (state["/OP"], state["/op"]) == (True, False)


def test_a_picture_knocks_out(press_sheet):
    for content in press_sheet.contents():
        for at, word in enumerate(content):
            if re.match(r"/(Raster|Vector)-", word):
                before = content[:at][::-1]
                assert before[before.index("gs") + 1] == "/Knockout"


def test_no_graphics_state_holds_what_print_files_must_not(press_sheet):
    """ISO 32000-1, table 58: transfer functions, halftones; forbidden or restricted in PDF/X-4 (from memory)."""
    states = [state for held in press_sheet.resources() for state in held["/ExtGState"].values()]
    assert states
    assert {key for state in states for key in state} == {"/Type", "/OP", "/op", "/OPM"}


# Marks


def test_marks_are_in_all_separations(press_single):
    """ISO 32000-1, 8.6.6.4: the colorant All, with an alternate of ink and a function that makes it."""
    (page,) = press_single.pages
    space = press_single.follow(page["/Resources"])["/ColorSpace"]["/Registration"]
    assert space[:3] == ["/Separation", "/All", "/DeviceCMYK"]
    assert space[3]["/FunctionType"] == 2
    assert (space[3]["/C0"], space[3]["/C1"]) == ([0, 0, 0, 0], [1, 1, 1, 1])


def test_no_mark_is_drawn_in_any_other_colour(press_single):
    """The page itself draws marks alone; its face is a form."""
    content = press_single.data(press_single.pages[0]["/Contents"]).decode().split()
    assert {"SCN", "scn"} <= set(content)
    assert not {"k", "K"} & set(content)


def test_crop_marks_stand_outside_the_bleed(press_single):
    """Read by pdfplumber, in points."""
    with pdfplumber.open(press_single.path) as document:
        page = document.pages[0]
        past = MARK_ROOM * POINTS
        marks = [found for found in page.lines if found["x1"] <= past or found["bottom"] <= past]
        assert len(marks) >= 4
    with pdfplumber.open(press_single.path) as document:
        ends = {round(found["x0"] / POINTS - MARK_ROOM - BLEED, 2) for found in document.pages[0].lines}
    assert {0.0, TRIM.width} <= ends


def test_the_slug_is_outlines_in_the_marks_colour(press_single):
    with pdfplumber.open(press_single.path) as document:
        foot = (MARK_ROOM + TRIM.height + 2 * BLEED) * POINTS
        slug = [found for found in document.pages[0].curves if found["fill"] and found["top"] > foot]
    assert slug
    assert all(found["non_stroking_color"] == 1 for found in slug)
