"""The empty rim taken off: a picture is placed by what shows of it."""

import numpy as np

from padspec.art.errors import ArtError
from padspec.art.pixels import Pixels

#: An alpha below this (3 %) is taken for empty: it is less than paper and ink show.
VISIBLE_ALPHA = 8


def trim_empty(pixels: Pixels, alpha_at_least: int = VISIBLE_ALPHA) -> Pixels:
    """The picture cropped to the rows and columns that hold a pixel of at least this alpha.

    Raises ArtError for a picture with no such pixel.
    """
    seen = pixels.rgba[..., 3] >= alpha_at_least
    rows, columns = np.flatnonzero(seen.any(axis=1)), np.flatnonzero(seen.any(axis=0))
    if rows.size == 0:
        raise ArtError(
            f"The picture is wholly transparent: none of its {pixels.width} × {pixels.height} pixels is at"
            f" least {100 * alpha_at_least / 255:.0f} % opaque.",
            "Save it again with its layers visible, or with cutout: none if the cut-out took it all.",
        )
    top, bottom, left, right = rows[0], rows[-1] + 1, columns[0], columns[-1] + 1
    return Pixels(pixels.rgba[top:bottom, left:right])
