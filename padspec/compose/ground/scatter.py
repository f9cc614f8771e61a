"""Points strewn by chance, none nearer to another than a distance and none much further: blue noise on a torus.

R. Bridson, Fast Poisson Disk Sampling in Arbitrary Dimensions, SIGGRAPH 2007; here new points are sought in a
narrow ring around their elders, which packs them closely, and what leaves the tile at one edge comes in at the
other.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import cos, hypot, pi, sin
from random import Random

from padspec.base.geometry import Size
from padspec.compose.ground.half_plane import Point

#: New points lie up to this many distances from their elder.
_RING = 1.12
#: So often a place is sought around a point before it is done with.
_TRIES = 32
#: Points nearer than this many distances are neighbours.
NEIGHBOUR = 1.45


@dataclass(frozen=True, slots=True)
class Scatter:
    """The points of one tile, which repeats in all directions; for each, those of the points before it that are
    its neighbours.
    """

    tile: Size
    points: tuple[Point, ...]
    neighbours: tuple[tuple[int, ...], ...]


@lru_cache(maxsize=8)
def scatter(tile: Size, apart: float, seed: int) -> Scatter:
    """Points at least `apart` from each other, also across the tile's edges, so many that hardly one more fits.

    A tile too small for two has one point.
    """
    chance = Random(seed)
    strewn = _Strewn(tile, apart)
    strewn.add((chance.random() * tile.width, chance.random() * tile.height))
    growing = [0]
    while growing:
        place = int(chance.random() * len(growing))
        elder = strewn.points[growing[place]]
        for x, y in _ring(elder, apart, chance):
            spot = (x % tile.width, y % tile.height)
            if strewn.has_room(spot):
                growing.append(len(strewn.points))
                strewn.add(spot)
                break
        else:
            growing[place] = growing[-1]
            growing.pop()
    return Scatter(tile, tuple(strewn.points), tuple(strewn.neighbours))


def _ring(elder: Point, apart: float, chance: Random) -> Iterator[Point]:
    for _ in range(_TRIES):
        way, turn = apart * (1 + (_RING - 1) * chance.random()), 2 * pi * chance.random()
        yield elder[0] + way * cos(turn), elder[1] + way * sin(turn)


class _Strewn:
    """The points so far, by the cell that they lie in: no cell is smaller than the distance."""

    def __init__(self, tile: Size, apart: float) -> None:
        self.points: list[Point] = []
        self.neighbours: list[tuple[int, ...]] = []
        self._tile, self._apart = tile, apart
        self._columns = max(int(tile.width / apart), 1)
        self._rows = max(int(tile.height / apart), 1)
        self._cells: dict[tuple[int, int], list[int]] = {}

    def add(self, spot: Point) -> None:
        self.neighbours.append(tuple(sorted(self._nearer(spot, NEIGHBOUR * self._apart, 2))))
        self._cells.setdefault(self._cell(spot), []).append(len(self.points))
        self.points.append(spot)

    def has_room(self, spot: Point) -> bool:
        return next(self._nearer(spot, self._apart, 1), None) is None

    def _nearer(self, spot: Point, limit: float, cells: int) -> Iterator[int]:
        """Points nearer than a limit, of those at most so many cells away."""
        column, row = self._cell(spot)
        columns = {(column + i) % self._columns for i in range(-cells, cells + 1)}
        rows = {(row + j) % self._rows for j in range(-cells, cells + 1)}
        for cell in ((i, j) for i in columns for j in rows):
            for n in self._cells.get(cell, ()):
                if round_the_tile(spot, self.points[n], self._tile) < limit:
                    yield n

    def _cell(self, spot: Point) -> tuple[int, int]:
        column = int(spot[0] / self._tile.width * self._columns)
        row = int(spot[1] / self._tile.height * self._rows)
        return min(column, self._columns - 1), min(row, self._rows - 1)


def round_the_tile(one: Point, other: Point, tile: Size) -> float:
    """How far two points are apart, the nearest way round."""
    across, upright = abs(one[0] - other[0]), abs(one[1] - other[1])
    return hypot(min(across, tile.width - across), min(upright, tile.height - upright))
