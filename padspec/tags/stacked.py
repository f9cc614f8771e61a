"""A high tag, all of it centred: the picture at the head, name, price, the symbol, and a small line on the
foot.
"""

from dataclasses import dataclass

from padspec.base.geometry import Box, Size
from padspec.scene.nodes import Node
from padspec.tags.content import Content
from padspec.tags.motif import window
from padspec.tags.pieces import (
    CAPS,
    Sizes,
    Tag,
    TagMisfitError,
    foot_lines,
    name_lines,
    price_size,
    refuse_crowded,
    set_lines,
    set_price,
    small_lines,
    symbol_at,
    symbol_notes,
    told,
)
from padspec.tags.sizing import Misfit, Sized, fitted, least_size
from padspec.tags.words import LEADING, Fitted

#: The symbol's share of the height, where the least one needs no more; a picture lower than this is none.
_SYMBOL, _LEAST_WINDOW = 0.3, 9.0
#: Between the parts there is this much air at least beside a picture, as a share of the gap.
_LEAST_AIR = 0.6
#: The picture is no higher than this share of its width or of the tag.
_MOST_WIDE, _MOST_HIGH = 1.1, 0.5


def stacked(content: Content, inner: Box, sizes: Sizes, corner: float) -> Tag:
    """The tag; raises TagMisfitError where its symbol or its words do not fit."""
    middle = inner.centre[0]
    foot, y = foot_lines(content, inner.x, inner.right, inner.bottom, sizes.small)
    nodes: list[Node] = [*foot]
    sized = _symbol(content, inner)
    if sized is not None:
        y -= sizes.gap + sized.size.height
        nodes += symbol_at(sized, middle - sized.size.width / 2, y, content)
    name = name_lines(content, inner.width, sizes.name, 3)
    variant = small_lines(content.variant, content, inner.width, sizes.small, 2)
    price = price_size(content.price, content, inner.width, sizes.price) if content.price else 0.0
    room = Box(inner.x, inner.y, inner.width, y - sizes.gap - inner.y)
    # The price stands where it would under a name of one line, so that all tags of a sheet have it on one height.
    usual = _shared(room, inner, _words(1, bool(variant.lines), sizes), sizes, bool(price))
    own = _shared(room, inner, _words(len(name.lines), bool(variant.lines), sizes, variant), sizes, bool(price))
    refuse_crowded(inner.y, inner.y + own.air, content)
    if content.price is not None:
        nodes += set_price(content.price, middle, room.bottom - max(usual.air, 0.0), content, price, "centre")
    top = inner.y
    if own.picture:
        nodes += window(content.look.motif, Box(inner.x, inner.y, inner.width, own.picture), corner)
        top += own.picture + sizes.gap
    top += own.air
    # Every name stands on the baseline of its full size.
    nodes += set_lines(name, middle, top + CAPS * (sizes.name - name.size), content, "centre", is_title=True)
    nodes += set_lines(variant, middle, top + _words(len(name.lines), False, sizes), content, "centre")
    notes = told(("name", name), ("variant", variant))
    return Tag(tuple(nodes), sized, (*notes, *symbol_notes(sized)))


@dataclass(frozen=True, slots=True)
class _Shared:
    """How the height over symbol and foot is shared out: the picture's, and the air between the parts."""

    picture: float
    air: float


def _shared(room: Box, inner: Box, words: float, sizes: Sizes, has_price: bool) -> _Shared:
    """What words leave goes to a picture where that is enough for one, and else is air, shared evenly."""
    free = room.height - words - ((CAPS * sizes.price + sizes.gap) if has_price else 0.0)
    picture = min(
        free - sizes.gap - (2 + has_price) * _LEAST_AIR * sizes.gap,
        inner.width * _MOST_WIDE,
        inner.height * _MOST_HIGH,
    )
    if picture < _LEAST_WINDOW:
        return _Shared(0.0, free / (2 + has_price))
    return _Shared(picture, (free - picture - sizes.gap) / (2 + has_price))


def _words(lines: int, has_variant: bool, sizes: Sizes, variant: Fitted | None = None) -> float:
    """The height of a name of so many lines at its full size, and of the variant under it."""
    name = sizes.name * (0.74 + LEADING * (lines - 1) + 0.24) + sizes.gap * 0.6
    if not has_variant:
        return name
    count = len(variant.lines) if variant else 1
    return name + sizes.small * (0.98 + LEADING * (count - 1)) + sizes.gap * 0.6


def _symbol(content: Content, inner: Box) -> Sized | None:
    if content.pattern is None:
        return None
    height = max(_SYMBOL * inner.height, least_size(content.pattern).height)
    sized = fitted(content.pattern, Size(inner.width, height))
    if isinstance(sized, Misfit):
        raise TagMisfitError(sized.message)
    return sized
