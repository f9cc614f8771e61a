"""Can what the printer shifts be undone on a page wider than high?"""

from collections.abc import Iterator
from math import hypot

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import mm_text
from padspec.checks.check import Limits, Subject


def page_turn(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (it is known or it is not)
    """Is it known which way the printer turns a page wider than high? Without that the studio's offset cannot be
    undone on such a page: it might be made twice as large.

    Warning where the sheet is wider than high, the printer shifts, and its turn is unknown: geometry. Remedy: the
    page-turn test of padspec calibrate.
    """
    sheet, printer = subject.sheet, subject.design.studio.printer
    if sheet is None or sheet.size.width <= sheet.size.height or printer.turn != "unknown":
        return
    x, y = printer.offset
    if x == 0 and y == 0:
        return
    yield Finding(
        check="page-turn",
        severity=Severity.WARNING,
        place=subject.design.key("sheet", "size").place,
        message=f"The sheet is wider than high, and which way the printer turns it is unknown: its offset of "
        f"{mm_text(x)} and {mm_text(y)} is not undone.",
        measured=f"{mm_text(hypot(x, y))} not undone",
        limit="0 mm",
        remedy=Remedy(
            "Print padspec calibrate, look at its page-turn test, and write printer: {turn: left} or right."
        ),
    )
