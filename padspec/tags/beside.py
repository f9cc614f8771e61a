"""A wide tag: words at the left, the price on their foot; at the right the studio's name and the symbol under
it.
"""

from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON
from padspec.scene.nodes import Node
from padspec.tags.content import Content
from padspec.tags.motif import window
from padspec.tags.pieces import (
    CAPS,
    LEAST_COLUMN,
    Sizes,
    Tag,
    TagMisfitError,
    name_lines,
    price_size,
    refuse_crowded,
    set_lines,
    set_price,
    small_lines,
    small_word,
    symbol_at,
    symbol_notes,
    told,
)
from padspec.tags.sizing import Misfit, Sized, fitted, least_size
from padspec.tags.words import Fitted, reads_leftwards

#: Words keep at least this share of the width; a picture lower than this is none, and one higher looks heavy.
_WORDS, _LEAST_WINDOW, _MOST_WINDOW = 0.42, 7.0, 0.46
#: Words this broad, in mm, have room for a picture beside them.
_BROAD = 26.0


def beside(content: Content, inner: Box, sizes: Sizes, corner: float) -> Tag:
    """The tag; raises TagMisfitError where its symbol does not fit."""
    sized = _symbol(content, inner, sizes)
    has_head = sized is not None and sized.size.height + _head(sizes) <= inner.height + EPSILON
    right, width = _right(content, inner, sizes, sized, corner, has_head)
    column = Box(inner.x, inner.y, inner.width - width - sizes.gap, inner.height)
    between, column = _between(content, column, sizes, corner) if sized is not None else ((), column)
    studio = "" if has_head else content.studio
    left, notes = _words(content, column, sizes, corner, studio, has_window=sized is not None and not between)
    return Tag((*right, *between, *left), sized, (*notes, *symbol_notes(sized)))


def _symbol(content: Content, inner: Box, sizes: Sizes) -> Sized | None:
    if content.pattern is None:
        return None
    words = max(LEAST_COLUMN, _WORDS * inner.width) + sizes.gap
    height = inner.height - _head(sizes)
    if height < least_size(content.pattern).height - EPSILON:
        height = inner.height
    sized = fitted(content.pattern, Size(inner.width - words, height))
    if isinstance(sized, Misfit):
        # Words make do with less rather than that there is no symbol.
        sized = fitted(content.pattern, Size(inner.width - LEAST_COLUMN - sizes.gap, height))
    if isinstance(sized, Misfit):
        raise TagMisfitError(sized.message)
    return sized


def _head(sizes: Sizes) -> float:
    """What the studio's name takes over a symbol."""
    return sizes.small * CAPS + sizes.gap


def _right(
    content: Content, inner: Box, sizes: Sizes, sized: Sized | None, corner: float, has_head: bool
) -> tuple[tuple[Node, ...], float]:
    """What stands at the right, and how wide that is: the symbol, or the picture where there is none."""
    if sized is None:
        width = min(inner.height * 1.15, inner.width * 0.42)
        box = Box(inner.right - width, inner.y, width, inner.height)
        return window(content.look.motif, box, corner), width
    size = sized.size
    x = inner.right - size.width
    name = small_lines(content.studio if has_head else "", content, size.width, sizes.small)
    studio = set_lines(name, x + size.width / 2, inner.y, content, "centre")
    return (*studio, *symbol_at(sized, x, inner.bottom - size.height, content)), size.width


def _between(content: Content, column: Box, sizes: Sizes, corner: float) -> tuple[tuple[Node, ...], Box]:
    """A picture at the right of a broad column and what that leaves for words; none, and all, of a narrow one."""
    left = column.width - column.height - sizes.gap
    if left < _BROAD:
        return (), column
    box = Box(column.right - column.height, column.y, column.height, column.height)
    return window(content.look.motif, box, corner), Box(column.x, column.y, left, column.height)


def _words(
    content: Content, column: Box, sizes: Sizes, corner: float, studio_name: str, has_window: bool
) -> tuple[tuple[Node, ...], tuple[str, ...]]:
    """The left column: its foot first, then the name from its head, under a picture where that leaves room for
    one.
    """
    foot, top_of_foot, foot_notes = _foot(content, column, sizes)
    name = name_lines(content, column.width, sizes.name, 3)
    variant = small_lines(content.variant, content, column.width, sizes.small, 2)
    studio = small_lines(studio_name, content, column.width, sizes.small)
    height = _height(studio, sizes) + _height(name, sizes) + _height(variant, sizes)
    free = top_of_foot - column.y - height
    refuse_crowded(column.y + height, top_of_foot, content)
    nodes: list[Node] = []
    y, x = column.y, column.x
    if has_window and free >= _LEAST_WINDOW + sizes.gap:
        box = Box(x, y, column.width, min(free - sizes.gap, column.height * _MOST_WINDOW))
        nodes += window(content.look.motif, box, corner)
        y = box.bottom + sizes.gap
    is_leftwards = reads_leftwards(content.name)
    at = column.right if is_leftwards else x
    for part, is_title in ((studio, False), (name, True), (variant, False)):
        nodes += set_lines(part, at, y, content, "right" if is_leftwards else "left", is_title)
        y += _height(part, sizes)
    notes = told(("name", name), ("variant", variant), ("studio's name", studio))
    return (*nodes, *foot), (*foot_notes, *notes)


def _height(part: Fitted, sizes: Sizes) -> float:
    """Lines with the air under them; nothing for none."""
    return part.height + 0.24 * part.size + sizes.gap * 0.7 if part.lines else 0.0


def _foot(content: Content, column: Box, sizes: Sizes) -> tuple[tuple[Node, ...], float, tuple[str, ...]]:
    """The SKU on the foot of the column and the price over it; where they begin, and what is told."""
    sku = small_lines(content.shown_sku, content, column.width, sizes.small)
    nodes: list[Node] = []
    top = column.bottom
    if sku.lines:
        nodes += small_word(sku.lines[0], column.x, column.bottom, content, sku.size, "left")
        top -= CAPS * sizes.small + sizes.gap
    if content.price is not None:
        size = price_size(content.price, content, column.width, sizes.price)
        nodes += set_price(content.price, column.x, top, content, size, "left")
        top -= CAPS * size + sizes.gap
    return tuple(nodes), top, told(("SKU", sku))
