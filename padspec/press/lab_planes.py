"""Three small ICC profiles whose one channel is L*, a* or b* of the connection space, in 16 bits.

The imaging library hands CIELAB on in 8 bits, whole units of a* and b*: too coarse to tell whether two colours
differ by 3 or by 4. A profile with one grey channel is handed on in 16 bits, so each coordinate is taken
through a profile of its own. Formats are those of ICC.1:2010 (ISO 15076-1): header 7.2, lut16 10.8, text
10.20; the encoding of CIELAB in 16 bits is that of version 2 profiles (10.8, legacy encoding).
"""

import struct

import numpy as np

from padspec.base.colour import Floats

#: The white of the connection space, D50 (ICC.1, 7.2.16), as s15Fixed16 numbers.
_D50 = (0xF6D6, 0x10000, 0xD32D)
#: One unit of L*, a* and b* in the 16-bit encoding; a* and b* begin at -128.
_L_UNIT, _AB_UNIT, _AB_ZERO = 0xFF00 / 100, 256.0, 128.0


def plane_profile(axis: int) -> bytes:
    """An output profile with one grey channel that holds coordinate 0, 1 or 2 of CIELAB; the same bytes always."""
    tags = [(b"desc", _description()), (b"cprt", _text(b"none")), (b"wtpt", _white()), (b"B2A0", _lut(axis))]
    table, body = struct.pack(">I", len(tags)), b""
    start = 128 + 4 + 12 * len(tags)
    for signature, data in tags:
        table += struct.pack(">4sII", signature, start + len(body), len(data))
        body += data + bytes(-len(data) % 4)
    return _header(start + len(body)) + table + body


def lab_from_planes(planes: Floats) -> Floats:
    """CIELAB from the three channels, last axis, as 16-bit numbers."""
    lab: Floats = planes / np.array([_L_UNIT, _AB_UNIT, _AB_UNIT]) - np.array([0, _AB_ZERO, _AB_ZERO])
    return lab


def _header(size: int) -> bytes:
    fixed = struct.pack(">I4sI4s4s4s", size, b"\0" * 4, 0x02400000, b"prtr", b"GRAY", b"Lab ")
    date = struct.pack(">6H", 2000, 1, 1, 0, 0, 0)
    rest = struct.pack(">4s4sI4s4sQI3I", b"acsp", b"\0" * 4, 0, b"\0" * 4, b"\0" * 4, 0, 1, *_D50)
    return (fixed + date + rest).ljust(128, b"\0")


def _lut(axis: int) -> bytes:
    """A lut16 from three channels to one: a grid of the eight corners that hands one of the three on."""
    unit = [0x10000 if row == column else 0 for row in range(3) for column in range(3)]
    line = (0, 0xFFFF)
    corners = [0xFFFF * (corner >> (2 - axis) & 1) for corner in range(8)]
    numbers = [*line, *line, *line, *corners, *line]
    return struct.pack(">4sI4B9I2H", b"mft2", 0, 3, 1, 2, 0, *unit, 2, 2) + struct.pack(
        f">{len(numbers)}H", *numbers
    )


def _white() -> bytes:
    return struct.pack(">4sI3I", b"XYZ ", 0, *_D50)


def _text(words: bytes) -> bytes:
    return struct.pack(">4sI", b"text", 0) + words + b"\0"


def _description() -> bytes:
    """A description of one letter, with its empty Unicode and script code parts (ICC.1:2001, 6.5.17)."""
    return struct.pack(">4sII2sIIHB67s", b"desc", 0, 2, b"L\0", 0, 0, 0, 0, b"")
