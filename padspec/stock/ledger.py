"""The ledger read: bytes in, events in their order out, or every fault with its line, column, range and mend.

What a crash, a merge or another program leaves behind is looked for before anything is believed: a last line that
has no end, the marks of a merge that was not finished, a head line that came in twice.
"""

import csv
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from io import StringIO
from itertools import islice
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.base.money import minor_digits, rounded
from padspec.base.place import Place
from padspec.reading.rows import MOST_TOLD, Row, Table, read_table
from padspec.stock import cells
from padspec.stock.events import COLUMNS, KINDS, LEDGER, PRICED, Event

_HEAD = ",".join(COLUMNS)
_MERGE_MARKS = ("<<<<<<<", "|||||||", ">>>>>>>")
_SIDE_MARK = "======="
_LINE_END = re.compile(r"\r\n|\r|\n")
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")


@dataclass(frozen=True, slots=True)
class Ledger:
    """Every event in the order of the file, and what parts its cells. `is_new`: there is no head line yet."""

    events: tuple[Event, ...] = ()
    delimiter: str = ","
    is_new: bool = True


def read_ledger(data: bytes, currency: str) -> Ledger:
    """The ledger that a file holds, an empty one for an empty file; prices are in the studio's currency.

    Raises ProblemsError with all that is wrong, the first twenty lines in full; CurrencyError for no currency.
    """
    if not data:
        return Ledger()
    torn = [*_foreign(data), *_merge_marks(data), *_torn(data)]
    if torn:
        raise ProblemsError(*torn)
    table = read_table(data, LEDGER, may_be_empty=True)
    if table.columns != COLUMNS:
        message = f"The head line names {', '.join(table.columns)[:80]}."
        raise ProblemsError(Problem(Place(LEDGER, 1, 1), message, f"It has to be {_HEAD}."))
    lines = tuple(_LINE_END.split(data.decode("utf-8-sig")))
    reader = _Lines(lines, table, currency, minor_digits(currency))
    events: list[Event] = []
    faults = (problem for row in table for problem in reader.take(row, events))
    told = list(islice(faults, MOST_TOLD))
    more = sum(1 for _ in faults)
    if more:
        told.append(Problem(Place(LEDGER, 0, 0), f"And {more} more faults."))
    if told:
        raise ProblemsError(*told)
    return Ledger(tuple(events), table.delimiter, is_new=False)


def _foreign(data: bytes) -> Iterator[Problem]:
    if data.startswith(_UTF_16):
        yield Problem(Place(LEDGER, 1, 1), "The ledger is in UTF-16.", "Save it as CSV in UTF-8.")


def _torn(data: bytes) -> Iterator[Problem]:
    """A last line with no line feed behind it may be half of one: it is neither read nor written on to."""
    if data.endswith(b"\n"):
        return
    line = data.count(b"\n") + 1
    half = data.rpartition(b"\n")[2].decode("utf-8", "replace")
    message = f"The last line has no end, so it may be torn: {half[-60:]!r} and no line feed."
    mend = "Complete it or take it out, and end it with a line feed (Enter, at the end of the line)."
    yield Problem(Place(LEDGER, line, 1, max(len(half), 1)), message, mend)


def _merge_marks(data: bytes) -> Iterator[Problem]:
    lines = data.decode("utf-8", "replace").split("\n")
    opened = any(line.startswith(_MERGE_MARKS) for line in lines)
    for number, line in enumerate(lines, start=1):
        if line.startswith(_MERGE_MARKS) or (opened and line.rstrip() == _SIDE_MARK):
            message = "A merge left its mark here and is not finished."
            mend = "Keep the lines of both sides and take out this one. In .gitattributes, "
            mend += f"{LEDGER} merge=union has git do so by itself."
            yield Problem(Place(LEDGER, number, 1, len(line.rstrip())), message, mend)


@dataclass(frozen=True, slots=True)
class _Lines:
    """What rows are read with: the lines they stand in, for the place of a cell, and the coins of the currency."""

    lines: tuple[str, ...]
    table: Table
    currency: str
    digits: int

    def take(self, row: Row, events: list[Event]) -> list[Problem]:
        """Add the event of a row to those before it, or give what is wrong with it."""
        if row.cells == COLUMNS:
            message = "The head line stands here again, as a merge may leave it."
            return [Problem(self.table.place(row), message, "Take this line out.")]
        cell = self.table.values(row)
        values: dict[str, Any] = {}
        problems = []
        for column, read in self._readers(cell).items():
            try:
                values[column] = read(cell[column])
            except cells.CellError as error:
                problems.append(Problem(self._spot(row, column), f"{column}: {error.message}", error.mend))
        if not problems:
            events.append(event_of(values, row.line))
        return problems

    def _readers(self, cell: dict[str, str]) -> dict[str, Callable[[str], object]]:
        event = cell["event"].lower()
        return {
            "date": cells.day,
            "event": cells.kind,
            "sku": cells.sku,
            "pads": lambda text: cells.pads(text, least_pads(event)),
            "each": lambda text: price_of(event, text, self.currency, self.digits),
            "place": lambda text: cells.note(cells.unguarded(text)),
        }

    def _spot(self, row: Row, column: str) -> Place:
        """Where a cell stands; the head of its line where quotes make that hard to say."""
        line = self.lines[row.line - 1] if row.line <= len(self.lines) else ""
        if '"' in line:
            return self.table.place(row)
        before = line.split(self.table.delimiter)
        at = COLUMNS.index(column)
        start = sum(len(cell) + 1 for cell in before[:at])
        return Place(LEDGER, row.line, start + 1, max(len(before[at]) if at < len(before) else 1, 1))


def event_of(values: dict[str, Any], line: int = 0) -> Event:
    """An event of the values of its columns."""
    return Event(
        values["date"],
        values["event"],
        values["sku"],
        values["pads"],
        values["each"],
        values["place"],
        line,
    )


def least_pads(event: str) -> int:
    """A count may find none; nothing else is about no pads."""
    return 0 if event == "counted" else 1


def price_of(event: str, text: str, currency: str, digits: int) -> Decimal | None:
    """The price on a line, which has one only where pads change hands; raises CellError."""
    if text and event in KINDS and event not in PRICED:
        raise cells.CellError(
            f"{text[:40]} is a price, and nothing is paid where pads are {event}.", "Leave it out."
        )
    return cells.price(text, currency, digits)


def record(event: Event, delimiter: str, digits: int) -> str:
    """An event as one line of the file, with its line feed."""
    each = "" if event.each is None else f"{rounded(event.each, digits):f}"
    file = StringIO(newline="")
    row = (event.date, event.kind, event.sku, event.pads, each, cells.guarded(event.place))
    csv.writer(file, delimiter=delimiter, lineterminator="\n").writerow(row)
    return file.getvalue()


def head(delimiter: str) -> str:
    """The head line of a ledger."""
    return f"{delimiter.join(COLUMNS)}\n"
