"""The picture: looks and wish in, a PNG out.

1. arrange   the pads become slabs on a plan, and a view that fits them into the frame
2. backdrop  a sheet of paper, under the shadows of all
3. slabs     undermost first, each under the shadows of those above it: sides, glue, face
4. develop   linear light becomes sRGB, and that a file
"""

import struct
import zlib
from collections.abc import Sequence

import numpy as np

from padspec.base.colour import linear_from_srgb, srgb_from_linear
from padspec.base.geometry import Size
from padspec.draw.deflate import Pixels
from padspec.draw.png import png_file
from padspec.flat_lay.arrangements import arranged, fitted
from padspec.flat_lay.backdrop import lit_backdrop
from padspec.flat_lay.geometry import Window
from padspec.flat_lay.grain import bytes_of
from padspec.flat_lay.light import fall_off
from padspec.flat_lay.paint import Painter
from padspec.flat_lay.shadow import light_left
from padspec.flat_lay.surface import FINER, Canvas
from padspec.flat_lay.wish import PadLook, Wish

_SEED = 4409
#: An sRGB chunk of a PNG, its intent perceptual (ISO/IEC 15948, 11.3.3.5); it stands right behind the header.
_SRGB, _HEADER_END = b"sRGB\x00", 33
_STEPS = 65535
_BAND = 128


def face_ppi(trims: Sequence[Size], thicknesses: Sequence[float], wish: Wish) -> float:
    """The resolution at which faces of pads of these sizes show all that the picture can."""
    nothing = np.zeros((1, 1, 3), np.uint8)
    pads = [PadLook(nothing, trim, 1, thick, board=0) for trim, thick in zip(trims, thicknesses, strict=True)]
    return fitted(arranged(pads, wish), wish).scale * FINER * 25.4


def flat_lay(pads: tuple[PadLook, ...], wish: Wish) -> bytes:
    """A PNG, sRGB, of the pads as they are wished to lie; the same bytes every time.

    `single` and `stack` take one look, `fan` two to nine, from left to right. Raises ValueError for other numbers.
    """
    return _file(flat_lay_pixels(pads, wish))


def flat_lay_pixels(pads: tuple[PadLook, ...], wish: Wish) -> Pixels:
    """The picture before it is a file, shape (height, width, 3); see `flat_lay`."""
    slabs = arranged(pads, wish)
    view = fitted(slabs, wish)
    canvas = Canvas(lit_backdrop(wish.backdrop, wish.frame, view.scale))
    left = light_left(slabs, None, view, Window(0, 0, *wish.frame))
    if left is not None:
        canvas.pixels[...] *= left
    painter = Painter(canvas, view, linear_from_srgb(wish.backdrop.unit).astype(np.float32))
    for place, slab in enumerate(slabs):
        painter.slab(slab, pads[slab.look], slabs[place + 1 :], place)
    return _developed(canvas)


def _developed(canvas: Canvas) -> Pixels:
    """Linear light to 8 bits; a part of a level is decided by grain, so that no band shows in a gradient."""
    width, height = canvas.frame
    curve = (srgb_from_linear(np.arange(_STEPS + 1) / _STEPS) * 255).astype(np.float32)
    lit = fall_off(canvas.frame)
    grain = bytes_of(_SEED, height, width)
    developed = np.empty((height, width, 3), np.uint8)
    for top in range(0, height, _BAND):
        rows = slice(top, top + _BAND)
        light = np.clip(canvas.pixels[rows] * lit[rows, :, None], 0, 1)
        levels = curve[(light * np.float32(_STEPS)).astype(np.uint16)]
        levels += (grain[rows].astype(np.float32) / 256)[..., None]
        developed[rows] = np.minimum(levels, 255)
    return developed


def _file(pixels: Pixels) -> bytes:
    """A PNG that says its colours are sRGB."""
    data = png_file(pixels)
    chunk = struct.pack(">I", len(_SRGB) - 4) + _SRGB + struct.pack(">I", zlib.crc32(_SRGB))
    return data[:_HEADER_END] + chunk + data[_HEADER_END:]
