"""Clean edges: the share of ground in each edge pixel found and taken out again.

An edge pixel is a mixture, pixel = a · own + (1 − a) · ground, mixed in sRGB because that is how every
renderer of PDF and SVG will mix it again. The ground is known. The own colour is that of a pixel nearby
that lies further along the same line away from the ground: from each edge pixel we climb, a pixel at a
time, to the neighbour that differs most from the ground, as long as the edge pixel stays in line with it.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.art.cutting.backdrop import Backdrop
from padspec.art.cutting.reach import widened
from padspec.art.cutting.regions import Mask
from padspec.art.pixels import Bytes
from padspec.base.colour import srgb_from_oklab

Singles = NDArray[np.float32]
Places = NDArray[np.int64]

#: Edge pixels lie this near to the flooded ground; blur and JPEG spread an edge no further.
EDGE = 4
# Steps of the climb: an edge pixel's own colour is no further away than this.
_CLIMB = 5
_MARGIN = EDGE + _CLIMB + 1
# A step must gain this share and this much (sRGB 0 to 1) or the climb has reached the plateau.
_GAIN, _LEAST_GAIN = 1.06, 0.01
# A pixel is in line while it lies off the line by less than this share of its length, or by this much.
_OFF_LINE, _OFF_LINE_FLOOR = 0.4, 0.06
# Whatever its direction, a pixel with less than this share of the length of one nearby (so many pixels
# away) is a ripple or a bleeding of colour, as JPEG leaves them beside an edge.
_RIPPLE, _RIPPLE_REACH = 0.3, (1, 2, 4)
_LONE_RIPPLE = 0.2
_BAND_PIXELS = 2_000_000


def unmixed(rgba: Bytes, ground: Mask, held: Mask, backdrop: Backdrop) -> Bytes:
    """The picture with the ground made transparent and its colour taken out of the edges.

    `ground` and `held`, the enclosed paper that stays, have the shape (height, width). The work goes band
    by band, for the sake of memory.
    """
    height, width = ground.shape
    out = rgba.copy()
    rows = max(1, _BAND_PIXELS // width)
    for top in range(0, height, rows):
        foot = min(height, top + rows)
        first, last = max(0, top - _MARGIN), min(height, foot + _MARGIN)
        edge = _edges(ground[first:last], held[first:last])[top - first : foot - first]
        out[top:foot, :, 3][ground[top:foot] & ~edge] = 0
        y, x = np.nonzero(edge)
        if y.size:
            band = _Band.framed(rgba[first:last], ground[first:last])
            behind = _behind(backdrop, x, y + top)
            alpha, colour = band.solved(x, y + top - first, behind, backdrop.grain)
            out[y + top, x, :3] = colour
            out[y + top, x, 3] = np.minimum(out[y + top, x, 3], alpha)
    return out


def _edges(ground: Mask, held: Mask) -> Mask:
    """Picture within `EDGE` pixels of the ground, and ground that touches the picture.

    A flood takes with it what differs too little from the ground to be seen on it, but would be on another.
    An outline's inner edge is mixed with the paper it holds, which stays: what is nearer to that is no edge.
    """
    edge = np.where(ground, widened(~(ground | held), 1), widened(ground, EDGE))
    if not held.any():
        return edge
    outside, inside = ground, held
    for _ in range(EDGE):
        outside, inside = outside | widened(outside, 1) & ~inside, inside | widened(inside, 1) & ~outside
    return edge & ~(inside & ~outside)


def _behind(backdrop: Backdrop, x: Places, y: Places) -> Singles:
    if backdrop.surface.is_flat:
        one = np.clip(srgb_from_oklab(backdrop.surface.middle), 0, 1).astype(np.float32)
        return np.broadcast_to(one, (x.size, 3))
    lab = backdrop.surface.at(x.astype(np.float64), y.astype(np.float64))
    return np.clip(srgb_from_oklab(lab), 0, 1).astype(np.float32)


@dataclass(frozen=True, slots=True, eq=False)
class _Band:
    """Rows with a frame of ground one pixel wide, flattened, so that eight neighbours are eight offsets."""

    rgb: Bytes
    ground: Mask
    stride: int

    @classmethod
    def framed(cls, rgba: Bytes, ground: Mask) -> "_Band":
        rgb = np.pad(rgba[..., :3], ((1, 1), (1, 1), (0, 0)))
        framed = np.pad(ground, 1, constant_values=True)
        return cls(rgb.reshape(-1, 3), framed.ravel(), framed.shape[1])

    def solved(self, x: Places, y: Places, behind: Singles, grain: float) -> tuple[Bytes, Bytes]:
        """Alpha and colour, in steps of 255, of the pixels at these columns and rows of the band."""
        place = (y + 1) * self.stride + x + 1
        away = self.rgb[place] / np.float32(255) - behind
        longest = self._longest(place, behind)
        ripple = np.sqrt(_dot(away, away)) < _RIPPLE * longest
        peak, own = self._climbed(place, away, behind, ripple)
        length = np.maximum(_dot(own, own), np.float32(1e-6))
        share = np.clip(_dot(away, own) / length, 0, 1)
        # What the ground's own grain looks like is ground.
        floor = np.minimum(np.float32(grain) / np.sqrt(length), np.float32(0.5))
        alpha = np.clip((share - floor) / (1 - floor), 0, 1)
        # Ground that leads up to no picture, and ripples that lead up to no more than another.
        alpha[self.ground[peak] | (np.sqrt(length) < _LONE_RIPPLE * longest)] = 0
        alpha = np.floor(np.round(alpha * 255, 3) + np.float32(0.5))
        # Dividing by a small alpha would blow up noise: the fainter a pixel, the more its neighbour's colour.
        exact = away / np.maximum(share, np.float32(0.05))[:, None]
        colour = behind + own + (exact - own) * (share**2)[:, None]
        steps = np.floor(np.round(np.clip(colour, 0, 1) * 255, 3) + np.float32(0.5))
        return alpha.astype(np.uint8), steps.astype(np.uint8)

    def _climbed(self, place: Places, away: Singles, behind: Singles, ripple: Mask) -> tuple[Places, Singles]:
        """For each pixel, where its own colour is, and how far and which way that is from the ground."""
        squared = _dot(away, away)
        off_limit = np.maximum(_OFF_LINE**2 * squared, np.float32(_OFF_LINE_FLOOR**2))
        here, best = place, away
        for _ in range(_CLIMB):
            goal = np.sqrt(_dot(best, best)) * np.float32(_GAIN) + np.float32(_LEAST_GAIN)
            target, top = here, best
            for offset in self._neighbours():
                there, length = self._away(here + offset, behind)
                along = _dot(there, away) / np.maximum(length, np.float32(1e-6))
                in_line = (along > 0) & (squared - along * along <= off_limit) | ripple
                better = (length > goal) & in_line & ~self.ground[here + offset]
                goal = np.where(better, length, goal)
                target = np.where(better, here + offset, target)
                top = np.where(better[:, None], there, top)
            here, best = target, top
        return here, best

    def _away(self, place: Places, behind: Singles) -> tuple[Singles, Singles]:
        """The difference of these pixels from the ground, as vectors and as lengths."""
        vector: Singles = np.subtract(self.rgb[place] / np.float32(255), behind, dtype=np.float32)
        length: Singles = np.sqrt(_dot(vector, vector))
        return vector, length

    def _longest(self, place: Places, behind: Singles) -> Singles:
        """The greatest difference from the ground of any picture nearby."""
        longest = np.zeros(place.size, np.float32)
        for reach in _RIPPLE_REACH:
            for offset in self._neighbours():
                near = np.clip(place + reach * offset, 0, self.ground.size - 1)
                length = np.where(self.ground[near], np.float32(0), self._away(near, behind)[1])
                longest = np.maximum(longest, length)
        return longest

    def _neighbours(self) -> tuple[int, ...]:
        stride = self.stride
        return (-stride - 1, -stride, -stride + 1, -1, 1, stride - 1, stride, stride + 1)


def _dot(one: Singles, other: Singles) -> Singles:
    return np.asarray(
        one[:, 0] * other[:, 0] + one[:, 1] * other[:, 1] + one[:, 2] * other[:, 2], dtype=np.float32
    )
