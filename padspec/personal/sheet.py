"""The sheet of a personal run: slots and marks that every sheet has, and the place of what its slug says of it."""

from dataclasses import dataclass, replace
from math import ceil

from padspec.base.colour import BLACK
from padspec.base.geometry import Affine
from padspec.base.numbers import EPSILON
from padspec.compose.lettering.setting import set_line
from padspec.compose.lettering.shaping import shape_line
from padspec.draw.volume import LetteredLine
from padspec.resolve.design import Design
from padspec.resolve.font import Font
from padspec.scene.nodes import Cause, Shape
from padspec.scene.outline import mapped
from padspec.sheet.bed import bed_of
from padspec.sheet.fitting.fit import best_fit
from padspec.sheet.marks import frame_of, slug_seat
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import lay

_BETWEEN = "  ·  "
#: So many digits and characters of keys are made room for, where that is to be had; else for less.
_VOLUME, _SHEET, _KEYS = "volume 0000 of 0000", "sheet 0000000", "0" * 24
_RESTS = (f"{_VOLUME}, {_SHEET}{_BETWEEN}{_KEYS}", f"{_VOLUME}, {_SHEET}", _SHEET)
NO_SLUG = (
    "Beside the leaves is no room for a line of 1.4 mm that numbers the sheets: keep them in order; the lists "
    "beside the volumes say who is where."
)
NO_KEYS = "Beside the leaves is no room for the keys of the rows: the lists beside the volumes say who is where."


@dataclass(frozen=True, slots=True)
class PersonalSheet:
    """Slots and marks, with the part of the slug that is the same on all sheets; and where the rest of it begins,
    with the room that it has in ems. None where the slug found no room. `volume` says which one it is, `note` what
    no sheet says of itself though marks are wished for, empty where there is nothing of that kind.
    """

    sheet: Sheet
    volume: str
    small_print: Font
    place: Affine | None
    room: float
    note: str = ""

    def slug(self, number: int, keys: str) -> LetteredLine | None:
        """The rest of one sheet's slug: volume, number, and the keys of its rows where there is room."""
        if self.place is None:
            return None
        sheet = f"sheet {number}"
        for text in (f"{self.volume}, {sheet}{_BETWEEN}{keys}", f"{self.volume}, {sheet}", sheet):
            line = set_line(self.small_print, text)
            if line.advance <= self.room + EPSILON:
                return LetteredLine(line, self.place, BLACK)
        return None


def copies_for_a_pad(design: Design) -> int:
    """How often each sheet of a personal run is printed: the stack in every slot is one pad with its overs.

    ⌈leaves × (1 + overs)⌉
    """
    return ceil(design.leaves * (1 + design.studio.overs) - EPSILON)


def personal_sheet(design: Design, volume: str, remark: str) -> PersonalSheet | None:
    """The sheet of a volume of one design, n-up; None where not one leaf fits.

    `volume` says which one it is, `remark` goes first where it is printed despite errors.
    """
    fit = best_fit(design)
    if fit is None:
        return None
    copies, font = copies_for_a_pad(design), design.small_print
    order = f"{copies} copies of each sheet before the next"
    parts = (remark, design.name, design.sku, order, "print at 100 %")
    same = _BETWEEN.join(part for part in parts if part) + _BETWEEN
    title = (remark, design.name, design.sku, "personal run", volume)
    slugs = tuple(same + rest for rest in _RESTS)
    sheet = lay(fit.arrangement, bed_of(design), design.sheet, font, copies, title, slugs, remark)
    marks = tuple(node for node in sheet.marks if not (isinstance(node, Shape) and node.cause.part == "slug"))
    frame = frame_of(sheet.slots, sheet.printable)
    seats = ((rest, slug_seat(frame, same + rest, font)) for rest in _RESTS) if design.sheet.marks else ()
    rest, seat = next(((rest, seat) for rest, seat in seats if seat is not None), ("", None))
    if seat is None:
        # A remark stands on the first leaf where there is no slug.
        bare = sheet if remark else replace(sheet, marks=marks)
        return PersonalSheet(bare, volume, font, None, 0.0, NO_SLUG if design.sheet.marks else "")
    start = set_line(font, same).advance
    words = Shape(mapped(shape_line(font, same).outline, seat), Cause("sheet", "slug"), fill=BLACK)
    place = Affine.move(start, 0.0).then(seat)
    room, note = set_line(font, rest).advance, NO_KEYS if rest != _RESTS[0] else ""
    return PersonalSheet(replace(sheet, marks=(*marks, words)), volume, font, place, room, note)
