"""A plan as plain data, every number with what it came from: for `--json` and plan.json."""

from typing import Any

from padspec.base.geometry import Box
from padspec.jobs.figures import Figures
from padspec.jobs.plan import JobPlan, PrintedPage
from padspec.sheet.cautions import CAUTIONS
from padspec.sheet.cutting.plan import Cut, CutPlan


def plan_data(plan: JobPlan, figures: Figures) -> dict[str, Any]:
    """The whole plan. Lengths are millimetres, money is text in the studio's currency, shares are of one."""
    studio = plan.wanted[0].design.studio
    return {
        "job": plan.name,
        "sheets": plan.sheets,
        "no_plan_takes_fewer_than": plan.bound,
        "one_design_a_sheet": plan.solo_sheets,
        "waste": round(plan.waste, 6),
        "paper_cost": _text(plan.paper_cost),
        "currency": studio.currency,
        "strokes": plan.strokes,
        "minutes": round(plan.minutes, 3),
        "overs": studio.overs,
        "designs": [_wanted(at, plan) for at in range(len(plan.wanted))],
        "pages": [_page(page, plan) for page in plan.pages],
        **figures.data(),
        "caution": CAUTIONS[studio.cutter.kind],
    }


def _wanted(at: int, plan: JobPlan) -> dict[str, Any]:
    one = plan.wanted[at]
    return {
        "sku": one.design.sku,
        "design": one.design.name,
        "file": one.design.file,
        "trim": {"width": one.design.trim.width, "height": one.design.trim.height},
        "leaves": one.design.leaves,
        "pads_wanted": one.pads,
        "pads_made": plan.made[at],
        "pads_spare": plan.spare[at],
    }


def _page(page: PrintedPage, plan: JobPlan) -> dict[str, Any]:
    sheet = page.sheet
    return {
        "page": page.number,
        "sheet": sheet.size_name,
        "size": {"width": sheet.size.width, "height": sheet.size.height},
        "n_up": sheet.n_up,
        "gutter": sheet.gutter,
        "sheets": page.sheets,
        "test_sheets": page.test_sheets,
        "copies": sheet.copies,
        "stacks": "joined and counted off" if page.joined else "each slot's stack is pads as it lies",
        "slots": [
            {
                "leaf": number,
                "sku": plan.wanted[at].design.sku,
                "pads": pads,
                "trim": box_data(slot.trim),
                "printed": [box_data(box) for box in slot.printed],
                "turned": slot.turned,
            }
            for number, (slot, at, pads) in enumerate(zip(sheet.slots, page.designs, page.pads, strict=True), 1)
        ],
        "left_out": list(sheet.left_out),
        "cut_plan": cuts_data(page.cuts),
    }


def cuts_data(plan: CutPlan) -> dict[str, Any]:
    """A cut plan."""
    return {
        "cutter": plan.kind,
        "sheets": plan.sheets,
        "sheets_a_lift": plan.sheets_a_lift,
        "lifts": plan.lifts,
        "strokes": plan.strokes,
        "minutes": round(plan.minutes, 3),
        "cuts": [_cut(cut) for cut in plan.cuts],
        "offcuts": [
            {
                "name": found.name,
                "size": {"width": found.each.width, "height": found.each.height},
                "count_a_sheet": found.count,
                "after_cut": found.cut,
                "box": box_data(found.box),
            }
            for found in plan.offcuts
        ],
    }


def _cut(cut: Cut) -> dict[str, Any]:
    return {
        "cut": cut.number,
        "runs": "upright" if cut.upright else "level",
        "at": round(cut.at, 6),
        "from": round(cut.start, 6),
        "to": round(cut.end, 6),
        "piece": cut.piece,
        "gauge": cut.gauge.name,
        "distance": round(cut.distance, 6),
        "off": cut.off or "waste",
        "jog": cut.jog,
        "marked": cut.marked,
    }


def box_data(box: Box) -> dict[str, float]:
    """A box by its corner and size."""
    return {key: round(value, 6) for key, value in zip(("x", "y", "width", "height"), _numbers(box), strict=True)}


def _numbers(box: Box) -> tuple[float, float, float, float]:
    return box.x, box.y, box.width, box.height


def _text(value: object) -> str | None:
    return None if value is None else str(value)
