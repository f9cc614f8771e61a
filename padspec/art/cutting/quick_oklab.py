"""OKLab distances of whole pictures in single precision: as in base, several times as fast.

Channel by channel, in one fixed order of sums, so that no matrix library decides about the last bits.
"""

import numpy as np
from numpy.typing import NDArray

from padspec.art.pixels import Bytes
from padspec.base.colour import LMS_FROM_RGB, OKLAB_FROM_LMS, linear_from_srgb

Singles = NDArray[np.float32]

_LINEAR = linear_from_srgb(np.arange(256) / 255).astype(np.float32)
_TO_LMS = LMS_FROM_RGB.astype(np.float32)
_TO_OKLAB = OKLAB_FROM_LMS.astype(np.float32)


def oklab_distance(rgb: Bytes, lab: Singles) -> Singles:
    """The OKLab distance of 8-bit sRGB pixels from colours of the same or a broadcast shape (…, 3).

    Of the pixels' last axis the first three are read.
    """
    linear = [_LINEAR[rgb[..., channel]] for channel in range(3)]
    cones = [np.cbrt(_mixed(row, linear)) for row in _TO_LMS]
    squares = [np.square(_mixed(row, cones) - lab[..., axis]) for axis, row in enumerate(_TO_OKLAB)]
    return np.asarray(np.sqrt(squares[0] + squares[1] + squares[2]), dtype=np.float32)


def _mixed(row: Singles, planes: list[Singles]) -> Singles:
    mixed: Singles = row[0] * planes[0] + row[1] * planes[1] + row[2] * planes[2]
    return mixed
