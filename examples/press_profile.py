"""An ICC profile of an invented four-colour press, for trying out and for tests: `press_profile.py OUT.icc`.

Nobody's press prints like this; ask yours for its own profile before sending work out. The model is that of
Yule and Nielsen with Neugebauer's primaries (see J. A. C. Yule, Principles of Color Reproduction, 1967), where
each primary is the product of its inks on the paper: the sum over the sixteen primaries then factors into one
term an ink. The file is a version 2 profile, ICC.1:2001-04, the same bytes every time.
"""

import struct
import sys
from itertools import product
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

#: Reflectance of solid cyan, magenta, yellow and black in X, Y and Z, the paper being 1.
SOLIDS = np.array([[0.16, 0.24, 0.68], [0.36, 0.17, 0.22], [0.82, 0.86, 0.08], [0.028, 0.028, 0.028]])
#: How far light spreads in the paper (Yule and Nielsen's n), and how much a half tone gains.
SPREAD, GAIN = 1.4, 0.16
#: XYZ under D50 of the paper, an uncoated sheet slightly yellow, and of the connection space.
PAPER, D50 = np.array([0.812, 0.840, 0.655]), np.array([0.9642, 1.0, 0.8249])
#: No place takes more ink than this in all, and no more black than this unless it is asked for by itself.
MOST_INK, MOST_BLACK = 2.8, 0.95
DESCRIPTION = b"Invented uncoated press, 280 %"

_INK_GRID, _LAB_GRID, _GAMUT_GRID, _CURVE = 9, 17, 9, 256


def printed_xyz(inks: Floats) -> Floats:
    """XYZ relative to the paper (paper = D50 white) that amounts of ink, 0 to 1, last axis, print."""
    covered = inks + 4 * GAIN * inks * (1 - inks)
    terms = 1 - covered[..., None] * (1 - SOLIDS ** (1 / SPREAD))
    xyz: Floats = terms.prod(axis=-2) ** SPREAD * D50
    return xyz


def printed_lab(inks: Floats) -> Floats:
    """CIELAB under D50 relative to the paper (CIE 15) of the same."""
    t = printed_xyz(inks) / D50
    f = np.where(t > 216 / 24389, np.cbrt(t), (24389 / 27 * t + 16) / 116)
    return np.stack([116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])], axis=-1)


def separated(lab: Floats) -> tuple[Floats, Floats]:
    """Amounts of ink, shape (n, 4), for colours, shape (n, 3), and how far off each prints (CIELAB distance).

    Black is taken up by lightness and chroma; the other three are then solved for. What the press cannot
    print loses chroma, its lightness and hue kept, until it can.
    """
    held = lab.copy()
    held[:, 0] = np.maximum(lab[:, 0], _darkest())
    low, high = np.zeros(len(lab)), np.ones(len(lab))
    inks, off = _solved(held)
    for _ in range(7):
        tried = np.where(off < 0.5, high, (low + high) / 2)
        paler = held * np.stack([np.ones_like(tried), tried, tried], axis=1)
        _, missed = _solved(paler)
        fits = missed < 0.5
        low, high = np.where(fits, tried, low), np.where(fits, high, tried)
    final = np.where(off < 0.5, 1.0, low)
    inks, _ = _solved(held * np.stack([np.ones_like(final), final, final], axis=1))
    return inks, np.linalg.norm(printed_lab(inks) - lab, axis=1)


def _darkest() -> float:
    return float(printed_lab(np.array([0.6, 0.6, 0.6, MOST_BLACK]))[0])


def _solved(lab: Floats) -> tuple[Floats, Floats]:
    """Cyan, magenta and yellow by Newton's method, held between 0 and 1, black given; and what is left over."""
    black = _black(lab)
    inks = np.concatenate([np.full((len(lab), 3), 0.3), black[:, None]], axis=1)
    step = 1e-4
    for _ in range(10):
        here = printed_lab(inks)
        slopes = np.stack([(printed_lab(inks + step * np.eye(4)[ink]) - here) / step for ink in range(3)], axis=-1)
        damped = slopes.transpose(0, 2, 1) @ slopes + 0.02 * np.eye(3)
        right = slopes.transpose(0, 2, 1) @ (lab - here)[..., None]
        inks[:, :3] = np.clip(inks[:, :3] + np.linalg.solve(damped, right)[..., 0], 0, 1)
    room = (MOST_INK - inks[:, 3]) / np.maximum(inks[:, :3].sum(axis=1), 1e-9)
    inks[:, :3] *= np.minimum(1, room)[:, None]
    return inks, np.linalg.norm(printed_lab(inks) - lab, axis=1)


def _black(lab: Floats) -> Floats:
    chroma = np.hypot(lab[:, 1], lab[:, 2])
    black: Floats = MOST_BLACK * np.clip((75 - lab[:, 0]) / 65, 0, 1) ** 1.7 * np.clip(1.1 - chroma / 40, 0, 1)
    return black


