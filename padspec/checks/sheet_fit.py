"""Does the sheet hold the faces it is to hold?"""

from collections.abc import Iterator

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.geometry import Size
from padspec.base.numbers import number_text, round_down
from padspec.checks.check import Limits, Subject
from padspec.resolve.design import Design, with_sheet
from padspec.resolve.trim import LEAST_TRIM
from padspec.sheet.arrangement import Grid
from padspec.sheet.bed import bed_of
from padspec.sheet.fitting.fit import best_fit, largest_grid


def sheet_fit(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (geometry sets the limit)
    """Does the sheet hold the faces asked for, one at least? An error that cannot be allowed.

    n × trim + (n − 1) × gutter + 2 × least bleed ≤ printable in both directions, in some orientation of the face:
    geometry, no published source needed. Remedy: as many faces as do fit, or the largest trim of which as many as
    were asked for would.
    """
    if subject.sheet is not None:
        return
    design = subject.design
    wanted = design.sheet.n_up or 1
    grid = largest_grid(design, wanted)
    needed, sums = _needed(grid or Grid(1, 1, design.trim, False), design)
    printable = bed_of(design).printable
    reached = f"{number_text(printable.width)} × {number_text(printable.height)} mm"
    yield Finding(
        check="sheet-fit",
        severity=Severity.ERROR,
        place=design.key("sheet", "trim" if wanted == 1 else "n-up").place,
        message=f"{_who(design, wanted)} {design.sheet.size_name}: {sums}, and the printer reaches {reached}.",
        measured=f"{number_text(needed.width)} × {number_text(needed.height)} mm",
        limit=reached,
        remedy=_remedy(design, grid, wanted),
    )


def _who(design: Design, wanted: int) -> str:
    if wanted == 1:
        return "Not one face fits"
    fullest = best_fit(with_sheet(design, n_up=None))
    if fullest is not None and fullest.n_up > wanted:
        return f"{fullest.n_up} faces fit, but {wanted} make no rows and columns that do on"
    return f"{wanted} faces do not fit"


def _needed(grid: Grid, design: Design) -> tuple[Size, str]:
    """What a grid of the design's own trim takes, and the sums that say so."""
    face = design.trim.turned() if grid.turned else design.trim
    width, across = _sum(grid.columns, face.width, design)
    height, down = _sum(grid.rows, face.height, design)
    return Size(width, height), f"{across} by {down}"


def _sum(n: int, face: float, design: Design) -> tuple[float, str]:
    gutter, least = design.sheet.gutter, design.sheet.least_bleed
    total = n * face + (n - 1) * gutter + 2 * least
    terms = [number_text(face) if n == 1 else f"{n} × {number_text(face)}"]
    terms += [f"{n - 1} × {number_text(gutter)}"] if n > 1 and gutter else []
    terms += [f"2 × {number_text(least)}"] if least else []
    return total, f"{' + '.join(terms)} = {number_text(total)} mm"


def _remedy(design: Design, grid: Grid | None, wanted: int) -> Remedy:
    """Fewer faces where some fit; else the largest trim, rounded down to half a millimetre."""
    fewer = _fewer(design, wanted)
    trim = _trim(grid) if grid else None
    if trim is None and not fewer:
        if grid is None:
            return Remedy("The margins leave nothing of this sheet; choose a larger one.")
        return Remedy(f"A leaf of {LEAST_TRIM:g} mm does not fit in; choose a larger sheet.")
    texts = (f"{number_text(trim.width)} mm", f"{number_text(trim.height)} mm") if trim else ("", "")
    if fewer:
        other = f" For {wanted}, the trim may be {texts[0]} wide and {texts[1]} high at most." if trim else ""
        return Remedy(f"Set under sheet: n-up: {fewer}.{other}", ((("sheet", "n-up"), str(fewer)),))
    return Remedy(
        f"The largest trim that fits is {texts[0]} wide and {texts[1]} high.",
        ((("trim", "width"), texts[0]), (("trim", "height"), texts[1])),
    )


def _fewer(design: Design, wanted: int) -> int:
    """The most faces below the number asked for that do fit; 0 where none does."""
    fit = best_fit(with_sheet(design, n_up=None))
    most = min(fit.n_up, wanted - 1) if fit else 0
    return next((n for n in range(most, 0, -1) if best_fit(with_sheet(design, n_up=n))), 0)


def _trim(grid: Grid) -> Size | None:
    face = grid.face.turned() if grid.turned else grid.face
    size = Size(round_down(face.width, 0.5), round_down(face.height, 0.5))
    return size if min(size.width, size.height) >= LEAST_TRIM else None
