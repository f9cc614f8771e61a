"""The ground that a picture stands on: how even its border is, and its colour at every pixel.

The colour is a surface over the picture (constant, sloping or gently bowed) rather than one value, so
that a sheet of paper lit from one side is followed instead of being cut along a contour of its shade.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.art.cutting.regions import Mask
from padspec.art.pixels import Bytes
from padspec.base.colour import Colour, Floats, oklab_from_srgb, srgb_from_oklab

Singles = NDArray[np.float32]

#: This share of the border has to lie near its surface: a creature may touch the rest, which is three
#: fifths of one side of a square picture (a bust that the foot of the picture cuts off).
HELD_SHARE = 0.85
#: How near, as an OKLab distance: about six steps of 255 in a mid grey. Paper grain, scanner noise and
#: JPEG stay below it; grass, sky with clouds or a blurred room do not.
EVEN_LIMIT = 0.025

_WIDEST_RING = 8
_MOST_SAMPLES = 20_000
_FITS = 6
# A surface that bends less than this over the whole picture is flat.
_FLAT = 0.004


@dataclass(frozen=True, slots=True, eq=False)
class Surface:
    """OKLab as a polynomial of x and y (each -1 to 1 across the picture), shape (terms, 3)."""

    size: tuple[int, int]
    terms: Floats

    def at(self, x: Floats, y: Floats) -> Floats:
        """OKLab at these pixel columns and rows (arrays of one shape)."""
        return _basis(self._unit(x, 0), self._unit(y, 1), len(self.terms)) @ self.terms

    @property
    def is_flat(self) -> bool:
        """Whether it is one colour, as far as can be told: that of its middle."""
        return bool(np.abs(self.terms[1:]).sum(axis=0).max(initial=0) < _FLAT)

    @property
    def middle(self) -> Floats:
        """OKLab in the middle of the picture."""
        middle: Floats = self.at(np.array([self.size[0] / 2 - 0.5]), np.array([self.size[1] / 2 - 0.5]))[0]
        return middle

    def rows(self, top: int, foot: int) -> Singles:
        """OKLab of whole rows, of the shape (rows, width, 3) or one that broadcasts to it."""
        if self.is_flat:
            return self.middle.reshape(1, 1, 3).astype(np.float32)
        x = self._unit(np.arange(self.size[0], dtype=np.float64), 0)[None, :, None]
        y = self._unit(np.arange(top, foot, dtype=np.float64), 1)[:, None, None]
        one, across, down, across2, both, down2 = np.pad(self.terms, ((0, 6 - len(self.terms)), (0, 0)))
        # The polynomial of `_basis`, gathered so that only two products are of the whole size.
        start, slope = one + down * y + down2 * y * y, across + both * y
        return np.asarray(
            (start.astype(np.float32) + slope.astype(np.float32) * x.astype(np.float32))
            + (across2 * x * x).astype(np.float32)
        )

    def over(self, width: int, height: int) -> "Surface":
        """The same surface stretched over a picture of another size."""
        return Surface((width, height), self.terms)

    def resembles(self, other: "Surface") -> bool:
        """Whether two surfaces are nowhere further apart than can be told."""
        terms = max(len(self.terms), len(other.terms))
        mine, theirs = (np.pad(s.terms, ((0, terms - len(s.terms)), (0, 0))) for s in (self, other))
        return bool(np.round(np.abs(mine - theirs).sum(axis=0).max(), 6) < _FLAT)

    def _unit(self, position: Floats, axis: int) -> Floats:
        return (position + 0.5) / self.size[axis] * 2 - 1


@dataclass(frozen=True, slots=True, eq=False)
class Backdrop:
    """The border's median colour, its surface, and its spread.

    `spread` is the OKLab distance from the surface within which `HELD_SHARE` of the border lies,
    `grain` the same in sRGB (0 to 1).
    """

    colour: Colour
    surface: Surface
    spread: float
    grain: float

    @property
    def is_even(self) -> bool:
        """Whether the spread is at most `EVEN_LIMIT`."""
        return self.spread <= EVEN_LIMIT


def backdrop(rgba: Bytes, visible_alpha: int) -> Backdrop | None:
    """The backdrop as the border shows it, or None where less than a tenth of the border is visible."""
    height, width = rgba.shape[:2]
    x, y = _ring(width, height)
    values = rgba[y, x]
    seen = values[:, 3] >= visible_alpha
    if seen.mean() < 0.1:
        return None
    rgb = values[seen, :3] / 255
    lab = oklab_from_srgb(rgb)
    at = x[seen].astype(np.float64), y[seen].astype(np.float64)
    median: Floats = np.median(lab, axis=0).reshape(1, 3)
    surface = _fitted(Surface((width, height), median), *at, lab, terms=3)
    off = np.linalg.norm(lab - surface.at(*at), axis=1)
    off_srgb = np.linalg.norm(rgb - srgb_from_oklab(surface.at(*at)), axis=1)
    return Backdrop(
        Colour.from_unit(np.asarray(np.median(rgb, axis=0))),
        surface,
        round(float(np.quantile(off, HELD_SHARE)), 4),
        round(float(np.quantile(off_srgb, HELD_SHARE)), 4),
    )


def bowed(surface: Surface, rgba: Bytes, ground: Mask) -> Surface:
    """The surface fitted again, as a parabola, to the pixels that turned out to be ground."""
    where = np.flatnonzero(ground.ravel())
    where = where[:: max(1, where.size // _MOST_SAMPLES)]
    y, x = np.divmod(where, ground.shape[1])
    lab = oklab_from_srgb(rgba[y, x, :3] / 255)
    return _fitted(surface, x.astype(np.float64), y.astype(np.float64), lab, terms=6)


def _ring(width: int, height: int) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Columns and rows of border pixels, evenly thinned out."""
    depth = min(max(1, min(width, height) // 200), _WIDEST_RING)
    border = np.ones((height, width), np.bool_)
    border[depth : height - depth, depth : width - depth] = False
    where = np.flatnonzero(border.ravel())
    # An odd step visits every column and every depth of the ring in turn.
    y, x = np.divmod(where[:: max(1, where.size // _MOST_SAMPLES) | 1], width)
    return x, y


def _basis(x: Floats, y: Floats, terms: int) -> Floats:
    return np.stack([np.ones_like(x), x, y, x * x, x * y, y * y][:terms], axis=-1)


def _fitted(surface: Surface, x: Floats, y: Floats, lab: Floats, terms: int) -> Surface:
    """Least squares over the samples near the surface so far, again and again as it settles."""
    for _ in range(_FITS):
        off = np.linalg.norm(lab - surface.at(x, y), axis=1)
        near = np.round(off, 6) <= max(2.5 * float(np.median(off)), EVEN_LIMIT)
        if near.sum() < 8 * terms:
            break
        basis = _basis(surface._unit(x[near], 0), surface._unit(y[near], 1), terms)
        solved, *_ = np.linalg.lstsq(basis, lab[near], rcond=None)
        surface = Surface(surface.size, np.asarray(np.round(solved, 6), dtype=np.float64))
    return surface
