"""Pads whose every pixel is known, and a picture's light taken apart."""

import numpy as np

from padspec.base.colour import Colour
from padspec.base.geometry import Size
from padspec.flat_lay.wish import PadLook, Wish

GREEN = Colour(150, 190, 160)


def plain_look(
    colour: tuple[int, int, int] = (240, 225, 210),
    trim: Size | None = None,
    leaves: int = 50,
    caliper: float = 0.12,
) -> PadLook:
    """A pad with one colour all over, 4 pixels a millimetre."""
    size = trim or Size(60, 90)
    face = np.full((round(size.height * 4), round(size.width * 4), 3), colour, np.uint8)
    return PadLook(face, size, leaves, caliper)


def patched_look() -> PadLook:
    """A pad of 60 × 90 mm with fields of 15 mm in unlike colours: a picture of it can be told from any other."""
    rows, columns = np.mgrid[0:6, 0:4]
    fields = np.stack([60 + 45 * columns, 230 - 35 * rows, 90 + 20 * rows + 15 * columns], axis=-1).astype(
        np.uint8
    )
    return PadLook(np.repeat(np.repeat(fields, 60, axis=0), 60, axis=1), Size(60, 90), 50, 0.12)


def wish(arrange: str = "single", size: int = 300, turn: float = 0.0, shape: str = "square") -> Wish:
    return Wish(GREEN, arrange, size, shape, turn)
