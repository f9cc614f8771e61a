"""What the eye finds along shared cuts: do the two sides differ, and would a cut that is off show?

A sheet and what prints on each of its leaves go in, a measure for each kind of cut comes out.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from math import ceil

import numpy as np

from padspec.base.colour import Floats
from padspec.base.edges import Flags, Span, differences, different, longest, spans, taken_by
from padspec.checks.shared_cuts.cuts import Shared, SharedCut, ends_marked, shared_cuts
from padspec.checks.shared_cuts.prints import Print, seen
from padspec.sheet.sheet import Sheet

#: Cuts are looked at in cells of this size, in mm: about what the eye tells apart at reading distance.
STEP = 0.25
#: So far inside each leaf the two sides of a cut are looked at, past any pixel that both share.
HAIR = 0.1


@dataclass(frozen=True, slots=True)
class Alike:
    """Cuts of a sheet in which just the same meets: what is measured on one holds for all."""

    cuts: tuple[SharedCut, ...]

    @property
    def cut(self) -> SharedCut:
        """The first of them."""
        return self.cuts[0]


@dataclass(frozen=True, slots=True)
class Sight:
    """How a cut without marks can be found: the stretches where both sides look the same, from its start."""

    kind: Alike
    blind: tuple[Span, ...]

    @property
    def share(self) -> float:
        """The share of its length where the two sides differ, to a millionth."""
        return round(1 - taken_by(self.blind) / self.kind.cut.length, 6)

    @property
    def longest_blind(self) -> float:
        """The longest stretch without a difference, in mm."""
        return round(longest(self.blind), 6)


@dataclass(frozen=True, slots=True)
class Slip:
    """What a cut that is off would show: the stretches that tell, from its start, with the cut off to the left or
    up, and to the right or down.
    """

    kind: Alike
    ways: tuple[tuple[Span, ...], tuple[Span, ...]]

    @property
    def share(self) -> float:
        """The share of its length where a strip of the neighbour shows, the worse way; to a millionth."""
        return round(max(taken_by(way) for way in self.ways) / self.kind.cut.length, 6)


def sights(sheet: Sheet, prints: Sequence[Print]) -> Iterator[Sight]:
    """How each kind of cut can be found that has not a crop mark at both ends; `prints` has one for every slot."""
    look = _Look(sheet, prints)
    for kind in _kinds([cut for cut in shared_cuts(sheet) if not ends_marked(cut, sheet)], look):
        yield Sight(kind, _spans(kind.cut, ~_along(kind.cut, look, partial(_across, look))))


def slips(sheet: Sheet, prints: Sequence[Print], off: float) -> Iterator[Slip]:
    """What each kind of cut would show when it is off by up to so many mm; `prints` has one for every slot."""
    look = _Look(sheet, prints)
    for kind in _kinds(list(shared_cuts(sheet)), look) if off > 0 else ():
        before, after = (_along(kind.cut, look, partial(_beside, look, off, way)) for way in (False, True))
        yield Slip(kind, (_spans(kind.cut, before), _spans(kind.cut, after)))


@dataclass(frozen=True, slots=True)
class _Look:
    """A sheet and what prints on each of its leaves."""

    sheet: Sheet
    prints: Sequence[Print]


def _kinds(cuts: list[SharedCut], look: _Look) -> tuple[Alike, ...]:
    """Cuts grouped by what meets in them, each group by its first: most sheets have but one kind."""
    groups: dict[tuple[object, ...], list[SharedCut]] = {}
    for cut in cuts:
        groups.setdefault(tuple(_meeting(cut, part, look) for part in cut.parts), []).append(cut)
    return tuple(Alike(tuple(group)) for group in groups.values())


def _meeting(cut: SharedCut, part: Shared, look: _Look) -> tuple[object, ...]:
    """Everything that what is measured on a part of a cut depends on."""
    found: list[object] = [cut.upright]
    for leaf in (part.first, part.second):
        slot = look.sheet.slots[leaf]
        edge = slot.trim.y if cut.upright else slot.trim.x
        size = (round(slot.trim.width, 6), round(slot.trim.height, 6))
        ends = (round(part.start - edge, 6), round(part.end - edge, 6))
        found += [id(look.prints[leaf]), slot.turned, size, ends]
    return tuple(found)


def _along(cut: SharedCut, look: _Look, flags_of: Callable[[SharedCut, Shared], Flags]) -> Flags:
    """Flags along the whole of a cut; parts in which the same meets are looked at once."""
    known: dict[tuple[object, ...], Flags] = {}
    for part in cut.parts:
        meeting = _meeting(cut, part, look)
        if meeting not in known:
            known[meeting] = flags_of(cut, part)
    return np.concatenate([known[_meeting(cut, part, look)] for part in cut.parts])


def _across(look: _Look, cut: SharedCut, part: Shared) -> Flags:
    """Where the two sides differ, cell by cell, a hair inside each leaf."""
    before = _strip(look, cut, part, part.first, (-HAIR - STEP, -HAIR))
    after = _strip(look, cut, part, part.second, (HAIR, HAIR + STEP))
    return different(differences(before, after)[:, 0])


def _beside(look: _Look, off: float, beyond: bool, cut: SharedCut, part: Shared) -> Flags:
    """Where a strip of the neighbour would show: its mean difference from the leaf's own ground, continued."""
    depth = (0.0, off) if beyond else (-off, 0.0)
    leaf, neighbour = (part.first, part.second) if beyond else (part.second, part.first)
    own, other = (_strip(look, cut, part, which, depth) for which in (leaf, neighbour))
    return different(np.round(differences(own, other).mean(axis=1), 6))


def _strip(look: _Look, cut: SharedCut, part: Shared, leaf: int, depth: tuple[float, float]) -> Floats:
    """What one leaf prints in a strip from one distance past the cut to another: shape (steps, across, 3)."""
    along, across = _steps(part), max(ceil(round((depth[1] - depth[0]) / STEP, 6)), 1)
    box = cut.part(part.start - cut.start, part.end - cut.start, depth)
    if cut.upright:
        return seen(look.prints[leaf], look.sheet.slots[leaf], box, along, across)
    return seen(look.prints[leaf], look.sheet.slots[leaf], box, across, along).swapaxes(0, 1)


def _steps(part: Shared) -> int:
    return max(round((part.end - part.start) / STEP), 1)


def _spans(cut: SharedCut, flags: Flags) -> tuple[Span, ...]:
    """Stretches in mm from the cut's start."""
    starts = [np.linspace(part.start, part.end, _steps(part) + 1)[:-1] for part in cut.parts]
    return spans(flags, np.concatenate([*starts, [cut.end]]) - cut.start)
