"""Fades un-mixed as a whole: alpha rises from nothing in the ground to one in the core of the picture.

As at an edge, pixel = a · own + (1 − a) · ground, but here the own colour lies far away. How far it differs from the
ground is taken from the core that the fade leads up to, smoothly over the picture; its hue is the pixel's own.
Laid on its old ground again the picture looks as before, whatever that core is; on any other it fades.
All of that is slow over the picture, so it is worked out in cells and only then brought to the pixels.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.art.cutting.backdrop import Backdrop
from padspec.art.cutting.cells import Singles, brought_up, extremes, greatest, in_cells, smoothed
from padspec.art.cutting.fading import Fading
from padspec.art.cutting.reach import widened
from padspec.art.cutting.regions import Mask
from padspec.art.pixels import Bytes
from padspec.base.colour import srgb_from_oklab

# A fade is followed inwards for at most this share of the longer side,
_LONGEST = 0.25
# and ends where the mean over its breadth has come to this share of the highest.
_ARRIVED = 0.8
# Further in than so many lengths the picture grows opaque, however pale, and at twice that it is.
_EASED = 3
# A core that differs from the ground by less than this (sRGB, 0 to 1), or this many times the grain,
# is too faint for a fade to be measured against it.
_LEAST_CORE, _LEAST_OVER_GRAIN = 0.12, 6.0
# Cells whose colours span this share of the greatest difference from the ground within two cells, and at
# least so much, hold an edge, even where both its sides differ from the ground alike.
_EDGE_SHARE, _EDGE_LEAST = 0.5, 0.06
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
    colour, span = _colours(rgba, fading.cell)
    edges = fading.sharp | _colour_edges(colour - behind, span, fading.ground)
    mean = _smoothed_beside(edges, colour - behind)
    away = np.sqrt(np.square(mean).sum(axis=2))
    inward = _paces(fading.soft, ~edges & ~fading.ground, round(_LONGEST * max(away.shape)))
    length = _length(away, inward)
    inside = (inward >= 0) & (inward <= 2 * _EASED * length) & ~fading.ground
    outward = _paces(fading.soft, fading.ground & ~widened(edges, 2), 2 * length)
    outside = outward >= 0
    core = _core(away, inside | outside, edges, length)
    floor = _floor(away, fading.ground)
    alpha = np.clip((_filled(away, inside, outside) - floor) / np.maximum(core - floor, np.float32(1e-3)), 0, 1)
    alpha += (1 - alpha) * np.where(inside, _eased(inward, _EASED * length), np.float32(0))
    alpha *= np.where(outside, 1 - _eased(outward, length), np.float32(1))
    # Lines and edges within the fade stand in it as their surroundings do; the pixels tell them from these.
    within = widened(inside, 1) & edges & ~fading.ground
    around = smoothed(alpha * inside) / np.maximum(smoothed(inside.astype(np.float32)), np.float32(0.05))
    alpha = np.where(inside | outside, alpha, np.where(within, around, (~fading.ground).astype(np.float32)))
    zone = inside | outside | within
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
        return brought_up(cells, fade.cell, band, rgba.shape[1])

    behind, mean = (
        np.stack([full(plane[..., c]) for c in range(3)], axis=-1) for plane in (fade.behind, fade.mean)
    )
    core, smooth = np.maximum(full(fade.core), np.float32(_LEAST_CORE / 2)), full(fade.alpha)
    away = rgba[..., :3] / np.float32(255) - behind
    length, usual = (np.sqrt(np.square(v).sum(axis=-1)) for v in (away, mean))
    alpha = np.minimum(smooth + np.maximum(length - usual - np.float32(_DETAIL * grain), 0) / core, 1)
    own = mean / np.maximum(np.maximum(smooth, usual / core), np.float32(1e-3))[..., None]
    exact = away / np.maximum(alpha, np.float32(_LEAST_ALPHA))[..., None]
    return alpha, behind + own + (exact - own) * np.minimum(2 * alpha, 1)[..., None]


def _colours(rgba: Bytes, cell: int) -> tuple[Singles, Singles]:
    """Mean colour of each cell, and how far its channels span at most (sRGB, 0 to 1)."""
    rows = max(1, _BAND_PIXELS // rgba.shape[1] // cell) * cell
    bands = [np.ascontiguousarray(rgba[top : top + rows, :, :3]) for top in range(0, len(rgba), rows)]
    ends = [extremes(band, cell) for band in bands]
    span = np.concatenate([(most - least).max(axis=2) for least, most in ends])
    return np.concatenate([in_cells(band, cell) for band in bands]) / np.float32(255), span / np.float32(255)


def _colour_edges(away: Singles, span: Singles, ground: Mask) -> Mask:
    grain = float(np.median(span[ground])) if ground.any() else 0.0
    step = np.zeros_like(span)
    for channel in range(3):
        plane = away[..., channel]
        step = np.maximum(step, np.maximum(greatest(plane) - plane, plane + greatest(-plane)))
    differs = np.abs(away).max(axis=2)
    limit = np.maximum(_EDGE_LEAST, _EDGE_SHARE * greatest(greatest(differs)))
    return np.maximum(span - grain, step) > limit


def _smoothed_beside(edges: Mask, values: Singles) -> Singles:
    """Smoothed without what lies in edges, except where there is nothing else."""
    weight = smoothed((~edges).astype(np.float32))[..., None]
    beside = smoothed(np.where(edges[..., None], np.float32(0), values)) / np.maximum(weight, np.float32(0.01))
    return np.where(weight > 0.01, beside, smoothed(values))


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


def _core(away: Singles, zone: Mask, edges: Mask, length: int) -> Singles:
    """The greatest difference within a fade's length, along cells of the zone, and smooth."""
    core = np.where(zone & ~widened(edges, 1), away, np.float32(0))
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
    over = np.clip(smoothed(paces.astype(np.float32), max(1, length // 4)) / length - 1, 0, 1)
    return np.asarray(over * over * (3 - 2 * over), dtype=np.float32)
