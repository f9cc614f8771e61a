"""Sprinkle: small bars, dots and rings strewn by chance, evenly, and never touching."""

from collections.abc import Iterator
from math import ceil, floor, pi
from random import Random

from padspec.base.geometry import Box, Size
from padspec.compose.ground.arcs import bar, ring
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.half_plane import Point
from padspec.compose.ground.scatter import Scatter, scatter
from padspec.resolve.ground import Pattern
from padspec.scene.outline import Outline, bounds, circle

#: How far past the trim a scatter that does not run on is strewn before it repeats, in mm: past any usual bleed.
_MARGIN = 20.0
#: How wide a bar is, a dot, a ring and its line, as shares of a bar's length.
_BAR, _DOT, _RING, _LINE = 0.27, 0.40, 0.56, 0.15
#: Of so many marks, one is a ring and two are dots; the others are bars.
_KINDS = 7


def sprinkle(pattern: Pattern, area: Box, trim: Size) -> tuple[Coat, ...]:
    """Middles at least one `size` apart; no mark is longer than `mark` of that, so that none can touch another.

    Where it runs on, what is strewn over one leaf repeats on the next.
    """
    margin = 0.0 if pattern.phase == "run-on" else _MARGIN
    tile = Size(trim.width + 2 * margin, trim.height + 2 * margin)
    strewn = scatter(tile, pattern.size, pattern.seed)
    # On a tile smaller than one size, a mark is its own neighbour.
    length = min(pattern.size, tile.width, tile.height) * pattern.mark
    colours = (pattern.colour, *pattern.colours)
    found: list[list[Outline]] = [[] for _ in colours]
    looks = zip(
        strewn.points, _colours(strewn, len(colours)), _looks(len(strewn.points), pattern.seed), strict=True
    )
    for (x, y), colour, (kind, turn) in looks:
        for spot in _repeated((x - margin, y - margin), tile, area.inset(-length / 2)):
            mark = _mark(spot, length, kind, turn)
            if area.overlaps(bounds(mark)):
                found[colour].append(mark)
    return tuple(Coat(c, tuple(marks), compact=True) for c, marks in zip(colours, found, strict=True))


def _mark(spot: Point, length: float, kind: int, turn: float) -> Outline:
    match kind:
        case 0:
            outer = length * _RING / 2
            return ring(*spot, outer, outer - length * _LINE)
        case 1 | 2:
            return circle(*spot, length * _DOT / 2)
        case _:
            return bar(*spot, length, length * _BAR, turn)


def _looks(count: int, seed: int) -> Iterator[tuple[int, float]]:
    """The kind and turn of each mark: every seven have all kinds, in their own order."""
    chance = Random(f"looks {seed}")
    for first in range(0, count, _KINDS):
        order = sorted(range(_KINDS), key=lambda _: chance.random())
        yield from ((kind, 2 * pi * chance.random()) for kind in order[: count - first])


def _colours(strewn: Scatter, count: int) -> list[int]:
    """For each point the colour that its neighbours have least, and of those the one that all have least."""
    found: list[int] = []
    totals = [0] * count
    for neighbours in strewn.neighbours:
        around = [found[n] for n in neighbours]
        _, _, colour = min((around.count(c), totals[c], c) for c in range(count))
        totals[colour] += 1
        found.append(colour)
    return found


def _repeated(spot: Point, tile: Size, area: Box) -> Iterator[Point]:
    """Every copy of a point that lies in an area."""
    for i in range(ceil((area.x - spot[0]) / tile.width), floor((area.right - spot[0]) / tile.width) + 1):
        for j in range(ceil((area.y - spot[1]) / tile.height), floor((area.bottom - spot[1]) / tile.height) + 1):
            yield spot[0] + i * tile.width, spot[1] + j * tile.height
