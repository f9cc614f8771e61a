"""How faces lie on a sheet: grids of equal faces, and straight cuts right across that part one grid from another.

A value of shapes alone, from its own top left corner; where on the paper it lies, `tile` decides.
"""

from dataclasses import dataclass
from typing import assert_never

from padspec.base.geometry import Box, Size


@dataclass(frozen=True, slots=True)
class Grid:
    """Equal faces in rows and columns, a gutter between them.

    `face` is the trim as it lies on the sheet, already on its side where the face is `turned`; `item` says
    which trim of a gang sheet it is, 0 where there is but one.
    """

    rows: int
    columns: int
    face: Size
    turned: bool
    item: int = 0


@dataclass(frozen=True, slots=True)
class Split:
    """Two arrangements that one straight cut, right across both, parts (two cuts where there is a gutter).

    `upright`: the cut runs from head to foot and `first` lies on the left; otherwise `first` lies above. Both
    begin at the same left edge or head.
    """

    upright: bool
    first: "Arrangement"
    second: "Arrangement"


Arrangement = Grid | Split


@dataclass(frozen=True, slots=True)
class Placed:
    """A grid and the box around its trims."""

    grid: Grid
    box: Box


def taken(n: int, face: float, gutter: float) -> float:
    """What n faces and the gutters between them take of a length."""
    return n * face + (n - 1) * gutter


def extent(arrangement: Arrangement, gutter: float) -> Size:
    """The size of the box around all its trims.

    >>> extent(Grid(1, 2, Size(90, 190), False), 4)
    Size(width=184, height=190)
    """
    match arrangement:
        case Grid(rows, columns, face):
            return Size(taken(columns, face.width, gutter), taken(rows, face.height, gutter))
        case Split(upright, one, other):
            a, b = extent(one, gutter), extent(other, gutter)
            if upright:
                return Size(a.width + gutter + b.width, max(a.height, b.height))
            return Size(max(a.width, b.width), a.height + gutter + b.height)
        case _:
            assert_never(arrangement)


def placed(arrangement: Arrangement, x: float, y: float, gutter: float) -> tuple[Placed, ...]:
    """Its grids, first to last, when its own top left corner lies at (x, y)."""
    match arrangement:
        case Grid():
            size = extent(arrangement, gutter)
            return (Placed(arrangement, Box(x, y, size.width, size.height)),)
        case Split(upright, one, other):
            past = extent(one, gutter)
            right = x + past.width + gutter if upright else x
            below = y if upright else y + past.height + gutter
            return placed(one, x, y, gutter) + placed(other, right, below, gutter)
        case _:
            assert_never(arrangement)


def faces(arrangement: Arrangement) -> int:
    """How many faces it holds.

    >>> faces(Split(True, Grid(2, 1, Size(60, 90), False), Grid(1, 1, Size(90, 60), True)))
    3
    """
    match arrangement:
        case Grid(rows, columns):
            return rows * columns
        case Split(_, one, other):
            return faces(one) + faces(other)
        case _:
            assert_never(arrangement)


def turned(arrangement: Arrangement) -> Arrangement:
    """The same seen with the sheet on its side: rows are columns, every face is turned."""
    match arrangement:
        case Grid(rows, columns, face, is_turned, item):
            return Grid(columns, rows, face.turned(), not is_turned, item)
        case Split(upright, one, other):
            return Split(not upright, turned(one), turned(other))
        case _:
            assert_never(arrangement)
