"""Sheets on which every leaf has its own lettering, as one PDF: what leaves share is drawn once.

A thousand sheets differ in a few words. All else of a face is a form, and so is every glyph: a leaf's words then
take a few numbers a letter. Geometry is that of pdf.py, millimetres with y downwards.
"""

from collections.abc import Hashable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

import pikepdf
from pikepdf import Dictionary, Name, Object, Pdf

from padspec.base.colour import Colour
from padspec.base.geometry import Affine, Box, mapped_box
from padspec.base.numbers import number_text
from padspec.compose.lettering.glyphs import glyph, glyph_edges
from padspec.compose.lettering.setting import SetGlyph, SetLine
from padspec.draw.faces import FaceForms, content_stream, number_array
from padspec.draw.inking import SCREEN
from padspec.draw.metadata import describe
from padspec.draw.operators import (
    clip_operator,
    layer_operators,
    matrix_operator,
    opening_operator,
    outline_operators,
    page_matrix,
)
from padspec.draw.pages import page_box, saved
from padspec.resolve.font import Font
from padspec.scene.nodes import Layer, Node, Scene
from padspec.sheet.sheet import Sheet

#: Digits of places inside a line, in ems: a line of ten ems of 10 mm is still right to a ten-thousandth of a mm.
_EM_DIGITS = 6
#: Digits of what takes a font's units to ems; 1/2048 has eleven.
_UNIT_DIGITS = 11


@dataclass(frozen=True, slots=True)
class LetteredLine:
    """One line of lettering: how it is set at an em of 1 mm, the map that places it, and its colour."""

    line: SetLine
    place: Affine
    colour: Colour


@dataclass(frozen=True, slots=True)
class Leaf:
    """One leaf: what lies under and over its own lettering, and that lettering: lines, and any shapes.

    Leaves with the same `key` share both scenes: comparing these costs more than drawing them, and whether they
    are the same objects hangs on who made them, and when.
    """

    key: Hashable
    under: Scene
    over: Scene
    lines: tuple[LetteredLine, ...]
    nodes: tuple[Node, ...] = ()


@dataclass(frozen=True, slots=True)
class VolumePage:
    """One sheet: a leaf for each slot, in their order, None for one that stays empty; and its slug."""

    leaves: tuple[Leaf | None, ...]
    slug: LetteredLine | None


def volume_pdf(sheet: Sheet, pages: Iterable[VolumePage], title: str, date: str | None = None) -> bytes:
    """Sheets one after the other; `sheet` gives slots, copies and the marks that all of them have."""
    with pikepdf.new() as pdf:
        volume = _Volume(pdf, sheet)
        for page in pages:
            volume.add(page)
        describe(pdf, title, sheet.copies, date)
        return saved(pdf)


