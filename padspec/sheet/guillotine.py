"""The most valuable way to cut a sheet into trims by straight cuts right across, exactly.

F(x, y) = max(one grid of equal faces; F(k, y) + F(x − k, y); F(x, k) + F(x, y − k)), at sums of face widths and
heights only: any other cut may be moved to the next smaller such sum without loss (normal patterns; Christofides
and Whitlock, Operations Research 25, 1977, from memory). A gutter is cut away with each face, so faces and area
grow by one gutter.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import product
from typing import assert_never

import numpy as np
from numpy.typing import NDArray

from padspec.base.geometry import Size
from padspec.sheet.arrangement import Arrangement, Grid, Split
from padspec.sheet.strokes import a_line

#: Lengths are counted in millionths of a millimetre: fractions of an inch down to 1/64 are whole, and sums exact.
_UNITS = 1_000_000
#: Values are compared to the millionth; below them strokes count, of which a sheet has fewer than this.
_VALUE_STEPS, _STROKES = 1_000_000, 1 << 20
#: States × splits that the exact search may take: some tenths of a second.
MOST_WORK = 6_000_000

Lengths = NDArray[np.int64]


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
        return self.value >= self.bound - 1e-6


@dataclass(frozen=True, slots=True)
class _Face:
    """A piece one way round, in units, its gutter included."""

    width: int
    height: int
    score: int
    piece: Piece
    turned: bool

    def grid(self, width: int, height: int) -> Grid:
        """As many as a region holds."""
        size = self.piece.size.turned() if self.turned else self.piece.size
        return Grid(height // self.height, width // self.width, size, self.turned, self.piece.item)


def best_cutting(area: Size, pieces: Sequence[Piece], gutter: float, most_work: int = MOST_WORK) -> Cutting:
    """The arrangement of most value that straight cuts can part; of equals, one that takes few strokes.

    `area` is what trims and the gutters between them may take; every piece has an `item` of its own. The search is
    bounded by work, never by time, so that it ends the same way everywhere; where there is too much of it, grids
    and pairs of grids are tried, and the bound says what may have been missed.
    """
    width, height = (_units(length + gutter) + 1 for length in (area.width, area.height))
    ways = [way for piece in pieces if piece.value > 0 for way in _ways(piece, gutter)]
    faces = tuple(way for way in ways if way.width <= width and way.height <= height)
    if not faces:
        return Cutting(None, 0.0, 0.0)
    worth = {face.piece.item: face.piece.value for face in faces}
    columns = _reachable(width, {face.width for face in faces}, most_work)
    rows = _reachable(height, {face.height for face in faces}, most_work)
    if columns is None or rows is None:
        return _answer(_pairs(width, height, faces, worth), worth, _area_bound(width, height, faces))
    bound = _area_bound(int(columns[-1]), int(rows[-1]), faces)
    single = _best_grid(width, height, faces, worth)
    if _value(single, worth) >= bound - 1e-6:
        return _answer(single, worth, bound)
    if len(columns) * len(rows) * (len(columns) + len(rows)) // 2 > most_work:
        return _answer(_pairs(width, height, faces, worth), worth, bound)
    best = _Search(columns, rows, faces, a_line(gutter)).best()
    return _answer(best, worth, _value(best, worth))


def _answer(arrangement: Arrangement, worth: dict[int, float], bound: float) -> Cutting:
    return Cutting(arrangement, _value(arrangement, worth), bound)


def _value(arrangement: Arrangement, worth: dict[int, float]) -> float:
    match arrangement:
        case Grid(rows, columns, item=item):
            return rows * columns * worth[item]
        case Split(_, one, other):
            return _value(one, worth) + _value(other, worth)
        case _:
            assert_never(arrangement)


def _ways(piece: Piece, gutter: float) -> list[_Face]:
    width, height = (_units(length + gutter) for length in (piece.size.width, piece.size.height))
    score = round(piece.value * _VALUE_STEPS) * _STROKES
    upright = _Face(width, height, score, piece, False)
    return [upright, _Face(height, width, score, piece, True)] if piece.turns and width != height else [upright]


def _units(length: float) -> int:
    return round(length * _UNITS)


def _reachable(length: int, parts: Iterable[int], most: int) -> NDArray[np.int64] | None:
    """Every sum of parts up to a length, 0 first; None where there are too many to search."""
    found = {0}
    for part in sorted(parts):
        sums = set(found)
        while sums:
            sums = {total + part for total in sums if total + part <= length} - found
            found |= sums
            if len(found) ** 2 > most:
                return None
    return np.array(sorted(found), np.int64)


def _area_bound(width: int, height: int, faces: Sequence[_Face]) -> float:
    """What the area could hold of the piece worth most for its area; whole pieces where there is one kind."""
    kinds = {(face.piece.value, face.width * face.height) for face in faces}
    if len(kinds) == 1:
        ((value, face_area),) = kinds
        return width * height // face_area * value
    return max(value / face_area for value, face_area in kinds) * width * height


def _best_grid(width: int, height: int, faces: Sequence[_Face], worth: dict[int, float]) -> Grid:
    """One grid of equal faces: most value, then fewest lines."""
    found = [face.grid(width, height) for face in faces]
    return max(found, key=lambda grid: (_value(grid, worth), -grid.rows - grid.columns))


def _pairs(width: int, height: int, faces: Sequence[_Face], worth: dict[int, float]) -> Arrangement:
    """The best grid, or the best two grids side by side or one above the other."""
    best: Arrangement = _best_grid(width, height, faces, worth)
    for face, upright in product(faces, (True, False)):
        whole, part = (width, face.width) if upright else (height, face.height)
        for at in range(part, whole, part):
            first, second = (
                ((at, height), (width - at, height)) if upright else ((width, at), (width, height - at))
            )
            one, other = _best_grid(*first, faces, worth), _best_grid(*second, faces, worth)
            if one.rows * one.columns and other.rows * other.columns:
                pair = Split(upright, one, other)
                best = pair if _value(pair, worth) > _value(best, worth) + 1e-9 else best
    return best


class _Search:
    """The dynamic programme over reachable widths and heights.

    A score is the value in steps times 2^20 less the strokes inside, so that value counts before strokes.
    """

    def __init__(self, columns: Lengths, rows: Lengths, faces: tuple[_Face, ...], line: int) -> None:
        self._x, self._y, self._faces, self._line = columns, rows, faces, line
        self._scores = np.zeros((len(columns), len(rows)), np.int64)
        for i in range(1, len(columns)):
            self._fill(i)

    def best(self) -> Arrangement:
        """The arrangement of the whole."""
        found = self._arrangement(len(self._x) - 1, len(self._y) - 1)
        assert found is not None  # one face fits, or there would be no search
        return found

    def _fill(self, i: int) -> None:
        """All heights of one width: grids, then cuts that run upright, then those across."""
        row = self._scores[i]
        for face in self._faces:
            np.maximum(row, self._grids(face, i), out=row)
        firsts = np.arange(1, i + 1)
        firsts = firsts[self._x[firsts] * 2 <= self._x[i]]
        if len(firsts):
            rests = np.searchsorted(self._x, self._x[i] - self._x[firsts], "right") - 1
            np.maximum(row, self._joined(self._scores[firsts], self._scores[rests]).max(axis=0), out=row)
        for j in range(1, len(self._y)):
            firsts, rests = self._across(j)
            if len(firsts):
                row[j] = max(row[j], self._joined(row[firsts], row[rests]).max())

    def _across(self, j: int) -> tuple[Lengths, Lengths]:
        firsts = np.arange(1, j + 1)
        firsts = firsts[self._y[firsts] * 2 <= self._y[j]]
        return firsts, np.searchsorted(self._y, self._y[j] - self._y[firsts], "right") - 1

    def _joined(self, one: Lengths, other: Lengths) -> Lengths:
        """Two parts and the line between them; where one of them is empty there is none to cut."""
        return one + other - np.where((one > 0) & (other > 0), self._line, 0)

    def _grids(self, face: _Face, i: int) -> Lengths:
        """What one grid of a face scores in every height of a width; nothing where none fits."""
        width = int(self._x[i])
        columns, rows = width // face.width, self._y // face.height
        trims = (columns * face.width < width) + (rows * face.height < self._y)
        strokes = self._line * (columns - 1 + rows - 1) + trims
        return np.where(rows * columns > 0, rows * columns * face.score - strokes, 0)

    def _arrangement(self, i: int, j: int) -> Arrangement | None:
        """What reached the score of a region, found again in the order in which it was tried."""
        score = self._scores[i, j]
        if score <= 0:
            return None
        for face in self._faces:
            if self._grids(face, i)[j] == score:
                return face.grid(int(self._x[i]), int(self._y[j]))
        for k in range(1, i + 1):
            rest = int(np.searchsorted(self._x, self._x[i] - self._x[k], "right")) - 1
            if self._x[k] * 2 <= self._x[i] and self._joined(self._scores[k, j], self._scores[rest, j]) == score:
                return _split(True, self._arrangement(k, j), self._arrangement(rest, j))
        for k, rest in zip(*self._across(j), strict=True):
            if self._joined(self._scores[i, k], self._scores[i, rest]) == score:
                return _split(False, self._arrangement(i, int(k)), self._arrangement(i, int(rest)))
        raise AssertionError("a score that nothing reaches")


def _split(upright: bool, one: Arrangement | None, other: Arrangement | None) -> Arrangement | None:
    """Both parts; two grids that make one grid are one, and an empty part is none."""
    if one is None or other is None:
        return one or other
    if (
        isinstance(one, Grid)
        and isinstance(other, Grid)
        and replace(one, rows=0, columns=0) == replace(other, rows=0, columns=0)
    ):
        if upright and one.rows == other.rows:
            return replace(one, columns=one.columns + other.columns)
        if not upright and one.columns == other.columns:
            return replace(one, rows=one.rows + other.rows)
    return Split(upright, one, other)
