"""The hand: points placed by eye, made into short SVG paths.

In: points as complex numbers (x right, y down). Out: path texts in relative
whole numbers, which keeps a picture of a few hundred touches under 40 kB.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from random import Random

Points = Sequence[complex]


def at(*numbers: float) -> list[complex]:
    """Pair numbers off as points, x and y in turn."""
    return [complex(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]


def marks(places: str) -> list[complex]:
    """Read points written as `x,y x,y`.

    >>> marks("1,2 -3,0.5")
    [(1+2j), (-3+0.5j)]
    """
    return [complex(*map(float, place.split(","))) for place in places.split()]


def placed(
    points: Points, origin: complex = 0, size: float = 1, turn: float = 0, flip: bool = False
) -> list[complex]:
    """Put points from an object's own measure on the sheet; `turn` in degrees, clockwise; `flip` mirrors first."""
    spin = cmath.rect(size, math.radians(turn))
    return [origin + spin * (p.conjugate() if flip else p) for p in points]


def heading(degrees: float, length: float = 1) -> complex:
    """Give a step in a direction: 0 is right, 90 is down."""
    return cmath.rect(length, math.radians(degrees))


def middle(points: Points) -> complex:
    """Give the centre of the points' box."""
    xs, ys = [p.real for p in points], [p.imag for p in points]
    return complex(min(xs) + max(xs), min(ys) + max(ys)) / 2


def reach(points: Points) -> float:
    """Give the mean half side of the points' box."""
    xs, ys = [p.real for p in points], [p.imag for p in points]
    return (max(xs) - min(xs) + max(ys) - min(ys)) / 4


def shaky(points: Points, amount: float, rng: Random) -> list[complex]:
    """Move every point a little, as a hand does."""
    return [p + complex(rng.uniform(-amount, amount), rng.uniform(-amount, amount)) for p in points]


def drawn_in(points: Points, scale: float, shift: complex = 0) -> list[complex]:
    """Shrink points about their middle, then shift them."""
    centre = middle(points)
    return [centre + (p - centre) * scale + shift for p in points]


def oval(
    centre: complex, across: float, down: float, turn: float = 0, rng: Random | None = None, rough: float = 0.04
) -> list[complex]:
    """Give eight knots of a rounded spot; `across` and `down` are its full sizes."""
    knots = []
    for k in range(8):
        a, grow = k * math.pi / 4, 1 + (rng.uniform(-rough, rough) if rng else 0)
        knots.append(complex(math.cos(a) * across, math.sin(a) * down) / 2 * grow)
    return placed(knots, centre, 1, turn)


def curve(points: Points, steps: int = 6, closed: bool = False) -> list[complex]:
    """Sample the Catmull-Rom curve through the points."""
    ends = (
        [points[-1], *points, points[0], points[1]]
        if closed
        else [2 * points[0] - points[1], *points, 2 * points[-1] - points[-2]]
    )
    out = []
    for a, b, c, d in zip(ends, ends[1:], ends[2:], ends[3:], strict=False):
        for k in range(steps):
            t = k / steps
            out.append(b + t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * b - a - 3 * c + d))) / 2)
    return out if closed else [*out, points[-1]]


def bow(start: complex, end: complex, bend: float, steps: int = 12) -> list[complex]:
    """Sample an arc that leaves the straight line by `bend` of its length, to the left for a positive."""
    control = (start + end) / 2 - 2j * (end - start) * bend
    return [
        (1 - t) ** 2 * start + 2 * t * (1 - t) * control + t * t * end
        for t in (k / steps for k in range(steps + 1))
    ]


def _say(*steps: complex) -> str:
    """Write steps in whole numbers with no more between them than is needed."""
    return " ".join(f"{round(s.real)} {round(s.imag)}" for s in steps).replace(" -", "-")


def _grid(points: Points) -> list[complex]:
    return [complex(round(p.real), round(p.imag)) for p in points]


def _bends(ends: Points) -> str:
    """Write the Catmull-Rom curve through `ends[1:-1]`; all but the first span carry the direction on."""
    out = ""
    for i, (a, b, c, d) in enumerate(zip(ends, ends[1:], ends[2:], ends[3:], strict=False)):
        arrive = _say(c - b - (d - b) / 6, c - b)
        out += f"c{_say((c - a) / 6)} {arrive}".replace(" -", "-") if i == 0 else f"s{arrive}"
    return out


def ring(points: Points) -> str:
    """Write a closed path with no corners."""
    knots = _grid(points)
    return f"M{_say(knots[0])}{_bends([knots[-1], *knots, knots[0], knots[1]])}z"


def shape(*runs: Points) -> str:
    """Write one closed path through the runs, smooth within each and cornered between."""
    grids = [_grid(run) for run in runs]
    pen = grids[0][0]
    out = f"M{_say(pen)}"
    for knots in grids:
        if knots[0] != pen:
            out += f"l{_say(knots[0] - pen)}"
        if len(knots) > 1:
            out += _bends([2 * knots[0] - knots[1], *knots, 2 * knots[-1] - knots[-2]])
        pen = knots[-1]
    return out + "z"


def spot(centre: complex, size: float) -> str:
    """Write a small round freckle: an arc that all but closes on itself."""
    r = max(1, round(size / 2))
    return f"M{_say(centre - 1j * r)}a{r} {r} 0 1 0 1 0z"


def touch(root: complex, tip: complex, width: float, bend: float = 0) -> str:
    """Write one brush touch, fine at both ends, bowed to the left of its way for a positive `bend`."""
    along = tip - root
    side = -1j * along / max(abs(along), 1e-6)
    belly = along * 0.45 + side * bend * 2 * abs(along)
    return (
        f"M{_say(root)}q{_say(belly + side * width, along)} {_say(belly - side * width - along, -along)}z".replace(
            " -", "-"
        )
    )


def sides(spine: Points, widths: Points | Sequence[float]) -> tuple[list[complex], list[complex]]:
    """Give the left and right edge of a stroke along a spine, whose full width at each point is given."""
    left, right = [], []
    for i, (p, w) in enumerate(zip(spine, widths, strict=True)):
        way = spine[min(i + 1, len(spine) - 1)] - spine[max(i - 1, 0)]
        side = -1j * way / max(abs(way), 1e-6) * w / 2
        left.append(p + side)
        right.append(p - side)
    return left, right


def taper(spine: Points, start: float, belly: float, end: float) -> str:
    """Write a stroke along a curve, so wide at its start, middle and end."""
    ts = [k / (len(spine) - 1) for k in range(len(spine))]
    widths = [start * (1 - t) * (1 - 2 * t) + belly * 4 * t * (1 - t) + end * t * (2 * t - 1) for t in ts]
    left, right = sides(spine, widths)
    return shape(left, right[::-1])
