"""The line of a file that a message is about, with carets under the spot."""

from unicodedata import category, east_asian_width

from padspec.base.place import Place

_WINDOW = 100
_BEFORE = 30
_TAB_STOP = 4


def excerpt(text: str, place: Place) -> str:
    """The line with its number in a gutter, carets under `place.length` characters of it.

    Tabs are opened to stops of four columns, wide characters count two; a line over 100 columns is cut to
    a window around the caret. Empty where the place is no line of the text.

    >>> print(excerpt("pad: x\\nrows: {pitch: 8}", Place("a.yaml", 2, 15)))
    2 | rows: {pitch: 8}
      |               ^
    """
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    if not 0 < place.line <= len(lines):
        return ""
    line = lines[place.line - 1].replace("\ufeff", "")
    start = min(max(place.column - 1, 0), len(line))
    first, last, marks = _window(line, start)
    cells = _cells(line[first:last])
    before = sum(width for _, width in cells[: start - first])
    under = sum(width for _, width in cells[start - first : start - first + place.length])
    gutter = str(place.line)
    shown = marks[0] + "".join(character for character, _ in cells) + marks[1]
    pad = " " * (len(marks[0]) + before)
    return f"{gutter} | {shown}".rstrip() + f"\n{' ' * len(gutter)} | {pad}{'^' * max(under, 1)}"


def _window(line: str, start: int) -> tuple[int, int, tuple[str, str]]:
    """Which part of a line to show, and the dots for what is cut off on either side."""
    first, last = 0, len(line)
    if last > _WINDOW:
        first = max(0, min(start - _BEFORE, last - _WINDOW))
        last = min(last, first + _WINDOW)
    room = _WINDOW
    for index in range(first, last):
        room -= _width(line[index])
        if room < 0:
            last = max(index, start + 1)
            break
    return first, min(last, len(line)), ("…" if first else "", "…" if last < len(line) else "")


def _cells(part: str) -> list[tuple[str, int]]:
    """Each character as it is shown, with the columns that it takes."""
    cells = []
    column = 0
    for character in part:
        if character == "\t":
            width = _TAB_STOP - column % _TAB_STOP
            cells.append((" " * width, width))
        else:
            width = _width(character)
            cells.append(("·" if category(character) == "Cc" else character, width))
        column += width
    return cells


def _width(character: str) -> int:
    if category(character) in ("Mn", "Me", "Cf"):
        return 0
    return 2 if east_asian_width(character) in ("W", "F") else 1
