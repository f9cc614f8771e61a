"""The most valuable way to cut a sheet into trims by straight cuts right across, exactly.

One grid of equal faces is taken at once where it holds all that the area could; else `straight_cuts` searches
every cut. A gutter is cut away with each face, so faces and area grow by one gutter.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import assert_never

from padspec.base.geometry import Size
from padspec.sheet.arrangement import Arrangement, Grid, Split
from padspec.sheet.fitting.straight_cuts import Face, Sums, search, work
from padspec.sheet.fitting.strokes import a_line

#: A millimetre has this many units: inches down to 1/64, points, their tenths and decimals of a millimetre down to
#: 1e-8 are whole, so that sums are exact.
_UNITS = 900_000_000
#: What lengths may lack (1e-6 mm), for sums that fit on paper but not in binary.
_TOLERANCE = 900
#: Regions × cuts that a search may take: one or two tenths of a second.
MOST_WORK = 100_000_000

#: Shares of a value smaller than this are rounding.
_EPSILON = 1e-12

#: What a grid holds, and what one face of it is worth.
_Worth = dict[tuple[int, Size, bool], float]


@dataclass(frozen=True, slots=True)
class Piece:
    """A trim that may be cut from the sheet as often as it fits, what one is worth, and whether it may lie."""

    size: Size
    value: float
    turns: bool = True
    item: int = 0


@dataclass(frozen=True, slots=True)
class Cutting:
    """The best arrangement found (None where nothing fits), its value, and what no arrangement can exceed."""

    arrangement: Arrangement | None
    value: float
    bound: float

    @property
    def proven(self) -> bool:
        """Whether nothing better exists."""
        return self.value >= self.bound - 1e-9


def best_cutting(area: Size, pieces: Sequence[Piece], gutter: float, most_work: int = MOST_WORK) -> Cutting:
    """The arrangement of most value that straight cuts can part; of equals fewest strokes, then fewest grids.

    `area` (mm) is what trims and the gutters between them may take. The search is bounded by work, never by time,
    so that it ends the same way everywhere: where there is too much of it, only cuts at sums of few blocks of
    equal faces are tried, as many as the work allows, and the bound says what may have been missed. Values closer
    than about 1e-9 of the whole count as equal.
    """
    width, height = (_units(length) + _units(gutter) + _TOLERANCE for length in (area.width, area.height))
    faces = tuple(
        face for piece in pieces for face in _ways(piece, gutter) if face.width <= width and face.height <= height
    )
    if not faces:
        return Cutting(None, 0.0, 0.0)
    worth, bound = _worth(faces), _area_bound(width, height, faces)
    grid = _best_grid(width, height, faces, worth, bound)
    value = _value(grid, worth)
    if _settles(grid, value, bound, faces):
        return Cutting(grid, value, value)
    sums = _sums(width, height, faces, most_work)
    if sums is None:
        return Cutting(grid, value, bound)
    columns, rows = sums
    bound = min(bound, _area_bound(columns.largest, rows.largest, faces))
    if _settles(grid, value, bound, faces):
        return Cutting(grid, value, value)
    found = search(columns, rows, faces, a_line(gutter), bound)
    value = _value(found, worth)
    return Cutting(found, value, value if columns.complete and rows.complete else max(value, bound))


def _settles(grid: Grid, value: float, bound: float, faces: Sequence[Face]) -> bool:
    """Whether nothing is worth more than one grid, and no mixture worth as much takes fewer strokes.

    With n lines a grid has at most ⌊n/2 + 1⌋ × ⌈n/2 + 1⌉ faces, and a mixture one more than a grid with n − 1.
    """
    if value < bound * (1 - _EPSILON):
        return False
    fewer = grid.rows + grid.columns - 3
    most = (fewer + 1) // 2 * ((fewer + 2) // 2) + 1 if fewer > 0 else 0
    return value > most * max(face.value for face in faces) * (1 + _EPSILON)


def _units(length: float) -> int:
    return round(length * _UNITS)


def _ways(piece: Piece, gutter: float) -> tuple[Face, ...]:
    """Upright, and on its side where it may lie; nothing where it is worth nothing."""
    if piece.value <= 0:
        return ()
    width, height = (_units(length) + _units(gutter) for length in (piece.size.width, piece.size.height))
    upright = Face(width, height, piece.value, piece.size, False, piece.item)
    if not piece.turns or width == height:
        return (upright,)
    return upright, Face(height, width, piece.value, piece.size.turned(), True, piece.item)


def _worth(faces: Sequence[Face]) -> _Worth:
    """Of two faces that differ in value alone the search takes the better one."""
    worth: _Worth = {}
    for face in faces:
        key = face.item, face.size, face.turned
        worth[key] = max(face.value, worth.get(key, 0.0))
    return worth


def _value(arrangement: Arrangement, worth: _Worth) -> float:
    match arrangement:
        case Grid(rows, columns, face, turned, item):
            return rows * columns * worth[item, face, turned]
        case Split(_, one, other):
            return _value(one, worth) + _value(other, worth)
        case _:
            assert_never(arrangement)


def _area_bound(width: int, height: int, faces: Sequence[Face]) -> float:
    """What the area could hold of the face worth most for its area; whole faces where all are worth the same."""
    if len({face.value for face in faces}) == 1:
        return width * height // min(face.width * face.height for face in faces) * faces[0].value
    return max(face.value / (face.width * face.height) for face in faces) * width * height


def _best_grid(width: int, height: int, faces: Sequence[Face], worth: _Worth, bound: float) -> Grid:
    """One grid of equal faces: most value, then fewest lines, then the first."""
    grids = [face.grid(width, height) for face in faces]
    return max(grids, key=lambda grid: (round(_value(grid, worth) / bound, 12), -grid.rows - grid.columns))


def _sums(width: int, height: int, faces: Sequence[Face], most_work: int) -> tuple[Sums, Sums] | None:
    """Sums of as many blocks as the work allows, at best all there are; None where even one block is too many."""
    kept = None
    columns = Sums.of_one_block(width, (face.width for face in faces))
    rows = Sums.of_one_block(height, (face.height for face in faces))
    while work(columns, rows) <= most_work:
        kept = columns, rows
        if columns.complete and rows.complete:
            break
        columns, rows = columns.with_one_more(), rows.with_one_more()
    return kept
