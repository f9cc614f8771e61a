"""A picture worked on in bands of rows, shared out among the processor's cores.

Pillow lets go of Python while it works, so that threads help. Every band is worked out by itself and they are
put together in order: what comes out does not depend on how many cores there are or which of them is quicker.
"""

import os
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from itertools import accumulate

import numpy as np
from PIL import Image

from padspec.art.pixels import Bytes


def in_bands(
    rgba: Bytes, rows: int, work: Callable[[Image.Image], Image.Image], mode: str = "RGBA"
) -> Image.Image:
    """The results of `work` on every band of so many rows, one below the other.

    `work` gets the rows as an image of a four-channel `mode`, and may change their number and width.
    """

    def worked(top: int) -> Image.Image:
        band = np.ascontiguousarray(rgba[top : top + rows])
        return work(Image.frombuffer(mode, (band.shape[1], band.shape[0]), band, "raw", mode, 0, 1))

    tops = range(0, rgba.shape[0], rows)
    with ThreadPoolExecutor(min(len(tops), os.cpu_count() or 1)) as pool:
        done = [*pool.map(worked, tops)]
    *starts, height = accumulate((band.height for band in done), initial=0)
    whole = Image.new(done[0].mode, (done[0].width, height))
    for band, start in zip(done, starts, strict=True):
        whole.paste(band, (0, start))
    return whole
