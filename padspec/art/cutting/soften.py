"""Fades un-mixed as a whole: alpha rises from nothing in the ground to one in the core of the picture.

As at an edge, pixel = a · own + (1 − a) · ground, but here the own colour lies far away. How far it differs from the
ground is taken from the core that the fade leads up to, smoothly over the picture; its hue is the pixel's own.
Laid on its old ground again the picture looks as before, whatever that core is; on any other it fades.
All of that is slow over the picture, so it is worked out in cells and only then brought to the pixels.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from padspec.art.cutting.backdrop import Backdrop
from padspec.art.cutting.fading import Fading, greatest, in_cells, smoothed
from padspec.art.cutting.reach import widened
from padspec.art.cutting.regions import Mask
from padspec.art.pixels import Bytes
from padspec.base.colour import srgb_from_oklab

Singles = NDArray[np.float32]

# A fade is followed inwards for at most this share of the longer side,
_LONGEST = 0.25
# and ends where the mean over its breadth has come to this share of the highest.
_ARRIVED = 0.8
# Further in than so many lengths the picture grows opaque, however pale, and at twice that it is.
_EASED = 2
# A core that differs from the ground by less than this (sRGB, 0 to 1), or this many times the grain,
# is too faint for a fade to be measured against it.
_LEAST_CORE, _LEAST_OVER_GRAIN = 0.12, 6.0
# Detail that differs from its cell by more than so many times the grain is more opaque than its cell.
_DETAIL = 4.5
_LEAST_ALPHA = 0.05
_BAND_PIXELS = 1_000_000


@dataclass(frozen=True, slots=True, eq=False)
class Fade:
    """The zone of a fade, in cells of `cell` pixels.

    `zone` are the cells to un-mix, `alpha` their opacity, `core` (sRGB, 0 to 1) how far their own colour is
    from the ground; `mean` (…, 3) how far they are themselves, and `behind` (…, 3) the ground. `length` is the fade's
    length in pixels, `trusted` whether its core stands out enough.
    """

    cell: int
    zone: Mask
    alpha: Singles
    core: Singles
    mean: Singles
    behind: Singles
    length: int
    trusted: bool


def fade_of(rgba: Bytes, fading: Fading, backdrop: Backdrop) -> Fade:
    """Measures the fade that starts at the soft cells; there has to be one at least."""
    behind = _behind(backdrop, fading)
    mean = smoothed(_colours(rgba, fading.cell) - behind)
    away = np.sqrt(np.square(mean).sum(axis=2))
    inward = _paces(fading.soft, ~fading.sharp & ~fading.ground, round(_LONGEST * max(away.shape)))
    length = _length(away, inward)
    inside = (inward >= 0) & (inward <= 2 * _EASED * length) & ~fading.ground
    outward = _paces(fading.soft, fading.ground & ~widened(fading.sharp, 2), 2 * length)
    outside = outward >= 0
    core = _core(away, inside | outside, length)
    floor = _floor(away, fading.ground)
    alpha = np.clip((_filled(away, inside, outside) - floor) / np.maximum(core - floor, np.float32(1e-3)), 0, 1)
    alpha += (1 - alpha) * np.where(inside, _eased(inward, _EASED * length), np.float32(0))
    alpha *= np.where(outside, 1 - _eased(outward, length), np.float32(1))
    alpha = np.where(inside | outside, alpha, (~fading.ground).astype(np.float32))
    zone = inside | outside | (widened(inside, 1) & fading.sharp)
    usual = float(np.median(core[fading.soft]))
    trusted = round(usual, 6) >= max(_LEAST_CORE, _LEAST_OVER_GRAIN * backdrop.grain)
    return Fade(fading.cell, zone, alpha, core, mean, behind, length * fading.cell, trusted)


def soften(out: Bytes, rgba: Bytes, fade: Fade, grain: float) -> None:
    """Write the fade's pixels into a picture that is cut out otherwise."""
    height, width = out.shape[:2]
    rows = max(1, _BAND_PIXELS // width)
    for top in range(0, height, rows):
        band = slice(top, min(height, top + rows))
        cells = fade.zone[band.start // fade.cell : -(-band.stop // fade.cell)]
        if not cells.any():
            continue
        zone = fade.zone[np.arange(band.start, band.stop) // fade.cell][:, np.arange(width) // fade.cell]
        alpha, colour = _solved(rgba[band], fade, band, grain)
        steps = np.floor(np.round(np.clip(alpha, 0, 1) * 255, 3) + np.float32(0.5)).astype(np.uint8)
        shades = np.floor(np.round(np.clip(colour, 0, 1) * 255, 3) + np.float32(0.5)).astype(np.uint8)
        out[band, :, 3] = np.where(zone, np.minimum(steps, rgba[band, :, 3]), out[band, :, 3])
        out[band, :, :3] = np.where(zone[..., None], shades, out[band, :, :3])


def _solved(rgba: Bytes, fade: Fade, band: slice, grain: float) -> tuple[Singles, Singles]:
    def full(cells: Singles) -> Singles:
        """Cells brought to the pixels of the band, from centre to centre."""
        width = rgba.shape[1]
        box = (0, band.start / fade.cell, width / fade.cell, band.stop / fade.cell)
        box = (0, box[1], min(box[2], cells.shape[1]), min(box[3], cells.shape[0]))
        image = Image.fromarray(np.ascontiguousarray(cells))
        return np.asarray(image.resize((width, len(rgba)), Image.Resampling.BILINEAR, box=box))

    behind, mean = (
        np.stack([full(plane[..., c]) for c in range(3)], axis=-1) for plane in (fade.behind, fade.mean)
    )
    core, smooth = np.maximum(full(fade.core), np.float32(1e-3)), full(fade.alpha)
    away = rgba[..., :3] / np.float32(255) - behind
    length, usual = (np.sqrt(np.square(v).sum(axis=-1)) for v in (away, mean))
    alpha = np.minimum(smooth + np.maximum(length - usual - np.float32(_DETAIL * grain), 0) / core, 1)
    own = mean / np.maximum(np.maximum(smooth, usual / core), np.float32(1e-3))[..., None]
    exact = away / np.maximum(alpha, np.float32(_LEAST_ALPHA))[..., None]
    return alpha, behind + own + (exact - own) * np.minimum(2 * alpha, 1)[..., None]


def _colours(rgba: Bytes, cell: int) -> Singles:
    rows = max(1, _BAND_PIXELS // rgba.shape[1] // cell) * cell
    bands = range(0, len(rgba), rows)
    return np.concatenate([in_cells(rgba[t : t + rows, :, :3].astype(np.float32), cell) for t in bands]) / 255


def _behind(backdrop: Backdrop, fading: Fading) -> Singles:
    y, x = (np.mgrid[: fading.ground.shape[0], : fading.ground.shape[1]] + 0.5) * fading.cell - 0.5
    return np.clip(srgb_from_oklab(backdrop.surface.at(x, y)), 0, 1).astype(np.float32)


def _paces(start: Mask, allowed: Mask, most: int) -> NDArray[np.int32]:
    """How many steps from cell to cell lead from the start through allowed cells; −1 where none do."""
    paces = np.where(start, np.int32(0), np.int32(-1))
    seen = start
    for pace in range(1, most + 1):
        further = widened(seen, 1) & allowed & ~seen
        if not further.any():
            break
        paces[further] = pace
        seen = seen | further
    return paces


def _length(away: Singles, inward: NDArray[np.int32]) -> int:
    """After how many steps inwards the picture has, on average, come close to its core."""
    there = inward >= 0
    counts = np.bincount(inward[there])
    means = np.bincount(inward[there], away[there]) / np.maximum(counts, 1)
    means[counts < 0.05 * counts.max()] = 0
    return max(2, int(np.argmax(np.round(means, 6) >= round(_ARRIVED * float(means.max()), 6))))


def _core(away: Singles, zone: Mask, length: int) -> Singles:
    """The greatest difference within a fade's length, along cells of the zone, and smooth."""
    core = away = np.where(zone, away, np.float32(0))
    for _ in range(length):
        core = np.where(zone, greatest(core), np.float32(0))
    weight = zone.astype(np.float32)
    reach = max(1, length // 2)
    for _ in range(3):
        core, weight = smoothed(core, reach), smoothed(weight, reach)
    return np.where(weight > 1e-4, core / np.maximum(weight, np.float32(1e-4)), np.float32(0))


def _filled(away: Singles, inside: Mask, outside: Mask) -> Singles:
    """The differences with every hollow filled to its rim: a pale place within the picture is no fade."""
    level = np.where(inside, np.float32(9), away)
    while True:
        lower = np.where(inside, np.maximum(away, -greatest(-level)), level)
        if np.array_equal(lower, level):
            return level
        level = lower


def _floor(away: Singles, ground: Mask) -> float:
    """What grain and a ground that is not quite smooth make of nothing, as the sides of the picture show it."""
    side = ground.copy()
    side[2:-2, 2:-2] = False
    return float(np.quantile(away[side], 0.9)) if side.any() else 0.0


def _eased(paces: NDArray[np.int32], length: int) -> Singles:
    """From 0, at one length, to 1 at two."""
    over = np.clip(smoothed(paces.astype(np.float32)) / length - 1, 0, 1)
    return np.asarray(over * over * (3 - 2 * over), dtype=np.float32)
