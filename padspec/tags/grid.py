"""A sheet of labels and the printer: which part of a label is printed on, what the printer cannot reach, and a
sheet of plain card where the maker has stated none.
"""

from math import sqrt

from padspec.base.errors import Problem, ProblemsError
from padspec.base.geometry import Box, Sides, Size
from padspec.base.numbers import EPSILON, mm_text
from padspec.base.place import Place
from padspec.resolve.design import SheetWish
from padspec.resolve.studio import Studio
from padspec.resolve.tag_sheets import Hole, TagSheet
from padspec.sheet.bed import Bed, make_bed

#: The card tags that are laid out without a sheet of the maker's: their name, size, and hole.
CARDS = "cards"
CARD, CARD_HOLE = Size(55.0, 85.0), Hole(4.0, "head", 7.0)
#: Room around them for cut marks and the small line, in mm.
_AROUND = 5.5
#: What is printed keeps this share of a label's shorter side from its edges, and the least and most of that in mm:
#: a print may lie a millimetre off.
_INSET, _LEAST_INSET, _MOST_INSET = 0.06, 1.5, 4.0
#: From the hole to what is printed.
_OFF_HOLE = 1.6


def bed_of_tags(sheet: TagSheet, studio: Studio) -> Bed:
    """The page of a sheet of labels."""
    return make_bed(_wish(sheet), studio)


def _wish(sheet: TagSheet) -> SheetWish:
    return SheetWish(sheet.size_name, sheet.size, None, 0.0, 0.0, 0.0, marks=sheet.cut)


def card_sheet(size_name: str, size: Size, studio: Studio, file: str) -> TagSheet:
    """As many card tags as the printer reaches on this sheet, side by side, to be cut. Raises ProblemsError."""
    bed = make_bed(SheetWish(size_name, size, None, 0.0, 0.0, 0.0, True), studio)
    room = bed.printable.inset(_AROUND)
    columns, rows = int(room.width / CARD.width + EPSILON), int(room.height / CARD.height + EPSILON)
    if columns < 1 or rows < 1:
        message = (
            f"{size_name} has {mm_text(room.width)} × {mm_text(room.height)} for tags, less the printer's margins "
            f"and {mm_text(_AROUND)} for cut marks; a card tag takes {mm_text(CARD.width)} × "
            f"{mm_text(CARD.height)}."
        )
        mend = "State a sheet of smaller ones under tag-sheets: in studio.yaml, and name it with --sheet."
        raise ProblemsError(Problem(Place(file, 0, 0), message, mend))
    x = room.x + (room.width - columns * CARD.width) / 2
    y = room.y + (room.height - rows * CARD.height) / 2
    return TagSheet(
        CARDS, size_name, size, rows, columns, CARD, x, y, CARD.width, CARD.height, hole=CARD_HOLE, cut=True
    )


def unreached(sheet: TagSheet, bed: Bed) -> Sides:
    """How far the outer labels reach into each of the printer's margins; 0 where they do not."""
    labels = [sheet.box(0), sheet.box(sheet.count - 1)]
    area = bed.printable
    return Sides(
        max(area.x - min(box.x for box in labels), 0.0),
        max(area.y - min(box.y for box in labels), 0.0),
        max(max(box.right for box in labels) - area.right, 0.0),
        max(max(box.bottom for box in labels) - area.bottom, 0.0),
    )


def inner_box(sheet: TagSheet, bed: Bed) -> Box:
    """The part of a label that is printed on, from the label's own corner: off its edges, off its hole, and inside
    what the printer reaches on every label of the sheet.
    """
    shorter = min(sheet.label.width, sheet.label.height)
    inset = min(max(_INSET * shorter, _LEAST_INSET), _MOST_INSET)
    # A corner of the printed part keeps the same distance from the label's round corner.
    inset = max(inset, sheet.corner - max(sheet.corner - inset, 0.0) / sqrt(2))
    out = unreached(sheet, bed)
    left, top, right, bottom = (max(inset, side) for side in (out.left, out.top, out.right, out.bottom))
    hole = sheet.hole
    if hole is not None:
        off = hole.distance + hole.across / 2 + _OFF_HOLE
        left, top = (max(left, off), top) if hole.edge == "left" else (left, max(top, off))
    return Box(0, 0, sheet.label.width, sheet.label.height).shrink(Sides(left, top, right, bottom))


def reach_notes(sheet: TagSheet, bed: Bed) -> tuple[str, ...]:
    """What of the labels the printer does not reach."""
    out = unreached(sheet, bed)
    told = [
        f"{mm_text(depth)} at the {side}"
        for side, depth in (("left", out.left), ("top", out.top), ("right", out.right), ("bottom", out.bottom))
        if depth > EPSILON
    ]
    if not told:
        return ()
    note = (
        f"The outer labels of {sheet.name} reach into the printer's margins, {', '.join(told)}. Nothing is "
        "printed there on any of them."
    )
    return (note,)
