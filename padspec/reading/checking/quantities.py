"""What a text has to be where the schema names a `format`: length, share, grammage, colour, sheet, date.

The schema carries a pattern beside each format, for editors; here the same is told in words that help.
Every function takes the text and raises UnitError where it is not that.
"""

import re
from collections.abc import Callable
from datetime import date

from padspec.base.errors import UnitError
from padspec.base.grammage import parse_grammage
from padspec.base.numbers import EPSILON
from padspec.base.paper import sheet_size
from padspec.base.units import is_share, parse_length, parse_share
from padspec.reading.checking.core_schema import number

#: A longer text is not looked at any closer: no quantity needs that much.
LONGEST = 60
#: Beyond 1 % it is not the printer's inaccuracy, but a dialogue that scales to fit (common practice).
MOST_STRETCH = 0.01
_WORD = re.compile(r"[A-Za-z][A-Za-z0-9_-]*")
_HEX = re.compile(r"#(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})")
_HEX_WITH_ALPHA = re.compile(r"#(?:[0-9A-Fa-f]{4}|[0-9A-Fa-f]{8})")
_BARE_HEX = re.compile(r"[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6}")
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_COLOUR_MEND = 'Write "#7a3b58" in quotes, a CSS name such as teal, or a name from the palette.'


def length(text: str) -> None:
    """A length with its unit; how short and long it may be is for the schema's bounds to say."""
    parse_length(text)


def share(text: str) -> None:
    """A percentage from 0 % to 100 %."""
    value = parse_share(text)
    if value < 0 or value > 1 + EPSILON:
        raise UnitError(f"{text} is not between 0 % and 100 %.", "Write a percentage from 0 % to 100 %.")


def scale(text: str) -> None:
    """What a printer makes of a length: within 1 % of it, or nothing is to be corrected."""
    if abs(parse_share(text) - 1) > MOST_STRETCH + EPSILON:
        raise UnitError(
            f"{text} is more than 1 % off.",
            "Switch the print dialogue to actual size or no scaling and measure again; then write 99 % to 101 %.",
        )


def cover(text: str) -> None:
    """Ink on the paper, all four inks added up: from nothing to four solids."""
    if not 0 <= parse_share(text) <= 4:
        raise UnitError(f"{text} is not between 0 % and 400 %.", "Write a percentage such as 260 %.")


def length_or_share(text: str) -> None:
    """A length or a percentage."""
    (share if is_share(text) else length)(text)


def limit(text: str) -> None:
    """A limit of a check: a number, a length or a percentage."""
    if number(text) is None:
        (cover if is_share(text) else length)(text)


def colour(text: str) -> None:
    """A hex value or a word; whether the word is known is for the palette to tell."""
    if _WORD.fullmatch(text) or _HEX.fullmatch(text):
        return
    if _HEX_WITH_ALPHA.fullmatch(text):
        opaque = text[:4] if len(text) == 5 else text[:7]
        raise UnitError(f"{text} is a colour with transparency; paper knows none.", f'Write "{opaque}".')
    if _BARE_HEX.fullmatch(text):
        raise UnitError(f"{text} is not a colour.", f'Did you mean "#{text}"?')
    raise UnitError(f"{text} is not a colour.", _COLOUR_MEND)


def sheet_name(text: str) -> None:
    """The name of a sheet size."""
    try:
        sheet_size(text)
    except KeyError as error:
        mend = str(error.args[0])
        raise UnitError(f"{text} is not a sheet size by name.", f"{mend} Or write width and height.") from None


def calendar_date(text: str) -> None:
    """A day that the calendar has, as YYYY-MM-DD."""
    mend = "Write year, month and day, such as 2025-10-31."
    if not _DATE.fullmatch(text):
        raise UnitError(f"{text} is not a date.", mend)
    try:
        date.fromisoformat(text)
    except ValueError:
        raise UnitError(f"{text} is not a day of the calendar.", mend) from None


def grammage(text: str) -> None:
    """A weight of paper, in grams a square metre or in pounds with the grade."""
    parse_grammage(text)


FORMATS: dict[str, Callable[[str], None]] = {
    "length": length,
    "share": share,
    "length-or-share": length_or_share,
    "limit": limit,
    "colour": colour,
    "sheet-name": sheet_name,
    "date": calendar_date,
    "scale": scale,
    "cover": cover,
    "grammage": grammage,
}


def fault(form: str, text: str) -> UnitError | None:
    """What is wrong with a text that should be of a format; None where it is right.

    >>> fault("length", "8 mm") is None
    True
    """
    if len(text) > LONGEST or "\n" in text:
        return UnitError("This text is too long for a value like that.", "Write a short value.")
    try:
        FORMATS[form](text)
    except UnitError as error:
        return error
    return None


def outside(text: str, bound: str, is_least: bool) -> bool:
    """Whether a length goes past a bound that is a length too; what is no length at all does not.

    A percentage is as long as what it is taken of, but 0 % of anything is nothing.

    >>> outside("0.5 mm", "1 mm", is_least=True), outside("32 %", "1 mm", is_least=True)
    (True, False)
    """
    if is_share(text) and fault("share", text) is None:
        past = parse_length(bound) if is_least and parse_share(text) == 0 else 0.0
        return past > EPSILON
    if fault("length", text) is not None:
        return False
    past = parse_length(bound) - parse_length(text)
    return (past if is_least else -past) > EPSILON
