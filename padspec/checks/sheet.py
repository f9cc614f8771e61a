"""The sheet: is there bleed enough, and did every mark find room?"""

from bisect import bisect_left
from collections.abc import Iterator
from math import ceil, floor, hypot

from padspec.base.colour import WHITE
from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import mm_text, number_text, round_up
from padspec.base.place import Place
from padspec.checks.check import Limits, Subject
from padspec.resolve.design import Design, with_sheet
from padspec.sheet.marks import MARK_GAP, MARK_LEAST
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import tile

#: What the default errors of a studio come to: √(1² + 0.5² + 0.5²) mm.
USUAL_STACK = hypot(1.0, 0.5, 0.5)


def bleed_room(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Is there bleed enough? The least bleed that prints past any outer or guttered cut, against what placement,
    skew and cutter may be off together (independent errors: the root of the sum of squares).

    Warning below that (1.22 mm with the errors that a studio has by default) or below the maker's own limit; error
    at 0 where a coloured ground reaches the trim. A ground that is white paper needs
    none, and lines shared by butted faces have none by design. Root-sum-square stacking is the usual rule for
    independent errors. Remedy: the bleed, least bleed or gutter that passes.
    """
    sheet, design = subject.sheet, subject.design
    if sheet is None or (design.ground.colour == WHITE and design.ground.pattern is None):
        return
    level = limits.mildest
    needed = stacked_error(design) if level.usual is None else level.value
    printed = sheet.least_bleed
    if printed >= needed - 1e-9:
        return
    yield Finding(
        check="bleed-room",
        severity=Severity.ERROR if printed <= 1e-9 else Severity.WARNING,
        place=_place(design, _held_back_by(sheet, needed)),
        message=f"Only {mm_text(printed)} of bleed are printed past a cut, where {mm_text(needed)} are needed: "
        "white slivers may show.",
        measured=mm_text(printed),
        limit=mm_text(needed) if level.usual is None else level.text,
        remedy=_more_bleed(design, needed),
    )


def mark_room(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (there is room or there is not)
    """Did crop marks, slug and scale bar find room? A note for those left out.

    Marks lie outside the bleed and inside the printable area (common practice, no published source). Remedy: a
    smaller bleed that leaves room for all of them, where the printer's and cutter's errors allow one.
    """
    sheet, design = subject.sheet, subject.design
    if sheet is None or not sheet.left_out:
        return
    yield Finding(
        check="mark-room",
        severity=Severity.NOTE,
        place=_place(design, "sheet"),
        message=f"No room on the sheet for: {', '.join(sheet.left_out)}.",
        measured=f"{len(sheet.left_out)} left out",
        limit="0",
        remedy=_room_for_marks(design),
    )


def stacked_error(design: Design) -> float:
    """Placement, skew and cutting error together, as independent ± limits."""
    studio = design.studio
    return hypot(studio.printer.placement_error, studio.printer.skew_error, studio.cutter.error)


def _held_back_by(sheet: Sheet, needed: float) -> str:
    """The key that the least bleed comes from: a gutter too narrow for two bleeds, else the bleed."""
    outer_is_enough = _outer_bleed(sheet) >= needed - 1e-9
    return "gutter" if outer_is_enough and sheet.gutter < 2 * needed else "bleed"


def _outer_bleed(sheet: Sheet) -> float:
    """The least bleed around the block as a whole."""
    block, printed = sheet.trim_box, sheet.bleed_box
    return min(
        block.x - printed.x, block.y - printed.y, printed.right - block.right, printed.bottom - block.bottom
    )


def _more_bleed(design: Design, needed: float) -> Remedy:
    """The least change of the sheet that was tried and passes."""
    enough = round_up(needed, 0.1)
    wish = design.sheet
    changes: dict[str, float] = {}
    if wish.bleed < needed or (wish.least_bleed < needed and wish.bleed < enough):
        changes["bleed"] = enough
    if wish.least_bleed < needed:
        changes["least_bleed"] = enough
    if 0 < wish.gutter < 2 * needed:
        changes["gutter"] = round_up(2 * needed, 0.1)
    trial = tile(with_sheet(design, **changes))
    if trial is None or trial.least_bleed < needed - 1e-9:
        return Remedy(
            f"Leave at least {mm_text(enough)} around the faces: a smaller trim or a larger sheet does it."
        )
    texts = {name.replace("_", "-"): f"{number_text(value)} mm" for name, value in changes.items()}
    words = ", ".join(f"{name}: {value}" for name, value in texts.items())
    return Remedy(
        f"Set under sheet: {words} ({trial.n_up}-up).",
        tuple((("sheet", name), value) for name, value in texts.items()),
    )


def _room_for_marks(design: Design) -> Remedy:
    """The largest bleed, no smaller than the stacked error, with which every mark finds room."""
    tenths = range(ceil(round(stacked_error(design) * 10, 6)), floor(round(design.sheet.bleed * 10, 6)) + 1)
    found = bisect_left(tenths, True, key=lambda n: not _all_marks(design, n / 10))
    if found:
        bleed = tenths[found - 1] / 10
        value = f"{number_text(bleed)} mm"
        keys = ("bleed", "least-bleed") if design.sheet.least_bleed > bleed else ("bleed",)
        words = ", ".join(f"{key}: {value}" for key in keys)
        return Remedy(f"Set under sheet: {words}.", tuple((("sheet", key), value) for key in keys))
    return Remedy(
        f"Crop marks need {mm_text(MARK_GAP + MARK_LEAST)} beyond the bleed on every side, slug and scale bar a "
        "stretch free of them: a smaller trim or a larger sheet leaves it."
    )


def _all_marks(design: Design, bleed: float) -> bool:
    """Whether nothing is left out with this bleed, tried."""
    trial = tile(with_sheet(design, bleed=bleed, least_bleed=min(design.sheet.least_bleed, bleed)))
    return trial is not None and not trial.left_out


def _place(design: Design, name: str) -> Place:
    return design.key("sheet", name).place
