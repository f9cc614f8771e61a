"""Faces and limits in, the best tree of straight cuts out: the dynamic programme behind `guillotine`.

Best(x, y) = max(a grid of equal faces that fills x × y; Best(k, y) + Best(x − k, y); Best(x, k) + Best(x, y − k);
the best of a smaller region, trimmed), at sums of face widths and heights only: any other cut may be moved to the
next smaller such sum without loss (normal patterns; Christofides and Whitlock, Operations Research 25, 1977, from
memory). Lengths are whole numbers, the gutter that is cut away with a face is part of it.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import frexp
from typing import Self

import numpy as np
from numpy.typing import NDArray

from padspec.base.geometry import Size
from padspec.sheet.arrangement import Arrangement, Grid, Split, turned

#: A score is the value in steps times _VALUE, less the strokes inside times _STROKE, less the splits: value comes
#: first, then few strokes, then few grids. No sheet has as many of either as would outweigh one of the next.
_VALUE, _STROKE = 1 << 24, 1 << 10
#: No sheet is worth 2^36 steps, so that a score and what cannot be made add up to less than nothing, in 64 bits.
_STEP_BITS, _NOTHING = 36, -(1 << 61)

Wholes = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Face:
    """A trim one way round: its lengths in units, its gutter included, what one is worth, and the trim in mm."""

    width: int
    height: int
    value: float
    size: Size
    turned: bool
    item: int

    def grid(self, width: int, height: int) -> Grid:
        """As many as a region holds."""
        return Grid(height // self.height, width // self.width, self.size, self.turned, self.item)

    def lying(self) -> "Face":
        """The same seen with the sheet on its side."""
        return Face(self.height, self.width, self.value, self.size.turned(), not self.turned, self.item)


@dataclass(frozen=True, slots=True, eq=False)
class Sums:
    """Lengths up to a limit that blocks of equal parts add up to; `fresh` are those that took the most blocks."""

    limit: int
    blocks: Wholes
    found: Wholes
    fresh: Wholes

    @classmethod
    def of_one_block(cls, limit: int, parts: Iterable[int]) -> Self:
        """The multiples of every part."""
        multiples = [np.arange(part, limit + 1, part, dtype=np.int64) for part in sorted(set(parts))]
        blocks = np.unique(np.concatenate(multiples))
        return cls(limit, blocks, np.concatenate((np.zeros(1, np.int64), blocks)), blocks)

    def with_one_more(self) -> Self:
        """The same with one block more."""
        sums = np.add.outer(self.fresh, self.blocks).ravel()
        fresh = np.setdiff1d(sums[sums <= self.limit], self.found)
        return type(self)(self.limit, self.blocks, np.union1d(self.found, fresh), fresh)

    @property
    def complete(self) -> bool:
        """Whether any number of further blocks adds nothing."""
        return len(self.fresh) == 0

    @property
    def largest(self) -> int:
        """No more than this can be filled, as far as is known."""
        return int(self.found[-1]) if self.complete else self.limit

    @property
    def lengths(self) -> Wholes:
        """Every length of a region that the search has to know, none at all first."""
        return self.found if self.complete else np.union1d(self.found, np.array([self.limit]))

    def pairs(self) -> list[tuple[Wholes, Wholes]]:
        """For each length the two that it may be cut into, as places among the lengths, the shorter first.

        Where the sums are complete, only those that add up to it: what leaves a rest is a shorter length, trimmed.
        """
        lengths = self.lengths
        halves = np.searchsorted(lengths, lengths // 2, "right")
        found = []
        for length, half in zip(lengths, halves, strict=True):
            first = np.arange(1, half)
            second = np.searchsorted(lengths, length - lengths[first], "right") - 1
            if self.complete:
                exact = lengths[first] + lengths[second] == length
                first, second = first[exact], second[exact]
            found.append((first, second))
        return found


def work(columns: Sums, rows: Sums) -> int:
    """Regions times the cuts to try in each, roughly."""
    wide, high = len(columns.lengths), len(rows.lengths)
    return wide * high * (wide + high) // 4


def search(columns: Sums, rows: Sums, faces: Sequence[Face], line: int, bound: float) -> Arrangement:
    """The most valuable arrangement whose cuts lie at these sums; of equals, fewest strokes, then fewest grids.

    `line` is the strokes between neighbours, `bound` a value that nothing exceeds. Some face fits.
    """
    if len(columns.lengths) >= len(rows.lengths):
        return _Search(columns, rows, faces, line, bound).arrangement()
    # Seen with the sheet on its side, which is faster: the side with fewer lengths is gone through more often.
    return turned(_Search(rows, columns, [face.lying() for face in faces], line, bound).arrangement())


class _Search:
    """The programme over all regions whose width and height are sums.

    `_made[i, j]` is the best score of what is made for a region, `_best[i, j]` that of anything that fits in it,
    trimmed once in either direction where it is smaller. `_best` is kept in both orders, since rows of an array
    are gathered faster than columns.
    """

    def __init__(self, columns: Sums, rows: Sums, faces: Sequence[Face], line: int, bound: float) -> None:
        self._x, self._y = columns.lengths, rows.lengths
        self._line, self._split = line * _STROKE, line * _STROKE + 1
        self._upright, self._across = columns.pairs(), rows.pairs()
        step = 2.0 ** (frexp(bound)[1] - _STEP_BITS)
        self._faces = [(face, max(round(face.value / step), 1)) for face in faces]
        wide, high = len(self._x), len(self._y)
        self._made = np.full((wide, high), _NOTHING, np.int64)
        self._best, self._best_by_row = self._made.copy(), self._made.T.copy()
        self._narrower = np.full(high, _NOTHING, np.int64)
        for face, steps in self._faces:
            self._lay(face, steps)
        for block in _blocks(self._x):
            self._fill(block)

    def arrangement(self) -> Arrangement:
        """The best of all; of equals the one made for the region that leaves the widest margin."""
        places = np.argwhere(self._made == self._made.max())
        spare = np.minimum(self._x[-1] - self._x[places[:, 0]], self._y[-1] - self._y[places[:, 1]])
        i, j = places[np.argmax(spare)]
        return self._found(int(i), int(j))

    def _lay(self, face: Face, steps: int) -> None:
        """Every grid of a face, in the region that it fills."""
        columns = np.arange(1, self._x[-1] // face.width + 1)
        rows = np.arange(1, self._y[-1] // face.height + 1)
        filled = np.ix_(
            np.searchsorted(self._x, columns * face.width), np.searchsorted(self._y, rows * face.height)
        )
        lines = np.add.outer(columns - 1, rows - 1) * self._line
        scores = np.multiply.outer(columns, rows) * (steps * _VALUE) - lines
        self._made[filled] = np.maximum(self._made[filled], scores)

    def _fill(self, wide: slice) -> None:
        """All regions of widths that differ by less than a face, so that none of them is part of another."""
        for i in range(wide.start, wide.stop):
            self._join(self._made[i], self._best, self._upright[i])
        by_row, lower = self._best_by_row[:, wide], np.full(wide.stop - wide.start, _NOTHING, np.int64)
        for high in _blocks(self._y):
            for j in range(high.start, high.stop):
                self._join(self._made[wide, j], by_row, self._across[j])
            # What fits in a region is made for it, or for a narrower one, or for a lower one.
            here, self._narrower[high] = _trimmed(self._made[wide, high], self._narrower[high])
            best, lower = _trimmed(here.T, lower)
            self._best[wide, high], self._best_by_row[high, wide] = best.T, best

    def _join(self, made: Wholes, best: Wholes, pairs: tuple[Wholes, Wholes]) -> None:
        """Two parts of any pair, and the line between them, where that is better than what was made."""
        first, second = pairs
        if len(first):
            np.maximum(made, np.maximum.reduce(best[first] + best[second]) - self._split, out=made)

    def _found(self, i: int, j: int) -> Arrangement:
        """What was made for a region, found again in the order in which it was tried."""
        score, width, height = self._made[i, j], int(self._x[i]), int(self._y[j])
        for face, steps in self._faces:
            if width % face.width == height % face.height == 0:
                grid = face.grid(width, height)
                lines = (grid.rows + grid.columns - 2) * self._line
                if grid.rows * grid.columns * steps * _VALUE - lines == score:
                    return grid
        for one, other in zip(*self._upright[i], strict=True):
            if self._best[one, j] + self._best[other, j] - self._split == score:
                return Split(True, self._fitting(one, j), self._fitting(other, j))
        for one, other in zip(*self._across[j], strict=True):
            if self._best[i, one] + self._best[i, other] - self._split == score:
                return Split(False, self._fitting(i, one), self._fitting(i, other))
        raise AssertionError("a score that nothing reaches")

    def _fitting(self, i: int, j: int) -> Arrangement:
        """The best that fits in a region, made for it or for a smaller one."""
        trims = np.add.outer(np.arange(i + 1) < i, np.arange(j + 1) < j, dtype=np.int64)
        made = self._made[: i + 1, : j + 1] - trims * _STROKE
        if made[i, j] == self._best[i, j]:
            return self._found(i, j)
        smaller = np.argwhere(made == self._best[i, j])[0]
        return self._found(int(smaller[0]), int(smaller[1]))


def _blocks(lengths: Wholes) -> Iterator[slice]:
    """Runs of lengths, zero left out, of which none is the sum of two with another in the run."""
    start = 1
    while start < len(lengths):
        stop = int(np.searchsorted(lengths, lengths[start] + lengths[1]))
        yield slice(start, stop)
        start = stop


def _trimmed(made: Wholes, smaller: Wholes) -> tuple[Wholes, Wholes]:
    """The best of each row and of all before it, less a stroke; `smaller` is the best of the rows before these."""
    so_far = np.maximum.accumulate(np.vstack((smaller, made)), axis=0)
    return np.maximum(made, so_far[:-1] - _STROKE), so_far[-1]
