"""A picture as a handful of weighted colours: what the palette and the lead hue are measured on."""

from dataclasses import dataclass
from math import ceil

import numpy as np
from PIL import Image

from padspec.art.pixels import Pixels
from padspec.art.resample import reduced
from padspec.base.colour import Floats, oklab_from_srgb

# About as many samples to a side as a thumbnail has: accents of a thousandth of the area still show.
_SAMPLES_A_SIDE = 160


@dataclass(frozen=True, slots=True, eq=False)
class Swatch:
    """The different 8-bit colours of a reduced picture, sorted.

    `rgb` has the shape (n, 3) in sRGB between 0 and 1, `lab` the same in OKLab, `weight` (n,) the visible
    area of each, summing to 1; n is 0 for a wholly transparent picture.
    """

    rgb: Floats
    lab: Floats
    weight: Floats


def swatch(pixels: Pixels) -> Swatch:
    """The picture reduced by area averages weighted with alpha, and its colours counted."""
    longer = max(pixels.width, pixels.height)
    factor = max(1, ceil(longer / (2 * _SAMPLES_A_SIDE)))
    shrink = min(1.0, _SAMPLES_A_SIDE / longer)
    small = reduced(pixels.rgba, factor)
    size = (max(1, round(pixels.width * shrink)), max(1, round(pixels.height * shrink)))
    rgba = np.asarray(small.resize(size, Image.Resampling.BOX)).reshape(-1, 4).astype(np.int64)
    codes = rgba[:, 0] << 16 | rgba[:, 1] << 8 | rgba[:, 2]
    seen = rgba[:, 3] > 0
    colours, which = np.unique(codes[seen], return_inverse=True)
    area = np.bincount(which, rgba[seen, 3], colours.size)
    rgb = np.stack([colours >> 16, colours >> 8 & 255, colours & 255], axis=1) / 255
    return Swatch(rgb, np.round(oklab_from_srgb(rgb), 9), area / max(area.sum(), 1))
