"""Lettering as outlines: HarfBuzz shapes a line of text, and every glyph becomes a path.

Outlines look the same on every machine and printer. Sizes are the em in mm; the baseline is y = 0.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from padspec.base.geometry import Affine, Box
from padspec.compose.direction import Run, visual_runs
from padspec.resolve.design import Font
from padspec.scene.outline import Close, Curve, Line, Move, Outline, Step, bounds, mapped

#: The lettering of a line whose font gives no cap height (CSS Fonts takes the same stand-in).
_CAP_HEIGHT = 0.7


@dataclass(frozen=True, slots=True)
class ShapedLine:
    """One shaped line at an em of 1 mm: outline with the baseline at y = 0, its advance and ink bounds."""

    outline: Outline
    advance: float
    ink: Box


@lru_cache(maxsize=256)
def shape_line(font: Font, text: str) -> ShapedLine:
    """Shape one line of text at an em of 1 mm. Text without ink (spaces) has an empty outline."""
    handle = _handle(font)
    steps: list[Step] = []
    x = y = 0.0
    for run in visual_runs(text):
        for info, position in _shaped(handle, run):
            glyph = _glyph(font, info.codepoint)
            steps += mapped(glyph, Affine.move(x + position.x_offset, y + position.y_offset))
            x += position.x_advance
            y += position.y_advance
    upem = handle.face.upem
    outline = mapped(tuple(steps), Affine(a=1 / upem, d=-1 / upem))
    return ShapedLine(outline, x / upem, bounds(outline) if outline else Box(0, 0, 0, 0))


def _shaped(handle: Any, run: Run) -> list[tuple[Any, Any]]:
    """The glyphs of one run with their positions, from left to right."""
    import uharfbuzz as hb  # type: ignore[import-untyped]

    buffer = hb.Buffer()
    buffer.add_str(run.text)
    buffer.guess_segment_properties()
    buffer.direction = "rtl" if run.leftwards else "ltr"
    hb.shape(handle, buffer, {"kern": True, "liga": True})
    return list(zip(buffer.glyph_infos or (), buffer.glyph_positions or (), strict=True))


def cap_height(font: Font) -> float:
    """The height of capitals as a share of the em, from the font or measured on its H."""
    ink = shape_line(font, "H").ink
    return ink.height if missing_characters(font, "H") == "" and ink.height > 0 else _CAP_HEIGHT


def missing_characters(font: Font, text: str) -> str:
    """The characters of a text for which the font has no glyph, each once, in order."""
    handle = _handle(font)
    wanted = dict.fromkeys(c for c in text if not c.isspace() and not _is_ignorable(c))
    return "".join(c for c in wanted if not handle.get_nominal_glyph(ord(c)))


def _is_ignorable(character: str) -> bool:
    """Joiners and direction marks steer shaping and need no glyph (Unicode general category Cf)."""
    import unicodedata

    return unicodedata.category(character) == "Cf"


@lru_cache(maxsize=32)
def _handle(font: Font) -> Any:
    import uharfbuzz as hb

    handle = hb.Font(hb.Face(hb.Blob(font.data)))
    axes = {axis.tag: axis for axis in handle.face.axis_infos}
    if "wght" in axes:
        axis = axes["wght"]
        handle.set_variations({"wght": min(max(font.weight, axis.min_value), axis.max_value)})
    return handle


# A line uses most of its letters more than once.
@lru_cache(maxsize=1024)
def _glyph(font: Font, codepoint: int) -> Outline:
    steps: list[Step] = []
    _handle(font).draw_glyph(codepoint, _draw_funcs(), steps)
    return tuple(steps)


@lru_cache(maxsize=1)
def _draw_funcs() -> Any:
    """HarfBuzz draw callbacks that add to a list of steps; quadratic curves are raised to cubics exactly."""
    import uharfbuzz as hb

    def quadratic(x1: float, y1: float, x: float, y: float, steps: list[Step]) -> None:
        last = steps[-1]
        if isinstance(last, Close):
            raise ValueError("a part of a glyph begins with a move")
        x0, y0 = last.x, last.y
        first = (x0 + (x1 - x0) * 2 / 3, y0 + (y1 - y0) * 2 / 3)
        second = (x + (x1 - x) * 2 / 3, y + (y1 - y) * 2 / 3)
        steps.append(Curve(*first, *second, x, y))

    funcs = hb.DrawFuncs()
    funcs.set_move_to_func(lambda x, y, steps: steps.append(Move(x, y)))
    funcs.set_line_to_func(lambda x, y, steps: steps.append(Line(x, y)))
    funcs.set_cubic_to_func(lambda x1, y1, x2, y2, x, y, steps: steps.append(Curve(x1, y1, x2, y2, x, y)))
    funcs.set_quadratic_to_func(quadratic)
    funcs.set_close_path_func(lambda steps: steps.append(Close()))
    return funcs
