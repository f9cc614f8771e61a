"""Fades un-mixed as a whole: alpha rises from nothing in the ground to one in the core of the picture.

As at an edge, pixel = a · own + (1 − a) · ground, but here the own colour lies far away. How far it differs
from the ground is taken from the core that the fade leads up to, smoothly over the picture; its hue is the
pixel's own. Laid on its old ground again the picture looks as before, whatever that core is; on any other it
fades. All of that is slow over the picture, so it is worked out in cells and only then brought to the pixels.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.art.cutting.backdrop import Backdrop
from padspec.art.cutting.cells import Singles, brought_up, extremes, greatest, in_cells, smoothed
from padspec.art.cutting.fading import Fading
from padspec.art.cutting.reach import rounded, widened
from padspec.art.cutting.regions import Mask, regions
from padspec.art.pixels import Bytes
from padspec.base.colour import srgb_from_oklab

# A fade is followed inwards for at most this share of the longer side,
_LONGEST = 0.25
# and ends where the mean over its breadth has come to this share of the highest.
_ARRIVED = 0.8
# What differs by this share of the core is opaque: a core has a texture of its own.
_OPAQUE_FROM = np.float32(0.95)
# Further in than so many lengths the picture grows opaque, however pale, and at twice that it is.
_EASED = 3
# A core that differs from the ground by less than this (sRGB, 0 to 1), or this many times the grain,
# is too faint for a fade to be measured against it.
_LEAST_CORE, _LEAST_OVER_GRAIN = 0.12, 6.0
# Cells whose colours span this share of the greatest difference from the ground within so many cells, and at
# least so much, hold an edge, even where both its sides differ from the ground alike.
_EDGE_SHARE, _EDGE_LEAST, _EDGE_REACH = 0.35, 0.06, 4
# An edge runs through so many cells at least.
_LEAST_CELLS = 16
# Detail that differs from its cell by more than so many times the grain is more opaque than its cell.
_DETAIL = 4.5
_LEAST_ALPHA = 0.05
# Few enough for a band to stay near the processor.
_BAND_PIXELS = 200_000


@dataclass(frozen=True, slots=True, eq=False)
class Fade:
    """The zone of a fade, in cells of `cell` pixels.

    `zone` are the cells to un-mix, `alpha` their opacity, `core` (sRGB, 0 to 1) how far their own colour is
    from the ground; `mean` (…, 3) how far they are themselves, and `behind` (…, 3) the ground. `trusted` tells
    whether the core stands out enough.
    """

    cell: int
    zone: Mask
    alpha: Singles
    core: Singles
    mean: Singles
    behind: Singles
    trusted: bool


def fade_of(rgba: Bytes, fading: Fading, backdrop: Backdrop) -> Fade:
    """Measures the fade that starts at the soft cells; there has to be one at least."""
    behind = _behind(backdrop, fading)
    colour, span = _colours(rgba, fading.cell)
    edges = _drawn(fading.sharp | _colour_edges(colour - behind, span, fading.ground))
    mean = _smoothed_beside(edges, colour - behind)
    away = _lengths(mean)
    zone = _zone(fading, edges, away)
    core = _core(away, zone.inside | zone.outside, edges, zone.length)
    usual = float(np.median(core[fading.soft]))
    core = np.maximum(core, np.float32(usual / 2))
    alpha, whole = _opacity(zone, away, core, fading.ground, edges)
    trusted = round(usual, 6) >= max(_LEAST_CORE, _LEAST_OVER_GRAIN * backdrop.grain)
    return Fade(fading.cell, whole, alpha, core, mean, behind, trusted)


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
    away: Singles = np.subtract(rgba[..., :3] / np.float32(255), behind, dtype=np.float32)
    length, usual = _lengths(away), _lengths(mean)
    alpha = np.minimum(smooth + np.maximum(length - usual - np.float32(_DETAIL * grain), 0) / core, 1)
    own = mean / np.maximum(np.maximum(smooth, usual / core), np.float32(1e-3))[..., None]
    exact = away / np.maximum(alpha, np.float32(_LEAST_ALPHA))[..., None]
    return alpha, behind + own + (exact - own) * np.minimum(2 * alpha, 1)[..., None]


@dataclass(frozen=True, slots=True, eq=False)
class _Zone:
    """The cells of a fade within the picture and in the ground before it, the paces to each from its soft
    boundary, and its length, in cells."""

    inside: Mask
    outside: Mask
    inward: NDArray[np.int32]
    outward: NDArray[np.int32]
    length: int


def _zone(fading: Fading, edges: Mask, away: Singles) -> _Zone:
    free, most = ~edges & ~fading.ground, round(_LONGEST * max(away.shape))
    inward = _paces_inward(fading.soft, free, edges, most)
    length = _length(away, inward)
    furthest = 2 * _EASED * length
    if furthest > most:
        inward = _paces_inward(fading.soft, free, edges, furthest)
    outward = _paces(fading.soft, fading.ground & ~widened(edges, 2), 2 * length)
    return _Zone((inward >= 0) & (inward <= furthest) & free, outward >= 0, inward, outward, length)


def _opacity(zone: _Zone, away: Singles, core: Singles, ground: Mask, edges: Mask) -> tuple[Singles, Mask]:
    """The alpha of all cells, and the cells to un-mix by it."""
    floor = _floor(away, ground)
    whole = np.maximum(_OPAQUE_FROM * core - floor, np.float32(1e-3))
    alpha = np.clip((_filled(away, zone.inside) - floor) / whole, 0, 1)
    alpha += (1 - alpha) * np.where(zone.inside, _eased(zone.inward, _EASED * zone.length), np.float32(0))
    alpha *= np.where(zone.outside, 1 - _eased(zone.outward, zone.length), np.float32(1))
    # Lines and flecks within the fade stand in it as their surroundings do; the pixels tell them from these.
    rest = ~zone.inside & ~ground
    within = rest & ((widened(zone.inside, 1) & edges) | _flecks(rest))
    weight = smoothed(zone.inside.astype(np.float32), 2)
    around = smoothed(alpha * zone.inside, 2) / np.maximum(weight, np.float32(0.02))
    fades = zone.inside | zone.outside
    alpha = np.where(fades, alpha, np.where(within, around, (~ground).astype(np.float32)))
    return np.asarray(alpha, dtype=np.float32), fades | within


def _colours(rgba: Bytes, cell: int) -> tuple[Singles, Singles]:
    """Mean colour of each cell, and how far its channels span at most (sRGB, 0 to 1)."""
    rows = max(1, _BAND_PIXELS // rgba.shape[1] // cell) * cell
    bands = [np.ascontiguousarray(rgba[top : top + rows, :, :3]) for top in range(0, len(rgba), rows)]
    ends = [extremes(band, cell) for band in bands]
    span = np.concatenate([(most - least).max(axis=2) for least, most in ends])
    colour: Singles = np.concatenate([in_cells(band, cell) for band in bands]) * np.float32(1 / 255)
    return colour, np.asarray(span * np.float32(1 / 255), dtype=np.float32)


def _colour_edges(away: Singles, span: Singles, ground: Mask) -> Mask:
    grain = float(np.median(span[ground])) if ground.any() else 0.0
    step = np.zeros_like(span)
    for channel in range(3):
        plane = away[..., channel]
        step = np.maximum(step, np.maximum(greatest(plane) - plane, plane + greatest(-plane)))
    most = np.abs(away).max(axis=2)
    for _ in range(_EDGE_REACH):
        most = greatest(most)
    limit = np.maximum(_EDGE_LEAST, _EDGE_SHARE * most)
    return np.asarray(np.maximum(span - grain, step) > limit)


def _drawn(edges: Mask) -> Mask:
    """The edges without lone cells, which are flecks of the fade's own texture."""
    return edges & ~_flecks(edges)


