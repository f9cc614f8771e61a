"""The cells of a line as values: a day, a number of pads, a price, a note; what does not fit, with its range."""

import re
from datetime import date
from decimal import Decimal
from unicodedata import category

from padspec.base.nearest import did_you_mean
from padspec.base.spreadsheet import safe_cell
from padspec.base.units import mend_of_comma
from padspec.reading.rows import tidied
from padspec.stock.events import KINDS, MOST_LETTERS, MOST_PADS, Kind

FIRST_DAY, LAST_DAY = "2000-01-01", "2099-12-31"
MOST_MONEY = 1_000_000
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
_OTHER_DAY = re.compile(r"(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})", re.ASCII)
_WHOLE = re.compile(r"0*(\d{1,9})", re.ASCII)
_PRICE = re.compile(r"\d{1,9}(?:\.(\d{1,9}))?", re.ASCII)
_SKU = re.compile(r"\w[\w.-]{0,99}")
_GUARDED = re.compile(r"'+[=+\-@]")


class CellError(ValueError):
    """A cell that is not what its column holds; the second argument says how to mend it."""

    def __init__(self, message: str, mend: str) -> None:
        super().__init__(message)
        self.message, self.mend = message, mend


def day(text: str) -> str:
    """A day of the calendar, year-month-day; raises CellError, with the likely day where one can be told.

    >>> day("2026-06-06")
    '2026-06-06'
    """
    if not _DAY.fullmatch(text):
        raise CellError(f"{text or 'Nothing'} is not a day as this file has it.", _likely_day(text))
    try:
        date.fromisoformat(text)
    except ValueError:
        raise CellError(f"The calendar has no {text}.", "Months go from 01 to 12, days to 28 to 31.") from None
    if not FIRST_DAY <= text <= LAST_DAY:
        raise CellError(f"{text} is out of reach.", f"Days go from {FIRST_DAY} to {LAST_DAY}.")
    return text


def _likely_day(text: str) -> str:
    usual = "Write year-month-day, such as 2026-06-06."
    match = _OTHER_DAY.fullmatch(text)
    if match is None:
        return usual
    first, second, third = (int(part) for part in match.groups())
    ways = ((first, second, third),) if first > 31 else ((third, second, first), (third, first, second))
    meant = []
    for year, month, number in ways:
        try:
            meant.append(date(year + 2000 * (year < 100), month, number).isoformat())
        except ValueError:
            continue
    return f"Write {' or '.join(dict.fromkeys(meant))}: year-month-day." if meant else usual


def kind(text: str) -> Kind:
    """What happened; raises CellError."""
    found = next((one for one in KINDS if one == text.lower()), None)
    if found is None:
        raise CellError(f"{text or 'Nothing'} is no event.", did_you_mean(text, KINDS))
    return found


def sku(text: str) -> str:
    """A SKU; raises CellError."""
    if not _SKU.fullmatch(text):
        mend = "A SKU has 1 to 100 letters, digits, dots, hyphens and underscores, such as NG-MOTH."
        raise CellError(f"{text[:40] or 'Nothing'} is no SKU.", mend)
    return text


def pads(text: str, least: int) -> int:
    """A whole number of pads, however many noughts a spreadsheet put before it; raises CellError.

    >>> pads("12", 1), pads("01", 1)
    (12, 1)
    """
    match = _WHOLE.fullmatch(text)
    if match is None or not least <= int(match[1]) <= MOST_PADS:
        mend = f"Write a whole number from {least} to {MOST_PADS}, such as 12, with no sign and no unit."
        raise CellError(f"{text[:40] or 'Nothing'} is no number of pads.", mend)
    return int(match[1])


def price(text: str, currency: str, digits: int) -> Decimal | None:
    """The price of one pad, exact, in the coins of the currency; None for an empty cell. Raises CellError.

    >>> price("6.50", "CAD", 2), price("", "CAD", 2)
    (Decimal('6.50'), None)
    """
    if not text:
        return None
    match = _PRICE.fullmatch(text)
    if match is None or Decimal(text) > MOST_MONEY:
        usual = f"Write a number from 0 to {MOST_MONEY} without a sign for the currency, such as 6.50."
        raise CellError(f"{text[:40]} is no price.", mend_of_comma(text) or usual)
    if len((match[1] or "").rstrip("0")) > digits:
        step = Decimal(1).scaleb(-digits)
        low = Decimal(text).quantize(step, "ROUND_DOWN")
        mend = f"Enter some pads at {low:f} and the others at {low + step:f}, in 2 lines."
        raise CellError(f"{text} is no amount in coins of {currency}, which counts in {step:f}.", mend)
    return Decimal(text)


def note(text: str) -> str:
    """A place or a note, as it is kept: one line, composed, nothing round it; raises CellError."""
    tidy = tidied(text)
    if any(category(letter) in ("Cc", "Cs", "Zl", "Zp") for letter in tidy):
        raise CellError("The place has a line break or another sign that does not print.", "Write it in one line.")
    if len(tidy) > MOST_LETTERS:
        raise CellError(f"The place has {len(tidy)} characters.", f"Shorten it to at most {MOST_LETTERS}.")
    return tidy


def guarded(text: str) -> str:
    """A note as its cell, which no spreadsheet takes for a formula; `unguarded` gives the note back.

    >>> guarded("=1+1"), guarded("'=1+1"), guarded("Fair")
    ("'=1+1", "''=1+1", 'Fair')
    """
    return f"'{text}" if safe_cell(text.lstrip("'")) != text.lstrip("'") else text


def unguarded(cell: str) -> str:
    """What a note was before it was guarded.

    >>> unguarded("'=1+1"), unguarded("'Tis the fair")
    ('=1+1', "'Tis the fair")
    """
    return cell[1:] if _GUARDED.match(cell) else cell
