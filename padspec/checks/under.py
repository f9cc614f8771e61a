"""What really lies under the lines: the face without its rules and lettering, rasterised from its own PDF.

Nominal colours would miss a pattern, a picture or a panel edge under a line; the pixels do not.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from padspec.base.colour import Colour, Floats
from padspec.base.contrast import contrast_ratios
from padspec.base.geometry import bounded_ppi
from padspec.compose.face import Face
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.scene.nodes import without
from padspec.scene.outline import Close, Curve, Line, Move, Outline

PPI = 300.0
#: Contrast is the 5th percentile along a line: a speck of pattern does not decide, a stretch does.
PERCENTILE = 5.0


@dataclass(frozen=True, slots=True)
class Under:
    """Pixels, shape (height, width, 3), where the trim's corner lies in them, in mm, and how many to an inch."""

    pixels: NDArray[np.uint8]
    origin: float
    ppi: float = PPI

    def along(self, outline: Outline) -> Floats:
        """The sRGB values, shape (n, 3) between 0 and 1, met on the way along an outline, a pixel at a time."""
        points = flattened(outline, 25.4 / self.ppi)
        spots = np.floor((points + self.origin) * self.ppi / 25.4).astype(int)
        height, width = self.pixels.shape[:2]
        inside = (spots[:, 0] >= 0) & (spots[:, 0] < width) & (spots[:, 1] >= 0) & (spots[:, 1] < height)
        spots = spots[inside]
        return np.asarray(self.pixels[spots[:, 1], spots[:, 0]] / 255.0, dtype=np.float64)


def look_under(face: Face) -> Under:
    """Rasterise the face less rules and lettering, with its bleed, at 300 pixels an inch (fewer on a poster)."""
    bare = without(face.scene, "rules", "lettering")
    ppi = bounded_ppi(bare.bleed_box.size, PPI)
    return Under(rasterise(face_pdf(bare, packed=False), ppi), face.scene.bleed, ppi)


def least_contrast(colour: Colour, under: Floats) -> float:
    """The 5th percentile of a colour's contrast with what lies under it; 21 where nothing does."""
    if len(under) == 0:
        return 21.0
    return float(np.percentile(contrast_ratios(colour, under), PERCENTILE))


# Several checks walk along every line, and so does the next colourway.
@lru_cache(maxsize=512)
def flattened(outline: Outline, step: float) -> Floats:
    """Points along an outline, at most `step` apart on straight lines and near that on curves, shape (n, 2)."""
    found: list[Floats] = []
    start = here = (0.0, 0.0)
    for part in outline:
        match part:
            case Move(x, y):
                start = here = (x, y)
            case Line(x, y):
                found.append(_straight(here, (x, y), step))
                here = (x, y)
            case Curve(x1, y1, x2, y2, x, y):
                found.append(_curved((here, (x1, y1), (x2, y2), (x, y)), step))
                here = (x, y)
            case Close():
                found.append(_straight(here, start, step))
                here = start
    return np.concatenate(found) if found else np.empty((0, 2))


def _straight(a: tuple[float, float], b: tuple[float, float], step: float) -> Floats:
    length = float(np.hypot(b[0] - a[0], b[1] - a[1]))
    t = np.linspace(0, 1, max(int(length / step) + 1, 2))[:, None]
    return np.asarray(np.array(a) * (1 - t) + np.array(b) * t)


def _curved(handles: tuple[tuple[float, float], ...], step: float) -> Floats:
    p0, p1, p2, p3 = (np.array(point) for point in handles)
    length = float(np.hypot(*(p1 - p0)) + np.hypot(*(p2 - p1)) + np.hypot(*(p3 - p2)))
    t = np.linspace(0, 1, max(int(length / step) + 1, 2))[:, None]
    return np.asarray((1 - t) ** 3 * p0 + 3 * (1 - t) ** 2 * t * p1 + 3 * (1 - t) * t**2 * p2 + t**3 * p3)
