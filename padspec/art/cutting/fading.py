"""Where a picture fades into its ground instead of ending at an edge: a wash, a glow, a smudge.

Seen in small square cells, so that grain averages out. Along an edge the difference from the ground jumps
within a cell or two; along a fade it goes on rising, cell by cell.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.art.cutting.cells import Singles, extremes, greatest, in_cells, smoothed
from padspec.art.cutting.reach import widened
from padspec.art.cutting.regions import Mask, regions

Steps = NDArray[np.uint8]

# A picture has about so many cells along its longer side, of at least so many pixels: what is narrower
# than two cells is an edge, however blurred.
_CELLS, _LEAST_CELL = 400, 4
#: The rise is followed over so many cells.
FOLLOWED = 4
# A fade has at most this share of its rise within one cell, and at least that in each that follows.
_MOST_AT_ONCE, _LEAST_GOING_ON = 0.55, 0.08
# Rises of less than this (in steps, sixteenths of the tolerance) cannot be told from unevenness.
_LEAST_RISE = 3.0
# Steps end at 255: a rise that comes so near is over.
_FULL = 240.0
# A cell holds lines or flecks where its greatest value exceeds what its neighbours reach on average by this
# share of it, and by this.
_FINE_SHARE, _FINE_LEAST = 0.3, 12.0
# A cell holds an edge where its values span this share of the greatest within two cells, and at least this.
_STEEP_SHARE, _STEEP_LEAST = 0.5, 16.0


@dataclass(frozen=True, slots=True, eq=False)
class Fading:
    """The boundary between ground and picture, in cells of `cell` pixels a side.

    `soft` are the cells of the boundary where the picture fades, `share` (0 to 1) their share of it all;
    `ground` and `sharp` the cells that are ground, and those that hold an edge.
    """

    cell: int
    soft: Mask
    share: float
    ground: Mask
    sharp: Mask


def fading(ground: Mask, held: Mask, steps: Steps, shrink: int) -> Fading:
    """Where the boundary of a flood is soft.

    `steps` are the flood's distances from the ground, of the picture reduced by `shrink`; the masks are at
    full size.
    """
    cell = max(_LEAST_CELL, -(-max(steps.shape) // _CELLS))
    mean = in_cells(steps, cell)
    is_ground = in_cells(ground[::shrink, ::shrink], cell) > 0.5
    sharp = _sharp(steps, mean, is_ground, cell)
    # Paper is held by an outline; a pale place within a wash is not.
    paper = regions(in_cells(held[::shrink, ::shrink], cell) > 0)
    sharp |= paper.painted(paper.peaks(widened(sharp, 1).view(np.uint8)) > 0)
    boundary = is_ground & widened(~is_ground, 1)
    soft = boundary & _goes_on(smoothed(mean), boundary) & ~widened(sharp, 1)
    share = round(float(soft.sum() / max(1, boundary.sum())), 4)
    return Fading(cell * shrink, soft, share, is_ground, sharp)


def _sharp(steps: Steps, mean: Singles, ground: Mask, cell: int) -> Mask:
    """Cells that hold an edge, a line or flecks."""
    trough, peak = extremes(steps, cell)
    # What grain alone makes of the greatest of a cell.
    grain = float(np.median((peak - mean)[ground])) if ground.any() else 0.0
    around = greatest(mean)
    fine = peak - around - grain > np.maximum(_FINE_LEAST, _FINE_SHARE * around)
    # An edge may lie between two cells.
    span = np.maximum(peak - trough - 2 * grain, around - mean)
    limit = np.maximum(_STEEP_LEAST, _STEEP_SHARE * greatest(greatest(peak - grain)))
    return np.asarray(fine | (span > limit))


def _goes_on(mean: Singles, boundary: Mask) -> Mask:
    """Whether, from these cells, the greatest difference nearby goes on rising as one looks further."""
    found, rises = greatest(mean), []
    before = np.where(boundary, mean, np.float32(0))
    for _ in range(FOLLOWED):
        rises.append(found - before)
        before, found = found, greatest(found)
    rise = np.stack(rises)
    whole = rise.sum(axis=0)
    reached = np.cumsum(rise, axis=0)[:-1]
    going_on = ((rise[1:] >= _LEAST_GOING_ON * whole) | (reached >= _FULL)).all(axis=0)
    return np.asarray((whole >= _LEAST_RISE) & going_on & (rise.max(axis=0) <= _MOST_AT_ONCE * whole))
