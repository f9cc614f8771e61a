"""What is on hand, and what was just entered, as lines for a terminal and as data."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Any

from padspec.base.errors import Problem
from padspec.base.money import amount_text, minor_digits, rounded
from padspec.cli.say import counted, table
from padspec.report import problem_data
from padspec.stock.events import LEDGER, Event
from padspec.stock.on_hand import Tally

_MINUS = "−"


def stock_lines(found: Sequence[Tally], currency: str) -> Iterator[str]:
    """Every pad of the ledger, a line each, and all in all."""
    if not found:
        yield f"{LEDGER} has no line yet. The first: padspec stock made SKU=NUMBER"
        return
    head = ("sku", "on hand", "made", "sold", "returned", "corrected", f"takings {currency}")
    rows = [_row(tally.sku, tally, currency) for tally in found]
    if len(found) > 1:
        rows.append(_row("in all", _sum(found), currency))
    yield table(*_numbers_right(head, rows))
    unpriced = [(tally.unpriced, tally.sku) for tally in found if tally.unpriced]
    if unpriced:
        told = ", ".join(f"{number} × {sku}" for number, sku in unpriced)
        yield f"Sold with no price, so not in the takings: {told}."


def _row(name: str, tally: Tally, currency: str) -> tuple[str, ...]:
    numbers = (tally.on_hand, tally.made, tally.sold, tally.returned)
    corrected = _signed(tally.corrected) if tally.corrected else "0"
    takings = f"{rounded(tally.takings, minor_digits(currency)):f}".replace("-", _MINUS)
    return (name, *(str(number).replace("-", _MINUS) for number in numbers), corrected, takings)


def _signed(number: int) -> str:
    return f"+{number}" if number > 0 else f"{_MINUS}{-number}"


def _sum(found: Sequence[Tally]) -> Tally:
    return Tally(
        sku="",
        on_hand=sum(tally.on_hand for tally in found),
        made=sum(tally.made for tally in found),
        sold=sum(tally.sold for tally in found),
        returned=sum(tally.returned for tally in found),
        corrected=sum(tally.corrected for tally in found),
        unpriced=sum(tally.unpriced for tally in found),
        takings=sum((tally.takings for tally in found), Decimal(0)),
    )


def _numbers_right(
    head: tuple[str, ...], rows: Sequence[tuple[str, ...]]
) -> tuple[tuple[str, ...], list[tuple[str, ...]]]:
    """Head and rows with every column but the first set to the right, so that digits stand under digits."""
    return right_set(head, rows, tuple(range(1, len(head))))


def right_set(
    head: tuple[str, ...], rows: Sequence[tuple[str, ...]], columns: tuple[int, ...]
) -> tuple[tuple[str, ...], list[tuple[str, ...]]]:
    """Head and rows with some columns set to the right, for `say.table`."""
    widths = [max(len(row[at]) for row in (head, *rows)) for at in range(len(head))]

    def put(row: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(cell.rjust(widths[at]) if at in columns else cell for at, cell in enumerate(row))

    return put(head), [put(row) for row in rows]


def entered_lines(entered: Sequence[Event], after: Sequence[Tally], currency: str) -> Iterator[str]:
    """What was entered, and what is on hand now."""
    first = entered[0]
    place = f", {first.place}" if first.place else ""
    yield f"Entered {counted(len(entered), 'line')} in {LEDGER}, {first.date}{place}:"
    there = {tally.sku: tally.on_hand for tally in after}
    head = (first.kind, "pads", "on hand now")
    rows = [(event.sku, str(event.pads), str(there[event.sku]).replace("-", _MINUS)) for event in entered]
    yield table(*_numbers_right(head, rows))
    takings = sum((event.takings for event in entered), Decimal(0))
    if takings:
        word = "Takings" if takings > 0 else "Paid back"
        yield f"{word} {amount_text(abs(takings), currency)}."


def stock_data(
    found: Sequence[Tally], currency: str, faults: Sequence[Problem], doubts: Sequence[Problem]
) -> dict[str, Any]:
    """Every pad as data; money is text in the coins of the currency."""
    whole = _sum(found)
    return {
        "ledger": LEDGER,
        "currency": currency,
        "pads": [tally_data(tally, currency) for tally in found],
        "in_all": {key: value for key, value in tally_data(whole, currency).items() if key != "sku"},
        "sold_more_than_there_was": [problem_data(problem) for problem in faults],
        "counts_below_later_days": [problem_data(problem) for problem in doubts],
    }


def tally_data(tally: Tally, currency: str) -> dict[str, Any]:
    """One pad as data."""
    return {
        "sku": tally.sku,
        "on_hand": tally.on_hand,
        "made": tally.made,
        "sold": tally.sold,
        "returned": tally.returned,
        "corrected": tally.corrected,
        "sold_without_price": tally.unpriced,
        "takings": f"{rounded(tally.takings, minor_digits(currency)):f}",
    }


def entered_data(entered: Sequence[Event], after: Sequence[Tally], currency: str) -> dict[str, Any]:
    """What was entered as data, with what is on hand now."""
    digits = minor_digits(currency)
    skus = {event.sku for event in entered}
    return {
        "ledger": LEDGER,
        "currency": currency,
        "entered": [
            {
                "line": event.line,
                "date": event.date,
                "event": event.kind,
                "sku": event.sku,
                "pads": event.pads,
                "each": None if event.each is None else f"{rounded(event.each, digits):f}",
                "place": event.place,
            }
            for event in entered
        ],
        "pads": [tally_data(tally, currency) for tally in after if tally.sku in skus],
    }
