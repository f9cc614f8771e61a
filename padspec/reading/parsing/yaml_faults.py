"""What a YAML parser says of a broken file, told in plain words with the place that has to be mended."""

import re

import yaml

from padspec.base.errors import Problem
from padspec.base.place import Place
from padspec.reading.parsing.line_faults import line_fault
from padspec.reading.parsing.source import Source

_TAB = "A tab stands here; YAML is indented and spaced with spaces only."
_TAB_MEND = "Replace it with spaces; inside a text in double quotes a tab is written \\t."
_BARE_HEX = re.compile(r"[:,\[{-][ ]+(#(?:[0-9A-Fa-f]{6}|[0-9A-Fa-f]{3})\b)")
_QUOTES = "Put the text in quotes."

#: A part of what the parser says; whether the place is where the construct opened; message; mend.
_WORDS: tuple[tuple[str, bool, str, str], ...] = (
    (
        "mapping values are not allowed here",
        False,
        "A second colon makes this line unclear.",
        "Put the text in quotes if the colon belongs to it, else start a new line.",
    ),
    (
        "could not find expected ':'",
        True,
        "This line is neither a key with its value nor an entry of a list.",
        "Write key: value, with a space after the colon.",
    ),
    (
        "while scanning a quoted scalar",
        True,
        "The quotes that open here are never closed.",
        "Close them at the end of the text.",
    ),
    (
        "unknown escape character",
        False,
        "A backslash in double quotes starts a special sign, and this one is not known.",
        "Use single quotes, or write the backslash twice.",
    ),
    (
        "hexadecimal numbers",
        False,
        "A backslash in double quotes starts a special sign, and this one lacks digits.",
        "Use single quotes, or write the backslash twice.",
    ),
    (
        "while parsing a flow mapping",
        False,
        "A comma or the closing } of the mapping is missing before this.",
        "Write {key: value, key: value}; put texts with , : { } [ ] # in quotes.",
    ),
    (
        "while parsing a flow sequence",
        False,
        "A comma or the closing ] of the list is missing before this.",
        "Write [one, two]; put texts with , : { } [ ] # in quotes.",
    ),
    (
        "while parsing a block mapping",
        False,
        "This line does not belong to the keys above it, or its indentation differs from theirs.",
        "Indent the keys of one mapping by the same number of spaces.",
    ),
    (
        "while parsing a block collection",
        False,
        "This line does not belong to the list above it.",
        "Start each entry of a list with - at the same indentation.",
    ),
    (
        "sequence entries are not allowed here",
        False,
        "An entry of a list (-) cannot start here.",
        "Put the list on lines of its own, or the text in quotes if the - belongs to it.",
    ),
    ("mapping keys are not allowed here", False, "A question mark starts a key here.", _QUOTES),
    ("while scanning an alias", True, "A text that starts with * has to be quoted.", _QUOTES),
    ("while scanning an anchor", True, "A text that starts with & has to be quoted.", _QUOTES),
    ("while scanning a tag", True, "A text that starts with ! has to be quoted.", _QUOTES),
    (
        "undefined tag handle",
        True,
        "An explicit tag stands here; padspec reads none.",
        "Take it out, or put the text in quotes if the ! belongs to it.",
    ),
    (
        "while scanning a directive",
        True,
        "A line that starts with % is an instruction to YAML, and this one is not known.",
        _QUOTES,
    ),
    (
        "while scanning a block scalar",
        True,
        "The | or > that opens a text over several lines is followed by something else.",
        "Put the text on the next lines, indented.",
    ),
    (
        "leading empty lines contain more spaces",
        False,
        "An empty line at the start of this text has more spaces than its first line.",
        "Take the spaces out of the empty line.",
    ),
    ("expected the node content", False, "A value is missing before this.", _QUOTES),
    (
        "expected '<document start>'",
        False,
        "This does not belong to what stands before it.",
        "Write every setting as key: value, all at the same indentation.",
    ),
)
_UNSTARTABLE = re.compile(r"found character '(.+)' that cannot start any token")


def stray_tab(source: Source, quoted: list[tuple[int, int]]) -> Problem | None:
    """The first tab outside of quotes and comments; parsers disagree about those, so they are refused."""
    spans = iter(sorted(quoted))
    start, end = next(spans, (len(source.text), 0))
    index = source.text.find("\t")
    behind = 0
    while index >= 0:
        while end <= index and start < len(source.text):
            behind = end
            start, end = next(spans, (len(source.text), 0))
        if start <= index:
            index = source.text.find("\t", end)
            continue
        line_start, line_end = source.line_span(index)
        if not re.search(r"(?:^|[ \t])#", source.text[max(line_start, behind) : index]):
            return Problem(source.place(index), _TAB, _TAB_MEND)
        index = source.text.find("\t", line_end)
    return None


def syntax_problem(error: yaml.MarkedYAMLError, source: Source) -> Problem:
    """One problem for the error that ended the parsing."""
    mark = error.problem_mark or error.context_mark
    at = min(mark.index if mark else 0, len(source.text))
    opened = min(error.context_mark.index if error.context_mark else at, at)
    return (
        _tab_before(source, at)
        or _bare_hex(source, opened, at)
        or line_fault(f"{error.context or ''}; {error.problem or ''}", source, opened, at)
        or _in_plain_words(f"{error.context or ''}; {error.problem or ''}", source, opened, at)
    )


def _tab_before(source: Source, at: int) -> Problem | None:
    line_start, line_end = source.line_span(at)
    line = source.text[line_start:line_end]
    indent = line[: len(line) - len(line.lstrip(" \t"))]
    index = at if source.text[at : at + 1] == "\t" else line_start + indent.find("\t")
    if source.text[index : index + 1] == "\t" and (index == at or "\t" in indent):
        return Problem(source.place(index), _TAB, _TAB_MEND)
    return None


def _bare_hex(source: Source, opened: int, at: int) -> Problem | None:
    match = _BARE_HEX.search(source.text, max(source.line_span(opened)[0], at - 4000), source.line_span(at)[1])
    if match is None:
        return None
    place = source.place(match.start(1), match.end(1))
    return comment_colour(match.group(1), place)


def comment_colour(colour: str, place: Place) -> Problem:
    """The problem of a colour without quotes, which YAML takes for a comment."""
    message = f"Without quotes, {colour} is a comment to YAML, so that nothing is left of the value."
    return Problem(place, message, f'Put the colour in quotes: "{colour}".')


def _in_plain_words(told: str, source: Source, opened: int, at: int) -> Problem:
    match = _UNSTARTABLE.search(told)
    if match:
        return Problem(source.place(at), f"A text that starts with {match.group(1)} has to be quoted.", _QUOTES)
    for part, at_opening, message, mend in _WORDS:
        if part in told:
            return Problem(source.place(opened if at_opening else at), message, mend)
    return Problem(source.place(at), f"This is not YAML that can be read: {told.strip('; ')}.", _QUOTES)
