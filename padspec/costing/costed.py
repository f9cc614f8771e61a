"""A job plan in, the whole reckoning out: batch, time line, what each lot costs and what to ask for a pad."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from padspec.batch.batch import Batch, Load, batch_of
from padspec.costing.lines import LABOUR, LotCost, costs_of
from padspec.costing.price import Cost, Price, aimed_price, break_even, brings, wholesale
from padspec.jobs.inks import FaceInk
from padspec.jobs.plan import JobPlan
from padspec.resolve.money import Money
from padspec.schedule.task import Task
from padspec.schedule.tasks import tasks_of
from padspec.schedule.timeline import Timeline, timeline_of


@dataclass(frozen=True, slots=True)
class Offer:
    """One way to sell a pad: by the price that the studio aims at, the one that the design names, or to a shop;
    and how many sold pay for a market day (None where no number does, or its cost is not stated).
    """

    name: str
    price: Price
    market_day: int | None


@dataclass(frozen=True, slots=True)
class Priced:
    """A lot with its costs and the ways to sell it."""

    cost: LotCost
    offers: tuple[Offer, ...]


@dataclass(frozen=True, slots=True)
class Costed:
    """A batch with its tasks, its time line and every lot priced."""

    batch: Batch
    tasks: tuple[Task, ...]
    timeline: Timeline
    lots: tuple[Priced, ...]

    @property
    def total(self) -> Fraction:
        """Everything that has a price, for the whole batch."""
        return sum((lot.cost.total for lot in self.lots), Fraction(0))


def costed(plan: JobPlan, inks: Sequence[FaceInk]) -> Costed:
    """The reckoning of a plan; `inks` has the ink of a leaf for each design wanted."""
    batch = batch_of(plan)
    tasks = tasks_of(batch)
    timeline = timeline_of(tasks, batch.lots[0].design.studio.bench.clamp.count)
    batch, timeline = _in_order_of_time(batch, timeline)
    lots = tuple(_priced(cost) for cost in costs_of(batch, tasks, inks))
    return Costed(batch, tasks, timeline, lots)


def _in_order_of_time(batch: Batch, timeline: Timeline) -> tuple[Batch, Timeline]:
    """The same with the clamp's loads numbered as they are filled."""
    filled = [one.task.load for one in timeline.placed if one.task.takes_clamp]
    numbers = {old: new for new, old in enumerate(filled, 1)} | {0: 0}
    loads = sorted((replace(load, number=numbers[load.number]) for load in batch.loads), key=_number)
    placed = (replace(one, task=replace(one.task, load=numbers[one.task.load])) for one in timeline.placed)
    return replace(batch, loads=tuple(loads)), replace(timeline, placed=tuple(placed))


def _number(load: Load) -> int:
    return load.number


def cost_of_one(cost: LotCost) -> Cost:
    """One good pad of a lot, as prices reckon with it."""
    return Cost(cost.each, cost.without(LABOUR), cost.hours_each)


def fixed_of(money: Money) -> Fraction | None:
    """What a market day costs: its fee and the hours of it by the wage; None where its fee is not stated."""
    day = money.market_day
    if day.fee is None:
        return None
    return Fraction(day.fee) + Fraction(day.hours) * Fraction(money.wage or 0)


def _priced(cost: LotCost) -> Priced:
    design = cost.lot.design
    money, one, own = design.studio.money, cost_of_one(cost), design.listing.price
    aimed = aimed_price(one, money)
    offers = [_offer(_aim_name(money), brings(aimed, one, money), money)]
    if own is not None:
        offers.append(_offer("the price in the design", brings(own, one, money), money))
    shop = own if own is not None else aimed
    offers.append(Offer(f"to a shop, {_percent(money.wholesale)} of {shop}", wholesale(shop, one, money), None))
    return Priced(cost, tuple(offers))


def _offer(name: str, price: Price, money: Money) -> Offer:
    fixed = fixed_of(money)
    return Offer(name, price, None if fixed is None else break_even(price, fixed))


def _aim_name(money: Money) -> str:
    if money.aim.hourly is not None:
        return f"for {money.aim.hourly} an hour"
    return f"for a margin of {_percent(money.aim.margin or Fraction(0))}"


def _percent(share: Fraction) -> str:
    return f"{Decimal(share.numerator * 100) / Decimal(share.denominator):.4g} %"
