"""Which pixels are the ground: a flood from the border over all that is near the backdrop's colour."""

from dataclasses import dataclass, replace
from math import ceil, sqrt

import numpy as np
from numpy.typing import NDArray

from padspec.art.cutting.backdrop import Backdrop, Surface, bowed
from padspec.art.cutting.chambers import behind_gaps, enclosed
from padspec.art.cutting.quick_oklab import oklab_distance
from padspec.art.cutting.reach import widened
from padspec.art.cutting.regions import Mask, regions
from padspec.art.pixels import Bytes
from padspec.art.resample import reduced
from padspec.art.trim import VISIBLE_ALPHA

Steps = NDArray[np.uint8]

# A pixel is ground while its OKLab distance is at most this plus half again the border's spread.
_LEAST_TOLERANCE = 0.02
#: Distances are kept as a byte each, in sixteenths of the tolerance.
STEPS = 16
# Left in the ground, a speck of at most this share of the area goes if it is within twice the tolerance,
_FAINT_SHARE = 0.0001
# and one of at most so many pixels if it has less than this share of the picture's usual contrast: the
# ripples that JPEG leaves around an edge, which do not grow with the picture.
_RIPPLE_PIXELS, _RIPPLE_CONTRAST = 64, 0.3
# The flood itself works on no more than this; its edge is then found again in the whole picture.
_MOST_FLOODED = 16_000_000
_BAND_PIXELS = 1_000_000


@dataclass(frozen=True, slots=True, eq=False)
class Flood:
    """What a flood from the border found, each mask of the picture's shape.

    `ground` is to go. `held` is paper of the same colour that an outline encloses, and stays. `backdrop` is
    fitted to all of the ground; `steps` tells how far the pixels of the picture, reduced by `shrink`, are
    from it, in sixteenths of the tolerance.
    """

    ground: Mask
    held: Mask
    backdrop: Backdrop
    steps: Steps
    shrink: int


def flooded(rgba: Bytes, behind: Backdrop) -> Flood:
    """The ground that is reached from the border, and the backdrop as fitted to all of it.

    Places of the ground's colour that the flood does not reach, or only through a small gap in an outline,
    are part of the picture: the white of an eye, a pale belly within its outline.
    """
    shrink = ceil(sqrt(rgba.shape[0] * rgba.shape[1] / _MOST_FLOODED))
    small = np.asarray(reduced(rgba, shrink)) if shrink > 1 else rgba
    surface = behind.surface.over(small.shape[1], small.shape[0])
    tolerance = _LEAST_TOLERANCE + 1.5 * behind.spread
    steps = _steps(small, surface, tolerance)
    ground = _reached(steps)
    if ground.any():
        bent = bowed(surface, small, ground)
        if not bent.resembles(surface):
            again = _steps(small, bent, tolerance)
            more = _reached(again)
            # A bow that loses what was found was bent by a glow that fades into the ground.
            if more.sum() >= ground.sum():
                surface, steps, ground = bent, again, more
    held = behind_gaps(ground)
    ground &= ~held
    held |= enclosed(steps <= STEPS, ground)
    surface = surface.over(rgba.shape[1], rgba.shape[0])
    if shrink > 1:
        ground, held = _enlarged(ground, held, rgba, surface, tolerance, shrink)
    return Flood(ground, held, replace(behind, surface=surface), steps, shrink)


def _reached(steps: Steps) -> Mask:
    """What the flood reaches from the border, and the faint specks left within it."""
    near = regions(steps <= STEPS)
    ground = near.painted(near.touching_border())
    rest = regions(~ground)
    area, peak = rest.areas(), rest.peaks(steps)
    usual = float(np.median(steps[~ground])) if rest.starts.size else 0.0
    faint = (area <= _FAINT_SHARE * ground.size) & (peak <= 2 * STEPS)
    ripple = (area <= _RIPPLE_PIXELS) & (peak <= _RIPPLE_CONTRAST * usual)
    return ground | rest.painted(faint | ripple)


def _steps(rgba: Bytes, surface: Surface, tolerance: float) -> Steps:
    steps = np.empty(rgba.shape[:2], np.uint8)
    rows = max(1, _BAND_PIXELS // rgba.shape[1])
    for top in range(0, rgba.shape[0], rows):
        steps[top : top + rows] = _band_steps(rgba[top : top + rows], surface, top, tolerance)
    return steps


def _band_steps(band: Bytes, surface: Surface, top: int, tolerance: float) -> Steps:
    """How far each pixel is from the ground, in sixteenths of the tolerance; transparency is ground."""
    far = oklab_distance(band, surface.rows(top, top + len(band))) * np.float32(STEPS / tolerance)
    steps = np.minimum(np.ceil(np.round(far, 3)), 255).astype(np.uint8)
    return np.where(band[..., 3] < VISIBLE_ALPHA, np.uint8(0), steps)


def _enlarged(
    ground: Mask, held: Mask, rgba: Bytes, surface: Surface, tolerance: float, shrink: int
) -> tuple[Mask, Mask]:
    """The flood of a reduced picture at full size: sure away from its edge, found again along it."""
    height, width = rgba.shape[:2]
    sure, maybe = ~widened(~ground, 1), widened(ground, 1) & ~held
    whole = np.empty((height, width), np.bool_)
    block = max(1, _BAND_PIXELS // width // shrink)
    for first in range(0, len(ground), block):
        top, foot = first * shrink, min(height, (first + block) * shrink)

        def at_full_size(mask: Mask, first: int = first, rows: int = foot - top) -> Mask:
            return _repeated(mask[first : first + block], shrink)[:rows, :width]

        near = _band_steps(rgba[top:foot], surface, top, tolerance) <= STEPS
        whole[top:foot] = at_full_size(sure) | (at_full_size(maybe) & near)
    return whole, _repeated(held, shrink)[:height, :width] & ~whole


def _repeated(mask: Mask, times: int) -> Mask:
    return mask.repeat(times, axis=0).repeat(times, axis=1)
