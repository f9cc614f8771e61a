"""Backs of several sizes in, strips that share big sheets out: each strip right across, all of one size.

For what is left when full sheets of one size have been taken: a few of each, which would else spoil a big sheet
for every size. First-fit by falling height; not proven the fewest, so the caller says how many there are at least.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from padspec.base.geometry import Size
from padspec.base.numbers import EPSILON
from padspec.sheet.arrangement import Arrangement, Grid, Split, turned


@dataclass(frozen=True, slots=True)
class Rest:
    """So many backs of one size; `item` is the number that the size has among all."""

    item: int
    trim: Size
    number: int


def shared_sheets(rests: Sequence[Rest], board: Size) -> tuple[Arrangement, ...]:
    """An arrangement for each big sheet that the rests take together; strips run across it or along it, whichever
    takes fewer sheets. Every rest fits on the board.
    """
    across = _packed(rests, board)
    along = _packed(rests, board.turned())
    return across if len(across) <= len(along) else tuple(turned(one) for one in along)


def _packed(rests: Sequence[Rest], board: Size) -> tuple[Arrangement, ...]:
    """Grids of strips, the highest first, each on the first sheet that has the height left."""
    sheets: list[tuple[float, list[Grid]]] = []
    waiting = sorted((_grid(rest, board) for rest in rests), key=lambda grid: -grid.rows * grid.face.height)
    for whole in waiting:
        rows = whole.rows
        while rows:
            at, fit = _room(sheets, whole.face.height, board.height)
            if at is None:
                sheets.append((0.0, []))
                at, fit = len(sheets) - 1, floor(board.height / whole.face.height + EPSILON)
            taken = min(rows, fit)
            used, grids = sheets[at]
            part = Grid(taken, whole.columns, whole.face, whole.turned, whole.item)
            sheets[at] = (used + taken * whole.face.height, [*grids, part])
            rows -= taken
    return tuple(_stacked(grids) for _, grids in sheets)


def _stacked(grids: Sequence[Grid]) -> Arrangement:
    """Grids one below the other."""
    stack: Arrangement = grids[0]
    for grid in grids[1:]:
        stack = Split(False, stack, grid)
    return stack


def _room(sheets: list[tuple[float, list[Grid]]], high: float, most: float) -> tuple[int | None, int]:
    """The first sheet that takes a strip of this height, and how many it takes."""
    for at, (used, _) in enumerate(sheets):
        fit = floor((most - used) / high + EPSILON)
        if fit:
            return at, fit
    return None, 0


def _grid(rest: Rest, board: Size) -> Grid:
    """The strips of one rest, the way round that takes the least height."""
    ways = []
    for face, is_turned in ((rest.trim, False), (rest.trim.turned(), True)):
        columns = floor(board.width / face.width + EPSILON)
        if columns and face.height <= board.height + EPSILON:
            ways.append(Grid(ceil(rest.number / columns), columns, face, is_turned, rest.item))
    return min(ways, key=lambda grid: grid.rows * grid.face.height)
