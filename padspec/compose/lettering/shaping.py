"""Lettering as outlines: a line that is set (see setting.py) becomes a path.

Outlines look the same on every machine and printer. Sizes are the em in mm; the baseline is y = 0.
"""

from dataclasses import dataclass
from functools import lru_cache

from padspec.base.geometry import Box
from padspec.compose.lettering.setting import SetLetter, set_line
from padspec.resolve.coverage import missing_characters
from padspec.resolve.font import Font
from padspec.scene.outline import Outline

#: The lettering of a line whose font gives no cap height (CSS Fonts takes the same stand-in).
_CAP_HEIGHT = 0.7


@dataclass(frozen=True, slots=True)
class Letter:
    """One grapheme as shaped, at an em of 1 mm: its outline where it stands in the line, and the pen before it.

    `character` is the first of the text it stands for; `joined` tells a script whose letters run into each other.
    """

    character: str
    outline: Outline
    x: float
    advance: float
    joined: bool


@dataclass(frozen=True, slots=True)
class ShapedLine:
    """One shaped line at an em of 1 mm: outline with the baseline at y = 0, its advance and ink bounds.

    `letters` are its parts from left to right. `uneven` tells a script with signs above the capitals or far below
    the baseline, whose height is that of its ink.
    """

    outline: Outline
    advance: float
    ink: Box
    letters: tuple[Letter, ...] = ()
    uneven: bool = False


# Four hundred numbered rows are more lines than 256; a long line has half a million bytes.
@lru_cache(maxsize=512)
def shape_line(font: Font, text: str, tracking: float = 0.0) -> ShapedLine:
    """Shape one line of text at an em of 1 mm. Text without ink (spaces) has an empty outline.

    `tracking` is air between graphemes as a share of the em; joined scripts have none.
    """
    line = set_line(font, text, tracking)
    letters = tuple(_drawn(letter) for letter in line.letters)
    steps = tuple(step for each in letters for step in each.outline)
    return ShapedLine(steps, line.advance, line.ink, letters, line.uneven)


def _drawn(letter: SetLetter) -> Letter:
    outline = tuple(step for glyph in letter.glyphs for step in glyph.outline)
    return Letter(letter.character, outline, letter.x, letter.advance, letter.joined)


@lru_cache(maxsize=64)
def cap_height(font: Font) -> float:
    """The height of capitals as a share of the em, from the font or measured on its H."""
    ink = set_line(font, "H").ink
    return ink.height if missing_characters(font, "H") == "" and ink.height > 0 else _CAP_HEIGHT
