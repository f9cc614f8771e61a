"""Where things lie and where they are seen: slabs on a table, in mm, mapped to pixels.

The camera looks straight down with its lens shifted: whatever is parallel to the table keeps its shape, and what
stands higher is seen further up and to the left, so that foot and right-hand side show. Plan coordinates are x to
the right and y towards the viewer, heights are above the table.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from padspec.base.geometry import Affine, Box

Field = NDArray[np.float32]
Point = tuple[float, float]
Side = Literal["head", "right", "foot", "left"]

SIDES: tuple[Side, ...] = ("head", "left", "right", "foot")
#: How far up the picture, and to the left, a millimetre of height is seen: the projection of a side.
LEAN: Point = (0.24, 0.44)


@dataclass(frozen=True, slots=True)
class Slab:
    """A block with square corners, its middle at `centre`, turned clockwise by `turn` degrees.

    Its underside is `left` mm above the table along its left edge and `right` along its right one: it may lean.
    `look` says which pad it is of, `leaf` whether it is a single leaf rather than a pad.
    """

    look: int
    width: float
    height: float
    thickness: float
    centre: Point
    turn: float = 0.0
    left: float = 0.0
    right: float = 0.0
    leaf: bool = False

    def plan(self, u: float, v: float) -> Point:
        """Where a point of its own lies on the plan: u from the left edge, v from the head."""
        across, down = u - self.width / 2, v - self.height / 2
        c, s = cos(radians(self.turn)), sin(radians(self.turn))
        return self.centre[0] + c * across - s * down, self.centre[1] + s * across + c * down

    def underside(self, u: float) -> float:
        """How high its underside is, u from the left edge."""
        return self.left + (self.right - self.left) * u / self.width

    def height_at(self, x: float, y: float) -> float:
        """How high its upper side is, or would be, over a point of the plan."""
        c, s = cos(radians(self.turn)), sin(radians(self.turn))
        across = c * (x - self.centre[0]) + s * (y - self.centre[1])
        return self.underside(across + self.width / 2) + self.thickness


@dataclass(frozen=True, slots=True)
class View:
    """Pixels for a millimetre, and where the plan's origin is seen, in pixels."""

    scale: float
    origin: Point = (0.0, 0.0)

    def seen(self, x: float, y: float, z: float) -> Point:
        """The pixel, in continuous coordinates, at which a point is seen."""
        return (
            self.origin[0] + self.scale * (x - z * LEAN[0]),
            self.origin[1] + self.scale * (y - z * LEAN[1]),
        )

    def reduced(self, share: float) -> "View":
        """The same view on a picture with this share of the pixels a side."""
        return View(self.scale * share, (self.origin[0] * share, self.origin[1] * share))


@dataclass(frozen=True, slots=True)
class Window:
    """A part of a picture in whole pixels: from left and top, up to right and bottom."""

    left: int
    top: int
    right: int
    bottom: int

    @property
    def size(self) -> tuple[int, int]:
        """Width and height."""
        return self.right - self.left, self.bottom - self.top

    @property
    def slices(self) -> tuple[slice, slice]:
        """Rows and columns of the picture."""
        return slice(self.top, self.bottom), slice(self.left, self.right)


def top_map(slab: Slab, view: View) -> Affine:
    """From the upper side's own millimetres (u from the left edge, v from the head) to pixels."""
    return _through(slab, view, (0, 0, slab.thickness), (1, 0, slab.thickness), (0, 1, slab.thickness))


def side_map(slab: Slab, side: Side, view: View) -> Affine:
    """From a side's own millimetres (s along it, left to right or head to foot; t down from its top) to pixels."""
    u, v = (slab.width if side == "right" else 0.0), (slab.height if side == "foot" else 0.0)
    z = slab.thickness
    along = (u + 1, v, z) if side in ("head", "foot") else (u, v + 1, z)
    return _through(slab, view, (u, v, z), along, (u, v, z - 1))


def side_length(slab: Slab, side: Side) -> float:
    """How long a side is."""
    return slab.width if side in ("head", "foot") else slab.height


def outward(slab: Slab, side: Side) -> Point:
    """The direction a side faces, on the plan."""
    angle = radians(slab.turn)
    along, across = (cos(angle), sin(angle)), (-sin(angle), cos(angle))
    match side:
        case "head":
            return -across[0], -across[1]
        case "foot":
            return across
        case "left":
            return -along[0], -along[1]
        case "right":
            return along


