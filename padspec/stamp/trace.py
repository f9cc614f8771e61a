"""A drawing in, one black outline out: what is darker than a threshold, its edges traced between the pixels."""

from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

from padspec.art.errors import ArtError
from padspec.art.pixels import Pixels
from padspec.art.raster.decode import sniff
from padspec.art.raster.once import decoded
from padspec.art.resample import bring_down
from padspec.art.svg.drawing import check_svg, draw_svg, svg_size
from padspec.base.colour import Floats, linear_from_srgb, srgb_from_linear
from padspec.base.geometry import Size
from padspec.base.numbers import percent_text
from padspec.resolve.stamp import Drawing
from padspec.scene.outline import Close, Line, Move, Outline, Step

#: Pixels an inch that a drawing is traced at, and the most on its longer side.
PPI, _MOST_PIXELS = 1200.0, 4000
#: Points of an edge are left out where that moves it by less than this, in mm: a fifth of a dot at 1200 an inch.
_TOLERANCE = 0.004
#: Specks smaller than this, in square mm, are dust of the picture.
_LEAST_SPECK = 0.004
_WEIGHTS = np.array([0.2126, 0.7152, 0.0722])


def traced(drawing: Drawing) -> tuple[Outline, Size]:
    """The outline from the drawing's top left corner, in mm, filled by non-zero winding, and the box that it lies
    in, its empty edges taken away. Raises ArtError.
    """
    pixels = _pixels(drawing)
    lightness = _lightness(pixels)
    black = lightness < drawing.threshold
    if not black.any():
        share = percent_text(drawing.threshold)
        message = f"Nothing of {drawing.file} is darker than a grey of {share}."
        raise ArtError(message, "Write a higher threshold: under stamp, or a darker drawing.")
    top, foot = _extent(np.asarray(black.any(axis=1)))
    left, right = _extent(np.asarray(black.any(axis=0)))
    part = lightness[top:foot, left:right]
    scale = drawing.height / (foot - top)
    return _outline(part, drawing.threshold, scale), Size((right - left) * scale, drawing.height)


def _extent(some: NDArray[np.bool_]) -> tuple[int, int]:
    at = np.flatnonzero(some)
    return int(at[0]), int(at[-1]) + 1


def _pixels(drawing: Drawing) -> Pixels:
    """The drawing at the resolution of the trace, or its own where that is less."""
    height = drawing.height / 25.4 * PPI
    if sniff(drawing.data) == "svg":
        check_svg(drawing.data, drawing.file)
        size = Size(*svg_size(drawing.data, drawing.file))
        share = min(height / size.height, _MOST_PIXELS / max(size.width, size.height))
        wide, high = (max(1, round(side * share)) for side in (size.width, size.height))
        return draw_svg(drawing.data, drawing.file, wide, high)
    pixels = decoded(drawing.data, drawing.file)
    share = min(height / pixels.height, _MOST_PIXELS / max(pixels.width, pixels.height), 1.0)
    return bring_down(pixels, max(1, round(pixels.width * share)), max(1, round(pixels.height * share)))


def _lightness(pixels: Pixels) -> Floats:
    """How light each pixel is on white paper, as sRGB of an equal grey (0 to 1)."""
    alpha = pixels.rgba[..., 3:] / 255
    light = linear_from_srgb(pixels.rgba[..., :3] / 255) @ _WEIGHTS
    on_white = light * alpha[..., 0] + (1 - alpha[..., 0])
    return np.asarray(srgb_from_linear(on_white))


def _outline(lightness: Floats, threshold: float, scale: float) -> Outline:
    from contourpy import FillType, contour_generator

    # White all round, so that every edge is closed; a pixel's value stands in its middle.
    padded = np.pad(1 - lightness, 1)
    traced_by: Any = contour_generator(z=padded, fill_type=FillType.OuterOffset)
    steps: list[Step] = []
    for points, offsets in zip(*traced_by.filled(1 - threshold, 2.0), strict=True):
        for start, end in pairwise(offsets):
            ring = (np.asarray(points[start:end], float) - 0.5) * scale
            if _area(ring) >= _LEAST_SPECK:
                steps += _ring(_thinned(ring[:-1]))
    return tuple(steps)


def _area(ring: Floats) -> float:
    x, y = ring[:, 0], ring[:, 1]
    return float(abs(np.dot(x[:-1], y[1:]) - np.dot(x[1:], y[:-1])) / 2)


def _ring(points: Floats) -> list[Step]:
    first, *rest = [(round(float(x), 3), round(float(y), 3)) for x, y in points]
    return [Move(*first), *(Line(*point) for point in rest), Close()]


def _thinned(points: Floats) -> Floats:
    """A ring less the points that lie on the straight line between others, to the tolerance (Douglas and
    Peucker).
    """
    if len(points) < 4:
        return points
    far = int(np.argmax(((points - points[0]) ** 2).sum(axis=1)))
    closed = np.concatenate([points, points[:1]])
    kept = {0, far}
    stack = [(0, far), (far, len(points))]
    while stack:
        start, end = stack.pop()
        if end - start < 2:
            continue
        at, off = _farthest(closed[start : end + 1])
        if off > _TOLERANCE:
            kept.add(start + at)
            stack += [(start, start + at), (start + at, end)]
    return np.asarray(points[sorted(kept)])


def _farthest(points: Floats) -> tuple[int, float]:
    """The point farthest from the line between the first and the last, and how far it is."""
    along = points[-1] - points[0]
    length = float(np.hypot(*along))
    offset = points - points[0]
    off = np.abs(offset[:, 0] * along[1] - offset[:, 1] * along[0]) / length if length else np.hypot(*offset.T)
    at = int(np.argmax(off))
    return at, float(off[at])
