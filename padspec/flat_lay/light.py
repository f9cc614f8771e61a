"""The light of the studio: a soft box to the upper left, and what the room gives back.

All values were chosen by eye, against photographs of paper by a north window; no published source.
"""

from math import atan, cos, hypot, radians, sin, tan

import numpy as np

from padspec.flat_lay.geometry import Field, Point, Side, Slab, outward

#: How far a shadow falls for each millimetre of height: to the right and towards the viewer.
CAST: Point = (0.64, 0.86)
#: What the soft box gives of all light in red, green and blue; it is warmer than the room, which gives the rest.
KEY = np.array([0.580, 0.570, 0.556], np.float32)
ROOM = np.float32(1) - KEY

_ELEVATION = atan(1 / hypot(*CAST))
#: What a side has of the room, half of which it sees, and of what the table throws back at it.
_ROOM_ON_SIDE, _THROWN_BACK = 1.15, 0.55
#: How much the soft box's light falls off over the picture, and the corners with it.
_FALL_OFF, _CORNERS = 0.13, 0.05


def on_side(slab: Slab, side: Side, table: Field) -> Field:
    """The light on an upright side, in red, green and blue, as a share of that on the table.

    `table` is the linear colour of what it stands on, which tints what it throws back.
    """
    thrown = np.float32(_THROWN_BACK) * (table + table.mean()) / 2
    x, y = outward(slab, side)
    towards = -(x * CAST[0] + y * CAST[1]) / hypot(*CAST) * cos(_ELEVATION)
    key = np.float32(max(towards, 0.0) / sin(_ELEVATION))
    return np.asarray(KEY * key + ROOM * np.float32(_ROOM_ON_SIDE) + thrown, np.float32)


def on_top(slab: Slab) -> Field:
    """The light on the upper side, which leans, as a share of that on the table."""
    slope = (slab.right - slab.left) / slab.width
    angle = radians(slab.turn)
    facing = -slope * cos(angle), -slope * sin(angle)
    towards = -(facing[0] * CAST[0] + facing[1] * CAST[1]) / hypot(*CAST)
    key = np.float32((1 + towards / tan(_ELEVATION)) / (1 + slope * slope) ** 0.5)
    return np.asarray(KEY * key + ROOM, np.float32)


def fall_off(frame: tuple[int, int]) -> Field:
    """How bright each pixel is lit, about 1 in the middle: more to the upper left, less in the corners."""
    width, height = frame
    half = max(width, height) / 2
    x = ((np.arange(width, dtype=np.float32) + 0.5 - width / 2) / half)[None, :]
    y = ((np.arange(height, dtype=np.float32) + 0.5 - height / 2) / half)[:, None]
    along = np.float32(CAST[0] / hypot(*CAST)) * x + np.float32(CAST[1] / hypot(*CAST)) * y
    lit = (
        1 - np.float32(_FALL_OFF) * along * (1 + np.float32(0.25) * along) - np.float32(_CORNERS) * (x * x + y * y)
    )
    return np.asarray(lit, np.float32)
