"""Designs and sheets for these tests: one plain design made once, its trim, paper and studio set by each test."""

from dataclasses import replace
from functools import cache

from kit import pad

from padspec.base.geometry import Box, Sides, Size
from padspec.resolve.design import Design
from padspec.resolve.studio import Turn
from padspec.scene.outline import bounds
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import tile

A4, LETTER = Size(210.0, 297.0), Size(215.9, 279.4)
LEGAL, TABLOID = Size(215.9, 355.6), Size(279.4, 431.8)
MARGINS = Sides.all(4.2)


@cache
def _plain() -> Design:
    return pad().design


def design(
    trim: Size,
    sheet: Size = A4,
    margins: Sides = MARGINS,
    gutter: float = 4.0,
    bleed: float = 3.0,
    least_bleed: float = 1.5,
    marks: bool = True,
    turn: Turn = "unknown",
) -> Design:
    """A design of this trim on this paper. The least bleed is held to the bleed, as resolve does."""
    plain = _plain()
    wish = replace(
        plain.sheet, size=sheet, gutter=gutter, bleed=bleed, least_bleed=min(least_bleed, bleed), marks=marks
    )
    studio = replace(plain.studio, printer=replace(plain.studio.printer, margins=margins, turn=turn))
    return replace(plain, trim=trim, sheet=wish, studio=studio)


def tiled(*args: object, **keys: object) -> Sheet:
    """The sheet of such a design; the test fails where not one face fits."""
    sheet = tile(design(*args, **keys))
    assert sheet is not None, "not one face fits"
    return sheet


def parted(sheet: Sheet, part: str) -> list[Box]:
    """The ink of each mark of one kind, strokes included."""
    found = []
    for node in sheet.marks:
        if node.cause.part == part:
            box, half = bounds(node.outline), node.stroke.weight / 2 if node.stroke else 0.0
            across = half if box.height > 0 and box.width == 0 else 0.0
            along = half if box.width > 0 and box.height == 0 else 0.0
            both = half if box.width > 0 and box.height > 0 else 0.0
            found.append(box.shrink(Sides(-across - both, -along, -across - both, -along)))
    return found
