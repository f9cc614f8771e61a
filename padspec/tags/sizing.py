"""How large a symbol is drawn in the room that a tag has for it, or by how much it does not fit.

Figures are those of the GS1 General Specifications for EAN-13 and UPC-A: a nominal module of 0.330 mm, 80 % to 200
%, bars 22.85 mm high at 100 %. Code 128 takes the same modules; its bars are 15 % of its length or 5 mm at least
(ISO/IEC 15417, from memory). A QR code takes 0.4 mm or more (common practice for telephones) up to 0.990 mm.
"""

from dataclasses import dataclass

from padspec.base.geometry import Size
from padspec.base.numbers import EPSILON, mm_text, number_text, percent_text, round_down
from padspec.tags.pattern import Bars, Pattern, Squares

NOMINAL = 0.330
LEAST_X, MOST_X = 0.264, 0.660
LEAST_SQUARE, MOST_SQUARE = 0.4, 0.990
#: A module is a whole number of these, so that every edge of a bar is exact in a file of four decimals.
STEP = 0.001
BAR_HEIGHT = 22.85
#: From the foot of the bars to the foot of the digits at 100 %: with the bars, 25.93 mm (GS1, from memory).
UNDER = 3.08
#: Bars are never lower than this: below, a scanner hardly finds them (common practice, no published source).
LEAST_BARS = 5.0
_CODE_128_SHARE, _CODE_128_LEAST, _CODE_128_HEIGHT = 0.15, 5.0, 12.0


@dataclass(frozen=True, slots=True)
class Sized:
    """A symbol at its size: module and height of the bars in mm; `full` is the height that they should have.

    For a QR code, `bars` and `full` are its side without the quiet zone.
    """

    pattern: Pattern
    x: float
    bars: float
    full: float

    @property
    def size(self) -> Size:
        """The whole symbol, quiet zones and letters included."""
        if isinstance(self.pattern, Squares):
            side = self.pattern.width * self.x
            return Size(side, side)
        return Size(self.pattern.width * self.x, self.bars + under(self.x))

    @property
    def magnification(self) -> float:
        """The module as a share of the nominal one."""
        return self.x / NOMINAL

    @property
    def truncated(self) -> bool:
        """Whether its bars are lower than they should be."""
        return self.bars < self.full - 0.005


@dataclass(frozen=True, slots=True)
class Misfit:
    """Why a symbol does not fit its room, with the sum."""

    message: str


def under(x: float) -> float:
    """What the letters take under the bars at this module."""
    return UNDER * x / NOMINAL


def full_bars(pattern: Bars, x: float) -> float:
    """How high bars of this module should be."""
    if pattern.kind == "Code 128":
        least = max(_CODE_128_SHARE * len(pattern.modules) * x, _CODE_128_LEAST)
        return max(least, min(_CODE_128_HEIGHT, _CODE_128_HEIGHT * x / NOMINAL))
    return BAR_HEIGHT * x / NOMINAL


def least_size(pattern: Pattern) -> Size:
    """The room that a symbol takes at the least module, its bars at full height."""
    if isinstance(pattern, Squares):
        return Sized(pattern, LEAST_SQUARE, 0, 0).size
    return Size(pattern.width * LEAST_X, full_bars(pattern, LEAST_X) + under(LEAST_X))


def fitted(pattern: Pattern, room: Size) -> Sized | Misfit:
    """The largest symbol that is allowed and fits: by its width and its full height where that can be, by its
    width alone, its bars cut short, where the room is too low for any at full height.
    """
    if isinstance(pattern, Squares):
        return _square(pattern, room)
    wide = round_down(min(room.width / pattern.width, MOST_X), STEP)
    if wide < LEAST_X - EPSILON:
        return Misfit(_too_narrow(pattern, room.width))
    x = _at_full_height(pattern, room.height, wide)
    if x is not None:
        full = full_bars(pattern, x)
        return Sized(pattern, x, full, full)
    # Low bars gain nothing by being broad: past 100 % they would only get lower still for their width.
    wide = min(wide, NOMINAL)
    bars = round_down(room.height - under(wide), 0.01)
    while bars < LEAST_BARS - EPSILON and wide > LEAST_X + EPSILON:
        wide = round(wide - STEP, 6)
        bars = round_down(room.height - under(wide), 0.01)
    if bars < LEAST_BARS - EPSILON:
        least = LEAST_BARS + under(LEAST_X)
        return Misfit(
            f"{_named(pattern)} needs bars of {mm_text(LEAST_BARS)} and {mm_text(under(LEAST_X))} for the digits, "
            f"{mm_text(least)} in all; {mm_text(max(room.height, 0))} are free."
        )
    return Sized(pattern, wide, bars, full_bars(pattern, wide))


def _at_full_height(pattern: Bars, height: float, most: float) -> float | None:
    """The largest module up to `most` whose bars have their full height; None where none has."""
    x = most
    while x >= LEAST_X - EPSILON:
        if full_bars(pattern, x) + under(x) <= height + EPSILON:
            return x
        x = round(x - STEP, 6)
    return None


def _square(pattern: Squares, room: Size) -> Sized | Misfit:
    side = min(room.width, room.height)
    x = round_down(min(side / pattern.width, MOST_SQUARE), STEP)
    if x < LEAST_SQUARE - EPSILON:
        needed = pattern.width * LEAST_SQUARE
        return Misfit(
            f"Its QR code of {len(pattern.text)} characters has {len(pattern.rows)} modules and 2 × 4 of quiet "
            f"zone; at {mm_text(LEAST_SQUARE)} each that is {mm_text(needed)}, and {mm_text(max(side, 0))} are "
            "free."
        )
    inner = len(pattern.rows) * x
    return Sized(pattern, x, inner, inner)


def _named(pattern: Bars) -> str:
    return f"{pattern.kind} {pattern.text}"


def _too_narrow(pattern: Bars, width: float) -> str:
    left, right = pattern.quiet
    needed = pattern.width * LEAST_X
    return (
        f"{_named(pattern)} has {len(pattern.modules)} modules and quiet zones of {left} and {right}; at "
        f"{percent_text(LEAST_X / NOMINAL, 0)} ({number_text(LEAST_X)} mm each) that is {mm_text(needed)}, and "
        f"{mm_text(max(width, 0))} are free."
    )
