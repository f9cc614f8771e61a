"""Costs and prices as lines for a terminal: amounts add up to the coin, estimates are called so."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from padspec.base.money import amount_text, minor_digits, rounded_together
from padspec.base.numbers import number_text, percent_text
from padspec.cli.say import counted, table
from padspec.costing.costed import Costed, Offer, Priced, fixed_of
from padspec.costing.what_if import Size
from padspec.resolve.money import Money
from padspec.schedule.wording import duration, timeline_lines

#: Digits more than the coin that the cost of one pad is shown with.
_FINER = 2
TAXES = (
    "Prices and taxes are yours to decide and to declare: padspec knows no tax law. What your place asks of",
    "those who sell (registering, receipts, marking prices), its own offices and advisers say.",
)


def cost_lines(found: Costed, sizes: Mapping[str, Sequence[Size]]) -> Iterator[str]:
    """The whole reckoning, lot by lot."""
    batch = found.batch
    money = batch.lots[0].design.studio.money
    yield f"{batch.plan.name}: {counted(batch.pads, 'pad')} for {amount_text(found.total, money.currency)}"
    yield from timeline_lines(found.timeline)
    for lot in found.lots:
        yield ""
        yield from _lot(lot, money)
        if lot.cost.lot.design.sku in sizes:
            yield ""
            yield from _sizes(sizes[lot.cost.lot.design.sku], money)
    yield ""
    yield from _footnotes(found)


def _lot(lot: Priced, money: Money) -> Iterator[str]:
    cost, design = lot.cost, lot.cost.lot.design
    yield f"{design.sku}, {design.name}: {counted(cost.lot.pads, 'pad')}"
    digits = minor_digits(money.currency)
    stated = [line for line in cost.lines if line.amount is not None]
    amounts = [line.amount or Fraction(0) for line in stated]
    together = rounded_together(amounts, digits)
    spoilt = cost.each - cost.total / cost.lot.pads
    each = rounded_together([*(amount / cost.lot.pads for amount in amounts), spoilt], digits + _FINER)
    rows = [
        (line.name, f"{whole:f}", f"{one:f}", f"{line.what}{' *' if line.estimate else ''}")
        for line, whole, one in zip(stated, together, each[:-1], strict=True)
    ]
    if cost.spoilage:
        rows.append(("spoilage", "", f"{each[-1]:f}", f"{percent_text(float(cost.spoilage))} of the pads *"))
    rows.append(("together", f"{sum(together):f}", f"{sum(each):f}", ""))
    yield table(("cost", f"batch {money.currency}", "a good pad", ""), rows, right=(1, 2))
    for line in cost.lacking:
        yield f"Not in it: {line.name} ({line.what}). Write {line.lacks} into studio.yaml."
    yield ""
    yield table(_OFFER_HEAD, [_offer(offer, money) for offer in lot.offers], right=range(1, 8))


_OFFER_HEAD = ("sold", "price", "customer pays", "fee", "kept", "margin", "an hour", "pads for a market day")


def _offer(offer: Offer, money: Money) -> tuple[str, ...]:
    price = offer.price
    amounts = (price.paid, price.fee, price.kept)
    coins = tuple(amount_text(amount, money.currency).split()[0] for amount in amounts)
    hourly = "–" if price.hourly is None else amount_text(price.hourly, money.currency).split()[0]
    if offer.market_day is not None:
        day = str(offer.market_day)
    else:
        day = "none does" if price.kept <= 0 and fixed_of(money) is not None else "–"
    return (offer.name, f"{price.shown:f}", *coins, percent_text(float(price.margin)), hourly, day)


def _sizes(sizes: Sequence[Size], money: Money) -> Iterator[str]:
    rows = [
        (
            str(size.pads),
            str(size.sheets),
            duration(size.hands),
            duration(size.minutes),
            amount_text(size.each, money.currency).split()[0],
            f"{size.price:f}",
        )
        for size in sizes
    ]
    yield "In batches of another size *:"
    yield table(("pads", "sheets", "by hand", "until done", "a good pad", "price"), rows, right=range(6))


def _footnotes(found: Costed) -> Iterator[str]:
    money = found.batch.lots[0].design.studio.money
    told = dict.fromkeys(line.estimate for lot in found.lots for line in lot.cost.lines if line.estimate)
    for text in told:
        yield f"* {text}"
    fixed = fixed_of(money)
    if fixed is not None:
        hours = f" with {number_text(float(money.market_day.hours))} h of yours" if money.market_day.hours else ""
        yield f"A market day costs {amount_text(fixed, money.currency)}{hours}."
    yield "An hour: what is left for an hour of making, all else paid. Kept: what is left when labour is paid too."
    yield from TAXES
