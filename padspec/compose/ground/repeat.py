"""Where the marks of a pattern stand: a lattice of two steps, turned, in step with the edges or out.

A pattern runs on from leaf to leaf where moving it by the leaf's width, or by its height, lands it on itself:
where both are whole numbers of steps. The lattice that does so and is bent least is found by trying the whole
numbers around the present ones. Out of step, both are half a step off.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from math import ceil, floor, inf

from padspec.base.geometry import Affine, Box, Size
from padspec.base.numbers import EPSILON
from padspec.compose.ground.half_plane import Point, direction
from padspec.resolve.ground import Pattern

Cell = tuple[tuple[int, int], tuple[int, int]]
_Matrix = tuple[float, float, float, float]

#: Every way to be half a step off.
HALVES: tuple[Point, ...] = ((0.5, 0.0), (0.0, 0.5), (0.5, 0.5))
#: Whole numbers of steps that are tried lie less than this from the present number.
_NEAR = 1.5
#: A lattice that leans is worse than one that is stretched as much: straight patterns stay straight.
_LEAN = 16.0


@dataclass(frozen=True, slots=True)
class Repeat:
    """A lattice. `along` and `down` are its steps before it is placed, `place` the map onto the face: a turn about
    the origin, and a little stretching where the pattern is in step with the edges.

    `cell` says how many steps of each kind lead across the leaf, and how many from head to foot, where those are
    whole numbers: marks that many steps apart are the same mark.
    """

    along: Point
    down: Point
    place: Affine
    cell: Cell | None

    @property
    def steps(self) -> tuple[Point, Point]:
        """Both steps on the face."""
        return _turned(self.place, self.along), _turned(self.place, self.down)

    @property
    def origin(self) -> Point:
        """Where on the face the first mark stands."""
        return self.place.e, self.place.f

    @property
    def waves(self) -> tuple[Point, Point]:
        """Across the lines that run down, and across those that run along: as long as there are lines to a mm."""
        (ax, ay), (bx, by) = self.steps
        area = ax * by - ay * bx
        return (by / area, -bx / area), (-ay / area, ax / area)

    def at(self, i: int, j: int) -> Point:
        """The mark i steps along and j steps down."""
        return self.place.of(i * self.along[0] + j * self.down[0], i * self.along[1] + j * self.down[1])

    def onto(self, i: int, j: int) -> Affine:
        """The map that lays what is drawn around the origin onto that mark."""
        x, y = self.at(i, j)
        return Affine(self.place.a, self.place.b, self.place.c, self.place.d, x, y)

    def near(self, area: Box, reach: float) -> Iterator[tuple[int, int]]:
        """Every mark whose middle is no further than `reach` outside the area, row by row."""
        box = area.inset(-reach - EPSILON)
        (ax, ay), (bx, by) = self.steps
        ox, oy = self.origin
        _, wave = self.waves
        rows = [(x - ox) * wave[0] + (y - oy) * wave[1] for x in (box.x, box.right) for y in (box.y, box.bottom)]
        for j in range(floor(min(rows)), ceil(max(rows)) + 1):
            low_x, high_x = _span(box.x - ox - j * bx, box.right - ox - j * bx, ax)
            low_y, high_y = _span(box.y - oy - j * by, box.bottom - oy - j * by, ay)
            low, high = max(low_x, low_y), min(high_x, high_y)
            if low <= high:
                yield from ((i, j) for i in range(ceil(low - EPSILON), floor(high + EPSILON) + 1))

    def same(self, i: int, j: int) -> tuple[int, int]:
        """The mark that stands for all those that are the same as this one."""
        if self.cell is None:
            return i, j
        (p, q), (r, s) = self.cell
        area = p * s - q * r
        across, upright = (s * i - r * j) // area, (p * j - q * i) // area
        return i - across * p - upright * r, j - across * q - upright * s


def repeat(pattern: Pattern, trim: Size, along: Point, down: Point, off: tuple[Point, ...] = HALVES) -> Repeat:
    """The lattice of a pattern whose marks stand these two steps apart before it is turned.

    Its origin is the middle of the trim; out of step, the trim's corner, so that marks lie on the cut itself.
    `off` are the ways to be half a step off that make most difference.
    """
    cosine, sine = direction(pattern.angle)
    turned = Affine(cosine, sine, -sine, cosine, trim.width / 2, trim.height / 2)
    match pattern.phase:
        case "centred":
            return Repeat(along, down, turned, None)
        case "run-on":
            counts = _in_step(turned, trim, along, down, ((0.0, 0.0),))
            p, q, r, s = (round(count) for count in counts)
            return _stepped(trim, along, down, counts, (turned.e, turned.f), ((p, q), (r, s)))
        case "out-of-step":
            counts = _in_step(turned, trim, along, down, off)
            return _stepped(trim, along, down, counts, (0.0, 0.0), None)


def _in_step(turned: Affine, trim: Size, along: Point, down: Point, off: tuple[Point, ...]) -> _Matrix:
    """How many steps along and down lead across the leaf, then from head to foot: those nearest to the present."""
    (ax, ay), (bx, by) = _turned(turned, along), _turned(turned, down)
    area = ax * by - ay * bx
    across = (by * trim.width / area, -ay * trim.width / area)
    upright = (-bx * trim.height / area, ax * trim.height / area)
    best, least = (1.0, 0.0, 0.0, 1.0), inf
    for (p, q), (r, s) in product(_near(across, off), _near(upright, off)):
        if (p * s - q * r) * area <= EPSILON:
            continue
        cost = _bent((p, q, r, s), trim, (ax, ay, bx, by))
        if cost < least:
            best, least = (p, q, r, s), cost
    return best


def _near(wish: Point, off: tuple[Point, ...]) -> list[Point]:
    return [
        (i + u, j + v)
        for u, v in off
        for i in range(ceil(wish[0] - u - _NEAR), floor(wish[0] - u + _NEAR) + 1)
        for j in range(ceil(wish[1] - v - _NEAR), floor(wish[1] - v + _NEAR) + 1)
    ]


def _bent(counts: _Matrix, trim: Size, steps: _Matrix) -> float:
    """How much a lattice that has these counts is stretched and leans against the present steps."""
    (cx, cy), (dx, dy) = _steps(counts, trim)
    ax, ay, bx, by = steps
    area = ax * by - ay * bx
    # The map from the present steps to the new ones, less the map that changes nothing.
    wide, high = (cx * by - dx * ay) / area - 1, (dy * ax - cy * bx) / area - 1
    lean, tilt = (dx * ax - cx * bx) / area, (cy * by - dy * ay) / area
    return round(wide**2 + high**2 + _LEAN * (lean**2 + tilt**2), 12)


def _steps(counts: _Matrix, trim: Size) -> tuple[Point, Point]:
    """The two steps of which these counts lead across a leaf and from its head to its foot."""
    p, q, r, s = counts
    area = p * s - q * r
    return (s * trim.width / area, -q * trim.height / area), (-r * trim.width / area, p * trim.height / area)


def _stepped(trim: Size, along: Point, down: Point, counts: _Matrix, origin: Point, cell: Cell | None) -> Repeat:
    (cx, cy), (dx, dy) = _steps(counts, trim)
    area = along[0] * down[1] - along[1] * down[0]
    place = Affine(
        (cx * down[1] - dx * along[1]) / area,
        (cy * down[1] - dy * along[1]) / area,
        (dx * along[0] - cx * down[0]) / area,
        (dy * along[0] - cy * down[0]) / area,
        *origin,
    )
    return Repeat(along, down, place, cell)


def _turned(place: Affine, step: Point) -> Point:
    return place.a * step[0] + place.c * step[1], place.b * step[0] + place.d * step[1]


def _span(low: float, high: float, step: float) -> Point:
    """From how many steps to how many a coordinate stays between two limits."""
    if abs(step) < EPSILON:
        return (-inf, inf) if low <= 0 <= high else (inf, -inf)
    return min(low / step, high / step), max(low / step, high / step)
