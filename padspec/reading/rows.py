"""Tables of a maker's: a CSV file to rows that know their line (RFC 4180, and what spreadsheets make of it).

UTF-8 with or without a byte order mark, UTF-16 with one; parted by commas, semicolons or tabs, as the head line
shows; lines that end in LF, CRLF or CR. Cells lose the white space around them, and their letters are composed
(NFC), so that a name looks the same however it was typed. Lines with nothing in them do not count.
"""

import csv
import re
from collections.abc import Iterator
from dataclasses import dataclass
from io import StringIO
from itertools import islice
from unicodedata import normalize

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.workspace import content_digest

MOST_COLUMNS = 200
#: A cell may hold so many characters; the lettering of a leaf takes far fewer.
MOST_CHARACTERS = 2000
#: So many problems are told one by one.
MOST_TOLD = 20
_DELIMITERS = ",;\t"
_MARKS = {b"\xff\xfe": "utf-16", b"\xfe\xff": "utf-16", b"\xef\xbb\xbf": "utf-8-sig"}
# What some spreadsheets write above the head line, to say how the cells are parted.
_SEPARATOR_LINE = re.compile(r"sep=([,;\t])\r?\n?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its number among the rows (1 for the first under the head), the line it begins on, its cells."""

    number: int
    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table that can be read: every row has a cell for each column. `rows` is how many there are, `digest` that
    of the bytes that were read: the file may be another by the time it is asked for.
    """

    file: str
    digest: str
    columns: tuple[str, ...]
    rows: int
    _text: str
    delimiter: str

    def __iter__(self) -> Iterator[Row]:
        """The rows, head to foot, read as they are asked for."""
        records = _records(self._text, self.delimiter)
        next(records)
        width = len(self.columns)
        for number, (line, cells) in enumerate(records, start=1):
            yield Row(number, line, tuple(tidied(cell) for cell in cells[:width]))

    def values(self, row: Row) -> dict[str, str]:
        """The cells of a row by their columns."""
        return dict(zip(self.columns, row.cells, strict=True))

    def place(self, row: Row) -> Place:
        """Where a row stands."""
        return Place(self.file, row.line, 1)


class _BrokenError(Exception):
    """The record that begins on this line cannot be parted into cells, and none behind it."""

    def __init__(self, line: int, told: str) -> None:
        super().__init__(told)
        self.line, self.told = line, told


def read_table(data: bytes, file: str, may_be_empty: bool = False) -> Table:
    """The table that a file holds. Raises ProblemsError with all that is wrong in it, the first twenty in full.

    `may_be_empty`: a head line with no rows under it is a table too.
    """
    text = _decoded(data, file)
    marked = _SEPARATOR_LINE.match(text)
    delimiter = marked[1] if marked else _delimiter(text)
    # The line stays as an empty one, so that lines are counted as an editor does.
    text = "\n" + text[marked.end() :] if marked else text
    records = _records(text, delimiter)
    head = _head(records, file)
    problems = _faults(records, head, file, may_be_empty)
    first = list(islice(problems, MOST_TOLD))
    more = sum(1 for _ in problems)
    if more:
        first.append(Problem(Place(file, 0, 0), f"And {more} more lines of this table are at fault."))
    if first:
        raise ProblemsError(*first)
    rows = sum(1 for _ in _records(text, delimiter)) - 1
    return Table(file, content_digest(data), head, rows, text, delimiter)


def tidied(cell: str) -> str:
    """A cell without the white space around it, its letters composed.

    >>> tidied(" Zoe\\u0308 ")
    'Zoë'
    """
    return normalize("NFC", cell.strip())


def _decoded(data: bytes, file: str) -> str:
    encoding = next((name for mark, name in _MARKS.items() if data.startswith(mark)), "utf-8")
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        message = f"Byte {data[error.start]:#04x} on this line is not UTF-8."
        raise ProblemsError(Problem(Place(file, line, 1), message, "Save the table as CSV in UTF-8.")) from None
    if "\0" in text:
        line = text.count("\n", 0, text.index("\0")) + 1
        message = "A character of no meaning (NUL) stands on this line."
        raise ProblemsError(Problem(Place(file, line, 1), message, "Save the table as CSV in UTF-8."))
    return text


def _delimiter(text: str) -> str:
    """What parts the cells of the head line; a comma where it is one cell."""
    head = re.sub(r'"[^"]*"', "", text.lstrip("\r\n").splitlines()[0] if text.strip() else "")
    return max(_DELIMITERS, key=head.count)


def _records(text: str, delimiter: str) -> Iterator[tuple[int, list[str]]]:
    """Every record that is not empty, with the line it begins on; raises _BrokenError."""
    reader = csv.reader(StringIO(text, newline=""), delimiter=delimiter, strict=True)
    line = 1
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                yield line, cells
            line = reader.line_num + 1
    except csv.Error as error:
        raise _BrokenError(line, str(error)) from None


def _head(records: Iterator[tuple[int, list[str]]], file: str) -> tuple[str, ...]:
    try:
        line, cells = next(records)
    except StopIteration:
        raise ProblemsError(Problem(Place(file, 0, 0), "The table is empty.", _HEAD_LINE)) from None
    except _BrokenError as broken:
        raise ProblemsError(_unreadable(broken, file)) from None
    names = [tidied(cell) for cell in cells]
    while not names[-1]:
        names.pop()
    place = Place(file, line, 1)
    if len(names) > MOST_COLUMNS:
        message = f"The table has {len(names)} columns; at most {MOST_COLUMNS} are read."
        raise ProblemsError(Problem(place, message, "Save it with the columns that are wanted."))
    if "" in names:
        message = f"Column {names.index('') + 1} has no name on the head line."
        raise ProblemsError(Problem(place, message, "Give it one, or take the column out."))
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        message = f"{names.count(twice)} columns are called {twice}."
        raise ProblemsError(Problem(place, message, "Give each a name of its own."))
    return tuple(names)


_HEAD_LINE = "Write a head line with the names of the columns, and a row below it."


def _faults(
    records: Iterator[tuple[int, list[str]]], head: tuple[str, ...], file: str, may_be_empty: bool
) -> Iterator[Problem]:
    """What is wrong below the head line."""
    rows = 0
    try:
        for line, cells in records:
            rows += 1
            yield from _row_faults(cells, head, Place(file, line, 1))
    except _BrokenError as broken:
        yield _unreadable(broken, file)
        return
    if not rows and not may_be_empty:
        yield Problem(Place(file, 0, 0), "The table has no rows under its head line.", "Write at least 1.")


def _row_faults(cells: list[str], head: tuple[str, ...], place: Place) -> Iterator[Problem]:
    # Spreadsheets write empty cells behind the last column that was ever used.
    surplus = any(cell.strip() for cell in cells[len(head) :])
    if len(cells) < len(head) or surplus:
        number = f"{len(cells)} cell{'s' * (len(cells) != 1)}"
        message = f"This row has {number}, and the head line names {len(head)} columns."
        mend = "Write a cell for every column, empty ones too."
        if surplus:
            mend = "A cell that holds a comma, or whatever parts the cells, has to stand in quotes."
        yield Problem(place, message, mend)
    for name, cell in zip(head, cells, strict=False):
        if len(cell) > MOST_CHARACTERS:
            message = f"The cell of {name} has {len(cell)} characters; at most {MOST_CHARACTERS} are read."
            yield Problem(place, message, "Shorten it.")


def _unreadable(broken: _BrokenError, file: str) -> Problem:
    """What the reader has against a line: a quote that never ends, or text behind one that does."""
    if "unexpected end" in broken.told:
        message, mend = "A quotation mark that opens from here on is never closed.", "Close it, or double it."
    elif "field larger" in broken.told:
        message, mend = "A cell from here on has no end in sight.", "Look for a quotation mark that is not closed."
    else:
        message = "Text stands behind the closing quotation mark of a cell."
        mend = 'Write a quotation mark inside a cell as two: "".'
    return Problem(Place(file, broken.line, 1), message, mend)
