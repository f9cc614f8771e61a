"""Pixels brought down to what the printer can use, and handed to the scene as bytes."""

from hashlib import blake2b
from math import ceil

import numpy as np
from PIL import Image

from padspec.art.pixels import Bytes, Pixels
from padspec.scene.nodes import Raster

# Lanczos looks this many target pixels to either side.
_REACH = 3
_BAND_PIXELS = 8_000_000


def bring_down(pixels: Pixels, width: int, height: int) -> Pixels:
    """The picture at this many pixels, by Lanczos on premultiplied colour; a side is never enlarged.

    Premultiplied, because a transparent pixel has a colour that nobody is meant to see. The work goes
    band by band, so that a picture of 100 megapixels needs little beyond itself.
    """
    width, height = min(width, pixels.width), min(height, pixels.height)
    if width < 1 or height < 1:
        raise ValueError(f"{width} × {height} pixels is no picture")
    if (width, height) == (pixels.width, pixels.height):
        return pixels
    opaque = not pixels.has_transparency
    out = np.empty((height, width, 4), np.uint8)
    scale = pixels.height / height
    rows = max(1, int(_BAND_PIXELS / pixels.width / scale))
    for top in range(0, height, rows):
        foot = min(height, top + rows)
        out[top:foot] = _band(pixels.rgba, (top, foot), scale, width, opaque)
    return Pixels(out)


def as_raster(pixels: Pixels, name: str) -> Raster:
    """The picture as a scene node; `name` is the stem of the maker's file.

    Wholly transparent pixels take the colour of the nearest visible ones: a renderer that scales colour
    and soft mask apart then mixes nothing foreign into an edge.
    """
    alpha = np.ascontiguousarray(pixels.rgba[..., 3]).tobytes() if pixels.has_transparency else None
    rgb = np.ascontiguousarray(_spread_colour(pixels.rgba)).tobytes()
    taste = blake2b(f"{pixels.width}x{pixels.height}".encode())
    taste.update(rgb)
    taste.update(alpha or b"")
    return Raster(name, taste.hexdigest()[:8], pixels.width, pixels.height, rgb, alpha)


def _band(rgba: Bytes, rows: tuple[int, int], scale: float, width: int, opaque: bool) -> Bytes:
    """Target rows from the source rows under them and within the filter's reach around them."""
    margin = ceil(_REACH * scale) + 1
    first = max(0, int(rows[0] * scale) - margin)
    last = min(rgba.shape[0], ceil(rows[1] * scale) + margin)
    source = np.ascontiguousarray(rgba[first:last])
    size = (source.shape[1], source.shape[0])
    box = (0, rows[0] * scale - first, size[0], min(rows[1] * scale - first, size[1]))
    target = (width, rows[1] - rows[0])
    # Opaque rows pass as four plain channels, which saves multiplying and dividing.
    mode = "RGBX" if opaque else "RGBA"
    image = Image.frombuffer(mode, size, source, "raw", mode, 0, 1)
    if opaque:
        return np.asarray(image.resize(target, Image.Resampling.LANCZOS, box))
    return np.asarray(image.convert("RGBa").resize(target, Image.Resampling.LANCZOS, box).convert("RGBA"))


def _spread_colour(rgba: Bytes) -> Bytes:
    """RGB with the colours of visible pixels spread into the wholly transparent ones.

    A transparent pixel takes the alpha-weighted mean of the smallest block of 2ⁿ × 2ⁿ pixels that shows
    anything, or white. Far from the picture the blocks are large and flat, so that they deflate to nothing.
    """
    if rgba[..., 3].all():
        return rgba[..., :3]
    size = (rgba.shape[1], rgba.shape[0])
    levels = [Image.frombuffer("RGBA", size, np.ascontiguousarray(rgba), "raw", "RGBA", 0, 1)]
    while max(levels[-1].size) > 1:
        levels.append(levels[-1].reduce(2))
    coarse = np.full((1, 1), 0xFFFFFFFF, np.uint32)
    for level in reversed(levels):
        # One number for each pixel: four bytes are copied as quickly as one.
        fine = np.asarray(level).view(np.uint32)[..., 0]
        twice = coarse.repeat(2, axis=0).repeat(2, axis=1)[: fine.shape[0], : fine.shape[1]]
        coarse = np.where(np.asarray(level)[..., 3] > 0, fine, twice)
    return coarse[..., None].view(np.uint8)[..., :3]
