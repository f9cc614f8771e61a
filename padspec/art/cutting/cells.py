"""Pictures in small square cells: their means and spans, and what lies around each cell."""

import numpy as np
from numpy.typing import NDArray
from PIL import Image

Singles = NDArray[np.float32]


def in_cells(values: NDArray[np.generic], cell: int) -> Singles:
    """The means of square cells, shape (rows, columns, …); cells at the right and foot may be cut off."""
    rows, columns = _starts(values, cell)
    sums = np.add.reduceat(np.add.reduceat(values, rows, axis=0, dtype=np.float32), columns, axis=1)
    counts = np.outer(np.diff(np.append(rows, values.shape[0])), np.diff(np.append(columns, values.shape[1])))
    return np.asarray(sums / counts.reshape(counts.shape + (1,) * (values.ndim - 2)), dtype=np.float32)


def extremes(values: NDArray[np.uint8], cell: int) -> tuple[Singles, Singles]:
    """The least and the greatest value of each cell."""
    rows, columns = _starts(values, cell)
    least = np.minimum.reduceat(np.minimum.reduceat(values, rows, axis=0), columns, axis=1)
    most = np.maximum.reduceat(np.maximum.reduceat(values, rows, axis=0), columns, axis=1)
    return least.astype(np.float32), most.astype(np.float32)


def smoothed(cells: Singles, reach: int = 1) -> Singles:
    """The mean over squares of so many cells to each side; at the sides of the picture its edge goes on."""
    for axis in (0, 1):
        ends = [(0, 0)] * cells.ndim
        ends[axis] = (reach + 1, reach)
        sums = np.cumsum(np.pad(cells, ends, mode="edge"), axis=axis, dtype=np.float64)
        first, last = [slice(None)] * cells.ndim, [slice(None)] * cells.ndim
        first[axis], last[axis] = slice(None, -2 * reach - 1), slice(2 * reach + 1, None)
        cells = ((sums[tuple(last)] - sums[tuple(first)]) / (2 * reach + 1)).astype(np.float32)
    return cells


def greatest(cells: Singles) -> Singles:
    """For each cell the greatest of it and its eight neighbours."""
    for axis in (0, 1):
        there = np.moveaxis(cells, axis, 0)
        out = there.copy()
        np.maximum(out[1:], there[:-1], out=out[1:])
        np.maximum(out[:-1], there[1:], out=out[:-1])
        cells = np.moveaxis(out, 0, axis)
    return cells


def brought_up(cells: Singles, cell: int, band: slice, width: int) -> Singles:
    """Cells brought to the pixels of these rows, straight from centre to centre."""
    box = (0, band.start / cell, min(width / cell, cells.shape[1]), min(band.stop / cell, cells.shape[0]))
    image = Image.fromarray(np.ascontiguousarray(cells))
    return np.asarray(image.resize((width, band.stop - band.start), Image.Resampling.BILINEAR, box=box))


def _starts(values: NDArray[np.generic], cell: int) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    return np.arange(0, values.shape[0], cell), np.arange(0, values.shape[1], cell)
