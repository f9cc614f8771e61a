"""A page that several designs share, looked over: cuts between unlike neighbours, bleed, marks.

A design's own checks see a sheet of itself alone; who lies beside it on a shared page only the plan knows.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from padspec.base.colour import WHITE
from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import mm_text, percent_text, round_up
from padspec.checks.butted import CUT_VISIBILITY, MISCUT_SHOWS, is_found
from padspec.checks.check import Limits, limits_for
from padspec.checks.cut_stretches import blind_stretches, telling_stretches
from padspec.checks.shared_cuts.cuts import SharedCut, shared_cuts
from padspec.checks.shared_cuts.leaf import leaf_print
from padspec.checks.shared_cuts.measures import Sight, Slip, sights, slips
from padspec.checks.sheet import stacked_error
from padspec.compose.compose import compose
from padspec.draw.stretches import CutStretches
from padspec.jobs.plan import PrintedPage, Wanted
from padspec.resolve.design import Design


@dataclass(frozen=True, slots=True)
class Looked:
    """What was found on one page, and the stretches of its cuts to draw on its proof."""

    page: int
    findings: tuple[Finding, ...]
    stretches: tuple[CutStretches, ...]


def look_over(page: PrintedPage, wanted: tuple[Wanted, ...]) -> Looked:
    """The findings about a page that more than one design shares; none about any other."""
    designs = [wanted[at].design for at in page.designs]
    if len(set(page.designs)) < 2:
        return Looked(page.number, (), ())
    seen, shown = _measured(page, wanted)
    to_find, to_forgive = _to_find(designs), _to_forgive(designs)
    lost = [sight for sight in seen if not is_found(sight, to_find)]
    telling = [slip for slip in shown if to_forgive.missed_above(slip.share)]
    findings = (
        *(_blind(max(lost, key=lambda s: (1 - s.share, s.longest_blind)), page, designs) for _ in lost[:1]),
        *(_tells(max(telling, key=lambda s: s.share), page, designs, to_forgive) for _ in telling[:1]),
        *_bleed(page, designs),
        *_marks(page, designs[0]),
    )
    findings = tuple(_weighed(finding, designs) for finding in findings)
    counted = {finding.check for finding in findings if finding.counts}
    lost, telling = lost if "cut-visibility" in counted else [], telling if "miscut-shows" in counted else []
    return Looked(page.number, findings, (*blind_stretches(lost), *telling_stretches(telling)))


def _measured(page: PrintedPage, wanted: tuple[Wanted, ...]) -> tuple[list[Sight], list[Slip]]:
    """Costs nothing where no leaves are butted."""
    if not shared_cuts(page.sheet):
        return [], []
    off = max(stacked_error(wanted[at].design) for at in page.designs)
    leaves = {
        at: leaf_print(wanted[at].design, compose(wanted[at].design), None, off)
        for at in dict.fromkeys(page.designs)
    }
    prints = [leaves[at] for at in page.designs]
    return list(sights(page.sheet, prints)), list(slips(page.sheet, prints, off))


def _to_find(designs: list[Design]) -> Limits:
    """The strictest that any of the designs asks for."""
    return max((limits_for(CUT_VISIBILITY, d.limits) for d in designs), key=lambda limits: limits.mildest.value)


def _to_forgive(designs: list[Design]) -> Limits:
    """The strictest that any of the designs asks for."""
    every = (limits_for(MISCUT_SHOWS, design.limits) for design in designs)
    return min(every, key=lambda limits: limits.at(Severity.WARNING).value)


def _weighed(finding: Finding, designs: list[Design]) -> Finding:
    """Accepted where every design on the page accepts it."""
    reasons = [
        next((one.reason for one in design.allowances if one.check == finding.check), "") for design in designs
    ]
    return finding.allow(reasons[0]) if all(reasons) else finding


def _blind(worst: Sight, page: PrintedPage, designs: list[Design]) -> Finding:
    return Finding(
        check="cut-visibility",
        severity=Severity.WARNING,
        place=designs[0].key("sheet", "gutter").place,
        message=f"Page {page.number}: {_between(worst.kind.cut, designs)} is hard to find: no crop marks stand at "
        f"both ends, and its sides differ along {percent_text(worst.share)} of it.",
        measured=percent_text(worst.share),
        limit=_to_find(designs).mildest.text,
        remedy=_apart(designs),
    )


def _tells(worst: Slip, page: PrintedPage, designs: list[Design], limits: Limits) -> Finding:
    level = limits.missed_above(worst.share)
    assert level is not None
    off = max(stacked_error(design) for design in designs)
    return Finding(
        check="miscut-shows",
        severity=level.severity,
        place=designs[0].key("sheet", "gutter").place,
        message=f"Page {page.number}: {_between(worst.kind.cut, designs)} must be true: {mm_text(off)} off, it "
        f"shows a strip of the neighbour along {percent_text(worst.share)} of it.",
        measured=f"{percent_text(worst.share)} of {mm_text(worst.kind.cut.length)}",
        limit=level.text,
        remedy=_apart(designs),
    )


def _between(cut: SharedCut, designs: list[Design]) -> str:
    firsts, seconds = (
        ", ".join(dict.fromkeys(designs[leaf].sku for leaf in leaves))
        for leaves in ([part.first for part in cut.parts], [part.second for part in cut.parts])
    )
    return f"{cut.name} ({firsts} and {seconds}), {mm_text(cut.length)} long,"


def _apart(designs: list[Design]) -> Remedy:
    off = max(stacked_error(design) for design in designs)
    gutter = mm_text(round_up(2 * off, 0.1))
    return Remedy(
        f"Set under sheet of these designs: gutter: {gutter}; or keep each sheet to one design: gang: false in "
        "the job, --no-gang with padspec plan."
    )


def _bleed(page: PrintedPage, designs: list[Design]) -> Iterator[Finding]:
    design = designs[0]
    needed, printed = stacked_error(design), page.sheet.least_bleed
    coloured = any(one.ground.colour != WHITE or one.ground.pattern is not None for one in designs)
    if coloured and printed < needed - 1e-9:
        yield Finding(
            check="bleed-room",
            severity=Severity.WARNING,
            place=design.key("sheet", "bleed").place,
            message=f"Page {page.number}: only {mm_text(printed)} of bleed are printed past a cut, where "
            f"{mm_text(needed)} are needed: white slivers may show.",
            measured=mm_text(printed),
            limit=mm_text(needed),
            remedy=Remedy(
                f"Set under sheet of these designs: bleed and least-bleed: {mm_text(round_up(needed, 0.1))}, "
                f"gutter: 0 mm or {mm_text(round_up(2 * needed, 0.1))} at least."
            ),
        )


def _marks(page: PrintedPage, design: Design) -> Iterator[Finding]:
    if page.sheet.left_out:
        yield Finding(
            check="mark-room",
            severity=Severity.NOTE,
            place=design.key("sheet", "sheet").place,
            message=f"Page {page.number}: no room on the sheet for: {', '.join(page.sheet.left_out)}.",
            measured=f"{len(page.sheet.left_out)} left out",
            limit="0",
            remedy=Remedy("Measure where there is no mark: the cut plan says every distance."),
        )
