"""What prints on a leaf at any place, bleed included, in cells: from the pixels of its face.

A print is asked in the sheet's own directions; a leaf that lies on its side is turned back here.
"""

from dataclasses import dataclass
from typing import Protocol

import numpy as np

from padspec.base.colour import Floats
from padspec.base.geometry import Box
from padspec.checks.under import Under
from padspec.compose.face import Face
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.scene.nodes import Shape
from padspec.scene.outline import bounds
from padspec.sheet.sheet import Slot


class Print(Protocol):
    """What prints on a leaf: `bleed` is how far past the trim it is known."""

    @property
    def bleed(self) -> float:
        """Millimetres past the trim."""
        ...

    def cells(self, box: Box, rows: int, columns: int) -> Floats:
        """The mean sRGB colour of each cell of a box on the face, in mm from the trim's corner, shape (rows,
        columns, 3), channels 0 to 1. What lies past the bleed is like the outermost of it.
        """
        ...


@dataclass(frozen=True, slots=True)
class RasterPrint:
    """A print from pixels."""

    raster: Under

    @property
    def bleed(self) -> float:
        """Millimetres past the trim."""
        return self.raster.origin

    def cells(self, box: Box, rows: int, columns: int) -> Floats:
        """Exact means: pixels that a cell holds in part count in part."""
        scale, origin = self.raster.ppi / 25.4, self.raster.origin
        down = (np.linspace(box.y, box.bottom, rows + 1) + origin) * scale
        across = (np.linspace(box.x, box.right, columns + 1) + origin) * scale
        height, width = self.raster.pixels.shape[:2]
        window = self.raster.pixels[np.ix_(_reached(down, height), _reached(across, width))]
        by_rows = _means(window.astype(np.float64), down)
        by_cells = _means(by_rows.swapaxes(0, 1), across).swapaxes(0, 1)
        return np.asarray(by_cells / 255.0)


def print_of(face: Face, under: Under, reach: float) -> RasterPrint:
    """The print of a face: what lies `under` its lines, unless some line comes as near to the trim as `reach`."""
    keep = Box(0, 0, face.scene.size.width, face.scene.size.height).inset(reach)
    lines = (node for layer in face.scene.layers if layer.name in ("rules", "lettering") for node in layer.nodes)
    if all(isinstance(node, Shape) and keep.covers(_ink(node)) for node in lines):
        return RasterPrint(under)
    return RasterPrint(Under(rasterise(face_pdf(face.scene, packed=False), under.ppi), under.origin, under.ppi))


def seen(leaf: Print, slot: Slot, box: Box, rows: int, columns: int) -> Floats:
    """The cells of a box on the sheet, in the sheet's directions, as one leaf alone would print it there.

    Past the leaf's trim that is its bleed, whether or not the sheet has room for it.
    """
    if not slot.turned:
        return leaf.cells(box.moved(-slot.trim.x, -slot.trim.y), rows, columns)
    lying = Box(box.y - slot.trim.y, slot.trim.right - box.right, box.height, box.width)
    return np.rot90(leaf.cells(lying, columns, rows), -1)


def _ink(shape: Shape) -> Box:
    return bounds(shape.outline).inset(-(shape.stroke.weight / 2 if shape.stroke else 0.0))


def _reached(edges: Floats, size: int) -> "np.ndarray[tuple[int], np.dtype[np.intp]]":
    """The pixels from the first edge to the last; past the raster the outermost one stands again."""
    return np.clip(np.arange(np.floor(edges[0]), np.ceil(edges[-1])).astype(np.intp), 0, size - 1)


def _means(pixels: Floats, edges: Floats) -> Floats:
    """Means along the first axis between edges in pixels; the first pixel is the one that holds the first edge."""
    at = edges - np.floor(edges[0])
    whole = np.minimum(at.astype(int), len(pixels) - 1)
    summed = np.concatenate([np.zeros((1, *pixels.shape[1:])), np.cumsum(pixels, axis=0)])
    upto = summed[whole] + (at - whole)[:, None, None] * pixels[whole]
    return np.asarray(np.diff(upto, axis=0) / np.diff(edges)[:, None, None])
