"""The ways to fill a sheet with trims, asked from an oracle that knows only which arrangement is worth most.

Designs of one trim can stand in for each other, so all that matters of an arrangement is its mixture: how many
slots of each trim. Where there are too many to list, a mixture that nobody has shown to fit or not to fit is
doubtful; the oracle is asked at the prices that would favour it most, and its answer either brings a better layout
or rules the doubtful one out.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor, inf
from typing import Any, assert_never

import numpy as np
from numpy.typing import NDArray

from padspec.base.errors import PadspecError
from padspec.base.numbers import mm_text
from padspec.planning.mixtures import Mixture
from padspec.planning.orders import SheetRoom
from padspec.planning.programme import Programme, Row, solve_relaxed
from padspec.sheet.arrangement import Arrangement, Grid, Split
from padspec.sheet.fitting.guillotine import Piece

#: With more mixtures than this the doubtful ones are not told apart, and stand for all that the sheet might hold.
_MOST_MIXTURES = 200_000
#: What the oracle's worths are good for.
_SLACK = 1e-5


@dataclass(frozen=True, slots=True)
class Layout:
    """An arrangement and its mixture: slots by trim, in the order of the trims in use."""

    arrangement: Arrangement
    mixture: Mixture


@dataclass(frozen=True, slots=True)
class Layouts:
    """Layouts of which none holds another, for each trim the one with most of it, and the mixtures still in doubt.

    Every mixture that fits is held by a layout or by a doubtful mixture; where none is in doubt, the layouts are
    all there is to choose from.
    """

    found: tuple[Layout, ...]
    fullest: tuple[Layout, ...]
    doubtful: tuple[Mixture, ...]

    @property
    def possible(self) -> tuple[Mixture, ...]:
        """Mixtures that hold every one that fits: what lower bounds reckon with."""
        return tuple(layout.mixture for layout in self.found) + self.doubtful


def items_of(arrangement: Arrangement) -> tuple[int, ...]:
    """Which trim lies in each slot, in the order of the faces."""
    match arrangement:
        case Grid(rows, columns, item=item):
            return (item,) * (rows * columns)
        case Split(_, one, other):
            return items_of(one) + items_of(other)
        case _:
            assert_never(arrangement)


def find_layouts(room: SheetRoom, items: Sequence[int], most_questions: int) -> Layouts:
    """The layouts of a sheet for the trims in use (indices into `room.trims`).

    Raises PadspecError for a trim that does not fit on the sheet even once.
    """
    alone = [_ask(room, items, tuple(float(kind == k) for k in range(len(items)))) for kind in range(len(items))]
    for item, (layout, _) in zip(items, alone, strict=True):
        if layout is None:
            raise PadspecError(_no_room(room, item))
    fullest = [layout for layout, _ in alone if layout is not None]
    most = tuple(floor(bound + _SLACK) for _, bound in alone)
    if len(items) == 1:
        more = (most,) if most > fullest[0].mixture else ()
        return Layouts(tuple(fullest), tuple(fullest), more)
    listed = room.lister and room.lister(room.area, [(i, room.trims[i]) for i in items], room.gutter, room.turns)
    if listed:
        every = [Layout(arrangement, mixture) for mixture, arrangement in listed.items()]
        return Layouts(_unheld([*fullest, *every]), tuple(fullest), ())
    if np.prod([n + 1.0 for n in most]) > _MOST_MIXTURES:
        return Layouts(_unheld(fullest), tuple(fullest), (most,))
    found, doubtful = _settle(room, items, most, fullest, most_questions)
    return Layouts(found, tuple(fullest), doubtful)


def _no_room(room: SheetRoom, item: int) -> str:
    trim, area = room.trims[item], room.area
    return (
        f"A face of {mm_text(trim.width)} × {mm_text(trim.height)} does not fit on a sheet with room for "
        f"{mm_text(area.width)} × {mm_text(area.height)}. Take a larger sheet or a smaller trim."
    )


def _ask(room: SheetRoom, items: Sequence[int], worth: tuple[float, ...]) -> tuple[Layout | None, float]:
    """The layout worth most, and what no layout's worth exceeds."""
    pieces = [
        Piece(room.trims[item], value, room.turns, item)
        for item, value in zip(items, worth, strict=True)
        if value > 0
    ]
    cutting = room.oracle(room.area, pieces, room.gutter)
    if cutting.arrangement is None:
        return None, cutting.bound
    slots = items_of(cutting.arrangement)
    return Layout(cutting.arrangement, tuple(slots.count(item) for item in items)), cutting.bound


