"""Proofs and pictures as PNG: a PDF or a picture goes in, pixels or the bytes of a PNG file come out.

Files are written here rather than by an imaging library so that they are deflated where all else is.
"""

import struct
import zlib
from contextlib import closing
from typing import Any

import numpy as np

from padspec.draw.deflate import Pixels, deflated_rows
from padspec.scene.nodes import Raster

_SIGNATURE = b"\x89PNG\r\n\x1a\n"
#: Colour type of a PNG by its channels (ISO/IEC 15948, table 11.1).
_COLOUR_TYPES = {3: 2, 4: 6}
_METRE = 1000 / 25.4
_RED = (214, 28, 36)


def rasterise(pdf: bytes, ppi: float) -> Pixels:
    """The first page over white, shape (height, width, 3), sRGB, exactly `ppi` pixels an inch both ways.

    A last part of a pixel at the right and lower edges is left out: so the scale is true, and the edge
    does not mix with the white under the page.
    """
    import pypdfium2
    import pypdfium2.raw

    # The library carries no types.
    pdfium: Any = pypdfium2
    raw: Any = pypdfium2.raw

    scale = ppi / 72
    with closing(pdfium.PdfDocument(pdf)) as document:
        page = document[0]
        width, height = (max(1, int(side * scale + 1e-3)) for side in page.get_size())
        bitmap = pdfium.PdfBitmap.new_native(width, height, raw.FPDFBitmap_BGR, rev_byteorder=True)
        bitmap.fill_rect((255, 255, 255, 255), 0, 0, width, height)
        matrix = raw.FS_MATRIX(scale, 0, 0, scale, 0, 0)
        raw.FPDF_RenderPageBitmapWithMatrix(
            bitmap, page, matrix, raw.FS_RECTF(0, 0, width, height), raw.FPDF_REVERSE_BYTE_ORDER
        )
        pixels: Pixels = bitmap.to_numpy().copy()
    return pixels


def proof_png(pdf: bytes, ppi: float = 150) -> bytes:
    """The first page as a PNG that knows its resolution."""
    return png_file(rasterise(pdf, ppi), ppi)


def picture_png(raster: Raster) -> bytes:
    """A picture as it prints, with its transparency if it has any."""
    rgb = np.frombuffer(raster.rgb, np.uint8).reshape(raster.height, raster.width, 3)
    if raster.alpha is None:
        return png_file(rgb)
    alpha = np.frombuffer(raster.alpha, np.uint8).reshape(raster.height, raster.width, 1)
    return png_file(np.concatenate([rgb, alpha], axis=2))


def png_file(pixels: Pixels, ppi: float | None = None) -> bytes:
    """A PNG file (ISO/IEC 15948) of pixels with 3 or 4 channels, with its resolution where that is known."""
    height, width, channels = pixels.shape
    chunks = [_chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, _COLOUR_TYPES[channels], 0, 0, 0))]
    if ppi is not None:
        per_metre = round(ppi * _METRE)
        chunks.append(_chunk(b"pHYs", struct.pack(">IIB", per_metre, per_metre, 1)))
    chunks += [_chunk(b"IDAT", deflated_rows(pixels)), _chunk(b"IEND", b"")]
    return _SIGNATURE + b"".join(chunks)


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def mark_failed(pixels: Pixels) -> Pixels:
    """The proof of a design that failed: a red frame and a hatched band from corner to corner.

    Nobody takes it for a good one, and the design still shows through.
    """
    height, width, _ = pixels.shape
    y, x = np.ogrid[:height, :width]
    thick = max(2, min(width, height) // 40)
    frame = (np.minimum(x, width - 1 - x) < thick) | (np.minimum(y, height - 1 - y) < thick)
    # Distance from the falling diagonal, as a share of the way to the other corners.
    off = np.abs((x + 0.5) / width - (y + 0.5) / height)
    line = max(1, thick // 4)
    hatch = ((x + y) % thick < line) | ((x - y) % thick < line)
    edge = (off > 0.1) & (off < 0.12)
    marked = pixels.copy()
    marked[frame | edge | ((off <= 0.1) & hatch)] = _RED
    return marked
