"""What would mend a shared cut, each tried on the sheet before it is offered.

Another phase of the pattern is tried on the leaf that it really makes, composed and rendered.
"""

from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from math import ceil, floor

from padspec.base.findings import Remedy
from padspec.base.numbers import number_text, round_up
from padspec.checks.shared_cuts.leaf import leaf_print
from padspec.checks.shared_cuts.measures import Sight, Slip, sights, slips
from padspec.checks.shared_cuts.prints import Print
from padspec.compose.compose import compose
from padspec.resolve.design import Design, with_sheet
from padspec.resolve.ground import KINDS, Phase
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import tile

#: A gutter no narrower than this, in mm, leaves a strip that can be held and cut off (common practice).
LEAST_GUTTER = 1.0

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

    def seen(self, sheet: Sheet | None = None) -> Iterator[Sight]:
        """How its cuts can be found, on this or another sheet."""
        sheet = sheet or self.sheet
        return sights(sheet, [self.leaf] * sheet.n_up)

    def shown(self) -> Iterator[Slip]:
        """What its cuts would show when they are off."""
        return slips(self.sheet, [self.leaf] * self.sheet.n_up, self.off)


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
    """The pattern out of step with the edges, so that the two sides of every cut differ."""
    changed = _in_phase(bench, "out-of-step")
    if changed is None or not findable(changed.seen()):
        return None
    why = "the two sides of a cut then differ, which can be found by that"
    return _setting("ground.pattern", _phase_changes(changed), why)


def run_on(bench: Bench, quiet: Quiet, findable: Findable) -> Remedy | None:
    """The pattern running on across every cut. Where the cut could then not be found, end marks are part of the
    remedy.
    """
    changed = _in_phase(bench, "run-on")
    if changed is None or not quiet(changed.shown()):
        return None
    remedy = _setting("ground.pattern", _phase_changes(changed), "the pattern then runs on across the cut")
    if findable(changed.seen()):
        return remedy
    marks = end_marks(changed, findable)
    return marks and Remedy(f"{remedy.text} {marks.text}", remedy.changes + marks.changes)


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


def _in_phase(bench: Bench, phase: Phase) -> Bench | None:
    """The design with its pattern in another phase and what then prints; None where it has that or knows none."""
    ground = bench.design.ground
    pattern = ground.pattern
    if pattern is None or pattern.phase == phase or "phase" not in KINDS[pattern.kind].keys:
        return None
    design = replace(bench.design, ground=replace(ground, pattern=replace(pattern, phase=phase)))
    return replace(bench, design=design, leaf=leaf_print(design, compose(design), None, bench.off))


def _mark_changes(design: Design, bleed: float) -> Changes:
    changes: list[tuple[tuple[str, ...], str]] = []
    if not design.sheet.marks:
        changes.append((("sheet", "marks"), "true"))
    if bleed < design.sheet.bleed:
        changes.append((("sheet", "bleed"), _mm(bleed)))
    if bleed < design.sheet.least_bleed:
        changes.append((("sheet", "least-bleed"), _mm(bleed)))
    return tuple(changes)


def _phase_changes(bench: Bench) -> Changes:
    """A pattern that the studio sets is named with its kind, without which it could not be set here."""
    pattern, path = bench.design.ground.pattern, ("ground", "pattern")
    return (((*path, "kind"), pattern.kind), ((*path, "phase"), pattern.phase)) if pattern else ()


def _setting(under: str, changes: Changes, why: str) -> Remedy:
    words = ", ".join(f"{path[-1]}: {value}" for path, value in changes)
    return Remedy(f"Set under {under}: {words}; {why}.", changes)


def _unlike(now: int, before: int) -> str:
    return f", not {before}" if now != before else ""


def _mm(value: float) -> str:
    return f"{number_text(value)} mm"
