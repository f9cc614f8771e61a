"""Lettering measured: HarfBuzz shapes a line of text, and every glyph gets its place; nothing is drawn yet.

Sizes are at an em of 1 mm; the baseline is y = 0, y grows downwards. Where thousands of names are set, each line
is measured and placed by its glyphs alone, and only the glyphs themselves are ever drawn.
"""

from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby
from typing import Any, NamedTuple

from padspec.base.geometry import Box
from padspec.compose.lettering.fallback import SetRun, set_runs
from padspec.compose.lettering.glyphs import glyph, glyph_edges, handle
from padspec.resolve.font import Font
from padspec.scene.outline import Close, Curve, Line, Move, Outline, Step

#: Scripts whose letters join or hang from one line (ISO 15924): tracking would tear them.
_JOINED = frozenset(
    {"Arab", "Syrc", "Mong", "Nkoo", "Mand", "Mani", "Phag", "Adlm", "Rohg", "Sogd"}
    | {"Deva", "Beng", "Guru", "Modi", "Nand", "Newa", "Takr", "Tirh", "Shrd"}
)
#: Scripts that keep between descender and capitals, so that every line of them has the same height.
_EVEN = frozenset({"Latn", "Cyrl", "Grek", "Hebr", "Armn", "Geor", "Zyyy", "Zinh", "Zzzz"})
_SET = {"kern": True, "liga": True}
#: Letters that are set apart have no ligatures, which would stay close (CSS Text 3, section 8.2).
_TRACKED = {"kern": True, "liga": False, "clig": False}


class SetGlyph(NamedTuple):
    """One glyph in a line: moved by (dx, dy) in the font's units with y upwards, then by `share` a unit to
    millimetres with y downwards, `left` of the line's origin.
    """

    font: Font
    number: int
    dx: float
    dy: float
    share: float
    left: float

    @property
    def outline(self) -> Outline:
        """The glyph where it stands."""
        share, left, dx, dy = self.share, self.left, self.dx, self.dy
        found: list[Step] = []
        for step in glyph(self.font, self.number):
            match step:
                case Curve(x1, y1, x2, y2, x, y):
                    found.append(
                        Curve(
                            share * (x1 + dx) + left,
                            -share * (y1 + dy),
                            share * (x2 + dx) + left,
                            -share * (y2 + dy),
                            share * (x + dx) + left,
                            -share * (y + dy),
                        )
                    )
                case Line(x, y):
                    found.append(Line(share * (x + dx) + left, -share * (y + dy)))
                case Move(x, y):
                    found.append(Move(share * (x + dx) + left, -share * (y + dy)))
                case Close():
                    found.append(step)
        return tuple(found)


class SetLetter(NamedTuple):
    """One grapheme: the first character of the text it stands for, its glyphs, the pen before it and its advance.

    `joined` tells a script whose letters run into each other.
    """

    character: str
    glyphs: tuple[SetGlyph, ...]
    x: float
    advance: float
    joined: bool


@dataclass(frozen=True, slots=True)
class SetLine:
    """One line: its letters from left to right, its advance, and the box of its ink, empty where it has none.

    `uneven` tells a script with signs above the capitals or far below the baseline, whose height is its ink's.
    """

    letters: tuple[SetLetter, ...]
    advance: float
    ink: Box
    uneven: bool


@lru_cache(maxsize=1024)
def set_line(font: Font, text: str, tracking: float = 0.0) -> SetLine:
    """Set one line of text. `tracking` is air between graphemes as a share of the em; joined scripts have none."""
    letters: list[SetLetter] = []
    x, air, uneven = 0.0, 0.0, False
    for run in set_runs(font, text):
        script, glyphs = _shaped(run, tracking)
        air = 0.0 if script in _JOINED else tracking
        uneven = uneven or script not in _EVEN
        found, x = _letters(run, glyphs, x, air, script in _JOINED)
        letters += found
    # The pen has moved on by the air after the last letter, which belongs to no gap.
    advance = x - air if letters else x
    return SetLine(tuple(letters), advance, _ink(letters), uneven)


def _ink(letters: list[SetLetter]) -> Box:
    """The box of all outlines. Summed as their own points are, so that both agree to the last bit."""
    lefts, tops, rights, feet = [], [], [], []
    for letter in letters:
        for font, number, dx, dy, share, left in letter.glyphs:
            edges = glyph_edges(font, number)
            if edges is not None:
                lefts.append(share * (edges[0] + dx) + left)
                tops.append(-share * (edges[3] + dy))
                rights.append(share * (edges[2] + dx) + left)
                feet.append(-share * (edges[1] + dy))
    if not lefts:
        return Box(0, 0, 0, 0)
    left, top = min(lefts), min(tops)
    return Box(left, top, max(rights) - left, max(feet) - top)


def _letters(
    run: SetRun, glyphs: list[tuple[Any, Any]], start: float, air: float, joined: bool
) -> tuple[list[SetLetter], float]:
    """The graphemes of a run from left to right, and where the pen is after them."""
    upem = handle(run.font).face.upem
    share = 1 / upem * run.scale
    found: list[SetLetter] = []
    x = y = 0.0
    for n, (cluster, members) in enumerate(groupby(glyphs, key=lambda pair: pair[0].cluster)):
        origin, left = x, start + n * air
        placed: list[SetGlyph] = []
        for info, position in members:
            dx, dy = x + position.x_offset, y + position.y_offset
            placed.append(SetGlyph(run.font, info.codepoint, dx, dy, share, left))
            x += position.x_advance
            y += position.y_advance
        character = run.text[cluster]
        found.append(SetLetter(character, tuple(placed), left + origin * share, (x - origin) * share, joined))
    return found, start + x / upem * run.scale + len(found) * air


def _shaped(run: SetRun, tracking: float) -> tuple[str, list[tuple[Any, Any]]]:
    """The script of one run, and its glyphs with their positions, from left to right."""
    import uharfbuzz as hb  # type: ignore[import-untyped]

    buffer = hb.Buffer()
    buffer.add_str(run.text)
    buffer.guess_segment_properties()
    buffer.direction = "rtl" if run.leftwards else "ltr"
    # HarfBuzz would take the language of the machine, and some fonts have other letters for some languages.
    buffer.language = "und"
    script = str(buffer.script)
    hb.shape(handle(run.font), buffer, _TRACKED if tracking and script not in _JOINED else _SET)
    return script, list(zip(buffer.glyph_infos or (), buffer.glyph_positions or (), strict=True))
