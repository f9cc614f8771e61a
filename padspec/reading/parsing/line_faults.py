"""Faults of a whole line outside of braces: a space that is missing after a colon, or one too many in front.

A parser notices both late and tells them as something else: it takes `pad:x` for the start of a text that goes
on in the next line, and a line that is indented too deep for a part of the value above it.
"""

import re

from padspec.base.errors import Problem
from padspec.reading.parsing.slips import without_space
from padspec.reading.parsing.source import Source

#: What may stand in front of a line's first key: spaces, and the dashes of a list.
_FRONT = re.compile(r" *(?:- +)*")
_KEY = re.compile(r"[^\s:#][^:#]*:(?=\s|$)")
_OUT_OF_PLACE = ("while parsing a block mapping", "expected '<document start>'")
_COMMENT = re.compile(r"(?:^|\s)#.*")


def line_fault(told: str, source: Source, opened: int, at: int) -> Problem | None:
    """What is wrong with the line at `at` or the one above it; None where it is nothing of that kind.

    `told` is what the parser says and `opened` where the construct began that it could not finish.
    """
    if "could not find expected ':'" in told:
        return _without_space(source, opened)
    if "mapping values are not allowed here" in told:
        return _before_a_colon(source, at)
    if any(part in told for part in _OUT_OF_PLACE):
        above = _above(source, at)
        spaceless = _without_space(source, above) if above is not None else None
        return spaceless or (_too_deep(source, at) if "found '<block mapping start>'" in told else None)
    return None


def _before_a_colon(source: Source, at: int) -> Problem | None:
    """A colon that may not stand where it does, though it is the first of its line."""
    start = _content(source, at)
    if not _KEY.fullmatch(source.text[start : at + 1]):
        return _without_space(source, at)
    above = _above(source, at)
    if above is None:
        return None
    return _without_space(source, above) or _too_deep(source, at) or _no_key(source, above)


def _without_space(source: Source, index: int) -> Problem | None:
    start = _content(source, index)
    line = _COMMENT.sub("", source.text[start : source.line_span(index)[1]]).rstrip()
    found = without_space(line, source.place(start, start + len(line)))
    return found.problem if found else None


def _too_deep(source: Source, index: int) -> Problem | None:
    above = _above(source, index)
    if above is None:
        return None
    start, line_start = _content(source, index), source.line_span(index)[0]
    deeper = (start - line_start) - (_content(source, above) - source.line_span(above)[0])
    if deeper <= 0:
        return None
    key = _KEY.match(source.text, start)
    spaces = f"{deeper} space" + ("s" if deeper > 1 else "")
    message = f"This line is indented {spaces} deeper than the line above, which has its value already."
    return Problem(source.place(start, key.end() - 1 if key else 0), message, f"Take {spaces} out in front of it.")


def _no_key(source: Source, index: int) -> Problem | None:
    start, (line_start, end) = _content(source, index), source.line_span(index)
    line = source.text[start:end].rstrip()
    if ":" in line or "-" in source.text[line_start:start]:
        return None
    message = "This line is neither a key with its value nor an entry of a list."
    return Problem(
        source.place(start, start + len(line)), message, "Write key: value, with a space after the colon."
    )


def _above(source: Source, index: int) -> int | None:
    """The start of the nearest line above that holds more than a comment."""
    start = source.line_span(index)[0]
    while start > 0:
        start = source.line_span(start - 1)[0]
        if _COMMENT.sub("", source.text[start : source.line_span(start)[1]]).strip():
            return start
    return None


def _content(source: Source, index: int) -> int:
    """Where the first key of the line that holds this index starts."""
    start, end = source.line_span(index)
    match = _FRONT.match(source.text, start, end)
    return match.end() if match else start
