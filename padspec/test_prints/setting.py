"""What test prints are set with: words in two weights of the small print, lines and boxes, in millimetres."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from padspec.base.colour import BLACK, Colour
from padspec.base.geometry import Affine, Box
from padspec.compose.lettering.shaping import shape_line
from padspec.resolve.font import Font
from padspec.scene.nodes import Cause, Group, Node, Part, Shape, Stroke
from padspec.scene.outline import Outline, line, mapped, rectangle, rounded

Nodes = tuple[Node, ...]
Align = Literal["left", "centre", "right"]

#: Sizes of lettering (em) and from baseline to baseline, in mm: 8 pt for what is read at leisure.
TEXT, SMALL, HEADING, TITLE = 2.75, 2.25, 3.9, 8.2
LEADING = 4.05
#: Capitals reach this share of the size above the baseline.
CAPS = 0.71
#: A line that only orders the page.
HAIRLINE = 0.15
_UNIT = re.compile(r"(?<=\d) (?=mm|%)")
_SHARES: dict[Align, float] = {"left": 0.0, "centre": 0.5, "right": 1.0}


@dataclass(frozen=True, slots=True)
class Type:
    """The small print in two weights."""

    text: Font
    strong: Font


def type_of(small_print: Font) -> Type:
    """Both weights of a font."""
    return Type(replace(small_print, weight=500), replace(small_print, weight=800))


def words(
    text: str,
    x: float,
    baseline: float,
    font: Font,
    size: float = TEXT,
    align: Align = "left",
    colour: Colour = BLACK,
) -> Shape:
    """One line of lettering."""
    shaped = shape_line(font, text)
    start = x - shaped.advance * size * _SHARES[align]
    placed = Affine.scale(size).then(Affine.move(start, baseline))
    return Shape(mapped(shaped.outline, placed), _cause("lettering"), fill=colour)


def upward(text: str, x: float, y: float, font: Font, size: float, align: Align = "left") -> Group:
    """One line that reads from foot to head, its baseline at `x`."""
    return Group((words(text, 0, 0, font, size, align),), Affine(a=0.0, b=-1.0, c=1.0, d=0.0, e=x, f=y))


def advance(text: str, font: Font, size: float = TEXT) -> float:
    """How far a line of lettering reaches."""
    return shape_line(font, text).advance * size


def ruled(x1: float, y1: float, x2: float, y2: float, weight: float = HAIRLINE, part: Part = "rule") -> Shape:
    """A black line."""
    return drawn(line(x1, y1, x2, y2), weight, part=part)


def drawn(outline: Outline, weight: float, colour: Colour = BLACK, part: Part = "rule") -> Shape:
    """An outline as a line."""
    return Shape(outline, _cause(part), stroke=Stroke(colour, weight))


def filled(box: Box, colour: Colour = BLACK, part: Part = "ground") -> Shape:
    """A box of one colour."""
    return filled_outline(rectangle(box), colour, part)


def filled_outline(outline: Outline, colour: Colour = BLACK, part: Part = "ground") -> Shape:
    """An outline of one colour."""
    return Shape(outline, _cause(part), fill=colour)


def blank(box: Box) -> Shape:
    """A box to write a number in."""
    return Shape(rounded(box, 1.0), _cause("checkbox"), stroke=Stroke(BLACK, 0.2))


def broken(text: str, width: float, font: Font, size: float = TEXT) -> tuple[str, ...]:
    """A text in lines that fit a width, each as full as it gets; a number keeps its unit beside it, and a no-break
    space holds words together.
    """
    return tuple(_lines(_UNIT.sub("\u00a0", text).split(" "), width, font, size))


def _lines(rest: list[str], width: float, font: Font, size: float) -> Iterator[str]:
    space = advance("n n", font, size) - 2 * advance("n", font, size)
    current, reach = "", 0.0
    for word in rest:
        own = advance(word, font, size)
        if current and reach + space + own > width:
            yield current
            current, reach = word, own
        else:
            current, reach = (f"{current} {word}", reach + space + own) if current else (word, own)
    yield current


def _cause(part: Part) -> Cause:
    return Cause("test-print", part)