def profile_bytes() -> bytes:
    """The profile as the bytes of a file."""
    to_lab, relative, perceptual = _device_table(), _inks_table(compress=False), _inks_table(compress=True)
    tags = {
        b"desc": _description(DESCRIPTION),
        b"cprt": struct.pack(">4sI", b"text", 0) + b"No copyright, use freely\0",
        b"wtpt": struct.pack(">4sI3i", b"XYZ ", 0, *_fixed(PAPER)),
        b"A2B0": to_lab,
        b"A2B1": to_lab,
        b"A2B2": to_lab,
        b"B2A0": perceptual,
        b"B2A1": relative,
        b"B2A2": perceptual,
        b"gamt": _gamut_table(),
    }
    start = 128 + 4 + 12 * len(tags)
    table, body = struct.pack(">I", len(tags)), b""
    places: dict[bytes, int] = {}
    for signature, data in tags.items():
        if data not in places:
            places[data] = start + len(body)
            body += data + bytes(-len(data) % 4)
        table += struct.pack(">4sII", signature, places[data], len(data))
    return _header(start + len(body)) + table + body


def _header(size: int) -> bytes:
    head = struct.pack(">I4sI4s4s4s6H", size, b"", 0x02400000, b"prtr", b"CMYK", b"Lab ", 2000, 1, 1, 0, 0, 0)
    return (head + struct.pack(">4s4sI4s4sQI3i", b"acsp", b"", 0, b"", b"", 0, 1, *_fixed(D50))).ljust(128, b"\0")


def _device_table() -> bytes:
    """Inks to CIELAB: gain in the input curves, the paper's spread in the grid."""
    curve = np.linspace(0, 1, _CURVE)
    gained = curve + 4 * GAIN * curve * (1 - curve)
    nodes = np.array(list(product(np.linspace(0, 1, _INK_GRID), repeat=4)))
    # The grid lies on amounts as they print; the amount that gains to a node is the root of a square.
    asked = ((1 + 4 * GAIN) - np.sqrt((1 + 4 * GAIN) ** 2 - 16 * GAIN * nodes)) / (8 * GAIN)
    return _lut16([gained] * 4, _encoded(printed_lab(asked)), _INK_GRID, 3)


def _inks_table(compress: bool) -> bytes:
    """CIELAB to inks; for the perceptual table, all of lightness is first brought into what prints."""
    lab = _lab_nodes(_LAB_GRID)
    if compress:
        dark = _darkest()
        lab = np.stack([dark + lab[:, 0] * (100 - dark) / 100, lab[:, 1] * 0.92, lab[:, 2] * 0.92], axis=1)
    inks, _ = separated(lab)
    inks[(lab[:, 0] >= 100) & (lab[:, 1:] == 0).all(axis=1)] = 0
    return _lut16([np.linspace(0, 1, 2)] * 3, inks, _LAB_GRID, 4)


def _gamut_table() -> bytes:
    """CIELAB to 0 where it prints and 1 where it does not (ICC.1:2001-04, 6.4.18)."""
    _, off = separated(_lab_nodes(_GAMUT_GRID))
    return _lut16([np.linspace(0, 1, 2)] * 3, (off > 3).astype(float)[:, None], _GAMUT_GRID, 1)


def _lab_nodes(grid: int) -> Floats:
    """CIELAB at the nodes of a grid over the whole 16-bit encoding."""
    steps = np.linspace(0, 0xFFFF, grid)
    nodes = np.array(list(product(steps, repeat=3)))
    return nodes / np.array([0xFF00 / 100, 256, 256]) - np.array([0, 128, 128])


def _encoded(lab: Floats) -> Floats:
    """CIELAB as shares of the 16-bit encoding of version 2 profiles (ICC.1:2001-04, annex A)."""
    encoded: Floats = (lab + np.array([0, 128, 128])) * np.array([0xFF00 / 100, 256, 256]) / 0xFFFF
    return encoded


def _lut16(curves: list[Floats], nodes: Floats, grid: int, outputs: int) -> bytes:
    """A lut16 element (ICC.1:2001-04, 6.5.8); the first channel varies least, output curves are straight."""
    unit = [0x10000 if row == column else 0 for row in range(3) for column in range(3)]
    head = struct.pack(">4sI4B9i2H", b"mft2", 0, len(curves), outputs, grid, 0, *unit, len(curves[0]), 2)
    numbers = np.concatenate([np.concatenate(curves), nodes.ravel(), np.tile([0.0, 1.0], outputs)])
    # Rounded before they are cut to whole numbers, so that every machine writes the same.
    whole = np.floor(np.round(np.clip(numbers, 0, 1) * 0xFFFF, 3) + 0.5)
    return head + whole.astype(">u2").tobytes()


def _description(words: bytes) -> bytes:
    text = words + b"\0"
    return struct.pack(">4sII", b"desc", 0, len(text)) + text + struct.pack(">IIHB67s", 0, 0, 0, 0, b"")


def _fixed(numbers: Floats) -> list[int]:
    return [round(float(number) * 0x10000) for number in numbers]


if __name__ == "__main__":
    Path(sys.argv[1]).write_bytes(profile_bytes())
