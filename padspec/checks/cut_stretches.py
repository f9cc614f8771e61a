"""What findings about butted leaves look like on the sheet: stretches of their cuts, to be drawn on its proof."""

from collections.abc import Iterable, Iterator

from padspec.base.edges import Span
from padspec.base.findings import Finding
from padspec.checks.butted import CUT_VISIBILITY, MISCUT_SHOWS, bench_of, is_found
from padspec.checks.check import Subject, limits_for
from padspec.checks.shared_cuts.measures import Alike, Sight, Slip
from padspec.checks.shared_cuts.remedies import Bench
from padspec.checks.under import look_under
from padspec.compose.face import Face
from padspec.draw.stretches import CutStretches, Kind
from padspec.resolve.design import Design
from padspec.sheet.sheet import Sheet


def cut_stretches(
    design: Design, face: Face, sheet: Sheet | None, findings: tuple[Finding, ...]
) -> tuple[CutStretches, ...]:
    """The stretches behind every finding about butted leaves that counts, on every cut that it is about.

    Costs nothing where there is no such finding.
    """
    found = {finding.check for finding in findings if finding.counts}
    if not found & {"cut-visibility", "miscut-shows"}:
        return ()
    bench = bench_of(Subject(design, face, sheet, look_under(face)))
    if bench is None:
        return ()
    blind = blind_stretches(_lost(bench)) if "cut-visibility" in found else ()
    telling = telling_stretches(_shown(bench)) if "miscut-shows" in found else ()
    return (*blind, *telling)


def blind_stretches(lost: Iterable[Sight]) -> Iterator[CutStretches]:
    """Where cuts cannot be found."""
    for sight in lost:
        yield from _on_all(sight.kind, "blind", sight.blind)


def telling_stretches(shown: Iterable[Slip]) -> Iterator[CutStretches]:
    """Where cuts that are off would show."""
    for slip in shown:
        before, after = slip.ways
        yield from _on_all(slip.kind, "telling-before", before)
        yield from _on_all(slip.kind, "telling-after", after)


def _lost(bench: Bench) -> Iterator[Sight]:
    limits = limits_for(CUT_VISIBILITY, bench.design.limits)
    return (sight for sight in bench.seen() if not is_found(sight, limits))


def _shown(bench: Bench) -> Iterator[Slip]:
    limits = limits_for(MISCUT_SHOWS, bench.design.limits)
    return (slip for slip in bench.shown() if limits.missed_above(slip.share) is not None)


def _on_all(kind: Alike, what: Kind, spans: tuple[Span, ...]) -> Iterator[CutStretches]:
    """The same stretches on every cut of a kind."""
    for cut in kind.cuts:
        yield CutStretches(what, cut.upright, cut.at, cut.start, spans)
