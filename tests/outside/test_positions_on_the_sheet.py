"""Everything on the finished sheet is where the design has it, as read back by programs that did not write it."""

import io
from itertools import pairwise

import numpy as np
import pypdfium2
import pytest
from draw.reading_back import farthest, parts_in_pdf, parts_of_nodes

from padspec.base.geometry import Affine, Box
from padspec.scene.nodes import Shape, shapes
from padspec.scene.outline import bounds

from .pads import DESIGNS, made, sheet_file

LIMIT = 0.01
PPI = 1200
NAMES = list(DESIGNS)


@pytest.fixture(params=NAMES)
def name(request):
    return request.param


def test_the_designs_differ_in_what_matters():
    """Turned and upright faces, butted and guttered, one and many."""
    sheets = [made(name).sheet for name in NAMES]
    assert {sheet.slots[0].turned for sheet in sheets} == {True, False}
    assert {sheet.gutter == 0 for sheet in sheets} == {True, False}
    assert min(sheet.n_up for sheet in sheets) == 1
    assert max(sheet.n_up for sheet in sheets) >= 6


@pytest.mark.parametrize("part", ["rule", "checkbox", "panel", "pattern", "lettering"])
def test_every_path_of_every_leaf_is_where_its_slot_puts_it(name, part):
    """By pdfplumber, which follows forms and matrices."""
    pad = made(name)
    nodes = tuple(shape for shape in shapes(pad.face.scene) if shape.cause.part == part)
    if not nodes:
        assert part in ("checkbox", "pattern")
        return
    found = read_back(name)
    # Patterns and letters are many paths of one form; that the form is placed right, the others show.
    slots = pad.sheet.slots[-1:] if part in ("pattern", "lettering") else pad.sheet.slots
    wanted = [line for slot in slots for line in parts_of_nodes(nodes, slot.transform)]
    assert farthest(wanted, [f for f in found if f.commands in {w.commands for w in wanted}]) < LIMIT


def test_every_mark_is_where_the_sheet_has_it(name):
    sheet = made(name).sheet
    if not sheet.marks:
        assert len(sheet.left_out) == 6
        return
    assert farthest(parts_of_nodes(sheet.marks, Affine()), read_back(name)) < LIMIT


_READ: dict[str, list] = {}


def read_back(name):
    if name not in _READ:
        _READ[name] = parts_in_pdf(sheet_file(name))
    return _READ[name]


def first_of(name: str, part: str) -> Shape:
    return next(shape for shape in shapes(made(name).face.scene) if shape.cause.part == part)


def strip(name: str, box: Box) -> np.ndarray:
    """What pdfium draws of one box of the sheet at 1200 ppi: how far each pixel is from white, all channels."""
    page = pypdfium2.PdfDocument(io.BytesIO(sheet_file(name)))[0]
    width, height = page.get_size()
    left, top, right, bottom = (round(edge * PPI / 25.4) for edge in (box.x, box.y, box.right, box.bottom))
    bitmap = pypdfium2.PdfBitmap.new_native(right - left, bottom - top, pypdfium2.raw.FPDFBitmap_BGR)
    bitmap.fill_rect((255, 255, 255, 255), 0, 0, right - left, bottom - top)
    scale = PPI / 72
    matrix = pypdfium2.raw.FS_MATRIX(scale, 0, 0, scale, -left, -top)
    clip = pypdfium2.raw.FS_RECTF(0, 0, right - left, bottom - top)
    pypdfium2.raw.FPDF_RenderPageBitmapWithMatrix(bitmap, page, matrix, clip, 0)
    assert (width, height) == pytest.approx(tuple(side * 72 / 25.4 for side in size_of(name)), abs=0.01)
    return (255.0 - bitmap.to_numpy()).sum(axis=2)


def size_of(name: str) -> tuple[float, float]:
    size = made(name).sheet.size
    return size.width, size.height


def centroid(name: str, window: Box, axis: int) -> float:
    """The middle, in mm of the sheet, of the one stroke that crosses a window, along an axis (0 x, 1 y)."""
    ink = strip(name, window)
    profile = ink.mean(axis=axis)
    profile = profile - profile.min()
    start = round((window.x if axis == 0 else window.y) * PPI / 25.4)
    middles = start + np.arange(len(profile)) + 0.5
    return float((profile * middles).sum() / profile.sum()) * 25.4 / PPI


@pytest.mark.parametrize("which", [0, -1], ids=["first leaf", "last leaf"])
@pytest.mark.parametrize("row", [0, -1], ids=["first rule", "last rule"])
def test_the_ink_of_a_rule_is_centred_where_its_slot_puts_it(name, which, row):
    """pdfium's pixels: the centroid of a stroke is good to 0.005 mm where edges are not."""
    pad = made(name)
    rules = [shape for shape in shapes(pad.face.scene) if shape.cause.part == "rule"]
    start, end = rules[row].outline[0], rules[row].outline[-1]
    slot = pad.sheet.slots[which]
    along = (start.x + (end.x - start.x) * 0.3, start.x + (end.x - start.x) * 0.7)
    corners = [slot.transform.of(along[0], start.y - 0.9), slot.transform.of(along[1], start.y + 0.9)]
    (x0, x1), (y0, y1) = (sorted(values) for values in zip(*corners, strict=True))
    axis = 0 if pad.sheet.slots[0].turned else 1
    wanted = slot.transform.of(along[0], start.y)[axis]
    assert centroid(name, Box(x0, y0, x1 - x0, y1 - y0), axis) == pytest.approx(wanted, abs=LIMIT)


@pytest.mark.parametrize("side", ["left", "right"])
def test_the_ink_of_a_square_is_centred_where_its_slot_puts_it(name, side):
    pad = made(name)
    squares = [shape for shape in shapes(pad.face.scene) if shape.cause.part == "checkbox"]
    if not squares:
        assert pad.design.layout == "ruled"
        return
    box = bounds(squares[0].outline)
    x = box.x if side == "left" else box.right
    slot = pad.sheet.slots[-1]
    middle, reach = box.centre[1], box.height / 8
    corners = [slot.transform.of(x - 0.8, middle - reach), slot.transform.of(x + 0.8, middle + reach)]
    (x0, x1), (y0, y1) = (sorted(values) for values in zip(*corners, strict=True))
    axis = 1 if pad.sheet.slots[0].turned else 0
    wanted = slot.transform.of(x, middle)[axis]
    assert centroid(name, Box(x0, y0, x1 - x0, y1 - y0), axis) == pytest.approx(wanted, abs=LIMIT)


def test_leaves_lie_apart_by_trim_and_gutter(name):
    """From slot to slot, by the rules that pdfplumber finds: n-up copies of the first rule, in even steps."""
    pad = made(name)
    first = first_of(name, "rule")
    wanted = [parts_of_nodes((first,), slot.transform)[0].points for slot in pad.sheet.slots]
    steps = {(round(abs(b[0][0] - a[0][0]), 3), round(abs(b[0][1] - a[0][1]), 3)) for a, b in pairwise(wanted)}
    trim = pad.design.trim.turned() if pad.sheet.slots[0].turned else pad.design.trim
    gutter = pad.design.sheet.gutter
    across, down = round(trim.width + gutter, 3), round(trim.height + gutter, 3)
    back = round((pad.sheet.arrangement.columns - 1) * (trim.width + gutter), 3)
    assert steps <= {(across, 0.0), (0.0, down), (back, down)}
