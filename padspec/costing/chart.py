"""Sizes of batch in, a plot out: what a good pad costs in each, in stacked bars. All in printed millimetres."""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, log10

from padspec.base.colour import WHITE, Colour
from padspec.base.geometry import Affine, Box
from padspec.base.geometry import Size as Extent
from padspec.base.money import amount_text, minor_digits, rounded
from padspec.compose.lettering.shaping import shape_line
from padspec.costing.what_if import PARTS, Size
from padspec.draw.svg import face_svg
from padspec.resolve.font import Font
from padspec.scene.nodes import Cause, Layer, Node, Part, Raster, Scene, Shape, Stroke, Vector
from padspec.scene.outline import line, mapped, rectangle

WIDTH, HEIGHT = 160.0, 84.0
_LEFT, _TOP, _FOOT, _LEGEND = 13.0, 12.0, 13.0, 46.0
_TEXT, _TITLE = 2.6, 3.4
_STEPS = 4
_INK, _QUIET, _RULE = Colour.from_hex("#2b2a29"), Colour.from_hex("#6b6762"), Colour.from_hex("#d9d4ca")
#: One for each of `PARTS`, from the foot up: apart in lightness too, for print without colour.
_FILLS = tuple(Colour.from_hex(text) for text in ("#3f7263", "#8fb3a3", "#d98a5b", "#f0d3b2"))


def chart_svg(title: str, sizes: Sequence[Size], currency: str, font: Font) -> str:
    """The plot as the text of an SVG file, all lettering as outlines."""
    return face_svg(_chart(title, sizes, currency, font), title, _no_picture)


def _chart(title: str, sizes: Sequence[Size], currency: str, font: Font) -> Scene:
    area = Box(_LEFT, _TOP, WIDTH - _LEFT - _LEGEND, HEIGHT - _TOP - _FOOT)
    top = _round_top(max(float(size.each) for size in sizes))
    ground = Shape(rectangle(Box(0, 0, WIDTH, HEIGHT)), _cause("ground"), WHITE)
    letters = [
        _left(font, f"{title}: cost of a good pad, {currency}", _TITLE, 2.0, 6.0, _INK),
        *_scale_words(font, area, top, currency),
        *_bar_words(font, area, sizes, top, currency),
        *_legend_words(font, area),
        _left(font, "pads in the batch", _TEXT, area.x, HEIGHT - 3.0, _QUIET),
    ]
    return Scene(
        Extent(WIDTH, HEIGHT),
        0.0,
        (
            Layer("ground", (ground,)),
            Layer("rules", tuple(_scale(area))),
            Layer("panel", (*_bars(area, sizes, top), *_legend(area))),
            Layer("lettering", tuple(letters)),
        ),
    )


def _no_picture(_image: Raster | Vector) -> str:
    raise ValueError("a plot holds no picture")


def _round_top(most: float) -> float:
    """A round number that the highest bar stays below.

    >>> _round_top(6.3), _round_top(0.8), _round_top(41)
    (8.0, 1.0, 60.0)
    """
    unit = 10.0 ** (ceil(log10(most)) - 1) if most > 0 else 1.0
    return next(step * unit for step in (1, 2, 4, 6, 8, 10, 12) if step * unit >= most * 1.08)


def _slot(area: Box, at: int, of: int) -> tuple[float, float]:
    """The middle and the width of a bar."""
    wide = area.width / of
    return area.x + (at + 0.5) * wide, min(wide * 0.56, 13.0)


def _bars(area: Box, sizes: Sequence[Size], top: float) -> list[Node]:
    found: list[Node] = []
    for at, size in enumerate(sizes):
        middle, wide = _slot(area, at, len(sizes))
        foot = area.bottom
        for part, fill in zip(size.parts, _FILLS, strict=True):
            high = float(part) / top * area.height
            if high > 0:
                found.append(
                    Shape(rectangle(Box(middle - wide / 2, foot - high, wide, high)), _cause("panel"), fill)
                )
            foot -= high
    return found


def _scale(area: Box) -> list[Node]:
    places = [area.bottom - area.height * step / _STEPS for step in range(_STEPS + 1)]
    return [
        Shape(line(area.x, y, area.right, y), _cause("rule"), stroke=Stroke(_QUIET if at == 0 else _RULE, 0.15))
        for at, y in enumerate(places)
    ]


def _scale_words(font: Font, area: Box, top: float, currency: str) -> list[Node]:
    digits = min(minor_digits(currency), 2)
    found: list[Node] = []
    for step in range(_STEPS + 1):
        text = f"{rounded(Fraction(str(top)) * step / _STEPS, digits):f}"
        wide = shape_line(font, text).advance * _TEXT
        y = area.bottom - area.height * step / _STEPS
        found.append(_left(font, text, _TEXT, area.x - 1.6 - wide, y + 0.9, _QUIET))
    return found


def _bar_words(font: Font, area: Box, sizes: Sequence[Size], top: float, currency: str) -> list[Node]:
    found: list[Node] = []
    for at, size in enumerate(sizes):
        middle, _ = _slot(area, at, len(sizes))
        text = amount_text(size.each, currency).removesuffix(f" {currency}")
        y = area.bottom - float(size.each) / top * area.height
        found.append(_centred(font, text, middle, y - 1.2, _INK))
        found.append(_centred(font, str(size.pads), middle, area.bottom + 4.2, _INK))
    return found


def _legend(area: Box) -> list[Node]:
    return [
        Shape(rectangle(Box(area.right + 5.0, _legend_at(area, at) - 2.3, 2.8, 2.8)), _cause("panel"), fill)
        for at, fill in enumerate(_FILLS)
    ]


def _legend_words(font: Font, area: Box) -> list[Node]:
    return [
        _left(font, name, _TEXT, area.right + 9.4, _legend_at(area, at), _INK) for at, name in enumerate(PARTS)
    ]


def _legend_at(area: Box, at: int) -> float:
    """The base line of a row: in the order of the bars, so the last of `PARTS` stands at the head."""
    return area.y + 4.0 + (len(PARTS) - 1 - at) * 5.2


def _centred(font: Font, text: str, middle: float, y: float, colour: Colour) -> Node:
    wide = shape_line(font, text).advance * _TEXT
    return _left(font, text, _TEXT, middle - wide / 2, y, colour)


def _left(font: Font, text: str, size: float, x: float, y: float, colour: Colour) -> Node:
    outline = mapped(shape_line(font, text).outline, Affine.scale(size).then(Affine.move(x, y)))
    return Shape(outline, _cause("lettering"), colour)


def _cause(part: Part) -> Cause:
    return Cause("sheet", part)
