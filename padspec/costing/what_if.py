"""A design and sizes of batch in, what a pad would cost in each out: every one planned, timed and costed."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from padspec.costing.costed import cost_of_one, costed
from padspec.costing.lines import LABOUR, LotCost
from padspec.costing.price import aimed_price
from padspec.jobs.inks import FaceInk
from padspec.jobs.plan import Wanted, make_plan
from padspec.resolve.design import Design

USUAL_SIZES = (5, 10, 20, 50, 100)
MOST_SIZES, MOST_PADS = 12, 2000
#: What a pad's cost is made up of in the plot, from the foot up.
PARTS = ("paper and ink", "board, adhesive, finish", "labour", "overhead and spoilage")
_PRINT = ("paper", "ink")


@dataclass(frozen=True, slots=True)
class Size:
    """One size of batch: sheets, minutes of hands, minutes until it is done, what a good pad costs in all and by
    `PARTS`, and the price that the studio aims at.
    """

    pads: int
    sheets: int
    hands: float
    minutes: float
    each: Fraction
    parts: tuple[Fraction, ...]
    price: Decimal


def what_if(design: Design, ink: FaceInk, sizes: Sequence[int]) -> tuple[Size, ...]:
    """The design alone in batches of these sizes, rising."""
    return tuple(_size(design, ink, pads) for pads in sorted(set(sizes)))


def _size(design: Design, ink: FaceInk, pads: int) -> Size:
    found = costed(make_plan("what if", (Wanted(design, pads),)), (ink,))
    cost = found.lots[0].cost
    return Size(
        pads=pads,
        sheets=found.batch.plan.sheets,
        hands=found.timeline.hands,
        minutes=found.timeline.minutes,
        each=cost.each,
        parts=_parts(cost),
        price=aimed_price(cost_of_one(cost), design.studio.money),
    )


def _parts(cost: LotCost) -> tuple[Fraction, ...]:
    """What a pad's cost is made up of; together what a good pad costs."""

    def of_lines(*names: str) -> Fraction:
        return sum((line.amount or Fraction(0) for line in cost.lines if line.name in names), Fraction(0))

    print_, labour, overhead = of_lines(*_PRINT), of_lines(LABOUR), of_lines("overhead")
    rest = cost.total - print_ - labour - overhead
    pads = cost.lot.pads
    spoilt = cost.each - cost.total / pads
    return print_ / pads, rest / pads, labour / pads, overhead / pads + spoilt
