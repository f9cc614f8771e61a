"""Tags and a sheet of labels in, pages out: which label takes which tag, and what is drawn around and over
them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from padspec.base.colour import BLACK, Colour
from padspec.base.geometry import Affine, Box, Sides
from padspec.compose.lettering.shaping import shape_line
from padspec.draw.pdf import sheets_pdf
from padspec.resolve.font import Font
from padspec.resolve.tag_sheets import TagSheet
from padspec.scene.nodes import Cause, Layer, Node, Scene, Shape, Stroke
from padspec.scene.outline import circle, line, mapped, rounded
from padspec.sheet.arrangement import Grid
from padspec.sheet.bed import Bed
from padspec.sheet.marks import MARK_WEIGHT, draw_marks, frame_of, slug_seat
from padspec.sheet.sheet import Sheet, Slot
from padspec.tags.pieces import Tag

#: The outlines of a test on plain paper, and the guide for a hole to be punched.
_OUTLINE = Colour.from_hex("#8a8a8a")
_OUTLINE_WEIGHT = 0.15
#: Arms of the cross in the middle of a hole, as a share of its width.
_CROSS = 0.25


@dataclass(frozen=True, slots=True)
class Seat:
    """One label that takes a tag: its page and its place there, both from 0, and which tag."""

    page: int
    place: int
    tag: int


@dataclass(frozen=True, slots=True)
class TagSheets:
    """All that is drawn: the labels and their tags, `start` the first free label (from 0) of the first page."""

    title: str
    sheet: TagSheet
    bed: Bed
    tags: tuple[Tag, ...]
    seats: tuple[Seat, ...]
    outlines: bool
    small_print: Font

    @property
    def pages(self) -> int:
        """How many pages they take."""
        return self.seats[-1].page + 1 if self.seats else 0


def seated(copies: Sequence[int], count: int, start: int) -> tuple[Seat, ...]:
    """A label for each copy of each tag, in order, row by row, from the label `start` (from 0) of the first sheet.

    >>> [(seat.page, seat.place, seat.tag) for seat in seated((2, 1), 2, 1)]
    [(0, 1, 0), (1, 0, 0), (1, 1, 1)]
    """
    order = (tag for tag, number in enumerate(copies) for _ in range(number))
    return tuple(Seat((start + n) // count, (start + n) % count, tag) for n, tag in enumerate(order))


def tags_pdf(sheets: TagSheets, date: str | None) -> bytes:
    """The pages as they print."""
    scenes = [Scene(sheets.sheet.label, 0.0, (Layer("lettering", tag.nodes),)) for tag in sheets.tags]
    return sheets_pdf(_pages(sheets, scenes), date=date)


def _pages(sheets: TagSheets, scenes: list[Scene]) -> Iterator[tuple[Sheet, list[Scene]]]:
    for page in range(sheets.pages):
        seats = [seat for seat in sheets.seats if seat.page == page]
        yield _page(sheets, page, seats), [scenes[seat.tag] for seat in seats]


def _page(sheets: TagSheets, page: int, seats: list[Seat]) -> Sheet:
    sheet, bed = sheets.sheet, sheets.bed
    marks, left_out = _marks(sheets, page)
    return Sheet(
        size=bed.size,
        size_name=sheet.size_name,
        title=sheets.title,
        arrangement=Grid(sheet.rows, sheet.columns, sheet.label, turned=False),
        cuts=0,
        gutter=max(sheet.across - sheet.label.width, 0.0),
        slots=tuple(_slot(sheet.box(seat.place)) for seat in seats),
        printable=bed.printable,
        marks=marks,
        left_out=left_out,
        copies=1,
        correction=bed.correction,
    )


def _slot(box: Box) -> Slot:
    return Slot(box, (box,), Sides.all(0.0), (), Affine.move(box.x, box.y), turned=False)


def _marks(sheets: TagSheets, page: int) -> tuple[tuple[Node, ...], tuple[str, ...]]:
    """Around the labels: cut marks for card, the small line where there is room; over them: outlines and holes."""
    sheet = sheets.sheet
    used = {seat.place for seat in sheets.seats if seat.page == page}
    shown = range(sheet.count) if sheets.outlines else sorted(used)
    over = tuple(node for place in shown for node in _over(sheet, sheet.box(place), sheets.outlines))
    frame = frame_of(tuple(_slot(sheet.box(place)) for place in range(sheet.count)), sheets.bed.printable)
    slug = _slug(sheets, page)
    if sheet.cut:
        drawn = draw_marks(frame, slug, sheets.small_print)
        return (*over, *drawn.nodes), drawn.left_out
    seat = slug_seat(frame, slug, sheets.small_print)
    if seat is None:
        return over, ("slug",)
    shaped = shape_line(sheets.small_print, slug)
    return (*over, Shape(mapped(shaped.outline, seat), Cause("tag", "slug"), fill=BLACK)), ()


def left_out(sheets: TagSheets) -> tuple[str, ...]:
    """Which cut marks find no room around card that is to be cut; the small line and the scale bar may lack."""
    missing = _marks(sheets, 0)[1] if sheets.sheet.cut else ()
    return tuple(mark for mark in missing if mark.startswith("crop marks"))


def _slug(sheets: TagSheets, page: int) -> str:
    return f"{sheets.title} · page {page + 1} of {sheets.pages} · print at 100 %, no scaling"


def _over(sheet: TagSheet, box: Box, outlines: bool) -> Iterator[Node]:
    """The outline of a label for a test, and its hole, which card needs as a guide for the punch."""
    stroke = Stroke(_OUTLINE, _OUTLINE_WEIGHT)
    if outlines:
        yield Shape(rounded(box, sheet.corner), Cause("tag", "outline"), stroke=stroke)
    hole = sheet.hole
    if hole is None or not (outlines or sheet.cut):
        return
    x, y = (
        (box.centre[0], box.y + hole.distance) if hole.edge == "head" else (box.x + hole.distance, box.centre[1])
    )
    yield Shape(circle(x, y, hole.across / 2), Cause("tag", "outline"), stroke=stroke)
    arm = hole.across * _CROSS
    cross = (*line(x - arm, y, x + arm, y), *line(x, y - arm, x, y + arm))
    yield Shape(cross, Cause("tag", "crop-mark"), stroke=Stroke(_OUTLINE, MARK_WEIGHT))
