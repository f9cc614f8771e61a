"""The pieces that every arrangement of a tag is put together from: sizes, price, name, small lines, symbol."""

from dataclasses import dataclass
from math import sqrt

from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON, mm_text, round_down
from padspec.resolve.written_price import PriceText
from padspec.scene.nodes import Node, Shape
from padspec.tags.bars import draw_symbol
from padspec.tags.content import INK, QUIET, Content
from padspec.tags.pattern import Bars
from padspec.tags.sizing import Sized
from padspec.tags.words import LEADING, Align, Fitted, fit, set_words, width_of

#: Lettering smaller than this is told: 4 pt (common practice, no published source).
LEAST_READ = 1.4
#: Capitals and figures reach this share of the size above the baseline; descenders this share below.
CAPS, DESCENDERS = 0.72, 0.22
#: A code for a currency is set smaller than the amount; a sign is not.
_CODE_SHARE = 0.5
#: Narrower is no room for words, in mm.
LEAST_COLUMN = 16.0


@dataclass(frozen=True, slots=True)
class Sizes:
    """Sizes (em) in mm that go with the size of a tag, and air between its parts."""

    small: float
    name: float
    price: float
    gap: float

    def times(self, share: float) -> "Sizes":
        """All of them smaller; small print only down to what can be read."""
        small = max(self.small * share, min(self.small, LEAST_READ))
        return Sizes(small, self.name * share, self.price * share, self.gap * share)


@dataclass(frozen=True, slots=True)
class Tag:
    """A tag as it is drawn, from its own top left corner; its symbol or None; what is to be told of it, to stand
    after its SKU.
    """

    nodes: tuple[Node, ...]
    symbol: Sized | None
    notes: tuple[str, ...]


class TagMisfitError(Exception):
    """A symbol or words that do not fit their tag; the text holds the sum."""


def refuse_crowded(end: float, start: float, content: Content) -> None:
    """Raise TagMisfitError where words would run into what stands under them."""
    if end > start + EPSILON:
        raise TagMisfitError(f"The words of {content.sku} are {mm_text(end - start)} too high for the tag.")


def sizes_of(label: Size) -> Sizes:
    """What is common on tags of this size (own judgement, looked at on paper)."""
    side = sqrt(label.width * label.height)
    return Sizes(
        small=_between(0.043 * side, 1.8, 2.7),
        name=_between(0.085 * side, 2.6, 6.4),
        price=_between(0.145 * side, 4.0, 11.0),
        gap=_between(0.032 * side, 0.9, 2.4),
    )


def _between(value: float, least: float, most: float) -> float:
    return round_down(min(max(value, least), most), 0.05)


def name_lines(content: Content, width: float, size: float, lines: int) -> Fitted:
    """The pad's name fitted to a width."""
    return fit(content.name, content.look.title, width, size, max(LEAST_READ, size * 0.55), lines)


def small_lines(text: str, content: Content, width: float, size: float, lines: int = 1) -> Fitted:
    """Small print fitted to a width."""
    return fit(text, content.look.text, width, size, LEAST_READ, lines)


def told(*parts: tuple[str, Fitted]) -> tuple[str, ...]:
    """Which words came out too small to be read well."""
    return tuple(
        f"the {what} is set at {mm_text(part.size)}; less than {mm_text(LEAST_READ)} is hard to read. "
        "Take a larger tag, or shorten it."
        for what, part in parts
        if part.lines and part.size < LEAST_READ - EPSILON
    )


def set_lines(
    fitted: Fitted, x: float, top: float, content: Content, align: Align, is_title: bool = False
) -> tuple[Shape, ...]:
    """Fitted lines from the head of their room down: a title in the pad's own lettering, or small print."""
    look = content.look
    font, colour = (look.title, look.colour) if is_title else (look.text, QUIET)
    return tuple(
        set_words(line, x, top + fitted.size * (CAPS + LEADING * n), font, fitted.size, align, colour)
        for n, line in enumerate(fitted.lines)
    )


def small_word(
    text: str, x: float, baseline: float, content: Content, size: float, align: Align
) -> tuple[Shape, ...]:
    """One line of small print on a baseline; nothing for no text."""
    return (set_words(text, x, baseline, content.look.text, size, align, QUIET),) if text else ()


def foot_lines(
    content: Content, left: float, right: float, baseline: float, size: float
) -> tuple[tuple[Shape, ...], float]:
    """The studio's name at the left and the SKU at the right of one line, or under each other in the middle where
    both are too long for it; and where that begins.
    """
    studio, sku = content.studio, content.shown_sku
    room, font = right - left, content.look.text
    both = width_of(studio, font) + width_of(sku, font) + (1.5 if sku else 0.0)
    shared = min(size, room / both) if both else size
    if shared >= max(LEAST_READ, size * 0.8):
        if not sku:
            nodes = small_word(studio, (left + right) / 2, baseline, content, shared, "centre")
        else:
            nodes = (
                *small_word(studio, left, baseline, content, shared, "left"),
                *small_word(sku, right, baseline, content, shared, "right"),
            )
        return nodes, baseline - CAPS * shared
    found: list[Shape] = []
    top = baseline
    for text in (sku, studio):
        if text:
            own = min(size, room / width_of(text, font))
            found += small_word(text, (left + right) / 2, top, content, own, "centre")
            top -= size * LEADING
    return tuple(found), top + size * (LEADING - CAPS)


def price_size(price: PriceText, content: Content, width: float, most: float) -> float:
    """The size of a price that fits a width."""
    return min(most, round_down(width / price_width(price, content), 0.05))


def _price_parts(price: PriceText) -> tuple[tuple[str, float], ...]:
    parts = []
    for text in (price.before, price.amount, price.after):
        is_code = text is not price.amount and sum(letter.isalpha() for letter in text) > 1
        parts.append((text, _CODE_SHARE if is_code else 1.0))
    return tuple(parts)


def price_width(price: PriceText, content: Content) -> float:
    """How far a price reaches at an em of 1 mm."""
    return sum(width_of(text, content.look.title, share) for text, share in _price_parts(price) if text)


def set_price(
    price: PriceText, x: float, baseline: float, content: Content, size: float, align: Align
) -> tuple[Shape, ...]:
    """The price on a baseline, its currency's code smaller."""
    start = x - price_width(price, content) * size * {"left": 0.0, "centre": 0.5, "right": 1.0}[align]
    found = []
    for text, share in _price_parts(price):
        if text:
            found.append(set_words(text, start, baseline, content.look.title, size * share, "left", INK))
            start += width_of(text, content.look.title, size * share)
    return tuple(found)


def symbol_at(sized: Sized, x: float, top: float, content: Content) -> tuple[Shape, ...]:
    """The symbol with its left top corner there, to the thousandth of a millimetre that files hold."""
    size = sized.size
    return draw_symbol(sized, Box(round(x, 3), round(top, 3), size.width, size.height), content.look.strong)


def symbol_notes(sized: Sized | None) -> tuple[str, ...]:
    """What is to be told of a symbol."""
    if sized is None or not isinstance(sized.pattern, Bars) or not sized.truncated:
        return ()
    note = (
        f"the tag is too low for the bars, which are {mm_text(sized.bars)} high; at this width they should "
        f"be {mm_text(sized.full)}. Hand scanners read them, those in a counter may not."
    )
    return (note,)
