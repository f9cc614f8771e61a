"""Sheet in, shared cuts out: every straight line along which butted leaves touch, and the marks at its ends."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import permutations

from padspec.base.geometry import Box
from padspec.scene.nodes import Shape
from padspec.scene.outline import bounds
from padspec.sheet.sheet import Sheet

#: Lines nearer than this, in mm, are one.
TOUCH = 1e-5


@dataclass(frozen=True, slots=True)
class Shared:
    """The part of a cut where two leaves touch: `first`, left of it or above, and `second`, by their place in the
    sheet's slots; from `start` to `end` along the cut.
    """

    first: int
    second: int
    start: float
    end: float


@dataclass(frozen=True, slots=True)
class SharedCut:
    """A cut that butted leaves share: upright at this x, or across at this y, in the order of its parts."""

    upright: bool
    at: float
    parts: tuple[Shared, ...]

    @property
    def start(self) -> float:
        """Where it begins, in mm from the head or the left of the sheet."""
        return self.parts[0].start

    @property
    def end(self) -> float:
        """Where it ends."""
        return self.parts[-1].end

    @property
    def length(self) -> float:
        """How long it is, in mm."""
        return self.end - self.start

    @property
    def name(self) -> str:
        """What a message calls it; leaves count from 1 as the slots of the sheet do."""
        firsts = tuple(dict.fromkeys(part.first + 1 for part in self.parts))
        seconds = tuple(dict.fromkeys(part.second + 1 for part in self.parts))
        return f"the cut between {_leaves(firsts)} and {_leaves(seconds)}"

    def part(self, start: float, end: float, aside: tuple[float, float]) -> Box:
        """The box along a stretch of it, in mm from its start, from one distance past it to another."""
        near, wide = self.at + aside[0], aside[1] - aside[0]
        if self.upright:
            return Box(near, self.start + start, wide, end - start)
        return Box(self.start + start, near, end - start, wide)


def shared_cuts(sheet: Sheet) -> tuple[SharedCut, ...]:
    """Every cut that butted leaves share, those across first; parts in one line that meet are one cut."""
    if sheet.gutter > 0:
        return ()
    found: list[SharedCut] = []
    lines = [line for upright in (False, True) for line in sorted(_touching(sheet, upright))]
    for upright, at, start, end, first, second in lines:
        part = Shared(first, second, start, end)
        last = found[-1] if found else None
        if last and last.upright == upright and abs(last.at - at) < TOUCH and start <= last.end + TOUCH:
            found[-1] = SharedCut(upright, last.at, (*last.parts, part))
        else:
            found.append(SharedCut(upright, at, (part,)))
    return tuple(found)


def ends_marked(cut: SharedCut, sheet: Sheet) -> bool:
    """Whether a crop mark stands in line with the cut beyond each of its ends."""
    before = after = False
    for node in sheet.marks:
        if isinstance(node, Shape) and node.cause.part == "crop-mark":
            mark = bounds(node.outline)
            low, high = _span(mark, cut.upright)
            near, far = _span(mark, not cut.upright)
            if max(abs(near - cut.at), abs(far - cut.at)) < TOUCH:
                before |= high <= cut.start + TOUCH
                after |= low >= cut.end - TOUCH
    return before and after


def _touching(sheet: Sheet, upright: bool) -> Iterator[tuple[bool, float, float, float, int, int]]:
    """Direction, place, start, end and both leaves of every line that two leaves share, to a millionth."""
    trims = [slot.trim for slot in sheet.slots]
    ends = [trim.right if upright else trim.bottom for trim in trims]
    starts = [trim.x if upright else trim.y for trim in trims]
    for first, second in permutations(range(len(trims)), 2):
        if abs(ends[first] - starts[second]) < TOUCH:
            (low_1, high_1), (low_2, high_2) = (_span(trims[leaf], upright) for leaf in (first, second))
            low, high = max(low_1, low_2), min(high_1, high_2)
            if high - low > TOUCH:
                yield upright, round(starts[second], 6), round(low, 6), round(high, 6), first, second


def _span(box: Box, upright: bool) -> tuple[float, float]:
    """From where to where a box lies along a direction."""
    return (box.y, box.bottom) if upright else (box.x, box.right)


def _leaves(numbers: tuple[int, ...]) -> str:
    """How a message names some leaves.

    >>> _leaves((1,)), _leaves((1, 3, 5))
    ('leaf 1', 'leaves 1, 3, 5')
    """
    return f"leaf {numbers[0]}" if len(numbers) == 1 else "leaves " + ", ".join(map(str, numbers))