def is_seen(slab: Slab, side: Side) -> bool:
    """Whether the camera sees this side."""
    x, y = outward(slab, side)
    return round(x * LEAN[0] + y * LEAN[1], 9) > 0


def seen_box(slab: Slab, view: View) -> Box:
    """The box around all that is seen of a slab, in pixels."""
    points = []
    for u, v in ((0.0, 0.0), (slab.width, 0.0), (slab.width, slab.height), (0.0, slab.height)):
        x, y = slab.plan(u, v)
        points += [view.seen(x, y, slab.underside(u)), view.seen(x, y, slab.underside(u) + slab.thickness)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))


def corners(by: Affine, width: float, height: float) -> tuple[Point, ...]:
    """The corners of a rectangle from the origin after a map, in order around it."""
    return tuple(by.of(x, y) for x, y in ((0, 0), (width, 0), (width, height), (0, height)))


def window(points: Iterable[Point], frame: tuple[int, int], margin: float = 2) -> Window:
    """The part of a picture that holds these points, with a margin in pixels; it may be empty."""
    array = np.array(list(points))
    low, high = np.floor(array.min(axis=0) - margin), np.ceil(array.max(axis=0) + margin)
    left, top = (int(min(max(low[n], 0), frame[n])) for n in (0, 1))
    right, bottom = (int(min(max(high[n], 0), frame[n])) for n in (0, 1))
    return Window(left, top, max(left, right), max(top, bottom))


def coverage(points: tuple[Point, ...], part: Window) -> Field:
    """How much of each pixel a convex polygon covers, 0 to 1: the product over its edges of how far inside the
    pixel's middle is, which is exact along a straight edge that runs with the grid and near it elsewhere.
    """
    xs = np.arange(part.left, part.right, dtype=np.float32)[None, :] + 0.5
    ys = np.arange(part.top, part.bottom, dtype=np.float32)[:, None] + 0.5
    covered = np.ones((ys.size, xs.size), np.float32)
    turning = _area(points)
    for (x, y), (to_x, to_y) in zip(points, (*points[1:], points[0]), strict=True):
        dx, dy = to_x - x, to_y - y
        length = float(np.hypot(dx, dy)) * (1 if turning > 0 else -1)
        if length == 0:
            continue
        nx, ny = np.float32(-dy / length), np.float32(dx / length)
        covered *= np.clip(nx * (xs - np.float32(x)) + ny * (ys - np.float32(y)) + np.float32(0.5), 0, 1)
    return covered


def own_coordinates(by: Affine, part: Window) -> tuple[Field, Field]:
    """Where the middle of each pixel of a window lies in the coordinates that a map takes to pixels."""
    back = inverse(by)
    xs = np.arange(part.left, part.right, dtype=np.float32)[None, :] + 0.5
    ys = np.arange(part.top, part.bottom, dtype=np.float32)[:, None] + 0.5
    u = np.float32(back.a) * xs + np.float32(back.c) * ys + np.float32(back.e)
    v = np.float32(back.b) * xs + np.float32(back.d) * ys + np.float32(back.f)
    return u, v


def inverse(by: Affine) -> Affine:
    """The map back. Raises ValueError where a map leaves no area."""
    area = by.a * by.d - by.b * by.c
    if round(area, 12) == 0:
        raise ValueError("this map leaves no area")
    a, b, c, d = by.d / area, -by.b / area, -by.c / area, by.a / area
    return Affine(a, b, c, d, -(a * by.e + c * by.f), -(b * by.e + d * by.f))


def _area(points: tuple[Point, ...]) -> float:
    """Twice the area, positive where the corners run clockwise as seen (y downwards)."""
    turned = zip(points, (*points[1:], points[0]), strict=True)
    return sum(x * to_y - to_x * y for (x, y), (to_x, to_y) in turned)


def _through(
    slab: Slab,
    view: View,
    start: tuple[float, float, float],
    along: tuple[float, float, float],
    down: tuple[float, float, float],
) -> Affine:
    """The map of (0, 0), (1, 0) and (0, 1) to three points of a slab: u, v, and height over its underside."""
    seen = []
    for u, v, z in (start, along, down):
        x, y = slab.plan(u, v)
        seen.append(view.seen(x, y, slab.underside(u) + z))
    (x0, y0), (x1, y1), (x2, y2) = seen
    return Affine(x1 - x0, y1 - y0, x2 - x0, y2 - y0, x0, y0)
