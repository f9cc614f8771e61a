"""A picture worked on in bands of rows, shared out among the processor's cores.

Pillow lets go of Python while it works, so that threads help. Every band is worked out by itself and they are
put together in order: what comes out does not depend on how many cores there are or which of them is quicker.
"""

import os
from collections import deque
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor

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
        # All bands but the last are as high as the first: those two say how much room is wanted.
        last = pool.submit(worked, tops[-1])
        waiting = deque([*(pool.submit(worked, top) for top in tops[:-1]), last])
        first, foot = waiting[0].result(), last.result()
        whole = Image.new(first.mode, (first.width, first.height * (len(tops) - 1) + foot.height))
        start = 0
        while waiting:
            # Each is let go of when it has its place: all of them at once would take as much as the whole.
            band = waiting.popleft().result()
            whole.paste(band, (0, start))
            start += band.height
    return whole
