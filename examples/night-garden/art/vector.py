"""Marks for pictures that stay vector: the same hand, written as SVG paths.

In: points placed by hand and colours. Out: a `Sheet`, whose `text()` is a
complete self-contained SVG. Only paths and gradients are used, so any
renderer can draw it, and all coordinates are whole numbers.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

import numpy as np
from brush import Array, Point, Points, mix

UNIT = 1.3  # drawing units to one unit of the hand-placed points, so that whole
# numbers are fine enough


def num(value: float) -> str:
    """Write a number already in drawing units."""
    return str(round(value))


def run_on(*values: float) -> str:
    """Write numbers with no more between them than is needed."""
    return " ".join(num(v) for v in values).replace(" -", "-")


def whole(points: Points) -> Array:
    """Put points on the drawing's whole-number grid."""
    return np.round(np.asarray(points, float) * UNIT)


def hexed(colour: str | Array) -> str:
    """Write a colour as `#rrggbb`."""
    if isinstance(colour, str):
        return colour
    return "#" + "".join(f"{round(float(np.clip(v, 0, 1)) * 255):02x}" for v in colour)


def bends(ends: Array) -> str:
    """Write the Catmull-Rom curve through `ends[1:-1]` as relative Beziers.

    Each span leaves its first point along the way the last one arrived, so all
    but the first can use the shorter `s` command.
    """
    out = ""
    for i in range(2, len(ends) - 1):
        p0, p1, p2, p3 = ends[i - 2 : i + 2]
        arrive = (*(p2 - p1 - (p3 - p1) / 6), *(p2 - p1))
        if i == 2:
            out = "c" + run_on(*((p2 - p0) / 6), *arrive)
        elif i == 3:
            out += "s" + run_on(*arrive)
        else:
            out += (" " + run_on(*arrive)).replace(" -", "-")
    return out


def smooth(*runs: Points) -> str:
    """Write one closed path through the runs, smooth within each and cornered between."""
    grids = [whole(run) for run in runs]
    pen = grids[0][0]
    parts = [f"M{run_on(*pen)}"]
    for knots in grids:
        if np.any(knots[0] != pen):
            parts.append("l" + run_on(*(knots[0] - pen)))
        parts.append(bends(np.vstack([2 * knots[0] - knots[1], knots, 2 * knots[-1] - knots[-2]])))
        pen = knots[-1]
    return "".join(parts) + "z"


def ring(knots: Points) -> str:
    """Write a closed path with no corners."""
    loop = whole(knots)
    return f"M{run_on(*loop[0])}" + bends(np.vstack([loop[-1], loop, loop[0], loop[1]])) + "z"


def oval(
    at: Point,
    across: float,
    down: float,
    turn: float = 0,
    rng: np.random.Generator | None = None,
    rough: float = 0.06,
    knots: int = 7,
) -> str:
    """Write a rounded, hand-drawn spot."""
    a = np.linspace(0, 2 * math.pi, knots, endpoint=False)
    reach = 1 + (rng.normal(0, rough, knots) if rng is not None else 0)
    t = math.radians(turn)
    x, y = np.cos(a) * reach * across / 2, np.sin(a) * reach * down / 2
    return ring(
        np.column_stack([at[0] + x * math.cos(t) - y * math.sin(t), at[1] + x * math.sin(t) + y * math.cos(t)])
    )


def spot(at: Point, size: float) -> str:
    """Write a small round freckle: an arc that all but closes on itself."""
    x, y = whole(at)
    r = max(1, round(size * UNIT / 2))
    return f"M{run_on(x, y - r)}a{r} {r} 0 1 0 1 0z"


def fleck(root: Point, tip: Point, width: float, bow: float = 0) -> str:
    """Write one brush touch, fine at both ends."""
    start, end = whole(root), whole(tip)
    along = end - start
    across = np.array([-along[1], along[0]]) / max(float(np.hypot(*along)), 1e-6)
    middle = along * 0.45 + across * bow * np.hypot(*along)
    out, back = middle + across * width * UNIT, middle - across * width * UNIT - along
    return f"M{run_on(*start)}q{run_on(*out, *along)} {run_on(*back, *-along)}z".replace(" -", "-")


def scratch(root: Point, tip: Point, width: float) -> str:
    """Write the smallest touch: a three-cornered sliver, broadest near its root."""
    start, end = whole(root), whole(tip)
    along = end - start
    across = np.array([-along[1], along[0]]) / max(float(np.hypot(*along)), 1e-6) * width * UNIT * 1.5
    first = np.round(along * 0.3 + across)
    return f"M{run_on(*start)}l{run_on(*first, *(along - first))}z".replace(" -", "-")


def taper(points: Points, start: float, end: float, belly: float | None = None) -> str:
    """Write a stroke along a curve with changing width."""
    path = np.asarray(points, float)
    along = np.gradient(path, axis=0)
    side = (
        np.column_stack([-along[:, 1], along[:, 0]])
        / np.maximum(np.hypot(along[:, 0], along[:, 1]), 1e-6)[:, None]
    )
    t = np.linspace(0, 1, len(path))
    width = start + (end - start) * t
    if belly is not None:
        width = (1 - t) ** 2 * start + 2 * t * (1 - t) * (2 * belly - (start + end) / 2) + t**2 * end
    shift = side * (width / 2)[:, None]
    return smooth(path + shift, (path - shift)[::-1])


class Sheet:
    """An SVG being drawn."""

    def __init__(self, width: float, height: float) -> None:
        self.width, self.height = width, height
        self.defs: list[str] = []
        self.body: list[str] = []

    def linear(
        self, name: str, stops: Sequence[tuple[float, str | Array]], line: tuple[float, float, float, float]
    ) -> str:
        """Define a gradient along a line given as shares of the shape's box."""
        x1, y1, x2, y2 = (f"{v:.2f}" for v in line)
        inside = "".join(f'<stop offset="{o:.2f}" stop-color="{hexed(c)}"/>' for o, c in stops)
        self.defs.append(
            f'<linearGradient id="{name}" x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}">{inside}</linearGradient>'
        )
        return f"url(#{name})"

    def path(self, d: str, fill: str | Array, opacity: float = 1) -> None:
        """Fill a path."""
        shade = f' opacity="{opacity:.2f}"'.replace('"0.', '".').replace('0"', '"') if opacity < 1 else ""
        self.body.append(f'<path d="{d}" fill="{hexed(fill)}"{shade}/>')

    def many(self, paths: Iterable[str], fill: str | Array, opacity: float = 1) -> None:
        """Fill several small paths as one."""
        d = "".join(paths)
        if d:
            self.path(d, fill, opacity)

    def open(self, note: str) -> None:
        """Begin a named group."""
        self.body.append(f'<g id="{note}">')

    def close(self) -> None:
        """End the group."""
        self.body.append("</g>")

    def text(self, box: tuple[float, float, float, float]) -> str:
        """Give the whole file, showing only the given box (x, y, width, height)."""
        view = " ".join(num(v * UNIT) for v in box)
        size = f'width="{num(box[2])}" height="{num(box[3])}" viewBox="{view}"'
        head = f'<svg xmlns="http://www.w3.org/2000/svg" {size}>'
        return "\n".join([head, "<defs>", *self.defs, "</defs>", *self.body, "</svg>"]) + "\n"


def tone(first: str | Array, second: str | Array, share: float) -> str:
    """Mix two colours and write the result."""
    return hexed(mix(first, second, float(np.clip(share, 0, 1))))
