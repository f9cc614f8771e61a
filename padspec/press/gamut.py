"""Which colours of a face the press cannot print: wanted against printed, by CIEDE2000.

Wanted is the sRGB colour with its white on the paper (relative colorimetric), printed what the profile's own
table says of the inks. With black-point compensation (ISO 18619) black means the darkest that the press
prints; without it, a wanted colour darker than that counts as that dark. Lines are held to black ink alone.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.base.colour import BLACK, WHITE, Colour, Floats
from padspec.base.difference import ciede2000
from padspec.press.conversion import lab_from_xyz, wanted_lab, xyz_from_lab
from padspec.press.inks import SOLID_BLACK, Inks
from padspec.press.separate import LINE_LAYERS, Separator
from padspec.scene.nodes import Group, LayerName, Node, Raster, Scene, Shape, pictures

#: A picture is judged by this many of its pixels at most, evenly spread.
MOST_SAMPLES = 20_000
_PAPER_XYZ = xyz_from_lab(np.array([100.0, 0.0, 0.0]))


@dataclass(frozen=True, slots=True)
class FlatMiss:
    """A plain colour and its layer, the inks it is printed with, and how far off they print (CIEDE2000)."""

    colour: Colour
    layer: LayerName
    block: str
    inks: Inks
    delta_e: float


@dataclass(frozen=True, slots=True)
class PictureMiss:
    """A picture by name: the worst pixel, its colour, and the share of seen pixels above a limit (0 to 1)."""

    name: str
    colour: Colour
    delta_e: float
    share_above: float


def flat_misses(scene: Scene, separator: Separator) -> tuple[FlatMiss, ...]:
    """Every plain colour of a face in each layer it stands in, worst first; white is paper and left out."""
    found = []
    for (colour, layer), block in sorted(_flat_colours(scene).items()):
        delta = miss_of(colour, layer, separator)
        found.append(FlatMiss(colour, layer, block, separator.inks(colour, layer), delta))
    return tuple(sorted(found, key=lambda miss: -miss.delta_e))


def miss_of(colour: Colour, layer: LayerName, separator: Separator) -> float:
    """How far off a plain colour prints in a layer (CIEDE2000)."""
    inks = separator.inks(colour, layer)
    wanted = wanted_lab(colour.unit)[None, :]
    if not (layer in LINE_LAYERS and colour.is_neutral):
        wanted = _compensated(wanted, separator)
    if layer in LINE_LAYERS:
        wanted = _held_above(wanted, separator.lightness(SOLID_BLACK))
    return float(_delta_e(wanted, separator.conversion.lab(np.array([inks.steps], np.uint8)))[0])


def picture_misses(scene: Scene, separator: Separator, limit: float) -> tuple[PictureMiss, ...]:
    """Every raster picture of a face, in the order drawn; see-through pixels are left out."""
    rasters = {p.image.digest: p.image for p in pictures(scene) if isinstance(p.image, Raster)}
    return tuple(miss for raster in rasters.values() for miss in _picture_miss(raster, separator, limit))


def _picture_miss(raster: Raster, separator: Separator, limit: float) -> Iterator[PictureMiss]:
    rgb = _samples(raster)
    if not len(rgb):
        return
    colours, counts = np.unique(rgb, axis=0, return_counts=True)
    wanted = _compensated(wanted_lab(colours / 255), separator)
    delta = _delta_e(wanted, separator.conversion.lab(separator.conversion.inks(colours)))
    worst = int(delta.argmax())
    share = counts[delta > limit].sum() / counts.sum()
    yield PictureMiss(
        raster.name, Colour(*(int(c) for c in colours[worst])), float(delta[worst]), round(float(share), 9)
    )


def _samples(raster: Raster) -> NDArray[np.uint8]:
    """Pixels that are at least half there, shape (n, 3), every so many of them."""
    rgb = np.frombuffer(raster.rgb, np.uint8).reshape(-1, 3)
    if raster.alpha is not None:
        rgb = rgb[np.frombuffer(raster.alpha, np.uint8) >= 128]
    return rgb[:: max(1, -(-len(rgb) // MOST_SAMPLES))]


def _flat_colours(scene: Scene) -> dict[tuple[Colour, LayerName], str]:
    """Colours by layer, each with the first block that draws with it."""
    found: dict[tuple[Colour, LayerName], str] = {}
    for layer in scene.layers:
        for shape in _shapes(layer.nodes):
            for colour in (shape.fill, shape.stroke.colour if shape.stroke else None):
                if colour is not None and colour != WHITE:
                    found.setdefault((colour, layer.name), shape.cause.block)
    return found


def _shapes(nodes: tuple[Node, ...]) -> Iterator[Shape]:
    for node in nodes:
        if isinstance(node, Group):
            yield from _shapes(node.children)
        elif isinstance(node, Shape):
            yield node


def _compensated(lab: Floats, separator: Separator) -> Floats:
    """Wanted colours with their black at the press's: scaled in XYZ, as ISO 18619 does it, or held above it."""
    black = separator.lightness(separator.area(BLACK))
    if separator.press.intent == "absolute" or not separator.press.black_point:
        return _held_above(lab, black)
    share = float(xyz_from_lab(np.array([black, 0.0, 0.0]))[1])
    return lab_from_xyz(xyz_from_lab(lab) * (1 - share) + _PAPER_XYZ * share)


def _held_above(lab: Floats, black: float) -> Floats:
    return np.concatenate([np.maximum(lab[:, :1], black), lab[:, 1:]], axis=1)


def _delta_e(wanted: Floats, printed: Floats) -> Floats:
    """CIEDE2000 row by row, to a millionth."""
    return np.round(ciede2000(wanted, printed), 6)
