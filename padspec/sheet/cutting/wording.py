"""Cut plan in, lines for a terminal out: plain words that a person follows who has never cut a pad."""

from padspec.base.geometry import Box, Size
from padspec.base.numbers import mm_text, number_text
from padspec.sheet.cautions import CAUTIONS
from padspec.sheet.cutting.plan import Cut, CutPlan, OffcutFound

_TOOL = {"knife": "hand knife", "lever": "lever trimmer", "guillotine": "guillotine"}
_STOP = {"lever": "fence", "guillotine": "back gauge"}


def cut_lines(plan: CutPlan) -> tuple[str, ...]:
    """The whole plan: how much at once, how to read it, a line for each cut, what is left over, what to mind."""
    return (
        *_opening(plan),
        *_cuts(plan),
        *_offcuts(plan),
        CAUTIONS[plan.kind],
    )


def _opening(plan: CutPlan) -> tuple[str, ...]:
    many = f"{_count(plan.lifts, 'lift')} of {'up to ' if plan.lifts > 1 else ''}"
    sums = f"{_count(len(plan.cuts), 'cut')} a lift, {_count(plan.strokes, 'stroke')} in all"
    return (
        f"By {_TOOL[plan.kind]}: {_count(plan.sheets, 'sheet')} in {many}{_count(plan.sheets_a_lift, 'sheet')}; "
        f"{sums}, about {number_text(plan.minutes, 0) if plan.minutes >= 1 else 'one'} min (an estimate).",
        *reading_lines(plan),
    )


def reading_lines(plan: CutPlan) -> tuple[str, ...]:
    """How the lines of a plan are read: how sheets lie, and what a distance is measured from."""
    return (
        "Sheets lie printed side up, as fed. Upright cuts run from head to foot, level cuts from side to side.",
        *_how(plan),
    )


def _how(plan: CutPlan) -> tuple[str, ...]:
    if plan.kind == "knife":
        return (
            "Tape the sheets to the mat and leave every piece where it is, the waste too: all is measured from",
            "the raw left edge and the raw head edge of the sheet. Turn the ruler, never the paper.",
        )
    stop = _STOP[plan.kind]
    return (
        f"The edge that is named lies against the {stop}, the {stop} is set to the distance. What lies between",
        "that edge and the blade stays; what lies before the blade comes off.",
    )


def _cuts(plan: CutPlan) -> list[str]:
    named = len({cut.piece for cut in plan.cuts}) > 1
    heads = [_measure(cut, named) for cut in plan.cuts]
    wide, digits = max(map(len, heads), default=0), len(str(len(plan.cuts)))
    found = []
    for place, (cut, head) in enumerate(zip(plan.cuts, heads, strict=True)):
        remark = _remark(plan, place)
        line = f"{cut.number:{digits}d}  {'upright' if cut.upright else 'level  '}  {head:{wide}}  {remark}"
        found.append(line.rstrip())
    return found


def _measure(cut: Cut, named: bool) -> str:
    piece = f"{cut.piece}: " if named else ""
    return f"{piece}{mm_text(cut.distance)} from {cut.gauge.name}"


def _remark(plan: CutPlan, place: int) -> str:
    cut = plan.cuts[place]
    before = plan.cuts[place - 1] if place else None
    by_hand = plan.kind == "knife"
    parts = [_ruler(cut, before)] if by_hand else [_handling(plan, cut, before), _coming_off(cut)]
    if cut.marked:
        parts.append("ruler on the crop marks" if by_hand else "marks show the line")
    return "; ".join(part for part in parts if part)


def _ruler(cut: Cut, before: Cut | None) -> str:
    return "turn the ruler" if before is not None and before.upright != cut.upright else ""


def _handling(plan: CutPlan, cut: Cut, before: Cut | None) -> str:
    """What is done with the pile before the cut: nothing while the same edge stays against the gauge."""
    if not cut.jog:
        return ""
    if before is None:
        return "jog to the left edge and the head"
    if before.piece != cut.piece:
        return f"take {cut.piece}, jog"
    parted = any(
        other.piece == cut.piece and other.upright != cut.upright and not other.takes_waste
        for other in plan.cuts[: cut.number - 1]
    )
    if parted:
        return "put the parts side by side in order, turn as one, jog"
    return "half turn, jog" if before.upright == cut.upright else "quarter turn, jog"


def _coming_off(cut: Cut) -> str:
    if not cut.takes_waste:
        return f"{cut.off} {'come' if cut.off.startswith('leaves') else 'comes'} off"
    return f"a strip of {mm_text(cut.off_box.width if cut.upright else cut.off_box.height)} comes off, waste"


def _offcuts(plan: CutPlan) -> list[str]:
    """A line for each clean piece, with all that could be made of it."""
    pieces = dict.fromkeys((found.cut, found.box) for found in plan.offcuts)
    return [
        _offcut(number, box, [one for one in plan.offcuts if (one.cut, one.box) == (number, box)])
        for number, box in pieces
    ]


def _offcut(number: int, box: Box, found: list[OffcutFound]) -> str:
    things = " or ".join(f"{one.count} × {one.name} of {_size(one.each)}" for one in found)
    return f"Left over by cut {number}: clean paper of {_size(box.size)} a sheet, enough for {things}."


def _size(size: Size) -> str:
    return f"{number_text(size.width, 1)} × {mm_text(size.height, 1)}"


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"
