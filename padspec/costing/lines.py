"""A batch and its tasks in, the cost of every lot out, line by line, exact to the last digit.

An amount is a Fraction, or None where the studio does not state a price that it needs: then the line says which,
and nothing is claimed of it. Pages that designs share are shared out by the area of their leaves.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from padspec.batch.batch import Batch, PadLot, exact, shares_of, slots_of
from padspec.jobs.inks import FaceInk
from padspec.jobs.plan import price_of_sheet
from padspec.resolve.design import Design
from padspec.schedule.task import Task

_GRAMS = 1000


@dataclass(frozen=True, slots=True)
class CostLine:
    """What one thing costs for a whole lot. `amount` is None where a price is not stated, `lacks` then names the
    key of the studio; `estimate` says why it is no exact figure, empty where it is one.
    """

    name: str
    what: str
    amount: Fraction | None
    lacks: str = ""
    estimate: str = ""


@dataclass(frozen=True, slots=True)
class LotCost:
    """The costs of one lot. `hours` are those of hands. Every pad bears `spoilage`: good pads pay for spoilt ones,
    so a pad costs the sum of the lines ÷ (pads × (1 − spoilage)).
    """

    lot: PadLot
    lines: tuple[CostLine, ...]
    hours: Fraction
    spoilage: Fraction

    @property
    def total(self) -> Fraction:
        """All lines that have an amount."""
        return sum((line.amount for line in self.lines if line.amount is not None), Fraction(0))

    @property
    def lacking(self) -> tuple[CostLine, ...]:
        """The lines that have none."""
        return tuple(line for line in self.lines if line.amount is None)

    @property
    def good_pads(self) -> Fraction:
        """Pads that can be sold, as far as may be expected."""
        return self.lot.pads * (1 - self.spoilage)

    @property
    def each(self) -> Fraction:
        """What one good pad costs."""
        return self.total / self.good_pads

    @property
    def hours_each(self) -> Fraction:
        """Hours of hands for one good pad."""
        return self.hours / self.good_pads

    def without(self, name: str) -> Fraction:
        """What one good pad costs without the line of this name."""
        kept = (line.amount for line in self.lines if line.amount is not None and line.name != name)
        return sum(kept, Fraction(0)) / self.good_pads


LABOUR = "labour"


def costs_of(batch: Batch, tasks: Sequence[Task], inks: Sequence[FaceInk]) -> tuple[LotCost, ...]:
    """The costs of each lot, in the order of the batch; `inks` has the ink of a leaf for each lot."""
    return tuple(_lot_cost(index, batch, _hours(index, tasks), inks[index]) for index in range(len(batch.lots)))


def _hours(index: int, tasks: Sequence[Task]) -> Fraction:
    """Hours that hands are busy with one lot."""
    return sum(
        (
            exact(task.minutes) * share / 60
            for task in tasks
            if task.by_hand
            for at, share in task.shares
            if at == index
        ),
        Fraction(0),
    )


def _lot_cost(index: int, batch: Batch, hours: Fraction, ink: FaceInk) -> LotCost:
    lot = batch.lots[index]
    lines = (
        _paper(index, batch),
        _ink(index, batch, ink),
        *_backs(lot, batch),
        _adhesive(lot),
        *_magnets(lot),
        *_sleeve(lot),
        *_extras(lot),
        _labour(lot.design, hours),
        *_overhead(lot),
    )
    return LotCost(lot, lines, hours, lot.design.studio.money.spoilage)


def _paper(index: int, batch: Batch) -> CostLine:
    plan, design = batch.plan, batch.lots[index].design
    sheets = sum(
        (share * page.sheet.copies for page in plan.pages for at, share in shares_of(page, plan) if at == index),
        Fraction(0),
    )
    what = f"{_number(sheets)} sheets of {design.sheet.size_name}, overs and tests in"
    price = price_of_sheet(design)
    return _line("paper", what, price, sheets, "stock.price, or other-sheets for another size")


def _ink(index: int, batch: Batch, ink: FaceInk) -> CostLine:
    leaves = sum(slots_of(page, index) * page.sheet.copies for page in batch.plan.pages)
    what = f"{leaves} leaves printed, bleed left out"
    return _line("ink", what, ink.use.cost, Fraction(leaves), "ink: the cartridges", ink.use.text)


def _backs(lot: PadLot, batch: Batch) -> Iterator[CostLine]:
    board = lot.design.studio.bench.board
    for size in batch.boards.sizes if batch.boards else ():
        if size.trim == lot.design.trim:
            what = f"{lot.pads} backs, {size.each} from a big sheet"
            yield _line("board", what, board.price, Fraction(lot.pads, size.each), "board.price")


def _adhesive(lot: PadLot) -> CostLine:
    adhesive = lot.design.studio.bench.adhesive
    kilograms = exact(lot.gluing.grams) * lot.pads / _GRAMS
    what = f"{_number(kilograms * _GRAMS)} g for {adhesive.coats} coats"
    rough = "Estimate: by area and grams a square metre."
    return _line("adhesive", what, adhesive.price, kilograms, "adhesive.price, of a kilogram", rough)


def _magnets(lot: PadLot) -> Iterator[CostLine]:
    number = lot.pads * lot.design.finish.magnets
    if number:
        price = lot.design.studio.bench.magnets.price
        yield _line("magnets", f"{number} pieces", price, Fraction(number), "magnets.price")


def _sleeve(lot: PadLot) -> Iterator[CostLine]:
    if lot.sleeve is not None:
        sleeve = lot.sleeve.sleeve
        what = f"{lot.pads} × {sleeve.name}"
        yield _line("sleeve", what, sleeve.price, Fraction(lot.pads), f"the price of the sleeve {sleeve.name}")


def _extras(lot: PadLot) -> Iterator[CostLine]:
    for extra in lot.design.studio.bench.extras:
        yield _line(
            extra.name,
            f"{lot.pads} pieces",
            extra.price,
            Fraction(lot.pads),
            f"the price of the extra {extra.name}",
        )


def _labour(design: Design, hours: Fraction) -> CostLine:
    minutes = _number(hours * 60)
    rough = "Estimate: by the times of the studio; time a batch."
    return _line(LABOUR, f"{minutes} min of hands", design.studio.money.wage, hours, "money.wage", rough)


def _overhead(lot: PadLot) -> Iterator[CostLine]:
    overhead = lot.design.studio.money.overhead
    if overhead:
        yield _line("overhead", f"{lot.pads} pads", overhead, Fraction(lot.pads), "")


def _line(
    name: str, what: str, price: Decimal | None, number: Fraction, lacks: str, estimate: str = ""
) -> CostLine:
    if price is None:
        return CostLine(name, what, None, lacks, estimate)
    return CostLine(name, what, Fraction(price) * number, "", estimate)


def _number(value: Fraction) -> str:
    return f"{float(value):.1f}".removesuffix(".0")
