"""What is wrong with the words of a row: found before a single sheet is put in place."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from padspec.base.numbers import mm_text
from padspec.base.place import Place
from padspec.compose.other_words import Words
from padspec.reading.fill import gaps_in
from padspec.resolve.coverage import lacking

#: So many faults are told one by one; all are counted.
MOST_TOLD = 50


@dataclass(frozen=True, slots=True)
class RowFault:
    """One thing that is wrong with a row: where it stands, its number and key, and what it is about."""

    place: Place
    row: int
    key: str
    severity: Literal["error", "warning"]
    message: str
    mend: str = ""

    @property
    def told(self) -> str:
        """The message with the row that it is about."""
        named = f"row {self.row}" + (f" ({self.key})" if self.key and self.key != str(self.row) else "")
        return f"{named}: {self.message}"


def empty_cells(template: str, cells: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Message and mend for each column that a text names and that is empty in a row."""
    for name in gaps_in(template):
        if not cells[name]:
            yield f"{name} is empty, and the lettering needs it.", "Fill the cell, or take the row out."


def unset_words(words: Words) -> Iterator[tuple[str, str]]:
    """Message and mend for letters that no font has, and for words that do not fit at their least size."""
    block, text = words.block, words.block.text
    missing = lacking(block.font, text)
    if missing:
        shown = " ".join(missing[:8]) + (" …" if len(missing) > 8 else "")
        message = f"neither {block.font.name} nor a font that stands in for it has {shown} in {_short(text)}."
        yield message, "Write it in other letters, or set a font that has them."
    over = words.laid.fitted.too_wide_by
    if over > 0:
        room = max(line.ink.width for line in words.laid.fitted.lines) * block.least_size - over
        letters = max(int(len(text) * max(room, 0.0) / (room + over)), 1)
        message = (
            f"{_short(text)} ({len(text)} characters) is {mm_text(over)} wider than its room, "
            f"even at the least size of {mm_text(block.least_size)}."
        )
        yield message, f"Shorten it to about {letters} characters, or allow more lines."


def _short(text: str) -> str:
    return f"“{text if len(text) <= 40 else text[:39] + '…'}”"
