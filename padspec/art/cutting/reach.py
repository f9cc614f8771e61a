"""Masks grown by pixels, and how far every pixel of a mask lies from its edge."""

import numpy as np
from numpy.typing import NDArray

from padspec.art.cutting.regions import Mask

Singles = NDArray[np.float32]


def widened(mask: Mask, reach: int) -> Mask:
    """The mask grown by so many pixels in every direction, corners included.

    Growing doubles what it has, so that the cost rises with the logarithm of the reach.
    """
    wide = mask.copy()
    done = 0
    while done < reach:
        # Grown by `done` to each side, a copy one further away leaves no hole, even cut off at a side.
        step = min(reach - done, done + 1)
        wide = _shifted_both_ways(wide, step, 0)
        wide = _shifted_both_ways(wide, step, 1)
        done += step
    return wide


def rounded(mask: Mask, reach: int) -> Mask:
    """The mask grown by an octagon of so many pixels to each side: near enough to a disc."""
    square = round(0.4 * reach)
    grown = widened(mask, square)
    for _ in range(reach - square):
        cross = grown.copy()
        cross[:, 1:] |= grown[:, :-1]
        cross[:, :-1] |= grown[:, 1:]
        cross[1:] |= grown[:-1]
        cross[:-1] |= grown[1:]
        grown = cross
    return grown


def depth(mask: Mask, most: int) -> Singles:
    """For each pixel of a mask its distance, in pixels, from the nearest pixel outside, up to `most`.

    Beyond the sides of the picture the mask goes on. Exact: the nearest of each column first, then the
    nearest of these along the row. Its cost grows with `most`, so that it is for small pictures.
    """
    column = np.where(mask, np.float32(most), np.float32(0))
    for row in range(1, len(column)):
        np.minimum(column[row], column[row - 1] + 1, out=column[row])
    for row in range(len(column) - 2, -1, -1):
        np.minimum(column[row], column[row + 1] + 1, out=column[row])
    squared = column * column
    nearest = squared.copy()
    for step in range(1, min(most, mask.shape[1] - 1) + 1):
        further = np.float32(step * step)
        np.minimum(nearest[:, step:], squared[:, :-step] + further, out=nearest[:, step:])
        np.minimum(nearest[:, :-step], squared[:, step:] + further, out=nearest[:, :-step])
    return np.asarray(np.minimum(np.sqrt(nearest), np.float32(most)), dtype=np.float32)


def _shifted_both_ways(mask: Mask, step: int, axis: int) -> Mask:
    there = mask if axis == 0 else mask.T
    out = there.copy()
    out[step:] |= there[:-step]
    out[:-step] |= there[step:]
    return out if axis == 0 else out.T
