"""The glyphs of a font as outlines, in the font's own units with y upwards."""

from functools import lru_cache
from typing import Any

from padspec.base.geometry import Affine
from padspec.resolve.font import Font
from padspec.scene.outline import Close, Curve, Line, Move, Outline, Step, mapped, points


@lru_cache(maxsize=32)
def handle(font: Font) -> Any:
    """The font as HarfBuzz shapes it, a variable one set to its weight as far as its axis goes."""
    import uharfbuzz as hb  # type: ignore[import-untyped]

    found = hb.Font(hb.Face(hb.Blob(font.data)))
    axes = {axis.tag: axis for axis in found.face.axis_infos}
    if "wght" in axes:
        axis = axes["wght"]
        found.set_variations({"wght": min(max(font.weight, axis.min_value), axis.max_value)})
    return found


# A line uses most of its letters more than once.
@lru_cache(maxsize=1024)
def glyph(font: Font, number: int) -> Outline:
    """One glyph by its number in the font."""
    steps: list[Step] = []
    handle(font).draw_glyph(number, _draw_funcs(), steps)
    return tuple(steps)


def glyph_edges(font: Font, number: int) -> tuple[float, float, float, float] | None:
    """Least x and y, most x and y among a glyph's points; None where it has none."""
    known = _edges(font)
    if number not in known:
        found = points(glyph(font, number))
        xs, ys = [x for x, _ in found], [y for _, y in found]
        known[number] = (min(xs), min(ys), max(xs), max(ys)) if found else None
    return known[number]


@lru_cache(maxsize=32)
def _edges(font: Font) -> dict[int, tuple[float, float, float, float] | None]:  # noqa: ARG001 (what it is known by)
    """The edges of a font's glyphs, as far as they were asked for."""
    return {}


def letter(font: Font, character: str) -> Outline:
    """The plain glyph of a character at an em of 1, y downwards; empty where the font has none."""
    number = handle(font).get_nominal_glyph(ord(character))
    share = 1 / handle(font).face.upem
    return mapped(glyph(font, number), Affine(a=share, d=-share)) if number else ()


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
