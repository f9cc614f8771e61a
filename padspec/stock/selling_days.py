"""The days on which anything was sold, and what each pad did on them: sold some, sold none, or sold out.

A selling day is a date at one place. A pad counts on it if it was on hand there, even where none of it was sold:
days without a sale are as telling as any. Where none was left at the end, more might have been wanted than sold.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from padspec.stock.events import Event


@dataclass(frozen=True, slots=True)
class SkuDay:
    """What one pad did on one selling day; `sold_out`: it may have been wanted more often than it was sold."""

    sku: str
    sold: int
    sold_out: bool


@dataclass(frozen=True, slots=True)
class SellingDay:
    """One day at one place, with every pad that was on hand."""

    date: str
    place: str
    pads: tuple[SkuDay, ...]


def selling_days(events: Sequence[Event], place: str | None = None) -> tuple[SellingDay, ...]:
    """Every selling day in the order in which they begin in the ledger; those of one place where one is named."""
    spans: dict[tuple[str, str], list[int]] = {}
    for at, event in enumerate(events):
        if event.kind == "sold":
            spans.setdefault((event.date, event.place), []).append(at)
    before = _on_hand_before(events, {sales[0] for sales in spans.values()})
    return tuple(
        SellingDay(*key, _pads(events, before[sales[0]], sales))
        for key, sales in spans.items()
        if place is None or key[1].casefold() == place.casefold()
    )


def _on_hand_before(events: Sequence[Event], wanted: set[int]) -> dict[int, dict[str, int]]:
    """What was on hand before some of the events, by their index."""
    there: dict[str, int] = {}
    found = {}
    for at, event in enumerate(events):
        if at in wanted:
            found[at] = dict(there)
        there[event.sku] = event.after(there.get(event.sku, 0))
    return found


def _pads(events: Sequence[Event], before: dict[str, int], sales: Sequence[int]) -> tuple[SkuDay, ...]:
    """What was on hand from the day's first sale to its last, and what became of it."""
    there, of_the_day = dict(before), set(sales)
    shown = {sku for sku, pads in there.items() if pads > 0}
    sold: dict[str, int] = {}
    for at in range(sales[0], sales[-1] + 1):
        event = events[at]
        there[event.sku] = event.after(there.get(event.sku, 0))
        if at in of_the_day:
            sold[event.sku] = sold.get(event.sku, 0) + event.pads
    return tuple(SkuDay(sku, sold.get(sku, 0), there[sku] <= 0) for sku in sorted(shown | sold.keys()))


def places(events: Sequence[Event]) -> tuple[str, ...]:
    """Where anything was ever sold, in the order of the ledger."""
    return tuple(dict.fromkeys(event.place for event in events if event.kind == "sold" and event.place))
