"""Every mixture of trims that straight cuts right across can part, where there are few enough to list.

M(x, y) = what no other holds of: grids of one trim; each of M(k, y) with each of M(x − k, y); each of M(x, k)
with each of M(x, y − k); at sums of face widths and heights only (normal patterns; Christofides and Whitlock,
Operations Research 25, 1977). A gutter is cut away with each face, so faces and area grow by one gutter.
"""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from padspec.base.geometry import Size
from padspec.sheet.arrangement import Arrangement, Grid, Split

Mixture = tuple[int, ...]
Front = dict[Mixture, Arrangement]

#: Lengths are counted in millionths of a millimetre, so that sums are exact.
_UNITS = 1_000_000
#: Pairs of mixtures that the search may put together: about a second.
MOST_WORK = 400_000


@dataclass(frozen=True, slots=True)
class _Way:
    """A trim one way round, in units, its gutter included."""

    width: int
    height: int
    grid: Grid
    kind: int


def every_mixture(
    area: Size, trims: Sequence[tuple[int, Size]], gutter: float, turns: bool, most_work: int = MOST_WORK
) -> Front | None:
    """Mixtures (slots of each trim, in the order given) of which none holds another, each with an arrangement.

    `trims` are item and size. None where listing them takes more than `most_work`.
    """
    width, height = (_units(length + gutter) + 1 for length in (area.width, area.height))
    ways = [way for kind, (item, size) in enumerate(trims) for way in _ways(kind, item, size, gutter, turns)]
    columns, rows = _sums(width, {w.width for w in ways}), _sums(height, {w.height for w in ways})
    if len(columns) * len(rows) > most_work // 10:
        return None
    fronts: dict[tuple[int, int], Front] = {}
    work = 0
    for i, x in enumerate(columns):
        for j, y in enumerate(rows):
            front = {**_grids(x, y, ways, len(trims))}
            for one, other, upright in _partings(i, j, columns, rows):
                first, second = fronts[one], fronts[other]
                work += len(first) * len(second)
                if work > most_work:
                    return None
                _put_together(front, first, second, upright)
            fronts[i, j] = _unheld(front)
    return fronts[len(columns) - 1, len(rows) - 1]


def _units(length: float) -> int:
    return round(length * _UNITS)


def _ways(kind: int, item: int, size: Size, gutter: float, turns: bool) -> Iterator[_Way]:
    for turned in (False, True) if turns and size.width != size.height else (False,):
        face = size.turned() if turned else size
        grid = Grid(1, 1, face, turned, item)
        yield _Way(_units(face.width + gutter), _units(face.height + gutter), grid, kind)


def _sums(length: int, parts: set[int]) -> list[int]:
    found, fresh = {0}, {0}
    while fresh:
        fresh = {total + part for total in fresh for part in parts if total + part <= length} - found
        found |= fresh
    return sorted(found)


def _grids(x: int, y: int, ways: Sequence[_Way], kinds: int) -> Front:
    """As many of one trim as the region holds in a grid, fewer strokes first."""
    front: Front = {}
    for way in ways:
        rows, columns = y // way.height, x // way.width
        if rows and columns:
            mixture = tuple(rows * columns if kind == way.kind else 0 for kind in range(kinds))
            front.setdefault(mixture, Grid(rows, columns, way.grid.face, way.grid.turned, way.grid.item))
    return front


def _partings(
    i: int, j: int, columns: Sequence[int], rows: Sequence[int]
) -> Iterator[tuple[tuple[int, int], tuple[int, int], bool]]:
    """Both parts of a region for every cut across it, the smaller first; a part of nothing only trims it."""
    for k in range(i):
        rest = bisect_right(columns, columns[i] - columns[k]) - 1
        if k <= rest < i:
            yield (k, j), (rest, j), True
    for k in range(j):
        rest = bisect_right(rows, rows[j] - rows[k]) - 1
        if k <= rest < j:
            yield (i, k), (i, rest), False
    if i:
        yield (0, j), (i - 1, j), True
    if j:
        yield (i, 0), (i, j - 1), False


def _put_together(front: Front, first: Front, second: Front, upright: bool) -> None:
    """Larger parts lie first: left or above."""
    if not first:
        for mixture, arrangement in second.items():
            front.setdefault(mixture, arrangement)
    for a, one in first.items():
        for b, other in second.items():
            front.setdefault(tuple(m + n for m, n in zip(a, b, strict=True)), Split(upright, other, one))


def _unheld(front: Front) -> Front:
    kept: Front = {}
    for mixture in sorted(front, key=lambda m: (-sum(m), m)):
        if not any(all(n <= m for n, m in zip(mixture, other, strict=True)) for other in kept):
            kept[mixture] = front[mixture]
    return kept
