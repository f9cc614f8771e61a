"""A plan as plain data, every number with what it came from: for `--json` and plan.json."""

from typing import Any

from padspec.base.geometry import Box
from padspec.jobs.figures import Figures
from padspec.jobs.plan import JobPlan, PrintedPage, price_of_sheet
from padspec.planning.quantities import stack_depth
from padspec.resolve.studio import INKS, Cartridge, Studio
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
        "inputs": inputs_data(studio, plan),
        "designs": [_wanted(at, plan) for at in range(len(plan.wanted))],
        "pages": [_page(page, plan) for page in plan.pages],
        **figures.data(),
        "caution": CAUTIONS[studio.cutter.kind],
    }


def inputs_data(studio: Studio, plan: JobPlan) -> dict[str, Any]:
    """Every number of the studio that the plan was reckoned with, under the names of its keys."""
    printer, cutter, stock, tolerance = studio.printer, studio.cutter, studio.stock, studio.tolerance
    prices = {one.design.sheet.size_name: _text(price_of_sheet(one.design)) for one in plan.wanted}
    return {
        "printer": {
            "placement-error": printer.placement_error,
            "skew-error": printer.skew_error,
            "offset": {"x": printer.offset[0], "y": printer.offset[1]},
            "scale": {"x": printer.scale[0], "y": printer.scale[1]},
            "turn": printer.turn,
        },
        "cutter": {
            "kind": cutter.kind,
            "error": cutter.error,
            "sheets-at-once": cutter.sheets_at_once,
            "clamp-height": cutter.clamp_height,
            "stroke-seconds": cutter.stroke_seconds,
        },
        "stock": {"caliper": stock.caliper},
        "price_of_a_sheet": prices | {o.size_name: _text(o.price) for o in studio.other_sheets},
        "overs": {"share": studio.overs, "test-sheets": studio.test_sheets},
        "tolerance": {
            "sliver": tolerance.sliver,
            "off-centre": tolerance.off_centre,
            "chance": tolerance.chance,
        },
        "ink": {
            **{name: _cartridge(part) for name, part in zip(INKS, studio.ink.cartridges, strict=True)},
            "allowance": studio.ink.allowance,
        },
    }


def _cartridge(cartridge: Cartridge | None) -> dict[str, Any] | None:
    return None if cartridge is None else {"price": str(cartridge.price), "pages": cartridge.pages}


def _wanted(at: int, plan: JobPlan) -> dict[str, Any]:
    one = plan.wanted[at]
    return {
        "sku": one.design.sku,
        "design": one.design.name,
        "file": one.design.file,
        "trim": {"width": one.design.trim.width, "height": one.design.trim.height},
        "leaves": one.design.leaves,
        "leaves_with_overs": round(one.design.leaves * (1 + one.design.studio.overs), 6),
        "sheets_of_a_pad_in_its_own_slot": stack_depth(one.design.leaves, one.design.studio.overs),
        "bleed": one.design.sheet.bleed,
        "least-bleed": one.design.sheet.least_bleed,
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
                "bleed": {
                    "left": slot.bleed.left,
                    "head": slot.bleed.top,
                    "right": slot.bleed.right,
                    "foot": slot.bleed.bottom,
                },
                "butted": list(slot.butted),
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
