"""Shadows: what a surface loses of the soft box's light and of the room's, by all that stands over it.

A slab is cut into levels. Each is moved along the light by its height over the surface and blurred the more the
higher it is, as a wide lamp does; the union of all is what the soft box does not reach. What the room
gives is lost near by and evenly around: a wide dimness, and a dark line where things touch.
"""

from collections.abc import Sequence

import numpy as np

from padspec.base.geometry import Affine
from padspec.flat_lay.geometry import Field, Point, Slab, View, Window, coverage, own_coordinates, window
from padspec.flat_lay.light import CAST, KEY, ROOM

#: A pixel of the shadow, in mm: nothing in it is finer.
_GRAIN = 0.5
_LEVELS = (0.1, 0.4, 0.7, 1.0)
#: Spread of the soft box's shadow, in mm and for each mm of height (a standard deviation).
_SHARPEST, _SPREAD = 0.45, 0.30
#: The room's: how wide for each mm of height and at most, and how much of it is moved along the light.
_WIDE, _WIDEST, _ASIDE = 1.25, 26.0, 0.3
#: How deep it is, and how deep where two things touch.
_AROUND, _TOUCH = np.float32(0.62), np.float32(0.55)
#: How fast the line of touch fades with height, in mm.
_LIFTED = 1.5


def light_left(casters: Sequence[Slab], under: Slab | None, view: View, part: Window) -> Field | None:
    """What is left of the light on a surface, shape (height, width, 3) of a window; None where nothing is lost.

    `under` is the slab whose upper side is meant, None for the table.
    """
    if not casters or 0 in part.size:
        return None
    step = max(1, round(view.scale * _GRAIN))
    width, height = part.size
    low = View(view.scale / step, ((view.origin[0] - part.left) / step, (view.origin[1] - part.top) / step))
    frame = (-(-width // step), -(-height // step))
    key, room = np.zeros(frame[::-1], np.float32), np.zeros(frame[::-1], np.float32)
    for caster in casters:
        _cast(caster, under, low, key, room)
    box = (0.0, 0.0, width / step, height / step)
    lost_key, lost_room = _enlarged(key, part.size, box), _enlarged(room, part.size, box)
    return 1 - lost_key[..., None] * KEY - lost_room[..., None] * ROOM


def _cast(caster: Slab, under: Slab | None, view: View, key: Field, room: Field) -> None:
    """Deepen both losses by those of one caster."""
    lifts = _lifts(caster, under)
    for level in _LEVELS if caster.thickness > 2 * _GRAIN else (1.0,):
        heights = tuple(lift + level * caster.thickness for lift in lifts)
        spreads = tuple(_SHARPEST + _SPREAD * height for height in heights)
        np.maximum(key, _soft(caster, under, heights, spreads, 1.0, view, key.shape), out=key)
    heights = tuple(lift + caster.thickness for lift in lifts)
    spreads = tuple(min(_WIDE * height, _WIDEST) for height in heights)
    around = _soft(caster, under, heights, spreads, _ASIDE, view, room.shape)
    touch = _soft(caster, under, (0.0, 0.0), (2 * _SHARPEST, 2 * _SHARPEST), 0.0, view, room.shape, lifts)
    thick = np.float32(min(1.0, caster.thickness / 2))
    lost = 1 - (1 - _AROUND * thick * around) * (1 - _TOUCH * max(thick, np.float32(0.4)) * touch)
    np.maximum(room, lost, out=room)


def _lifts(caster: Slab, under: Slab | None) -> tuple[float, float]:
    """How far the underside is above the surface at its left and right edges, no less than 0."""
    lifts = []
    for u in (0.0, caster.width):
        below = 0.0 if under is None else under.height_at(*caster.plan(u, caster.height / 2))
        lifts.append(max(0.0, caster.underside(u) - below))
    return lifts[0], lifts[1]


def _soft(
    caster: Slab,
    under: Slab | None,
    heights: tuple[float, ...],
    spreads: tuple[float, ...],
    cast: float,
    view: View,
    shape: tuple[int, ...],
    fading: tuple[float, ...] = (0.0, 0.0),
) -> Field:
    """The outline of a level as it falls on the surface, 0 to 1, sharper at one edge than at the other.

    Heights, spreads (mm) and lifts over which it is `fading` are those at the left and the right edge; `cast` is
    how much of the way it is moved along the light.
    """
    outline = _outline(caster, under, heights, cast, view)
    soft = np.zeros(shape, np.float32)
    part = window(outline, (shape[1], shape[0]), 3 * max(spreads) * view.scale + 2)
    if 0 in part.size:
        return soft
    solid = coverage(outline, part)
    near = _blurred(solid, spreads[0] * view.scale)
    if round(spreads[0] - spreads[1], 6) or round(fading[0] - fading[1], 6):
        (x, y), (x1, y1), _, (x2, y2) = outline
        across = np.clip(own_coordinates(Affine(x1 - x, y1 - y, x2 - x, y2 - y, x, y), part)[0], 0, 1)
        near += (_blurred(solid, spreads[1] * view.scale) - near) * across
        near *= np.exp(-(fading[0] + (fading[1] - fading[0]) * across) / np.float32(_LIFTED))
    elif fading[0]:
        near *= np.float32(np.exp(-fading[0] / _LIFTED))
    soft[part.slices] = near
    return soft


def _outline(
    caster: Slab, under: Slab | None, heights: tuple[float, ...], cast: float, view: View
) -> tuple[Point, ...]:
    """Where a level's corners throw their shadow, as the surface is seen."""
    outline = []
    for u, v, height in (
        (0.0, 0.0, heights[0]),
        (caster.width, 0.0, heights[1]),
        (caster.width, caster.height, heights[1]),
        (0.0, caster.height, heights[0]),
    ):
        x, y = caster.plan(u, v)
        x, y = x + cast * CAST[0] * height, y + cast * CAST[1] * height
        outline.append(view.seen(x, y, 0.0 if under is None else under.height_at(x, y)))
    return tuple(outline)


def _blurred(solid: Field, radius: float) -> Field:
    from PIL import Image, ImageFilter

    image = Image.fromarray(np.rint(solid * 255).astype(np.uint8))
    return np.asarray(image.filter(ImageFilter.GaussianBlur(radius)), np.float32) / np.float32(255)


def _enlarged(field: Field, size: tuple[int, int], box: tuple[float, float, float, float]) -> Field:
    from PIL import Image

    large = Image.fromarray(field).resize(size, Image.Resampling.BICUBIC, box)
    return np.clip(np.asarray(large, np.float32), 0, 1)
