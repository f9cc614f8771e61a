"""Bytes to text, and text to places: what has to hold before YAML is looked at at all.

Lines end with LF, CR LF or CR, as editors count them. The rarer line ends that Unicode knows (U+0085,
U+2028, U+2029) are refused with the control characters, since YAML and editors disagree about them.
"""

import re
from bisect import bisect_right

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place

#: No file of a maker's is longer than this many bytes.
LONGEST = 1024 * 1024
#: After so many problems in one file, reading on helps nobody.
MOST_PROBLEMS = 200
_LONGEST_SHOWN = 40
_TOO_LONG = f"The file is larger than {LONGEST} bytes (1 MiB)."
_TOO_LONG_MEND = "Split it, or take out what is not a setting; a design has about 2000 bytes."
_BOM = "\ufeff"
_UNPRINTABLE = re.compile("[^\t\n\r -~\u00a0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]")
_LINE_END = re.compile("\r\n|\n|\r")


def decode(data: bytes, file: str) -> str:
    """The text of a file that is UTF-8, with or without a byte order mark (which is dropped).

    Raises ProblemsError for a file over 1 MiB and at the first byte that is not UTF-8.
    """
    if len(data) > LONGEST:
        raise ProblemsError(Problem(Place(file, 0, 0), _TOO_LONG, _TOO_LONG_MEND))
    try:
        return data.decode("utf-8").removeprefix(_BOM)
    except UnicodeDecodeError as error:
        good = data[: error.start].decode("utf-8")
        byte = f"0x{data[error.start]:02x}"
        place = Source(good, file).place(len(good))
        message = f"The file is not UTF-8: byte {byte} cannot stand here."
        raise ProblemsError(Problem(place, message, "Save the file again with the encoding UTF-8.")) from None


class Source:
    """A text with its line starts: turns an index into the text into a place."""

    def __init__(self, text: str, file: str) -> None:
        self.text = text
        self.file = file
        line_ends = [match.span() for match in _LINE_END.finditer(text)]
        self._starts = [0, *(end for _, end in line_ends)]
        self._ends = [*(start for start, _ in line_ends), len(text)]

    def place(self, index: int, end: int = 0) -> Place:
        """The place of the text from `index` up to `end`, or to the end of its line where that is first."""
        line = bisect_right(self._starts, index)
        start = self._starts[line - 1]
        length = min(end, self._ends[line - 1]) - index
        return Place(self.file, line, index - start + 1, max(length, 1))

    def behind(self, index: int) -> int:
        """The index right behind the last text before this one, white space skipped backwards."""
        while index > 0 and self.text[index - 1].isspace():
            index -= 1
        return index

    def line_span(self, index: int) -> tuple[int, int]:
        """Where the line that holds this index starts and ends, its line end not counted."""
        line = bisect_right(self._starts, index)
        return self._starts[line - 1], self._ends[line - 1]


def checked(text: str, file: str) -> Source:
    """The text without byte order mark; ProblemsError where it is too long or holds control characters."""
    if len(text) > LONGEST or len(text.encode("utf-8", "replace")) > LONGEST:
        raise ProblemsError(Problem(Place(file, 0, 0), _TOO_LONG, _TOO_LONG_MEND))
    source = Source(text.removeprefix(_BOM), file)
    match = _UNPRINTABLE.search(source.text)
    if match is not None:
        code = f"U+{ord(match.group()):04X}"
        message = f"An invisible control character ({code}) stands here."
        raise ProblemsError(Problem(source.place(match.start()), message, "Delete it."))
    return source


def clipped(text: str) -> str:
    """A text on one line, cut where it is long, to be shown in a message.

    >>> clipped("one\\ntwo")
    'one two'
    """
    line = " ".join(text[: 10 * _LONGEST_SHOWN].split())
    return line if len(line) <= _LONGEST_SHOWN else f"{line[: _LONGEST_SHOWN - 1]}…"
