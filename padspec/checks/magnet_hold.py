"""Do the magnets hold the full pad on a door?"""

from collections.abc import Iterator
from dataclasses import replace

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import number_text
from padspec.checks.check import Limits, Subject
from padspec.making.block import block_of
from padspec.making.magnets import Hold, fit_on_back, hold_of
from padspec.resolve.design import Design

_MOST = 6


def magnet_hold(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (the studio's safety holds)
    """Do the magnets hold the full pad on steel without sliding down?

    Area × pull × the share that holds against sliding, against the weight of a full pad × the studio's safety
    factor (magnets.safety, 1.5). Warning below. Pull is what the maker measured, or usual figures from memory, for
    which no published source was found; 15 % to 25 % of it hold against sliding (two sellers' pages). Remedy: the
    number of magnets that would hold it.
    """
    design = subject.design
    hold = hold_of(design, block_of(design))
    if hold is None or hold.holds:
        return
    source = "as you measured" if hold.measured else "by usual figures, so measure yours"
    yield Finding(
        check="magnet-hold",
        severity=Severity.WARNING,
        place=design.finish.magnets_place,
        message=f"{hold.count} magnets hold {number_text(hold.slide, 0)} g against sliding ({source}); "
        f"the pad weighs {number_text(hold.weight, 0)} g.",
        measured=f"{number_text(hold.slide, 0)} g",
        limit=f"{number_text(hold.needed, 0)} g",
        remedy=_remedy(hold, design),
    )


def _remedy(hold: Hold, design: Design) -> Remedy:
    more = replace(design, finish=replace(design.finish, magnets=hold.enough))
    if 0 < hold.enough <= _MOST and fit_on_back(more):
        return Remedy(f"{hold.enough} of them would hold it.", ((("magnets",), str(hold.enough)),))
    area = hold.area * hold.needed / hold.slide
    return Remedy(
        f"About {number_text(area, 0)} cm² of this magnet are wanted in all: take larger or stronger ones, "
        "or fewer leaves."
    )
