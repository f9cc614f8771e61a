"""A sized symbol in, shapes out: a white plate, black rectangles in millimetres, and letters as outlines."""

from itertools import groupby

from padspec.base.colour import BLACK, WHITE
from padspec.base.geometry import Box
from padspec.compose.lettering.shaping import cap_height, shape_line
from padspec.resolve.font import Font
from padspec.scene.nodes import Cause, Shape
from padspec.scene.outline import Outline, rectangle
from padspec.tags.pattern import QR_QUIET, Bars, Squares
from padspec.tags.sizing import NOMINAL, Sized
from padspec.tags.words import set_words

CAUSE = Cause("tag", "rule")
#: At 100 %, in mm: digits are 2.75 high and stand 0.33 under the bars, the guard bars reach 1.65 down (five
#: modules; GS1 General Specifications, from memory).
_DIGITS, _GAP, _LONGER = 2.75, 0.33, 5
#: Letters of a SKU keep inside its bars.
_SKU_SHARE, _SKU_SIZE = 0.98, 0.72


def draw_symbol(sized: Sized, at: Box, font: Font) -> tuple[Shape, ...]:
    """The symbol at the top left of a box of its own size."""
    plate = Shape(rectangle(at), Cause("tag", "panel"), fill=WHITE)
    match sized.pattern:
        case Squares() as squares:
            origin = (at.x + QR_QUIET * sized.x, at.y + QR_QUIET * sized.x)
            return plate, _black(_square_outline(squares, origin, sized.x))
        case Bars() as bars:
            return plate, _black(_bar_outline(bars, sized, at)), *_letters(bars, sized, at, font)


def _black(outline: Outline) -> Shape:
    return Shape(outline, CAUSE, fill=BLACK)


def runs(modules: tuple[bool, ...]) -> tuple[tuple[int, int], ...]:
    """The stretches of black modules, each from its first to past its last.

    >>> runs((True, True, False, True))
    ((0, 2), (3, 4))
    """
    found, start = [], 0
    for black, members in groupby(modules):
        end = start + len(list(members))
        if black:
            found.append((start, end))
        start = end
    return tuple(found)


def _bar_outline(bars: Bars, sized: Sized, at: Box) -> Outline:
    left = at.x + bars.quiet[0] * sized.x
    steps: list[Outline] = []
    for start, end in runs(bars.modules):
        is_long = any(low <= start and end <= high for low, high in bars.long)
        height = sized.bars + (_LONGER * sized.x if is_long else 0.0)
        steps.append(rectangle(Box(left + start * sized.x, at.y, (end - start) * sized.x, height)))
    return tuple(step for outline in steps for step in outline)


def _square_outline(squares: Squares, origin: tuple[float, float], x: float) -> Outline:
    """One rectangle for each stretch of a row, so that no seam shows between its modules; rows touch."""
    left, top = origin
    steps = [
        rectangle(Box(left + start * x, top + n * x, (end - start) * x, x))
        for n, row in enumerate(squares.rows)
        for start, end in runs(row)
    ]
    return tuple(step for outline in steps for step in outline)


def _letters(bars: Bars, sized: Sized, at: Box, font: Font) -> tuple[Shape, ...]:
    share = sized.x / NOMINAL
    size = _DIGITS * share / cap_height(font)
    if bars.kind == "Code 128":
        # The SKU is read as words are, not digit by digit: smaller, and a little farther off.
        size *= _SKU_SIZE
        room = len(bars.modules) * sized.x * _SKU_SHARE
        size = min(size, room / shape_line(font, bars.text).advance)
    left = at.x + bars.quiet[0] * sized.x
    baseline = at.y + sized.bars + (_GAP + _DIGITS) * share
    return tuple(
        set_words(letter.text, left + letter.middle * sized.x, baseline, font, size * letter.size, "centre", BLACK)
        for letter in bars.letters
    )