class _Volume:
    """A PDF that is being written: the forms made so far, and what all of its pages have."""

    def __init__(self, pdf: Pdf, sheet: Sheet) -> None:
        self._pdf, self._sheet = pdf, sheet
        self._faces = FaceForms(pdf)
        self._objects: Object = pdf.make_indirect(Dictionary())
        self._scenes: dict[Hashable, str] = {}
        self._glyphs: dict[tuple[Font, int, float], str] = {}
        self._page = self._common()
        self._opening = [matrix_operator(page_matrix(sheet.size.height)), opening_operator()]
        if sheet.correction != Affine():
            self._opening.append(matrix_operator(sheet.correction))
        self._slots = [(clip_operator(*slot.printed), matrix_operator(slot.transform)) for slot in sheet.slots]
        self._marks = self._form("marks", Scene(sheet.size, 0, (Layer("marks", sheet.marks),)))

    def add(self, page: VolumePage) -> None:
        """One more sheet."""
        lines = [*self._opening]
        for (clip, place), leaf in zip(self._slots, page.leaves, strict=True):
            if leaf is not None:
                lines += ["q", clip, place, *self._leaf(leaf), "Q"]
        lines.append(f"{self._marks} Do")
        if page.slug is not None:
            lines += self._line(page.slug)
        made = Dictionary(self._page)
        made.Contents = self._pdf.make_indirect(content_stream(self._pdf, lines))
        self._pdf.pages.append(pikepdf.Page(self._pdf.make_indirect(made)))

    def _common(self) -> dict[str, Object]:
        """The entries that are the same on every page (ISO 32000-1, table 30)."""
        sheet, height = self._sheet, self._sheet.size.height
        paper = Box(0, 0, sheet.size.width, height)
        media = self._pdf.make_indirect(page_box(paper, height))
        trim, bleed = (
            page_box(mapped_box(box, sheet.correction).within(paper), height)
            for box in (sheet.trim_box, sheet.bleed_box)
        )
        return {
            "/Type": Name.Page,
            "/MediaBox": media,
            "/CropBox": media,
            "/TrimBox": self._pdf.make_indirect(trim),
            "/BleedBox": self._pdf.make_indirect(bleed),
            "/Resources": self._pdf.make_indirect(Dictionary(XObject=self._objects)),
            "/Group": self._pdf.make_indirect(Dictionary(S=Name.Transparency, CS=SCREEN.space)),
        }

    def _leaf(self, leaf: Leaf) -> Iterator[str]:
        yield f"{self._form(('under', leaf.key), leaf.under)} Do"
        for line in leaf.lines:
            yield from self._line(line)
        if leaf.nodes:
            yield from layer_operators(Layer("lettering", leaf.nodes))
        if leaf.over.layers:
            yield f"{self._form(('over', leaf.key), leaf.over)} Do"

    def _form(self, key: Hashable, scene: Scene) -> str:
        """The name of the form of the scene that a key stands for."""
        known = self._scenes.get(key)
        if known is None:
            known = self._scenes[key] = f"/Face-{len(self._scenes) + 1}"
            self._objects[known] = self._faces.form(scene)
        return known

    def _line(self, line: LetteredLine) -> Iterator[str]:
        yield f"q {SCREEN.fill(line.colour, 'lettering')} {matrix_operator(line.place)}"
        x = y = 0.0
        for letter in line.line.letters:
            for one in letter.glyphs:
                name = self._glyph(one)
                if name:
                    to_x, to_y = one.share * one.dx + one.left, -one.share * one.dy
                    yield f"1 0 0 1 {_ems(to_x - x)} {_ems(to_y - y)} cm {name} Do"
                    x, y = to_x, to_y
        yield "Q"

    def _glyph(self, one: SetGlyph) -> str:
        """The name of a glyph's form; empty for one without ink."""
        key = (one.font, one.number, one.share)
        name = self._glyphs.get(key)
        if name is None:
            edges = glyph_edges(one.font, one.number)
            name = self._glyphs[key] = f"/Glyph-{len(self._glyphs) + 1}" if edges else ""
            if edges:
                self._objects[name] = self._glyph_form(one, edges)
        return name

    def _glyph_form(self, one: SetGlyph, edges: tuple[float, float, float, float]) -> Object:
        """A glyph in the font's own units with y upwards; it takes the colour that is set where it is placed."""
        form = content_stream(self._pdf, [*outline_operators(glyph(one.font, one.number)), "f"])
        form.Type, form.Subtype = Name.XObject, Name.Form
        form.BBox = number_array(edges[0] - 1, edges[1] - 1, edges[2] + 1, edges[3] + 1)
        share = number_text(one.share, _UNIT_DIGITS)
        form.Matrix = pikepdf.Object.parse(f"[{share} 0 0 -{share} 0 0]".encode())
        return self._pdf.make_indirect(form)


# Letters move the pen by their advances, of which a text has few.
@lru_cache(maxsize=8192)
def _ems(value: float) -> str:
    return number_text(value, _EM_DIGITS)
