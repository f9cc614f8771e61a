"""Faces laid out on a page: trims and the page's area go in, a scale and a box for each face come out.

All faces of a page share one scale, so that a large leaf looks large. Each has words under it; rows stand on one
line, and run from edge to edge of the area.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import combinations
from math import inf

from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON, round_down

#: Least air between neighbours and between rows, and least width of a face's place, in mm.
GUTTER, ROW_GAP, LEAST_PLACE = 7.0, 7.0, 14.0
#: So far the words under a face may reach into the air beside it.
OVERHANG = 5.0
#: Wider air than this between the columns of a table looks like a lane.
_LANE = 20.0
#: What the faces give up in size for even air.
_EASE = 0.985
#: Halving steps in the search for a scale: to a thousandth of a millimetre on any page.
_STEPS = 24

#: How high the words under a face are, by its number and the width that they have.
WordsHeight = Callable[[int, float], float]


@dataclass(frozen=True, slots=True)
class Arranged:
    """Where each face lies, in the order given, and the scale of them all."""

    scale: float
    faces: tuple[Box, ...]


#: Rows of faces, each by its number, and the ways to break into rows at a scale and a width.
Rows = tuple[tuple[int, ...], ...]
RowsAt = Callable[[Sequence[Size], float, float], Sequence[Rows]]
#: Rows with what they cost in uneven air.
_Broken = tuple[float, Rows]


def arranged(trims: Sequence[Size], area: Box, words: WordsHeight) -> Arranged:
    """The faces as large as all of them fit the area, up to their own size.

    Raises ValueError where they have no room however small they are.
    """
    if len(set(trims)) == 1:
        return _table(trims, area, words)
    scale, rows = _largest(_balanced_rows, trims, area, words)
    if len(rows) > 1:
        # A little room, so that faces may change rows for more even air.
        scale = round_down(scale * _EASE, 1e-6)
        rows = _evened(rows, trims, scale, area, words)
    return Arranged(scale, _boxes(rows, trims, scale, area, words))


def _table(trims: Sequence[Size], area: Box, words: WordsHeight) -> Arranged:
    """Faces of one size in columns: as many as make the faces largest without leaving lanes between them."""
    best: tuple[bool, float, Rows] | None = None
    for columns in range(1, len(trims) + 1):
        starts = range(0, len(trims), columns)
        rows = tuple(tuple(range(n, min(n + columns, len(trims)))) for n in starts)
        try:
            scale, _ = _largest(partial(_if_wide_enough, rows), trims, area, words)
        except ValueError:
            continue
        air = _air([_place(trims[0], scale)] * columns, area.width) or 0.0
        lane = columns > 1 and air > _LANE
        if best is None or (not lane, scale) > best[:2]:
            best = (not lane, scale, rows)
    if best is None:
        raise ValueError(f"{len(trims)} faces have no room on one page")
    return Arranged(best[1], _boxes(best[2], trims, best[1], area, words))


def _if_wide_enough(rows: Rows, trims: Sequence[Size], scale: float, width: float) -> list[Rows]:
    return [rows] if _air([_place(trims[n], scale) for n in rows[0]], width) is not None else []


def _largest(rows_at: RowsAt, trims: Sequence[Size], area: Box, words: WordsHeight) -> tuple[float, Rows]:
    """The largest scale, up to 1, at which some way to break into rows fits, and the way."""
    low, high = 0.0, 1.0
    for _ in range(_STEPS):
        middle = (low + high) / 2
        fits = _fitting(rows_at(trims, middle, area.width), trims, middle, area, words) is not None
        low, high = (middle, high) if fits else (low, middle)
    scale = round_down(low, 1e-6)
    rows = _fitting(rows_at(trims, scale, area.width), trims, scale, area, words)
    if rows is None:
        raise ValueError(f"{len(trims)} faces have no room on one page")
    return scale, rows


def _evened(rows: Rows, trims: Sequence[Size], scale: float, area: Box, words: WordsHeight) -> Rows:
    """Faces moved and exchanged between rows as long as that makes the air between neighbours more even."""
    best, cost = rows, _unevenness(rows, trims, scale, area, words)
    found = True
    while found:
        found = False
        for other in (*_exchanges(best, len(trims)), *_moves(best, len(trims))):
            other_cost = _unevenness(other, trims, scale, area, words)
            if other_cost < cost:
                best, cost, found = other, other_cost, True
    return tuple(tuple(sorted(row)) for row in best)


def _exchanges(rows: Rows, faces: int) -> Iterator[Rows]:
    for one, other in combinations(range(faces), 2):
        exchange = {one: other, other: one}
        yield tuple(tuple(exchange.get(n, n) for n in row) for row in rows)


def _moves(rows: Rows, faces: int) -> Iterator[Rows]:
    for face in range(faces):
        left = tuple(tuple(n for n in row if n != face) for row in rows)
        for goal in range(len(rows)):
            moved = tuple((*row, face) if n == goal else row for n, row in enumerate(left))
            if all(len(row) > 1 for row in moved):
                yield moved


def _unevenness(rows: Rows, trims: Sequence[Size], scale: float, area: Box, words: WordsHeight) -> float:
    """How far the air of the rows is from their mean; beyond all bounds where they do not fit."""
    airs = [_air([_place(trims[n], scale) for n in row], area.width) for row in rows if len(row) > 1]
    told = [air for air in airs if air is not None]
    if len(told) < len(airs) or _fitting([rows], trims, scale, area, words) is None:
        return inf
    mean = sum(told) / len(told) if told else 0.0
    return round(sum((air - mean) ** 2 for air in told), 6)


def _fitting(
    choices: Sequence[Rows], trims: Sequence[Size], scale: float, area: Box, words: WordsHeight
) -> Rows | None:
    """The first of some ways to break into rows that is no higher than the area."""
    for rows in choices:
        heights = [_row_height(row, trims, scale, words) for row in rows]
        if sum(heights) + ROW_GAP * (len(rows) - 1) <= area.height + EPSILON:
            return rows
    return None


def _place(trim: Size, scale: float) -> float:
    return max(trim.width * scale, LEAST_PLACE)


def words_width(trim: Size, scale: float) -> float:
    """How wide the words under a face of this trim may be, in mm."""
    return _place(trim, scale) + OVERHANG


def _row_height(row: tuple[int, ...], trims: Sequence[Size], scale: float, words: WordsHeight) -> float:
    return max(trims[n].height for n in row) * scale + max(words(n, words_width(trims[n], scale)) for n in row)


def _balanced_rows(trims: Sequence[Size], scale: float, width: float) -> list[Rows]:
    """Rows for faces of many sizes: for every number of rows the way to break that leaves the most even air
    between neighbours, the most even of these first.
    """
    places = [_place(trim, scale) for trim in trims]
    # For so many rows: by how many faces they hold, the cost and the rows.
    before: list[_Broken | None] = [(0.0, ()), *(None for _ in trims)]
    whole: list[_Broken] = []
    for _ in trims:
        before = [_one_row_more(before, end, places, width) for end in range(len(trims) + 1)]
        last = before[-1]
        whole += [last] if last is not None else []
    return [rows for _, rows in sorted(whole, key=lambda broken: broken[0])]


def _one_row_more(
    before: Sequence[_Broken | None], end: int, places: Sequence[float], width: float
) -> _Broken | None:
    """The best way to have the faces up to `end` in one row more."""
    best: _Broken | None = None
    for first in range(end):
        held, air = before[first], _air(places[first:end], width)
        if held is None or air is None:
            continue
        cost = round(held[0] + (air - GUTTER) ** 2 * (end - first), 9)
        if best is None or cost < best[0]:
            best = (cost, (*held[1], tuple(range(first, end))))
    return best


def _air(widths: Sequence[float], width: float) -> float | None:
    """The gap between neighbours of a row that runs from edge to edge; None where it is less than a gutter."""
    left = width - sum(widths)
    if len(widths) == 1:
        return left if left >= -EPSILON else None
    gap = left / (len(widths) - 1)
    return gap if gap >= GUTTER - EPSILON else None


def _boxes(rows: Rows, trims: Sequence[Size], scale: float, area: Box, words: WordsHeight) -> tuple[Box, ...]:
    boxes: dict[int, Box] = {}
    y = area.y
    for row in rows:
        places = [_place(trims[n], scale) for n in row]
        # The last row of a table keeps to its columns.
        alike = len(set(trims)) == 1
        gap = _air([_place(trims[n], scale) for n in (rows[0] if alike else row)], area.width) or 0.0
        tallest = max(trims[n].height for n in row) * scale
        x = area.x
        for n, place in zip(row, places, strict=True):
            size = Size(trims[n].width * scale, trims[n].height * scale)
            boxes[n] = Box(x, y + tallest - size.height, size.width, size.height)
            x += place + gap
        y += _row_height(row, trims, scale, words) + ROW_GAP
    return tuple(boxes[n] for n in range(len(trims)))
