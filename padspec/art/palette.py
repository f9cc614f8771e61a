"""The colours of a picture, and the hue that leads in it.

Nothing here is random: seeds are found by rank, so the same pixels always give the same palette.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.art.pixels import Pixels
from padspec.art.swatch import Swatch, swatch
from padspec.base.colour import Colour, Floats, lab_from_srgb
from padspec.base.contrast import delta_e_lab

Labels = NDArray[np.intp]

#: Clusters nearer than this by CIEDE2000 are one colour: side by side they are told apart, but as the
#: ground of one pad and the rules of another they would pass for the same (common practice: above 5 two
#: colours are seen as different at a glance).
TWINS = 6.0
#: A cluster with less of the visible area is a speck or a blend of its neighbours, not an accent.
LEAST_SHARE = 0.002

#: Chroma (OKLab) up to which a colour passes for grey: paper, scanner casts and JPEG leave as much.
GREY_CHROMA = 0.02
#: Mean chroma beyond that, over the visible area, under which a picture is neutral: half a hundredth of
#: the area in a clear colour (chroma 0.12) is just enough to lead.
LEAST_CHROMA = 0.0005

# The hue histogram is smoothed by a Gaussian of this many degrees; hues within the window are one hue.
_HUE_BLUR = 12
_HUE_WINDOW = 30

_SEEDS = 24
_ROUNDS = 12
# OKLab distance around a colour within which area counts as its own when seeds are looked for.
_NEIGHBOURHOOD = 0.04
_GRID = 0.03
_CANDIDATES = 24


@dataclass(frozen=True, slots=True)
class Cluster:
    """One colour of a picture and the share of the visible area (0 to 1) that it stands for."""

    colour: Colour
    share: float


def sample(pixels: Pixels, most: int = 12) -> tuple[Cluster, ...]:
    """At most so many clusters, the largest first (ties by colour); shares sum to 1.

    k-means in OKLab, then near twins are merged by CIEDE2000, nearest first, until none is nearer than
    `TWINS` and no more than `most` are left; so a small vivid accent outlives a second shade of sky.
    A cluster's colour is its medoid, a colour that really occurs: the mean of a flat colour and its
    blended edges is neither. A wholly transparent picture has no clusters.
    """
    colours = swatch(pixels)
    if colours.weight.size == 0:
        return ()
    labels = _nearest(colours.lab, _k_means(colours))
    labels = _merge_twins(colours, _compact(labels), most)
    found = [_cluster(colours, labels == each) for each in range(labels.max() + 1)]
    return tuple(sorted(found, key=lambda cluster: (-cluster.share, cluster.colour)))


def lead_hue(pixels: Pixels) -> tuple[float, float] | None:
    """The hue that leads in the picture: OKLab degrees (0 to 360), and how strongly, 0 to 1.

    It is the peak of the histogram of hues, each colour counting by visible area times its chroma beyond
    `GREY_CHROMA`. Its strength is the share of all that colourfulness within 30° of the peak: 1 where
    the picture has one hue, about 0.17 where all are alike. None for a neutral picture.
    """
    colours = swatch(pixels)
    chroma = np.hypot(colours.lab[:, 1], colours.lab[:, 2])
    pull = colours.weight * np.maximum(np.round(chroma - GREY_CHROMA, 9), 0)
    total = float(pull.sum())
    if round(total, 9) < LEAST_CHROMA:
        return None
    hue = np.degrees(np.arctan2(colours.lab[:, 2], colours.lab[:, 1])) % 360
    histogram = np.bincount(np.round(hue, 6).astype(np.intp) % 360, pull, 360)
    offsets = (np.arange(360) + 180) % 360 - 180
    blur = np.exp(-0.5 * (offsets / _HUE_BLUR) ** 2)
    smooth = np.fft.irfft(np.fft.rfft(histogram) * np.fft.rfft(blur), 360)
    peak = int(np.argmax(np.round(smooth / total, 9))) + 0.5
    off_peak = np.round((hue - peak + 180) % 360 - 180, 6)
    at_peak = np.where(np.abs(off_peak) <= _HUE_BLUR, pull, 0)
    mean = float(at_peak @ off_peak / at_peak.sum()) if at_peak.any() else 0.0
    held = float(pull[np.abs(off_peak) <= _HUE_WINDOW].sum())
    return round((peak + mean) % 360, 6) % 360, round(held / total, 9)


def _cluster(colours: Swatch, members: NDArray[np.bool_]) -> Cluster:
    lab, weight = colours.lab[members], colours.weight[members]
    medoid = colours.rgb[members][_medoid(lab, weight)]
    return Cluster(Colour.from_unit(medoid), round(float(weight.sum()), 9))


def _medoid(lab: Floats, weight: Floats) -> int:
    """The colour with the least weighted distance to all others, among the likely ones."""
    off_centre = np.round(np.linalg.norm(lab - weight @ lab / weight.sum(), axis=1), 9)
    central = np.argsort(off_centre, kind="stable")[:_CANDIDATES]
    heavy = np.argsort(-weight, kind="stable")[:_CANDIDATES]
    likely = np.union1d(central, heavy)
    distances = np.linalg.norm(lab[likely][:, None] - lab[None], axis=2) @ weight
    return int(likely[np.argmin(np.round(distances, 9))])


def _k_means(colours: Swatch) -> Floats:
    """Centres in OKLab, from seeds on a grid of colours; k-means after Lloyd."""
    cells, cell_weight = _gridded(colours)
    centres = _seeds(cells, cell_weight)
    for _ in range(_ROUNDS):
        labels = _nearest(cells, centres)
        held = np.bincount(labels, cell_weight, len(centres))
        sums = np.stack(
            [np.bincount(labels, cell_weight * cells[:, axis], len(centres)) for axis in range(3)], axis=1
        )
        moved: Floats = centres.copy()
        moved[held > 0] = np.round(sums[held > 0] / held[held > 0, None], 9)
        if (moved == centres).all():
            break
        centres = moved
    return centres


def _gridded(colours: Swatch) -> tuple[Floats, Floats]:
    """The colours gathered in cells of OKLab: the mean and the weight of each cell."""
    steps = np.floor(colours.lab / _GRID + 0.5).astype(np.int64) + 64
    _, cell = np.unique(steps[:, 0] << 16 | steps[:, 1] << 8 | steps[:, 2], return_inverse=True)
    weight: Floats = np.bincount(cell, colours.weight).astype(np.float64)
    sums = np.stack([np.bincount(cell, colours.weight * colours.lab[:, axis]) for axis in range(3)], axis=1)
    return np.round(sums / weight[:, None], 9), weight


def _seeds(cells: Floats, weight: Floats) -> Floats:
    """The heaviest neighbourhood first, then whatever is both heavy and far from every seed so far.

    Area counts by its fourth root only, so that a vivid thousandth of the picture still gets a seed.
    """
    squares = sum(np.subtract.outer(cells[:, axis], cells[:, axis]) ** 2 for axis in range(3))
    mass = (np.round(squares, 9) < _NEIGHBOURHOOD**2) @ weight
    pull = np.where(mass >= LEAST_SHARE, mass, 0) ** 0.25
    chosen = [int(np.argmax(np.round(mass, 9)))]
    reach = np.full(len(cells), np.inf)
    while len(chosen) < min(_SEEDS, len(cells)):
        reach = np.minimum(reach, np.linalg.norm(cells - cells[chosen[-1]], axis=1))
        appeal = np.round(pull * reach, 9)
        if appeal.max() <= 0:
            break
        chosen.append(int(np.argmax(appeal)))
    return cells[chosen]


def _nearest(lab: Floats, centres: Floats) -> Labels:
    squares = ((lab[:, None] - centres[None]) ** 2).sum(axis=2)
    nearest: Labels = np.argmin(np.round(squares, 9), axis=1)
    return nearest


def _compact(labels: Labels) -> Labels:
    return np.unique(labels, return_inverse=True)[1]


def _merge_twins(colours: Swatch, labels: Labels, most: int) -> Labels:
    """Merge the nearest pair of clusters again and again, specks before all, until the rest stand apart."""
    while (count := int(labels.max()) + 1) > 1:
        share = np.bincount(labels, colours.weight, count)
        sums = [np.bincount(labels, colours.weight * colours.rgb[:, axis], count) for axis in range(3)]
        lab = lab_from_srgb(np.stack(sums, axis=1) / share[:, None])
        apart = np.full((count, count), np.inf)
        for one in range(count - 1):
            apart[one, one + 1 :] = np.round(delta_e_lab(lab[one], lab[one + 1 :]), 9)
        specks = np.round(share, 9) < LEAST_SHARE
        eligible = np.where(specks[:, None] | specks[None], apart, np.inf) if specks.any() else apart
        one, other = divmod(int(np.argmin(eligible)), count)
        if not specks.any() and count <= most and apart[one, other] >= TWINS:
            break
        labels = _compact(np.where(labels == other, one, labels))
    return labels
