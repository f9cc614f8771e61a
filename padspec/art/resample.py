"""Pixels brought down to what the printer can use, and handed to the scene as bytes."""

from hashlib import blake2b

import numpy as np
from PIL import Image

from padspec.art.bands import in_bands
from padspec.art.pixels import Bytes, Pixels
from padspec.scene.nodes import Raster

# Few enough for a band to stay in a processor's cache.
_BAND_PIXELS = 200_000


def bring_down(pixels: Pixels, width: int, height: int) -> Pixels:
    """The picture at this many pixels, by Lanczos on premultiplied colour; a side is never enlarged.

    Premultiplied, because a transparent pixel has a colour that nobody is meant to see. It is brought to its
    width band by band and then to its height: a row's width depends on no other row, so that bands leave no
    seam and a picture of 100 megapixels needs little beyond itself.
    """
    width, height = min(width, pixels.width), min(height, pixels.height)
    if width < 1 or height < 1:
        raise ValueError(f"{width} × {height} pixels is no picture")
    if (width, height) == (pixels.width, pixels.height):
        return pixels
    opaque = not pixels.has_transparency

    def narrowed(band: Image.Image) -> Image.Image:
        premultiplied = band if opaque else band.convert("RGBa")
        return premultiplied.resize((width, band.height), Image.Resampling.LANCZOS)

    rows = max(1, _BAND_PIXELS // pixels.width)
    # Opaque rows pass as four plain channels, which saves multiplying and dividing.
    narrow = in_bands(pixels.rgba, rows, narrowed, "RGBX" if opaque else "RGBA")
    small = narrow.resize((width, height), Image.Resampling.LANCZOS)
    del narrow  # half as much as the picture itself, which is still held
    return Pixels(_as_rows(small))


def _as_rows(image: Image.Image) -> Bytes:
    """The pixels of an image as RGBA rows, a few at a time: all at once they would be held three times over."""
    rgba = np.empty((image.height, image.width, 4), np.uint8)
    rows = max(1, _BAND_PIXELS // image.width)
    for top in range(0, image.height, rows):
        foot = min(image.height, top + rows)
        band = image.crop((0, top, image.width, foot))
        rgba[top:foot] = np.asarray(band if band.mode == "RGBX" else band.convert("RGBA"))
    return rgba


def reduced(rgba: Bytes, factor: int) -> Image.Image:
    """The picture by area averages over squares of so many pixels a side, weighted with alpha."""
    rows = max(1, _BAND_PIXELS // rgba.shape[1] // factor) * factor
    return in_bands(rgba, rows, lambda band: band.reduce(factor))


def as_raster(pixels: Pixels, name: str) -> Raster:
    """The picture as a scene node; `name` is the stem of the maker's file.

    Wholly transparent pixels take the colour of the nearest visible ones: a renderer that scales colour
    and soft mask apart then mixes nothing foreign into an edge.
    """
    alpha = pixels.rgba[..., 3].tobytes() if pixels.has_transparency else None
    rgb = _spread_colour(pixels.rgba).tobytes()
    taste = blake2b(f"{pixels.width}x{pixels.height}".encode())
    taste.update(rgb)
    taste.update(alpha or b"")
    return Raster(name, taste.hexdigest()[:8], pixels.width, pixels.height, rgb, alpha)


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
