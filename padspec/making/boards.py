"""Backs of one size in, how they are cut from the big sheets out: the most that straight cuts can get, in order.

The layout is the exact guillotine search that also fills a sheet of paper, both ways round mixed; without gutter
or margin, since board is cut before anything is printed on it.
"""

from dataclasses import dataclass
from math import ceil

from padspec.base.geometry import Affine, Sides, Size
from padspec.resolve.design import Design, SheetWish
from padspec.resolve.studio import Cutter, Offcut, Stock
from padspec.sheet.arrangement import extent
from padspec.sheet.bed import Bed
from padspec.sheet.cutting.plan import CutPlan
from padspec.sheet.cutting.plan_cuts import plan_cuts
from padspec.sheet.fitting.guillotine import Piece, best_cutting
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import lay

#: What is worth keeping of a big sheet of board.
_KEPT = (Offcut("small back", Size(60, 90)),)


@dataclass(frozen=True, slots=True)
class Backs:
    """How backs of one trim are cut. `each` big sheet gives so many, none gives more than `bound`; `sheets` are
    needed for all `wanted`; `waste` is the share of a full sheet that becomes no back.
    """

    trim: Size
    wanted: int
    each: int
    bound: int
    sheets: int
    waste: float
    sheet: Sheet
    cuts: CutPlan


def backs_of(design: Design, wanted: int) -> Backs | None:
    """Backs for so many pads of the trim of a design; None without a board, or too small a sheet of it."""
    board = design.studio.bench.board
    if board.thickness <= 0:
        return None
    found = best_cutting(board.sheet, [Piece(design.trim, 1.0)], 0.0)
    if found.arrangement is None:
        return None
    each = round(found.value)
    sheets = ceil(wanted / each)
    wish = SheetWish("board", board.sheet, None, 0.0, 0.0, 0.0, False)
    # Into the corner, so that the board's own straight edges are two sides of the backs and need no cut.
    taken = extent(found.arrangement, 0.0)
    spare = Sides(0.0, 0.0, board.sheet.width - taken.width, board.sheet.height - taken.height)
    bed = Bed(board.sheet, spare, Affine())
    sheet = lay(found.arrangement, bed, wish, design.small_print, sheets, ("Backs",), ())
    return Backs(
        trim=design.trim,
        wanted=wanted,
        each=each,
        bound=int(found.bound + 1e-9),
        sheets=sheets,
        waste=1 - each * design.trim.width * design.trim.height / (board.sheet.width * board.sheet.height),
        sheet=sheet,
        cuts=plan_cuts(sheet, _knife(design), _one_by_one(design), sheets, _KEPT),
    )


def _knife(design: Design) -> Cutter:
    """Board is cut by hand along a ruler, one at a time, whatever the leaves are cut with."""
    cutter, board = design.studio.cutter, design.studio.bench.board
    return Cutter("knife", cutter.error, 1, cutter.clamp_height, board.stroke_seconds)


def _one_by_one(design: Design) -> Stock:
    stock, board = design.studio.stock, design.studio.bench.board
    return Stock(stock.grammage, max(board.thickness, 0.01), board.tolerance, board.price, stock.ink_limit)
