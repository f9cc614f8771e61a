"""A single face for a press: a page larger than the bleed, with crop marks and a slug, as a sheet of one slot."""

from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.resolve.font import Font
from padspec.sheet.arrangement import Grid
from padspec.sheet.marks import draw_marks, frame_of
from padspec.sheet.sheet import Sheet, Slot

#: Room around the bleed for marks and slug, in mm.
MARK_ROOM = 8.0


def single_page(size: Size, bleed: float, title: str, slug: str, small_print: Font, copies: int = 1) -> Sheet:
    """The page of one face of this trim size, upright, all its bleed printed; lengths in mm."""
    past = bleed + MARK_ROOM
    page = Size(size.width + 2 * past, size.height + 2 * past)
    trim = Box(past, past, size.width, size.height)
    slot = Slot(trim, (trim.inset(-bleed),), Sides.all(bleed), (), Affine.move(past, past), turned=False)
    whole = Box(0, 0, page.width, page.height)
    marks = draw_marks(frame_of((slot,), whole), slug, small_print)
    return Sheet(
        size=page,
        size_name="single face",
        title=title,
        arrangement=Grid(1, 1, size, turned=False),
        cuts=4,
        gutter=0.0,
        slots=(slot,),
        printable=whole,
        marks=marks.nodes,
        left_out=marks.left_out,
        copies=copies,
    )
