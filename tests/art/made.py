"""Pictures that the tests of this stage make: files of every form, creatures whose true alpha is known."""

import io
import struct
import zlib

import numpy as np
from PIL import Image

from padspec.art.pixels import Pixels

SVG = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 200 160">'


def saved(image, form, **options):
    """The bytes of a picture saved by Pillow."""
    out = io.BytesIO()
    image.save(out, form, **options)
    return out.getvalue()


def png(samples, bits, colour_type, *chunks):
    """A PNG written here, chunk by chunk (ISO/IEC 15948), from samples of the shape (h, w, channels)."""
    height, width = samples.shape[:2]
    if bits == 16:
        rows = samples.astype(">u2").reshape(height, -1).view(np.uint8)
    elif bits == 8:
        rows = samples.astype(np.uint8).reshape(height, -1)
    else:
        flat = samples.reshape(height, -1).astype(np.uint8)
        single = np.unpackbits(flat[..., None], axis=2)[..., 8 - bits :].reshape(height, -1)
        rows = np.packbits(single, axis=1)
    raw = b"".join(b"\0" + row.tobytes() for row in rows)
    header = struct.pack(">IIBBBBB", width, height, bits, colour_type, 0, 0, 0)
    parts = [(b"IHDR", header), *chunks, (b"IDAT", zlib.compress(raw)), (b"IEND", b"")]
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))
        for kind, body in parts
    )


def opaque(rgb):
    """Pixels from an RGB array."""
    rgb = np.asarray(rgb, np.uint8)
    return Pixels(np.dstack([rgb, np.full(rgb.shape[:2], 255, np.uint8)]))


def swapped_profile():
    """An ICC v2 matrix profile whose red, green and blue are sRGB's green, blue and red, gamma 1 apart.

    Written here (ICC.1:2001-04), so that a picture which honours it visibly turns colour.
    """

    def xyz(x, y, z):
        return b"XYZ \0\0\0\0" + struct.pack(">iii", *(round(v * 65536) for v in (x, y, z)))

    def curve(gamma):
        return b"curv\0\0\0\0" + struct.pack(">IH", 1, round(gamma * 256)) + b"\0\0"

    # sRGB's primaries adapted to D50, as the ICC's own sRGB profiles state them.
    red, green, blue = (0.4361, 0.2225, 0.0139), (0.3851, 0.7169, 0.0971), (0.1431, 0.0606, 0.7141)
    text = b"desc\0\0\0\0" + struct.pack(">I", 8) + b"swapped\0" + b"\0" * 79
    tags = [
        (b"desc", text),
        (b"cprt", b"text\0\0\0\0none\0"),
        (b"wtpt", xyz(0.9642, 1, 0.8249)),
        (b"rXYZ", xyz(*green)),
        (b"gXYZ", xyz(*blue)),
        (b"bXYZ", xyz(*red)),
        *((name, curve(2.2)) for name in (b"rTRC", b"gTRC", b"bTRC")),
    ]
    offset, table, body = 128 + 4 + 12 * len(tags), b"", b""
    for name, value in tags:
        value += b"\0" * (-len(value) % 4)
        table += name + struct.pack(">II", offset + len(body), len(value))
        body += value
    size = offset + len(body)
    head = struct.pack(">I4sI4s4s4s", size, b"none", 0x02100000, b"mntr", b"RGB ", b"XYZ ")
    head += struct.pack(">6H", 2000, 1, 1, 0, 0, 0) + b"acsp" + b"\0" * 24
    head += struct.pack(">I3i", 0, 63190, 65536, 54061)
    head = head.ljust(128, b"\0")
    return head + struct.pack(">I", len(tags)) + table + body


def creature(size, fill, blur=0.5):
    """A wobbly blob: its alpha (h, w) and its own colour (h, w, 3), softly textured, both 0 to 1."""
    y, x = (np.mgrid[:size, :size] + 0.5) / size
    edge = (0.35 - np.hypot(y - 0.5, x - 0.5 + 0.1 * np.sin(9 * y))) * size
    texture = 0.06 * np.sin(x * size / 9) * np.sin(y * size / 13)
    return np.clip(edge / blur / 2 + 0.5, 0, 1), np.clip(np.array(fill) / 255 + texture[..., None], 0, 1)


def over(alpha, colour, ground):
    """Composited in sRGB over one colour of 0 to 255; gives 0 to 255."""
    alpha = alpha[..., None]
    return 255 * (alpha * colour + (1 - alpha) * np.array(ground) / 255)


def shot(alpha, colour, ground, noise=0.0, jpeg=None):
    """The creature on its ground as pixels, with grain of this sigma and JPEG of this quality."""
    rgb = over(alpha, colour, ground)
    rgb = rgb + np.random.default_rng(7).normal(0, noise, rgb.shape) if noise else rgb
    rgb = np.clip(np.round(rgb), 0, 255).astype(np.uint8)
    if jpeg:
        rgb = np.asarray(Image.open(io.BytesIO(saved(Image.fromarray(rgb), "JPEG", quality=jpeg))))
    return opaque(rgb)
