"""Where pixels changed, as a few boxes."""

import numpy as np
from numpy.typing import NDArray

from padspec.base.geometry import Box

#: So many boxes are told; changes nearer than this, in mm, count as one.
MOST, _NEAR = 3, 2.0


def regions(changed: NDArray[np.bool_], per_mm: float, most: int = MOST) -> tuple[Box, ...]:
    """The boxes around the largest groups of changed pixels, in pixels, the one with most pixels first."""
    if not changed.any():
        return ()
    from scipy import ndimage

    near = max(1, round(_NEAR * per_mm / 2))
    grown = ndimage.binary_dilation(changed, np.ones((3, 3), bool), iterations=near)
    groups, number = ndimage.label(grown, np.ones((3, 3), int))
    groups = np.where(changed, groups, 0)
    counts = np.bincount(groups.ravel(), minlength=number + 1)[1:]
    spots = ndimage.find_objects(groups, number)
    # The place breaks a tie, so that the order never hangs on how groups are numbered.
    found = sorted((-int(count), _box(spot)) for count, spot in zip(counts, spots, strict=True) if spot)
    return tuple(Box(*numbers) for _, numbers in found[:most])


def _box(spot: tuple[slice, slice]) -> tuple[int, int, int, int]:
    rows, columns = spot
    return columns.start, rows.start, columns.stop - columns.start, rows.stop - rows.start
