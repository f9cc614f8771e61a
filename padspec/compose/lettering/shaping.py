"""Lettering as outlines: HarfBuzz shapes a line of text, and every glyph becomes a path.

Outlines look the same on every machine and printer. Sizes are the em in mm; the baseline is y = 0.
"""

from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby
from typing import Any

from padspec.base.geometry import Affine, Box
from padspec.compose.lettering.fallback import SetRun, set_runs
from padspec.compose.lettering.glyphs import glyph, handle
from padspec.resolve.coverage import missing_characters
from padspec.resolve.font import Font
from padspec.scene.outline import Outline, Step, bounds, mapped

#: The lettering of a line whose font gives no cap height (CSS Fonts takes the same stand-in).
_CAP_HEIGHT = 0.7
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


@lru_cache(maxsize=1024)
def shape_line(font: Font, text: str, tracking: float = 0.0) -> ShapedLine:
    """Shape one line of text at an em of 1 mm. Text without ink (spaces) has an empty outline.

    `tracking` is air between graphemes as a share of the em; joined scripts have none.
    """
    letters: list[Letter] = []
    x, air, uneven = 0.0, 0.0, False
    for run in set_runs(font, text):
        script, glyphs = _shaped(run, tracking)
        air = 0.0 if script in _JOINED else tracking
        uneven = uneven or script not in _EVEN
        found, x = _letters(run, glyphs, x, air, script in _JOINED)
        letters += found
    steps = tuple(step for each in letters for step in each.outline)
    # The pen has moved on by the air after the last letter, which belongs to no gap.
    advance = x - air if letters else x
    return ShapedLine(steps, advance, bounds(steps) if steps else Box(0, 0, 0, 0), tuple(letters), uneven)


def _letters(
    run: SetRun, glyphs: list[tuple[Any, Any]], start: float, air: float, joined: bool
) -> tuple[list[Letter], float]:
    """The graphemes of a run from left to right, and where the pen is after them."""
    upem = handle(run.font).face.upem
    share = 1 / upem * run.scale
    found: list[Letter] = []
    x = y = 0.0
    for n, (cluster, members) in enumerate(groupby(glyphs, key=lambda pair: pair[0].cluster)):
        origin = x
        steps: list[Step] = []
        for info, position in members:
            moved = Affine.move(x + position.x_offset, y + position.y_offset)
            steps += mapped(glyph(run.font, info.codepoint), moved)
            x += position.x_advance
            y += position.y_advance
        left = start + n * air
        outline = mapped(tuple(steps), Affine(a=share, d=-share, e=left))
        place, wide = left + origin * share, (x - origin) * share
        found.append(Letter(run.text[cluster], outline, place, wide, joined))
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


def cap_height(font: Font) -> float:
    """The height of capitals as a share of the em, from the font or measured on its H."""
    ink = shape_line(font, "H").ink
    return ink.height if missing_characters(font, "H") == "" and ink.height > 0 else _CAP_HEIGHT
