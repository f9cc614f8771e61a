"""What would mend a shared cut, each tried on the sheet before it is offered.

Everything here is computed without drawing: a pattern is worked out by its formula, and only where that formula
also foretells what the present face was measured to print.
"""

from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from math import ceil, floor

from padspec.base.findings import Remedy
from padspec.base.numbers import number_text, round_up
from padspec.checks.shared_cuts.measures import STEP, Sight, Slip, sights, slips
from padspec.checks.shared_cuts.patterns import GroundPrint, sizes_out_of_step, sizes_that_run_on
from padspec.checks.shared_cuts.prints import Print
from padspec.resolve.design import Design, Ground, with_sheet
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import tile

#: A gutter no narrower than this, in mm, leaves a strip that can be held and cut off (common practice).
LEAST_GUTTER = 1.0
#: The formula of a ground is trusted where it foretells a measured share of the length to within this.
_TRUST = 0.05
#: Sizes that may run on are looked at in steps so long along the cuts, in mm, before they are looked at closely.
_GLANCE = 1.0

Changes = tuple[tuple[tuple[str, ...], str], ...]
Findable = Callable[[Iterable[Sight]], bool]
Quiet = Callable[[Iterable[Slip]], bool]


@dataclass(frozen=True, slots=True)
class Bench:
    """What remedies are tried on: a design, its sheet, what prints on each of its leaves, and how far a cut may
    be off.
    """

    design: Design
    sheet: Sheet
    leaf: Print
    off: float

    def seen(self, sheet: Sheet | None = None, leaf: Print | None = None) -> Iterator[Sight]:
        """How its cuts can be found, on another sheet or with another print."""
        sheet = sheet or self.sheet
        return sights(sheet, [leaf or self.leaf] * sheet.n_up)

    def shown(self, leaf: Print | None = None, step: float = STEP) -> Iterator[Slip]:
        """What its cuts would show when they are off, with another print."""
        return slips(self.sheet, [leaf or self.leaf] * self.sheet.n_up, self.off, step)


def end_marks(bench: Bench, findable: Findable) -> Remedy | None:
    """Crop marks at the ends of every cut: switched on, or given room by the largest bleed that leaves it."""
    design = bench.design
    most = design.sheet.bleed
    tenths = [n / 10 for n in range(ceil(round(bench.off * 10, 6)), floor(round(most * 10, 6)) + 1)]

    def passes(bleed: float) -> bool:
        least = min(design.sheet.least_bleed, bleed)
        marked = tile(with_sheet(design, marks=True, bleed=bleed, least_bleed=least))
        return marked is not None and findable(bench.seen(marked))

    if passes(most):
        bleed = most
    else:
        found = bisect_left(tenths, True, key=lambda n: not passes(n))
        if not found:
            return None
        bleed = tenths[found - 1]
    return _setting("sheet", _mark_changes(design, bleed), "crop marks then stand at both ends of every cut")


def out_of_step(bench: Bench, findable: Findable) -> Remedy | None:
    """The size of the pattern nearest to the present one with which the two sides of every cut differ."""
    pattern = bench.design.ground.pattern
    if pattern is None or not _foretold(bench):
        return None
    for size in sizes_out_of_step(pattern):
        if findable(bench.seen(leaf=_with_size(bench, size))):
            why = "the pattern is then out of step across the cut, which can be found by it"
            return _setting("ground.pattern", _size_changes(bench.design.ground, size), why)
    return None


def run_on(bench: Bench, quiet: Quiet, findable: Findable) -> Remedy | None:
    """The size of the pattern nearest to the present one with which it runs on across every cut.

    Where the cut could then not be found, end marks are part of the remedy.
    """
    pattern = bench.design.ground.pattern
    if pattern is None or not _foretold(bench):
        return None
    for size in sizes_that_run_on(pattern, bench.design.trim):
        leaf = _with_size(bench, size)
        if not (quiet(bench.shown(leaf, _GLANCE)) and quiet(bench.shown(leaf))):
            continue
        changed = _size_changes(bench.design.ground, size)
        remedy = _setting("ground.pattern", changed, "the pattern then runs on across the cut")
        if findable(bench.seen(leaf=leaf)):
            return remedy
        marks = end_marks(replace(bench, leaf=leaf), findable)
        return marks and Remedy(f"{remedy.text} {marks.text}", remedy.changes + marks.changes)
    return None


def gutter(bench: Bench) -> Remedy:
    """A gutter for two bleeds: nothing is shared any more. Says how many faces then fit."""
    design, wide = bench.design, wide_enough(bench.off)
    changes: Changes = ((("sheet", "gutter"), _mm(wide)),)
    sheet = tile(with_sheet(design, gutter=wide))
    if sheet is None:
        # So many as were asked for have no room with it, but one leaf needs no gutter at all.
        sheet = tile(with_sheet(design, gutter=wide, n_up=None)) or bench.sheet
        changes = (*changes, (("sheet", "n-up"), str(sheet.n_up)))
    counted = f"{sheet.n_up}-up{_unlike(sheet.n_up, bench.sheet.n_up)}"
    strokes = f"{sheet.cuts} cuts{_unlike(sheet.cuts, bench.sheet.cuts)}"
    why = f"each leaf is then cut in its own bleed ({counted}; {strokes})"
    return _setting("sheet", changes, why)


def wide_enough(off: float) -> float:
    """The gutter that a cut which is off this much on either side needs, in tenths of a millimetre."""
    return max(round_up(2 * off, 0.1), LEAST_GUTTER)


def _foretold(bench: Bench) -> bool:
    """Whether the formula of the ground says of the present face what was measured on it."""
    ground = GroundPrint(bench.design.ground, bench.design.trim, bench.leaf.bleed)
    sight_by_sight = zip(bench.seen(), bench.seen(leaf=ground), strict=True)
    slip_by_slip = zip(bench.shown(), bench.shown(ground), strict=True)
    return all(abs(one.share - other.share) <= _TRUST for one, other in sight_by_sight) and all(
        abs(one.share - other.share) <= _TRUST for one, other in slip_by_slip
    )


def _with_size(bench: Bench, size: float) -> GroundPrint:
    ground = bench.design.ground
    changed = replace(ground, pattern=replace(ground.pattern, size=size)) if ground.pattern else ground
    return GroundPrint(changed, bench.design.trim, bench.leaf.bleed)


def _mark_changes(design: Design, bleed: float) -> Changes:
    changes: list[tuple[tuple[str, ...], str]] = []
    if not design.sheet.marks:
        changes.append((("sheet", "marks"), "true"))
    if bleed < design.sheet.bleed:
        changes.append((("sheet", "bleed"), _mm(bleed)))
    if bleed < design.sheet.least_bleed:
        changes.append((("sheet", "least-bleed"), _mm(bleed)))
    return tuple(changes)


def _size_changes(ground: Ground, size: float) -> Changes:
    """A pattern that the studio sets is named with its kind, without which it could not be set here."""
    kind = ground.pattern.kind if ground.pattern else ""
    path = ("ground", "pattern")
    return (((*path, "kind"), kind), ((*path, "size"), _mm(size)))


def _setting(under: str, changes: Changes, why: str) -> Remedy:
    words = ", ".join(f"{path[-1]}: {value}" for path, value in changes)
    return Remedy(f"Set under {under}: {words}; {why}.", changes)


def _unlike(now: int, before: int) -> str:
    return f", not {before}" if now != before else ""


def _mm(value: float) -> str:
    return f"{number_text(value)} mm"