def _settle(
    room: SheetRoom, items: Sequence[int], most: Mixture, fullest: Sequence[Layout], most_questions: int
) -> tuple[tuple[Layout, ...], tuple[Mixture, ...]]:
    """Ask until every mixture up to `most` is held by a layout, ruled out, or beyond what the oracle can tell."""
    found = list(fullest)
    doubtful = np.array(list(np.ndindex(*(n + 1 for n in most))), np.int64)
    doubtful = doubtful[_takes(room, items, doubtful) <= 1 + 1e-9]
    beyond: list[Mixture] = []
    for _ in range(most_questions):
        doubtful = _not_held(doubtful, [layout.mixture for layout in found] + beyond)
        if not len(doubtful):
            break
        first = doubtful[np.lexsort((*doubtful.T[::-1], -np.round(_takes(room, items, doubtful), 9)))[0]]
        mixture = tuple(int(n) for n in first)
        worth = _favouring(mixture, [layout.mixture for layout in found])
        if worth is None:
            beyond.append(mixture)
            continue
        layout, bound = _ask(room, items, worth)
        found += [layout] if layout is not None else []
        doubtful = doubtful[doubtful @ np.array(worth) <= bound + _SLACK]
        if any((doubtful == first).all(axis=1)) and not _held(mixture, [layout.mixture for layout in found]):
            beyond.append(mixture)
    left = [tuple(int(n) for n in mixture) for mixture in doubtful] + beyond
    found_ones = _unheld(found)
    return found_ones, _largest([m for m in left if not _held(m, [layout.mixture for layout in found_ones])])


def _takes(room: SheetRoom, items: Sequence[int], mixtures: NDArray[np.int64]) -> NDArray[np.float64]:
    """The share of the sheet that mixtures take, gutters included."""
    sheet = (room.area.width + room.gutter) * (room.area.height + room.gutter)
    faces = [(room.trims[i].width + room.gutter) * (room.trims[i].height + room.gutter) for i in items]
    shares: NDArray[np.float64] = mixtures @ (np.array(faces) / sheet)
    return shares


def _favouring(mixture: Mixture, known: Sequence[Mixture]) -> tuple[float, ...] | None:
    """Worths at which a mixture beats all that are known by most; None where it lies within their hull."""
    kinds, lift = len(mixture), float(max(max(other) for other in known))
    rows = [
        Row(
            (*range(kinds), kinds),
            (*(float(m - k) for m, k in zip(mixture, other, strict=True)), -1.0),
            least=-lift,
        )
        for other in known
    ]
    rows.append(Row(tuple(range(kinds)), (1.0,) * kinds, 1.0, 1.0))
    solved = solve_relaxed(Programme((0.0,) * kinds + (-1.0,), (1.0,) * kinds + (inf,), tuple(rows)))
    if solved.cost > -lift - 1e-7:
        return None
    return tuple(round(max(value, 0.0), 4) + 1e-4 for value in solved.values[:kinds])


def _held(mixture: Mixture, holders: Sequence[Mixture]) -> bool:
    return any(all(n <= m for n, m in zip(mixture, holder, strict=True)) for holder in holders)


def _not_held(mixtures: NDArray[np.int64], holders: Sequence[Mixture]) -> NDArray[Any]:
    for holder in holders:
        mixtures = mixtures[(mixtures > np.array(holder)).any(axis=1)]
    return mixtures


def _largest(mixtures: Sequence[Mixture]) -> tuple[Mixture, ...]:
    """Those that no other one holds."""
    kept: list[Mixture] = []
    for mixture in sorted(set(mixtures), key=lambda m: (-sum(m), m)):
        if not _held(mixture, kept):
            kept.append(mixture)
    return tuple(sorted(kept, reverse=True))


def _unheld(layouts: Sequence[Layout]) -> tuple[Layout, ...]:
    """Layouts that no other one holds, the first found of equals."""
    first: dict[Mixture, Layout] = {}
    for layout in layouts:
        first.setdefault(layout.mixture, layout)
    return tuple(first[mixture] for mixture in _largest(list(first)))
