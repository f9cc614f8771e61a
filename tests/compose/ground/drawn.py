"""Grounds for the tests: patterns without a design, what they draw as outlines, and their pixels."""

from functools import cache
from typing import Any

import numpy as np
from kit import disc

from padspec.base.colour import WHITE, Colour, lab_from_srgb
from padspec.base.difference import ciede2000
from padspec.base.geometry import Box, Size
from padspec.compose.ground.ground import draw_ground
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.resolve.ground import KINDS, Ground, Kind, Pattern
from padspec.resolve.pictures import PictureWish, PlacedPicture, prepare
from padspec.scene.nodes import Group, Layer, Scene, Shape
from padspec.scene.outline import Line, Move, Outline, Step

BLACK = Colour(0, 0, 0)
TRIM = Size(90, 190)
BLEED = 3.0
AREA = Box(0, 0, TRIM.width, TRIM.height).inset(-BLEED)
#: Pixels to a millimetre: tenths of a millimetre are whole pixels, so that strips can be laid on each other.
FINE = 10

#: Kinds of a lattice or a wave, and those that are strewn.
PERIODIC: tuple[Kind, ...] = ("stripes", "dots", "gingham", "checks", "scallop", "wave", "lattice")


def pattern(kind: Kind, **settings: Any) -> Pattern:
    """A black pattern with what is usual for its kind but for some settings; a motif repeats a disc."""
    usual = KINDS[kind]
    wish = {"colour": BLACK, "size": usual.size, "mark": usual.mark, "angle": usual.angle} | settings
    if kind == "motif":
        wish |= {"picture": placed(wish["size"] * wish["mark"])}
    return Pattern(kind, **wish)


@cache
def placed(side: float) -> PlacedPicture:
    """A disc of this diameter."""
    wish = PictureWish("disc.png", side, side, "auto", trim_empty=True, keep_vector=False, frame=0.0)
    return prepare(disc(120, 120), wish)


def scene(some: Pattern, trim: Size = TRIM, bleed: float = BLEED, behind: Colour = WHITE) -> Scene:
    """A face that bears nothing but its ground."""
    nodes = draw_ground(Ground(behind, some), trim, bleed).nodes
    return Scene(trim, bleed, (Layer("ground", tuple(node for _, node in nodes)),))


def pixels(some: Pattern, trim: Size = TRIM, bleed: float = BLEED, behind: Colour = WHITE) -> np.ndarray:
    """The ground with its bleed at ten pixels a millimetre."""
    return rasterise(face_pdf(scene(some, trim, bleed, behind), packed=False), FINE * 25.4)


def coats(some: Pattern, trim: Size = TRIM, bleed: float = BLEED) -> tuple[Shape, ...]:
    """The shapes of a pattern, back to front."""
    (group,) = [node for node in scene(some, trim, bleed).layers[0].nodes if isinstance(node, Group)]
    return tuple(child for child in group.children if isinstance(child, Shape))


def parts(outline: Outline) -> list[Outline]:
    """An outline in the parts that start with a move."""
    found: list[list[Step]] = []
    for step in outline:
        if isinstance(step, Move):
            found.append([])
        found[-1].append(step)
    return [tuple(part) for part in found]


def marks(some: Pattern, trim: Size = TRIM, bleed: float = BLEED) -> list[Outline]:
    """Every part of every coat of a pattern."""
    return [part for shape in coats(some, trim, bleed) for part in parts(shape.outline)]


def corners(outline: Outline) -> np.ndarray:
    return np.array([(step.x, step.y) for step in outline if isinstance(step, Move | Line)])


def covered(some: Pattern, trim: Size) -> float:
    """The share of the trim that is darker than its white ground, from pixels."""
    return float(1 - pixels(some, trim, 0.0).mean() / 255)


def colour_difference(one: np.ndarray, other: np.ndarray) -> np.ndarray:
    """CIEDE2000 of pixels, pair by pair."""
    return ciede2000(lab_from_srgb(one / 255.0), lab_from_srgb(other / 255.0))


def cells(image: np.ndarray, size: int) -> np.ndarray:
    """Means over squares of pixels."""
    rows, columns = image.shape[0] // size, image.shape[1] // size
    cut = image[: rows * size, : columns * size].astype(float)
    return cut.reshape(rows, size, columns, size, 3).mean(axis=(1, 3))
