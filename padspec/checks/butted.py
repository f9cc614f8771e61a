"""Butted leaves: can a cut that two of them share be found, and what would show if it went a little off?

The two questions pull apart: a ground that runs on hides a cut and forgives it, one that breaks off shows both.
"""

from collections.abc import Iterable, Iterator

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import mm_text, percent_text
from padspec.checks.check import Check, Limits, Subject, Usual, limits_for
from padspec.checks.shared_cuts.cuts import shared_cuts
from padspec.checks.shared_cuts.leaf import leaf_print
from padspec.checks.shared_cuts.measures import Alike, Sight, Slip
from padspec.checks.shared_cuts.remedies import Bench, end_marks, gutter, out_of_step, run_on
from padspec.checks.sheet import stacked_error

#: The least share of a cut along which its sides must differ, and the longest stretch, in mm, along which not.
LEAST_SIGHT = 0.6
LONGEST_BLIND = 25.0
#: The share of a cut along which a strip of the neighbour is worth a note, and a warning.
NOTED_SLIP, MOST_SLIP = 0.05, 0.2


def cut_visibility(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Can a cut that butted leaves share be found? It can where crop marks stand at both its ends. Elsewhere the
    colours on both sides are compared every 0.25 mm: they are told apart where they differ by more than 5
    (CIEDE2000).

    Warning where they are along less than 60 % of a cut, or along none of 25 mm at a stretch: common practice, no
    published source. Such stretches are dashed red on the proof of the sheet. Remedy, the first that was tried and
    passes: end marks, a phase of the pattern that is out of step across the cut, a gutter.
    """
    bench = bench_of(subject)
    if bench is None:
        return
    failing = [sight for sight in bench.seen() if not is_found(sight, limits)]
    if not failing:
        return
    worst = min(failing, key=lambda sight: (sight.share, -sight.longest_blind))
    level = limits.missed_below(worst.share) or limits.mildest
    yield Finding(
        check="cut-visibility",
        severity=level.severity,
        place=subject.design.key("sheet", "gutter").place,
        message=f"{_named(worst.kind)} is hard to find: no crop marks stand at both ends, its two sides differ "
        f"along {percent_text(worst.share)} of it and look the same for {mm_text(worst.longest_blind)} "
        f"at a stretch"
        f"{_others(worst.kind)}.",
        measured=f"{percent_text(worst.share)} of {mm_text(worst.kind.cut.length)}, "
        f"{mm_text(worst.longest_blind)} at a stretch without a difference",
        limit=f"{level.text}, {mm_text(LONGEST_BLIND)}",
        remedy=_to_find(bench, limits),
    )


def miscut_shows(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Would a cut that butted leaves share show if it went a little off? What the neighbour prints past it is
    compared with the leaf's own ground, continued as its bleed is (or would be, were it long enough): CIEDE2000,
    the mean over a strip as wide as placement, skew and cutter may be off together, every 0.25 mm, either way.

    Note where it is above 5 along more than 5 % of a cut, warning along more than 20 %: common practice, no
    published source. Such stretches lie beside the cut in amber on the proof of the sheet. Remedy, the first that
    was tried and passes: a phase of the pattern that makes the ground run on across the cut, a gutter.
    """
    bench = bench_of(subject)
    if bench is None:
        return
    worst = max(bench.shown(), key=lambda slip: slip.share, default=None)
    level = limits.missed_above(worst.share) if worst else None
    if worst is None or level is None:
        return
    yield Finding(
        check="miscut-shows",
        severity=level.severity,
        place=subject.design.key("sheet", "gutter").place,
        message=f"{_named(worst.kind)} must be true: {mm_text(bench.off)} off, it shows a strip of the neighbour "
        f"along {percent_text(worst.share)} of it{_others(worst.kind)}.",
        measured=f"{percent_text(worst.share)} of {mm_text(worst.kind.cut.length)}",
        limit=level.text,
        remedy=_to_forgive(bench, limits, level.severity),
    )


def bench_of(subject: Subject) -> Bench | None:
    """What is looked at and tried on; None where no leaves are butted."""
    sheet = subject.sheet
    if sheet is None or not shared_cuts(sheet):
        return None
    off = stacked_error(subject.design)
    return Bench(subject.design, sheet, leaf_print(subject.design, subject.face, subject.under, off), off)


def _to_find(bench: Bench, limits: Limits) -> Remedy:
    def findable(seen: Iterable[Sight]) -> bool:
        return all(is_found(sight, limits) for sight in seen)

    marks = end_marks(bench, findable)
    if marks:
        return marks
    apart, stepped = gutter(bench), out_of_step(bench, findable)
    if stepped:
        caution = " A cut that is a little off will show all the more."
        return Remedy(f"{stepped.text}{caution} Or: {apart.text}", stepped.changes)
    return apart


def _to_forgive(bench: Bench, limits: Limits, severity: Severity) -> Remedy:
    # A ground that runs on must not hide the cut from the other check.
    to_be_found = limits_for(CUT_VISIBILITY, bench.design.limits)

    def quiet(shown: Iterable[Slip]) -> bool:
        return all(limits.missed_above(slip.share) is None for slip in shown)

    def findable(seen: Iterable[Sight]) -> bool:
        return all(is_found(sight, to_be_found) for sight in seen)

    running = run_on(bench, quiet, findable)
    if running:
        return running
    apart = gutter(bench)
    # A note is no reason to give up what butting saves: the gutter is named, not proposed.
    return apart if severity > Severity.NOTE else Remedy(apart.text)


def is_found(sight: Sight, limits: Limits) -> bool:
    """Whether a cut without marks is found by its colours."""
    return limits.missed_below(sight.share) is None and sight.longest_blind <= LONGEST_BLIND + 1e-9


def _named(kind: Alike) -> str:
    name = kind.cut.name
    return f"{name[0].upper()}{name[1:]}, {mm_text(kind.cut.length)} long,"


def _others(kind: Alike) -> str:
    """What to add where a sheet has more of the kind."""
    return f" ({len(kind.cuts)} cuts are alike)" if len(kind.cuts) > 1 else ""


CUT_VISIBILITY = Check("cut-visibility", (Usual(Severity.WARNING, LEAST_SIGHT, "share"),), cut_visibility)
MISCUT_SHOWS = Check(
    "miscut-shows",
    (Usual(Severity.WARNING, MOST_SLIP, "share"), Usual(Severity.NOTE, NOTED_SLIP, "share")),
    miscut_shows,
)
