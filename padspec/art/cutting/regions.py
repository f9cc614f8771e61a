"""Connected regions of a mask, by runs of rows: no loop over pixels, whatever the shape.

Every row is cut into runs of set pixels; runs that overlap in neighbouring rows are joined until each
region has one label. Regions are joined across sides only, not across corners, so that an outline
one pixel wide still holds a flood back.
"""

from dataclasses import dataclass
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

Mask = NDArray[np.bool_]
Indices = NDArray[np.int64]
T = TypeVar("T", bound=np.generic)


@dataclass(frozen=True, slots=True, eq=False)
class Regions:
    """The runs of a mask: `starts` and `ends` (exclusive) in the padded, flattened rows, and `label`.

    A label is the number of the first run of its region. Rows are padded by one unset pixel at the left.
    """

    shape: tuple[int, int]
    starts: Indices
    ends: Indices
    label: Indices

    def touching_border(self) -> Mask:
        """For each run, whether its region touches a side of the picture."""
        height, width = self.shape
        row, column = np.divmod(self.starts, width + 1)
        at_side = (row == 0) | (row == height - 1) | (column == 1)
        at_side |= self.ends - row * (width + 1) == width + 1
        return self._whole(at_side)

    def areas(self) -> Indices:
        """For each run, the pixels of its region."""
        return np.bincount(self.label, self.ends - self.starts, self.label.size).astype(np.int64)[self.label]

    def peaks(self, values: NDArray[np.uint8]) -> NDArray[np.uint8]:
        """For each run, the greatest of the values (an array of the mask's shape) in its region."""
        if self.starts.size == 0:
            return np.zeros(0, np.uint8)
        bounds = np.stack([self.starts, self.ends], axis=1).ravel()
        of_runs = np.maximum.reduceat(_padded(values), bounds)[::2]
        of_regions = np.zeros(self.label.size, np.uint8)
        np.maximum.at(of_regions, self.label, of_runs)
        return of_regions[self.label]

    def painted(self, chosen: Mask) -> Mask:
        """The chosen runs as a mask of the whole picture."""
        height, width = self.shape
        change = np.zeros(height * (width + 1) + 1, np.int8)
        change[self.starts[chosen]] = 1
        change[self.ends[chosen]] -= 1
        inside = np.cumsum(change, dtype=np.int8)[:-1].reshape(height, width + 1)
        return inside[:, 1:] > 0

    def _whole(self, runs: Mask) -> Mask:
        labels = np.zeros(self.label.size, np.bool_)
        labels[self.label[runs]] = True
        return labels[self.label]


def regions(mask: Mask) -> Regions:
    """The connected regions of a mask of the shape (height, width)."""
    flat = _padded(mask)
    starts = np.flatnonzero(flat[1:] & ~flat[:-1]) + 1
    ends = np.flatnonzero(flat[:-1] & ~flat[1:]) + 1
    one, other = _overlaps(starts, ends, mask.shape[1] + 1)
    return Regions((mask.shape[0], mask.shape[1]), starts, ends, _joined(starts.size, one, other))


def _padded(rows: NDArray[T]) -> NDArray[T]:
    height, width = rows.shape
    flat = np.zeros(height * (width + 1) + 1, rows.dtype)
    flat[:-1].reshape(height, width + 1)[:, 1:] = rows
    return flat


def _overlaps(starts: Indices, ends: Indices, stride: int) -> tuple[Indices, Indices]:
    """Pairs of runs that share a column in neighbouring rows."""
    first = np.searchsorted(ends, starts + stride, side="right")
    last = np.searchsorted(starts, ends + stride, side="left")
    count = np.maximum(last - first, 0)
    one = np.repeat(np.arange(starts.size), count)
    step = np.arange(one.size) - np.repeat(np.cumsum(count) - count, count)
    return one, step + np.repeat(first, count)


def _joined(count: int, one: Indices, other: Indices) -> Indices:
    """The least run number of each connected set: hook the higher root below the lower, then flatten."""
    label = np.arange(count)
    while one.size:
        low, high = np.minimum(label[one], label[other]), np.maximum(label[one], label[other])
        np.minimum.at(label, high, low)
        while True:
            above = label[label]
            if np.array_equal(above, label):
                break
            label = above
        apart = label[one] != label[other]
        one, other = one[apart], other[apart]
    return label
