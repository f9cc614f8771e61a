"""Words of a tag: set as outlines, and fitted to a room by shrinking, then breaking, then shrinking on."""

import unicodedata
from dataclasses import dataclass
from typing import Literal

from padspec.base.colour import Colour
from padspec.base.geometry import Affine
from padspec.compose.lettering.breaking import broken
from padspec.compose.lettering.shaping import shape_line
from padspec.resolve.font import Font
from padspec.scene.nodes import Cause, Shape
from padspec.scene.outline import mapped

Align = Literal["left", "centre", "right"]
_SHARES: dict[Align, float] = {"left": 0.0, "centre": 0.5, "right": 1.0}
_CAUSE = Cause("tag", "lettering")
#: From baseline to baseline, as a share of the size.
LEADING = 1.12
#: What one line may shrink by before it breaks, and a step of shrinking in mm.
_BEFORE_BREAKING, _STEP = 0.8, 0.05
#: Words are never smaller than this, whatever room they have.
_SMALLEST = 0.6


@dataclass(frozen=True, slots=True)
class Fitted:
    """Lines of words at a size (em) in mm."""

    lines: tuple[str, ...]
    size: float

    @property
    def height(self) -> float:
        """From the head of the first line's room to the last baseline."""
        return self.size * (0.74 + LEADING * (len(self.lines) - 1)) if self.lines else 0.0


def set_words(
    text: str,
    x: float,
    baseline: float,
    font: Font,
    size: float,
    align: Align,
    colour: Colour,
    tracking: float = 0.0,
) -> Shape:
    """One line as an outline."""
    shaped = shape_line(font, text, tracking)
    start = x - shaped.advance * size * _SHARES[align]
    placed = Affine.scale(size).then(Affine.move(start, baseline))
    return Shape(mapped(shaped.outline, placed), _CAUSE, fill=colour)


def width_of(text: str, font: Font, size: float = 1.0, tracking: float = 0.0) -> float:
    """How far a line reaches."""
    return shape_line(font, text, tracking).advance * size


def fit(text: str, font: Font, width: float, most: float, least: float, lines: int = 1) -> Fitted:
    """Words in a width: a little smaller first, then in more lines, then down to `least`, and smaller still only
    where nothing else helps.
    """
    if not text:
        return Fitted((), most)
    for count in range(1, lines + 1):
        parts = broken(font, text, count)
        widest = max(width_of(part, font) for part in parts)
        size = _whole(min(most, width / widest)) if widest > 0 else most
        low = max(most * _BEFORE_BREAKING, least) if count < lines else least
        if size >= low - 1e-9:
            return Fitted(parts, size)
    return Fitted(parts, max(size, _SMALLEST))


def _whole(size: float) -> float:
    return round(int(size / _STEP + 1e-9) * _STEP, 4)


def reads_leftwards(text: str) -> bool:
    """Whether the first letter that has a direction reads from right to left (UAX #9, rule P2)."""
    for letter in text:
        kind = unicodedata.bidirectional(letter)
        if kind in ("L", "R", "AL"):
            return kind != "L"
    return False
