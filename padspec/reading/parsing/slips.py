"""Slips of the keyboard that YAML reads as something else: no space after a colon, a comma in a number.

`{width:90 mm}` is one long key without a value to YAML, `{width: 90,5 mm}` is 90 and a key called 5 mm. What
was meant is told at once and read on with, so that no fault follows from the first.
"""

import re
from dataclasses import dataclass, replace

from padspec.base.errors import Problem
from padspec.base.place import Place
from padspec.base.units import mend_of_comma
from padspec.reading.parsing.source import clipped
from padspec.reading.tree import Entry, Scalar

#: A word, a colon and something close behind it that does not make the whole an address on the web.
_WITHOUT_SPACE = re.compile(r"([A-Za-z][A-Za-z0-9_-]*):((?!//)\S.*)")
_WHOLE_PART = re.compile(r"[-+−]?[0-9]{1,6}")
_REST_OF_NUMBER = re.compile(r"[0-9]{1,9} *([A-Za-z]{1,20}|[%\"″]?)")


@dataclass(frozen=True, slots=True)
class Meant:
    """A key and the value that were likely meant; `problem` says what is wrong with what was written."""

    key: str
    key_place: Place
    value: Scalar
    problem: Problem


def without_space(text: str, place: Place) -> Meant | None:
    """What a text such as `width:90 mm` was meant to be; of a text over several lines, only the first counts.

    >>> found = without_space("width:90 mm", Place("f", 2, 8, 11))
    >>> found and str(found.problem)
    'f:2:8: A space is missing after width: here. Write width: 90 mm with a space after the colon.'
    """
    match = _WITHOUT_SPACE.fullmatch(text[: place.length])
    if match is None:
        return None
    key, value = match.groups()
    behind = replace(place, column=place.column + len(key) + 1, length=max(place.length - len(key) - 1, 1))
    quoted = len(value) > 1 and value[0] in "'\"" and value[-1] == value[0]
    mend = f"Write {clipped(key)}: {clipped(value)} with a space after the colon."
    told = Problem(place, f"A space is missing after {clipped(key)}: here.", mend)
    scalar = Scalar(value[1:-1] if quoted else value, behind, plain=not quoted)
    return Meant(key, replace(place, length=len(key)), scalar, told)


def split_number(before: Entry | None, text: str, place: Place) -> Meant | None:
    """The number with a decimal comma that a value and the key right behind its comma were meant to be.

    >>> here = Entry("width", Place("f", 2, 8, 5), Scalar("90", Place("f", 2, 15, 2)))
    >>> found = split_number(here, "5 mm", Place("f", 2, 18, 4))
    >>> found and found.problem.mend
    'Decimals take a point: 90.5 mm.'
    """
    if before is None or not isinstance(before.value, Scalar) or not before.value.plain:
        return None
    whole, there = before.value.text, before.value.place
    rest = _REST_OF_NUMBER.fullmatch(text)
    joined = there.line == place.line and there.column + there.length + 1 == place.column
    if not (rest and joined and _WHOLE_PART.fullmatch(whole)):
        return None
    both = replace(there, length=there.length + 1 + place.length)
    quotes = "" if rest.group(1) else " A text with a comma goes in quotes."
    message = f"{clipped(before.key)}: the comma in {whole},{text} starts a new key in braces."
    told = Problem(both, message, mend_of_comma(f"{whole},{text}") + quotes)
    return Meant(before.key, before.key_place, Scalar(f"{whole}.{text}", both), told)
