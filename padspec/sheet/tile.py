"""Design in, Sheet out: the best arrangement, centred, with its bleed and marks; None where not one face fits."""

from padspec.base.geometry import Box
from padspec.resolve.design import Design, SheetWish
from padspec.resolve.font import Font
from padspec.scene.nodes import Shape
from padspec.sheet.arrangement import Arrangement, extent, placed
from padspec.sheet.bed import Bed, bed_of
from padspec.sheet.copies import copies_to_print
from padspec.sheet.fitting.fit import best_fit
from padspec.sheet.fitting.strokes import strokes
from padspec.sheet.marks import Marks, draw_marks, frame_of, remark_in
from padspec.sheet.sheet import Sheet, Slot
from padspec.sheet.slots import make_slots


def tile(design: Design, remark: str = "") -> Sheet | None:
    """The sheet of one design. `remark` goes at the head of the slug (that it was printed despite errors)."""
    fit = best_fit(design)
    if fit is None:
        return None
    studio = design.studio
    copies = copies_to_print(1, design.leaves, fit.n_up, studio.overs, studio.test_sheets)
    slug = (
        remark,
        design.name,
        design.sku,
        f"{fit.n_up}-up on {design.sheet.size_name}",
        f"{copies} copies for 1 pad of {design.leaves}",
        "print at 100 %",
    )
    title = (remark, design.name, design.sku, f"{fit.n_up}-up sheet")
    return lay(fit.arrangement, bed_of(design), design.sheet, design.small_print, copies, title, slug, remark)


def lay(
    arrangement: Arrangement,
    bed: Bed,
    wish: SheetWish,
    small_print: Font,
    copies: int,
    title: tuple[str, ...],
    slug: tuple[str, ...],
    remark: str = "",
) -> Sheet:
    """An arrangement on its paper, with bleed and marks. Empty parts of title and slug are left out."""
    block = _block(arrangement, bed, wish)
    grids = placed(arrangement, block.x, block.y, wish.gutter)
    slots = make_slots(grids, wish.gutter, bed.printable, wish.bleed)
    marks = _marks(slots, bed.printable, "  ·  ".join(part for part in slug if part), wish, small_print)
    warned = () if not remark or _has_slug(marks) else (remark_in(slots[0].trim, remark, small_print),)
    return Sheet(
        size=bed.size,
        size_name=wish.size_name,
        title=" · ".join(part for part in title if part),
        arrangement=arrangement,
        cuts=strokes(arrangement, wish.gutter) - _uncut_sides(block, bed),
        gutter=wish.gutter,
        slots=slots,
        printable=bed.printable,
        marks=marks.nodes + warned,
        left_out=marks.left_out,
        copies=copies,
        correction=bed.correction,
    )


def _block(arrangement: Arrangement, bed: Bed, wish: SheetWish) -> Box:
    """The box around all trims: centred on the sheet if that clears the margins, else on the printable area."""
    size = extent(arrangement, wish.gutter)
    centred = Box((bed.size.width - size.width) / 2, (bed.size.height - size.height) / 2, size.width, size.height)
    if bed.printable.covers(centred.inset(-wish.least_bleed)):
        return centred
    x, y = bed.printable.centre
    return Box(x - size.width / 2, y - size.height / 2, size.width, size.height)


def _uncut_sides(block: Box, bed: Bed) -> int:
    """Sides where the leaves end with the paper: nothing is cut there."""
    paper = bed.size
    ends = (block.x, block.y, paper.width - block.right, paper.height - block.bottom)
    return sum(abs(end) < 1e-6 for end in ends)


def _marks(slots: tuple[Slot, ...], printable: Box, slug: str, wish: SheetWish, small_print: Font) -> Marks:
    if not wish.marks:
        return Marks((), ())
    return draw_marks(frame_of(slots, printable), slug, small_print)


def _has_slug(marks: Marks) -> bool:
    return any(isinstance(node, Shape) and node.cause.part == "slug" for node in marks.nodes)
