"""Tables for spreadsheets: CSV as RFC 4180 has it, whose cells no program takes for formulas."""

import csv
from collections.abc import Iterable, Sequence
from io import StringIO

#: What a cell must not begin with (OWASP, CSV Injection; from memory): a program would work it out.
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def safe_cell(text: str) -> str:
    """A text as a cell that is shown as it is: an apostrophe goes before what would be a formula.

    >>> safe_cell("=1+1"), safe_cell("Ada"), safe_cell(" -3")
    ("'=1+1", 'Ada', ' -3')
    """
    return f"'{text}" if text.startswith(_FORMULA) else text


def csv_text(rows: Iterable[Sequence[str | int | float]]) -> str:
    """Rows as CSV with CRLF; numbers stay numbers."""
    file = StringIO(newline="")
    writer = csv.writer(file)
    for row in rows:
        writer.writerow([safe_cell(cell) if isinstance(cell, str) else cell for cell in row])
    return file.getvalue()
