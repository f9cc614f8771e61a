"""A ticket as plain data: lengths in mm, weights in g, times in minutes."""

from typing import Any

from padspec.batch.batch import Load, PadLot
from padspec.making.block import Measure
from padspec.making.boards import Boards
from padspec.schedule.as_data import timeline_data
from padspec.sheet.cutting.wording import cut_lines
from padspec.ticket.steps import Step
from padspec.ticket.ticket import Ticket


def ticket_data(ticket: Ticket) -> dict[str, Any]:
    """The whole ticket."""
    batch = ticket.found.batch
    return {
        "job": batch.plan.name,
        "pads": [_lot(lot) for lot in batch.lots],
        "fetch": [
            {"number": one.number, "unit": one.unit, "what": one.what, "for": one.use} for one in ticket.materials
        ],
        "boards": None if batch.boards is None else _boards(batch.boards),
        "clamp_loads": [_load(load, batch.lots) for load in batch.loads],
        "time": timeline_data(ticket.found.timeline),
        "steps": [_step(number, step) for number, step in enumerate(ticket.steps, 1)],
        "quality": [{"point": name, "how": how} for name, how in ticket.quality],
        "cautions": [{"about": one.about, "text": one.text} for one in ticket.cautions],
    }


def _lot(lot: PadLot) -> dict[str, Any]:
    design, hold, sleeve = lot.design, lot.hold, lot.sleeve
    return {
        "sku": design.sku,
        "name": design.name,
        "pads": lot.pads,
        "leaves": design.leaves,
        "leaves_printed": lot.printed,
        "trim": {"width": design.trim.width, "height": design.trim.height},
        "thickness": measure_data(lot.block.thickness),
        "weight": measure_data(lot.block.weight),
        "adhesive": round(lot.gluing.grams, 3),
        "magnets": None
        if hold is None
        else {
            "count": hold.count,
            "area_cm2": round(hold.area, 3),
            "pull": round(hold.pull, 1),
            "holds_against_sliding": round(hold.slide, 1),
            "needed": round(hold.needed, 1),
            "pull_measured": hold.measured,
            "holds": hold.holds,
        },
        "sleeve": None
        if sleeve is None
        else {
            "name": sleeve.sleeve.name,
            "air_across": round(sleeve.spare.width, 3),
            "air_along": round(sleeve.spare.height, 3),
        },
    }


def measure_data(measure: Measure) -> dict[str, float]:
    """A figure and how far it may be off."""
    return {"value": round(measure.value, 3), "plus_minus": round(measure.error, 3)}


def _boards(boards: Boards) -> dict[str, Any]:
    return {
        "sheets": boards.sheets,
        "no_fewer_than": boards.bound,
        "too_large": [{"width": trim.width, "height": trim.height} for trim in boards.misfits],
        "sizes": [
            {
                "trim": {"width": size.trim.width, "height": size.trim.height},
                "wanted": size.wanted,
                "from_a_sheet": size.each,
                "no_layout_gives_more_than": size.bound,
                "waste": round(size.waste, 6),
            }
            for size in boards.sizes
        ],
        "layouts": [
            {
                "sheets": layout.sheets,
                "gives": [{"size": item, "backs": number} for item, number in layout.gives],
                "cuts": list(cut_lines(layout.cuts)),
            }
            for layout in boards.layouts
        ],
    }


def _load(load: Load, lots: tuple[PadLot, ...]) -> dict[str, Any]:
    return {
        "load": load.number,
        "pads": {lots[index].design.sku: number for index, number in load.pads},
        "height": measure_data(load.height),
    }


def _step(number: int, step: Step) -> dict[str, Any]:
    return {
        "number": number,
        "step": step.title,
        "how": step.how,
        "tick": [{"text": tick.text, "times": tick.boxes} for tick in step.ticks],
        "minutes_by_hand": round(step.by_hand, 3),
        "minutes_waiting": round(step.waiting, 3),
        "begins": round(step.begins, 3),
    }
