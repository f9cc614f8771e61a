"""Backs in, how they are cut from the big sheets out: the most of one size that straight cuts can get, in order.

Full sheets of one size follow the exact guillotine search that also fills a sheet of paper, both ways round mixed;
what is left of several sizes shares sheets in strips. There is no gutter and no margin, since nothing is
printed on board, and the first back lies in the corner: the board's own straight edges need no cut.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

from padspec.base.geometry import Affine, Sides, Size
from padspec.base.numbers import EPSILON
from padspec.making.strips import Rest, shared_sheets
from padspec.resolve.design import Design, SheetWish
from padspec.resolve.studio import Cutter, Offcut, Stock
from padspec.sheet.arrangement import Arrangement, Grid, Split, extent
from padspec.sheet.bed import Bed
from padspec.sheet.cutting.plan import CutPlan
from padspec.sheet.cutting.plan_cuts import plan_cuts
from padspec.sheet.fitting.guillotine import Piece, best_cutting
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import lay

#: What is worth keeping of a big sheet of board.
_KEPT = (Offcut("small back", Size(60, 90)),)


@dataclass(frozen=True, slots=True)
class BackSize:
    """Backs of one trim: how many are `wanted`; a big sheet of nothing else gives `each`, and none gives more than
    `bound`, with `waste` the share of it that becomes no back.
    """

    trim: Size
    wanted: int
    each: int
    bound: int
    waste: float


@dataclass(frozen=True, slots=True)
class BoardLayout:
    """One way to cut a big sheet, for `sheets` of them. `gives` has the backs of each size, by its place among the
    sizes, that one sheet so cut gives.
    """

    sheets: int
    gives: tuple[tuple[int, int], ...]
    sheet: Sheet
    cuts: CutPlan


@dataclass(frozen=True, slots=True)
class Boards:
    """All the backs of a batch. `misfits` are trims that no big sheet holds; no way to cut takes fewer sheets than
    `bound`, which is where the area alone ends.
    """

    sizes: tuple[BackSize, ...]
    layouts: tuple[BoardLayout, ...]
    misfits: tuple[Size, ...]
    bound: int

    @property
    def sheets(self) -> int:
        """Big sheets in all."""
        return sum(layout.sheets for layout in self.layouts)


@dataclass(frozen=True, slots=True)
class _Filled:
    """A size with the arrangement that gives most of it."""

    size: BackSize
    arrangement: Arrangement


def boards_of(wanted: Sequence[tuple[Design, int]]) -> Boards | None:
    """The backs for so many pads of each design; None where the studio's pads have no board. Designs of one trim
    count together.
    """
    design = wanted[0][0]
    board = design.studio.bench.board
    if board.thickness <= 0:
        return None
    numbers: dict[Size, int] = {}
    for one, pads in wanted:
        numbers[one.trim] = numbers.get(one.trim, 0) + pads
    found = {trim: _filled(trim, number, board.sheet) for trim, number in numbers.items()}
    filled = tuple(one for one in found.values() if one is not None)
    area = sum(one.size.trim.width * one.size.trim.height * one.size.wanted for one in filled)
    return Boards(
        sizes=tuple(one.size for one in filled),
        layouts=tuple(_layouts(filled, design)),
        misfits=tuple(trim for trim, one in found.items() if one is None),
        bound=ceil(area / (board.sheet.width * board.sheet.height) - EPSILON),
    )


def _filled(trim: Size, wanted: int, board: Size) -> _Filled | None:
    found = best_cutting(board, [Piece(trim, 1.0)], 0.0)
    if found.arrangement is None:
        return None
    each = round(found.value)
    waste = 1 - each * trim.width * trim.height / (board.width * board.height)
    return _Filled(BackSize(trim, wanted, each, int(found.bound + EPSILON), waste), found.arrangement)


def _layouts(filled: tuple[_Filled, ...], design: Design) -> Iterator[BoardLayout]:
    """Full sheets of each size; then what is left, shared where that takes fewer sheets than one for each size."""
    board = design.studio.bench.board.sheet
    rests = [
        Rest(item, one.size.trim, one.size.wanted % one.size.each)
        for item, one in enumerate(filled)
        if one.size.wanted % one.size.each
    ]
    shared = shared_sheets(rests, board) if len(rests) > 1 else ()
    sharing = bool(shared) and len(shared) < len(rests)
    for item, one in enumerate(filled):
        full, rest = divmod(one.size.wanted, one.size.each)
        sheets = full + (rest > 0 and not sharing)
        if sheets:
            yield _laid(_numbered(one.arrangement, item), sheets, design)
    if sharing:
        for arrangement in shared:
            yield _laid(arrangement, 1, design)


def _numbered(arrangement: Arrangement, item: int) -> Arrangement:
    """The same, all of its backs of the size of this number."""
    match arrangement:
        case Grid(rows, columns, face, is_turned):
            return Grid(rows, columns, face, is_turned, item)
        case Split(upright, one, other):
            return Split(upright, _numbered(one, item), _numbered(other, item))


def _laid(arrangement: Arrangement, sheets: int, design: Design) -> BoardLayout:
    board = design.studio.bench.board
    taken = extent(arrangement, 0.0)
    spare = Sides(0.0, 0.0, board.sheet.width - taken.width, board.sheet.height - taken.height)
    wish = SheetWish("board", board.sheet, None, 0.0, 0.0, 0.0, False)
    bed = Bed(board.sheet, spare, Affine())
    sheet = lay(arrangement, bed, wish, design.small_print, sheets, ("Backs",), ())
    gives: dict[int, int] = {}
    for slot in sheet.slots:
        gives[slot.item] = gives.get(slot.item, 0) + 1
    cuts = plan_cuts(sheet, _knife(design), _one_by_one(design), sheets, _KEPT)
    return BoardLayout(sheets, tuple(sorted(gives.items())), sheet, cuts)


def _knife(design: Design) -> Cutter:
    """Board is cut by hand along a ruler, one at a time, whatever the leaves are cut with."""
    cutter, board = design.studio.cutter, design.studio.bench.board
    return Cutter("knife", cutter.error, 1, cutter.clamp_height, board.stroke_seconds)


def _one_by_one(design: Design) -> Stock:
    stock, board = design.studio.stock, design.studio.bench.board
    return Stock(stock.grammage, max(board.thickness, 0.01), board.tolerance, board.price, stock.ink_limit)
