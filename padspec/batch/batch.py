"""A plan in, the batch out: each design's block and what finishes it, boards to cut, clamps to fill."""

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from padspec.base.errors import Problem, ProblemsError
from padspec.base.numbers import EPSILON, mm_text
from padspec.base.place import Place
from padspec.jobs.plan import JobPlan, PrintedPage
from padspec.making.adhesive import Gluing, gluing_of
from padspec.making.block import Block, Measure, block_of
from padspec.making.boards import Boards, boards_of
from padspec.making.magnets import Hold, hold_of
from padspec.making.sleeve import SleeveFit, fit_in
from padspec.resolve.design import Design

#: A batch that fills the clamp more often is no batch for one pair of hands.
MOST_LOADS = 200


@dataclass(frozen=True, slots=True)
class PadLot:
    """The pads of one design in a batch. `printed` counts its leaves off the printer, overs and tests included;
    `hold` and `sleeve` are None where the pad has no magnets or goes into no sleeve.
    """

    design: Design
    pads: int
    printed: int
    block: Block
    gluing: Gluing
    hold: Hold | None
    sleeve: SleeveFit | None


@dataclass(frozen=True, slots=True)
class Load:
    """One filling of a clamp: pads of one trim by the index of their lot, and how high they stand with boards."""

    number: int
    pads: tuple[tuple[int, int], ...]
    height: Measure

    @property
    def count(self) -> int:
        """Pads in the stack."""
        return sum(number for _, number in self.pads)


@dataclass(frozen=True, slots=True)
class Batch:
    """A job and all that is made in it; `boards` is None where the pads have no board."""

    plan: JobPlan
    lots: tuple[PadLot, ...]
    boards: Boards | None
    loads: tuple[Load, ...]

    @property
    def pads(self) -> int:
        """Pads in all."""
        return sum(lot.pads for lot in self.lots)


def batch_of(plan: JobPlan) -> Batch:
    """Everything that is made of a plan. Raises ProblemsError where its pads fill the clamp too often."""
    lots = tuple(_lot(plan, index) for index in range(len(plan.wanted)))
    loads = _loads(lots)
    return Batch(plan, lots, boards_of([(lot.design, lot.pads) for lot in lots]), loads)


def slots_of(page: PrintedPage, index: int) -> int:
    """How many slots of a page hold the design of this index."""
    return page.designs.count(index)


def shares_of(page: PrintedPage, plan: JobPlan) -> tuple[tuple[int, Fraction], ...]:
    """Which part of a page is for which design, by the area of its leaves; together one."""
    areas: dict[int, Fraction] = {}
    for index in page.designs:
        trim = plan.wanted[index].design.trim
        areas[index] = areas.get(index, Fraction(0)) + exact(trim.width) * exact(trim.height)
    whole = sum(areas.values(), Fraction(0))
    return tuple((index, area / whole) for index, area in areas.items())


def exact(length: float) -> Fraction:
    """A length or a number of minutes as the decimal that was written, to the sixth place."""
    return Fraction(str(round(length, 6)))


def _lot(plan: JobPlan, index: int) -> PadLot:
    design, pads = plan.wanted[index].design, plan.wanted[index].pads
    block = block_of(design)
    sleeve = design.finish.sleeve
    return PadLot(
        design=design,
        pads=pads,
        printed=sum(slots_of(page, index) * page.sheet.copies for page in plan.pages),
        block=block,
        gluing=gluing_of(design, block),
        hold=hold_of(design, block),
        sleeve=fit_in(sleeve, design, block) if sleeve is not None else None,
    )


def _loads(lots: tuple[PadLot, ...]) -> tuple[Load, ...]:
    """Pads of one trim stand in one stack, as high as the clamp takes at its thickest; a pad too thick for it is a
    stack by itself.
    """
    _refuse_too_many(lots)
    loads: list[Load] = []
    for trim in dict.fromkeys(lot.design.trim for lot in lots):
        waiting = [(index, lot.pads) for index, lot in enumerate(lots) if lot.design.trim == trim]
        while waiting:
            taken, height = _fill(waiting, lots)
            loads.append(Load(len(loads) + 1, tuple(taken), height))
    return tuple(loads)


def _refuse_too_many(lots: tuple[PadLot, ...]) -> None:
    height = sum(lot.pads * (lot.block.stacked.value + lot.block.stacked.error) for lot in lots)
    room = lots[0].design.studio.bench.clamp.height
    most = max(lot.block.stacked.value + lot.block.stacked.error for lot in lots)
    fills = sum(lot.pads for lot in lots) if most > room else ceil(height / room)
    if fills > MOST_LOADS:
        message = (
            f"So many pads fill a clamp of {mm_text(room)} about {fills} times; {MOST_LOADS} are laid out at most."
        )
        mend = (
            f"Plan some {sum(lot.pads for lot in lots) * MOST_LOADS // fills} pads at a time, or look at "
            "clamp.height."
        )
        raise ProblemsError(Problem(Place("studio.yaml", 0, 0), message, mend))


def _fill(waiting: list[tuple[int, int]], lots: tuple[PadLot, ...]) -> tuple[list[tuple[int, int]], Measure]:
    """Take what one clamp holds off the head of those that wait."""
    room = lots[waiting[0][0]].design.studio.bench.clamp.height
    taken: list[tuple[int, int]] = []
    height = Measure(0.0, 0.0)
    while waiting:
        index, pads = waiting[0]
        each = lots[index].block.stacked
        fits = floor((room - height.value - height.error) / (each.value + each.error) + EPSILON)
        number = min(pads, max(fits, 0 if taken else 1))
        if not number:
            break
        taken.append((index, number))
        more = each.times(number)
        height = Measure(height.value + more.value, height.error + more.error)
        waiting[0] = (index, pads - number)
        if waiting[0][1]:
            break
        waiting.pop(0)
    return taken, height
