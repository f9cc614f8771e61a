"""Sheet sizes by name, upright, in millimetres.

ISO 216:2007 A and B (each next size is the former halved, whole millimetres, rounded down); JIS P 0138 B;
ANSI/ASME Y14.1 letter and tabloid (sizes A and B); legal and half-letter are common practice.
"""

import re

from padspec.base.geometry import Size
from padspec.base.nearest import did_you_mean

_FIRST = {"A": (841, 1189), "B": (1000, 1414), "JIS B": (1030, 1456)}
_INCHES = {
    "letter": (8.5, 11.0),
    "legal": (8.5, 14.0),
    "tabloid": (11.0, 17.0),
    "ledger": (11.0, 17.0),
    "half-letter": (5.5, 8.5),
}
_SERIES = re.compile(r"(a|b|jis ?b) ?(10|\d)")


def _halved(first: tuple[int, int], times: int) -> Size:
    width, height = first
    for _ in range(times):
        width, height = height // 2, width
    return Size(float(width), float(height))


def sheet_size(name: str) -> tuple[str, Size]:
    """The tidy name and the size of a sheet; raises KeyError with the mend for a name that is not known.

    >>> sheet_size("a4")
    ('A4', Size(width=210.0, height=297.0))
    >>> sheet_size("Letter")[1]
    Size(width=215.9, height=279.4)
    """
    word = " ".join(name.lower().replace("_", "-").split())
    if match := _SERIES.fullmatch(word):
        series = match.group(1).upper().replace("JISB", "JIS B")
        return f"{series}{match.group(2)}", _halved(_FIRST[series], int(match.group(2)))
    if word in _INCHES:
        width, height = _INCHES[word]
        return word, Size(round(width * 25.4, 9), round(height * 25.4, 9))
    raise KeyError(did_you_mean(name, sheet_names()))


def sheet_names() -> tuple[str, ...]:
    """Every size known, as written in a spec."""
    return (*(f"{series}{n}" for series in _FIRST for n in range(11)), *_INCHES)
