"""Design in, Sheet out: the best grid, centred, with its bleed and marks; None where not one face fits."""

from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.resolve.design import Design
from padspec.scene.nodes import Shape
from padspec.sheet.copies import copies_to_print
from padspec.sheet.fit import Bed, beds, best_grid, taken
from padspec.sheet.marks import Frame, Marks, draw_marks, remark_in
from padspec.sheet.sheet import Grid, Sheet, Slot


def tile(design: Design, remark: str = "") -> Sheet | None:
    """The sheet of one design. `remark` goes at the head of the slug (that it was printed despite errors)."""
    grid = best_grid(design)
    if grid is None:
        return None
    bed = next(bed for bed in beds(design) if bed.turned == grid.sheet_turned)
    face = design.trim.turned() if grid.face_turned else design.trim
    block = _block(grid, bed, face, design)
    printable = Box(0, 0, bed.size.width, bed.size.height).shrink(bed.margins)
    outer = _outer_bleed(block, printable, design.sheet.bleed)
    inner = min(design.sheet.bleed, design.sheet.gutter / 2)
    slots = _slots(grid, block, face, design, outer, inner)
    studio = design.studio
    copies = copies_to_print(1, design.leaves, grid.n_up, studio.overs, studio.test_sheets)
    marks = _marks(design, slots, block.shrink(_negative(outer)), printable, _slug(design, grid, copies, remark))
    warned = () if not remark or _has_slug(marks) else (remark_in(slots[0].trim, remark, design.small_print),)
    return Sheet(
        size=bed.size,
        size_name=design.sheet.size_name,
        title=" · ".join(part for part in (remark, design.name, design.sku, f"{grid.n_up}-up sheet") if part),
        grid=grid,
        gutter=design.sheet.gutter,
        slots=slots,
        printable=printable,
        outer_bleed=outer,
        inner_bleed=inner,
        marks=marks.nodes + warned,
        left_out=marks.left_out,
        copies=copies,
    )


def _block(grid: Grid, bed: Bed, face: Size, design: Design) -> Box:
    """The box around all trims: centred on the sheet if that clears the margins, else on the printable area."""
    width = taken(grid.columns, face.width, design.sheet.gutter)
    height = taken(grid.rows, face.height, design.sheet.gutter)
    printable = Box(0, 0, bed.size.width, bed.size.height).shrink(bed.margins)
    centred = Box((bed.size.width - width) / 2, (bed.size.height - height) / 2, width, height)
    if printable.covers(centred.inset(-design.sheet.least_bleed)):
        return centred
    x, y = printable.centre
    return Box(x - width / 2, y - height / 2, width, height)


def _outer_bleed(block: Box, printable: Box, wish: float) -> Sides:
    return Sides(
        left=max(min(wish, block.x - printable.x), 0.0),
        top=max(min(wish, block.y - printable.y), 0.0),
        right=max(min(wish, printable.right - block.right), 0.0),
        bottom=max(min(wish, printable.bottom - block.bottom), 0.0),
    )


def _slots(grid: Grid, block: Box, face: Size, design: Design, outer: Sides, inner: float) -> tuple[Slot, ...]:
    found = []
    gutter = design.sheet.gutter
    for row in range(grid.rows):
        for column in range(grid.columns):
            trim = Box(
                block.x + column * (face.width + gutter),
                block.y + row * (face.height + gutter),
                face.width,
                face.height,
            )
            bleed = Sides(
                left=outer.left if column == 0 else inner,
                top=outer.top if row == 0 else inner,
                right=outer.right if column == grid.columns - 1 else inner,
                bottom=outer.bottom if row == grid.rows - 1 else inner,
            )
            turn = Affine.quarter_turn(design.trim.height) if grid.face_turned else Affine()
            transform = turn.then(Affine.move(trim.x, trim.y))
            found.append(Slot(trim, trim.shrink(_negative(bleed)), transform))
    return tuple(found)


def _negative(sides: Sides) -> Sides:
    return Sides(-sides.left, -sides.top, -sides.right, -sides.bottom)


def _marks(design: Design, slots: tuple[Slot, ...], bleed: Box, printable: Box, slug: str) -> Marks:
    if not design.sheet.marks:
        return Marks((), ())
    upright = sorted({round(x, 6) for slot in slots for x in (slot.trim.x, slot.trim.right)})
    across = sorted({round(y, 6) for slot in slots for y in (slot.trim.y, slot.trim.bottom)})
    return draw_marks(Frame(tuple(across), tuple(upright), bleed, printable), slug, design.small_print)


def _has_slug(marks: Marks) -> bool:
    return any(isinstance(node, Shape) and node.cause.part == "slug" for node in marks.nodes)


def _slug(design: Design, grid: Grid, copies: int, remark: str) -> str:
    parts = (
        remark,
        design.name,
        design.sku,
        f"{grid.n_up}-up on {design.sheet.size_name}",
        f"{copies} copies for 1 pad of {design.leaves}",
        "print at 100 %",
    )
    return "  ·  ".join(part for part in parts if part)
