"""Numbers and truth values as YAML 1.2 writes them (its core schema, section 10.3.2), from text.

Only text without quotes is ever asked about here. 012 is twelve, 12:30 and 1_000 are no numbers, and
yes, no, on and off are words.
"""

import re
from math import isfinite

_INTEGER = re.compile(r"[-+]?[0-9]{1,18}|0o[0-7]{1,20}|0x[0-9a-fA-F]{1,15}")
_NUMBER = re.compile(r"[-+]?(?:\.[0-9]{1,30}|[0-9]{1,30}(?:\.[0-9]{0,30})?)(?:[eE][-+]?[0-9]{1,3})?")


def integer(text: str) -> int | None:
    """The whole number that a text is, or None.

    >>> integer("012"), integer("0o14"), integer("0xC"), integer("12:30"), integer("1_000")
    (12, 12, 12, None, None)
    """
    if not _INTEGER.fullmatch(text):
        return None
    base = {"0o": 8, "0x": 16}.get(text[:2], 10)
    return int(text, base)


def number(text: str) -> float | None:
    """The finite number that a text is, or None.

    >>> number(".5"), number("1e3"), number("-45"), number(".nan")
    (0.5, 1000.0, -45.0, None)
    """
    whole = integer(text)
    if whole is not None:
        return float(whole)
    if not _NUMBER.fullmatch(text):
        return None
    value = float(text)
    return value if isfinite(value) else None


def boolean(text: str) -> bool | None:
    """True or False for the words true and false, None for any other.

    >>> boolean("true"), boolean("false"), boolean("yes")
    (True, False, None)
    """
    return {"true": True, "false": False}.get(text)
