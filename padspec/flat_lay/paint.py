"""One slab painted: its sides, the glue at its head, its face, each under the shadows of what lies above."""

from dataclasses import dataclass, replace

import numpy as np

from padspec.base.geometry import Affine
from padspec.draw.deflate import Pixels
from padspec.flat_lay.edge import GLUE, leaf_lines, plain_side
from padspec.flat_lay.geometry import (
    SIDES,
    Field,
    Side,
    Slab,
    View,
    Window,
    corners,
    is_seen,
    own_coordinates,
    seen_box,
    side_length,
    side_map,
    top_map,
    window,
)
from padspec.flat_lay.light import on_side, on_top
from padspec.flat_lay.shadow import light_left
from padspec.flat_lay.surface import FINER, Canvas, laid, sized
from padspec.flat_lay.wish import PadLook

_SEED = 4409
#: The film of glue at the head, in mm: how thick it is, and how far below the face it ends.
_FILM, _BELOW = 0.55, 0.25
#: How much light the cut at head and left catches, and over how many mm.
_CATCH, _CATCH_WIDTH = 0.10, 0.35
#: How much darker a side is at its foot, where the table shades it, and how much of a shadow reaches a side: it
#: has nothing of the soft box's light to lose.
_FOOT_OF_SIDE, _SHADE_ON_SIDE = 0.28, 0.45


@dataclass(frozen=True, slots=True)
class Painter:
    """Paints on a canvas as it is seen in a view; `table` is the linear colour of the backdrop."""

    canvas: Canvas
    view: View
    table: Field

    def part(self, slab: Slab) -> Window:
        """The window that holds all that is seen of a slab."""
        box = seen_box(slab, self.view)
        return window(((box.x, box.y), (box.right, box.bottom)), self.canvas.frame, 2 + self.view.scale)

    def slab(self, slab: Slab, pad: PadLook, above: tuple[Slab, ...], place: int) -> None:
        """The whole of a slab; `place` is how many lie under it, so that no two have the same leaf lines."""
        part = self.part(slab)
        if 0 in part.size:
            return
        shade = _Shade(part, light_left(above, slab, self.view, part))
        if not slab.leaf:
            film = _film(slab)
            for side in SIDES:
                self._side(film, side, None, shade, 0)
                self._side(slab, side, pad, shade, _SEED + 100 * place + 10 * SIDES.index(side))
            self._film_top(film, shade)
        self._face(slab, pad, shade)

    def _side(self, slab: Slab, side: Side, pad: PadLook | None, shade: "_Shade", seed: int) -> None:
        """A side of leaves and board; of glue where `pad` is None."""
        by, length = side_map(slab, side, self.view), side_length(slab, side)
        outline = corners(by, length, slab.thickness)
        part = window(outline, self.canvas.frame)
        if not is_seen(slab, side) or 0 in part.size:
            return
        down = float(np.hypot(by.c, by.d)) * slab.thickness
        pixels = (max(2, round(length * self.view.scale * FINER)), max(2, round(down * FINER)))
        texture = plain_side(GLUE, pixels) if pad is None else leaf_lines(pad, length, pixels, seed)
        colours = laid(texture, _texels(by, length, slab.thickness, texture), part)
        depth = np.clip(own_coordinates(by, part)[1] / np.float32(slab.thickness), 0, 1)
        colours *= (1 - np.float32(_FOOT_OF_SIDE) * depth**2)[..., None] * on_side(slab, side, self.table)
        self.canvas.paint(part, colours * shade.over(part, _SHADE_ON_SIDE), outline)

    def _film_top(self, film: Slab, shade: "_Shade") -> None:
        by = top_map(film, self.view)
        outline = corners(by, film.width, film.height)
        part = window(outline, self.canvas.frame)
        if 0 in part.size:
            return
        texture = plain_side(GLUE, (2, 2))
        colours = laid(texture, _texels(by, film.width, film.height, texture), part) * on_top(film)
        self.canvas.paint(part, colours * shade.over(part), outline)

    def _face(self, slab: Slab, pad: PadLook, shade: "_Shade") -> None:
        by, part = top_map(slab, self.view), shade.part
        fine = self.view.scale * FINER
        texture = sized(pad.face, (max(1, round(slab.width * fine)), max(1, round(slab.height * fine))))
        colours = laid(texture, _texels(by, slab.width, slab.height, texture), part)
        colours *= on_top(slab) * _caught(by, part)[..., None]
        if shade.left is not None:
            colours *= shade.left
        self.canvas.paint(part, colours, corners(by, slab.width, slab.height))


@dataclass(frozen=True, slots=True)
class _Shade:
    """What is left of the light in a window; None where nothing lies above."""

    part: Window
    left: Field | None

    def over(self, part: Window, share: float = 1.0) -> Field:
        """The same in a window inside it, taken for only a share of its depth."""
        if self.left is None:
            return np.ones((1, 1, 1), np.float32)
        rows = slice(part.top - self.part.top, part.bottom - self.part.top)
        columns = slice(part.left - self.part.left, part.right - self.part.left)
        return 1 - np.float32(share) * (1 - self.left[rows, columns])


def _film(slab: Slab) -> Slab:
    """The glue, as a thin slab at the head."""
    x, y = slab.plan(slab.width / 2, -_FILM / 2)
    return replace(slab, height=_FILM, thickness=max(slab.thickness - _BELOW, 0.1), centre=(x, y))


def _caught(by: Affine, part: Window) -> Field:
    """The light that the cut at head and left catches, fading over a fraction of a millimetre."""
    u, v = own_coordinates(by, part)
    nearest = np.clip(np.minimum(u, v) / np.float32(_CATCH_WIDTH), 0, 1)
    return np.asarray(1 + np.float32(_CATCH) * (1 - nearest), np.float32)


def _texels(by: Affine, width: float, height: float, texture: Pixels) -> Affine:
    """From pixels of a texture that covers a face of this many mm to pixels of the picture."""
    return Affine(width / texture.shape[1], 0, 0, height / texture.shape[0], 0, 0).then(by)