def _flecks(cells: Mask) -> Mask:
    apart = regions(cells)
    return apart.painted(apart.areas() < _LEAST_CELLS)


def _smoothed_beside(edges: Mask, values: Singles) -> Singles:
    """Smoothed without what lies in edges, except where there is nothing else."""
    weight = smoothed((~edges).astype(np.float32))[..., None]
    beside = smoothed(np.where(edges[..., None], np.float32(0), values)) / np.maximum(weight, np.float32(0.01))
    return np.where(weight > 0.01, beside, smoothed(values))


def _behind(backdrop: Backdrop, fading: Fading) -> Singles:
    y, x = (np.mgrid[: fading.ground.shape[0], : fading.ground.shape[1]] + 0.5) * fading.cell - 0.5
    return np.clip(srgb_from_oklab(backdrop.surface.at(x, y)), 0, 1).astype(np.float32)


def _paces_inward(soft: Mask, free: Mask, edges: Mask, most: int) -> NDArray[np.int32]:
    """The paces from soft cells through free ones, clear of edges: none slips between two cells of an edge."""
    paces = _paces(soft, free & ~rounded(edges, 1), most)
    beside = rounded(paces >= 0, 1) & free & (paces < 0)
    reached = greatest(paces.astype(np.float32)).astype(np.int32)
    return np.where(beside, reached, paces)


def _paces(start: Mask, allowed: Mask, most: int) -> NDArray[np.int32]:
    """How many steps from cell to cell lead from the start through allowed cells; −1 where none do.

    Across sides and corners in turn, so that what is as near lies on an octagon.
    """
    paces = np.where(start, np.int32(0), np.int32(-1))
    seen = start
    for pace in range(1, most + 1):
        further = (widened if pace % 2 else rounded)(seen, 1) & allowed & ~seen
        if not further.any() and pace % 2:
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


def _filled(away: Singles, inside: Mask) -> Singles:
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


def _lengths(vectors: Singles) -> Singles:
    red, green, blue = (vectors[..., channel] for channel in range(3))
    return np.asarray(np.sqrt(red * red + green * green + blue * blue), dtype=np.float32)
