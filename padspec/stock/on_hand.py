"""What is on hand, and what became of every pad: worked out from the events, line by line, and never stored."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from padspec.base.errors import Problem
from padspec.stock.events import Event


@dataclass(frozen=True, slots=True)
class Tally:
    """One SKU over its whole history. On hand is made + returned − sold + corrected, `corrected` being what counts
    found over (or below) what there should have been. `unpriced` are pads sold with no price on their line.
    """

    sku: str
    on_hand: int = 0
    made: int = 0
    sold: int = 0
    returned: int = 0
    corrected: int = 0
    unpriced: int = 0
    takings: Decimal = Decimal(0)

    def after(self, event: Event) -> "Tally":
        """The same with one more event of this SKU."""
        left = event.after(self.on_hand)
        return replace(
            self,
            on_hand=left,
            made=self.made + event.pads * (event.kind == "made"),
            sold=self.sold + event.pads * (event.kind == "sold"),
            returned=self.returned + event.pads * (event.kind == "returned"),
            corrected=self.corrected + (left - self.on_hand) * (event.kind == "counted"),
            unpriced=self.unpriced + event.pads * (event.kind == "sold" and event.each is None),
            takings=self.takings + event.takings,
        )


def tallies(events: Iterable[Event]) -> tuple[Tally, ...]:
    """Every SKU of the ledger, in the order of the alphabet."""
    found: dict[str, Tally] = {}
    for event in events:
        found[event.sku] = found.get(event.sku, Tally(event.sku)).after(event)
    return tuple(found[sku] for sku in sorted(found))


def on_hand(events: Iterable[Event]) -> dict[str, int]:
    """How many pads there are of each SKU."""
    return {tally.sku: tally.on_hand for tally in tallies(events)}


def shortfalls(events: Sequence[Event]) -> Iterator[Problem]:
    """Each line that sells what was not there: one that falls below nothing, and any further below."""
    there: dict[str, int] = {}
    for event in events:
        before = there.get(event.sku, 0)
        there[event.sku] = left = event.after(before)
        if left < min(before, 0):
            message = f"{event.sku}: {before} on hand before this line, {event.pads} sold, which leaves {left}."
            mend = f"Enter above it what was made, or a count: {event.date},counted,{event.sku},{event.pads},,"
            yield Problem(event.spot, message, mend)


def late_counts(events: Sequence[Event]) -> Iterator[Problem]:
    """Counts that stand below a line of a later day: lines count in the order of the file, and a count has the
    last word on all above it, so one that a merge put too low hides what was entered meanwhile.
    """
    last: dict[str, Event] = {}
    for event in events:
        other = last.get(event.sku)
        if event.kind == "counted" and other is not None and other.date > event.date:
            message = f"The count of {event.sku} on {event.date} stands below line {other.line}, of {other.date}."
            mend = f"If it was counted before that, move it above line {other.line}: lines hold in their order."
            yield Problem(event.spot, message, mend)
        if other is None or event.date >= other.date:
            last[event.sku] = event
