"""Where pixels changed, as a few boxes.

Pixels are gathered into square cells; cells that touch, corners included, are one region. So what lies nearer than
a cell is told as one: a line of letters is not told letter by letter, nor ruling rule by rule.
"""

import numpy as np
from numpy.typing import NDArray

from padspec.base.geometry import Box

#: So many regions are told; the side of a cell in mm.
MOST, CELL = 3, 4.0
_AROUND = tuple((y, x) for y in (-1, 0, 1) for x in (-1, 0, 1) if (y, x) != (0, 0))

Cells = NDArray[np.int64]


def regions(changed: NDArray[np.bool_], per_mm: float, most: int = MOST) -> tuple[Box, ...]:
    """The boxes around the largest regions of changed pixels, in pixels, the one with most pixels first."""
    if not changed.any():
        return ()
    side = max(1, round(CELL * per_mm))
    counts = _counts(changed, side)
    labels = _labelled(counts > 0)
    sizes = np.bincount(labels.ravel(), counts.ravel())
    # Of two of one size, the one that is met first: the order never hangs on how a sort deals with ties.
    order = sorted(range(1, len(sizes)), key=lambda number: (-sizes[number], number))
    return tuple(_box(changed, labels == number, side) for number in order[:most])


def _counts(changed: NDArray[np.bool_], side: int) -> Cells:
    """How many pixels changed in each cell."""
    rows, columns = (range(0, length, side) for length in changed.shape)
    by_row = np.add.reduceat(changed.astype(np.int64), list(rows), axis=0)
    return np.asarray(np.add.reduceat(by_row, list(columns), axis=1), dtype=np.int64)


def _labelled(full: NDArray[np.bool_]) -> Cells:
    """Cells with the number of their region, from 1; 0 for empty ones."""
    labels = np.zeros(full.shape, np.int64)
    left = {(int(y), int(x)) for y, x in np.argwhere(full)}
    number = 0
    for start in sorted(left):
        if start not in left:
            continue
        number += 1
        to_do = [start]
        left.discard(start)
        while to_do:
            y, x = to_do.pop()
            labels[y, x] = number
            touching = [cell for cell in ((y + dy, x + dx) for dy, dx in _AROUND) if cell in left]
            left.difference_update(touching)
            to_do += touching
    return labels


def _box(changed: NDArray[np.bool_], cells: NDArray[np.bool_], side: int) -> Box:
    """The box around the changed pixels in some cells."""
    height, width = changed.shape
    inside = np.repeat(np.repeat(cells, side, axis=0), side, axis=1)[:height, :width] & changed
    rows, columns = (np.flatnonzero(inside.any(axis=axis)) for axis in (1, 0))
    left, top = int(columns[0]), int(rows[0])
    return Box(left, top, int(columns[-1]) + 1 - left, int(rows[-1]) + 1 - top)
