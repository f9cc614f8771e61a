"""A tag's words, price, symbol and picture arranged in its room: one of three ways, by its shape.

`beside`: a wide tag, words at the left and the symbol at the right. `stacked`: a high one, all centred, the
picture at the head and the symbol at the foot. `compact`: a low one, name and price on one line over the symbol.
"""

from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON
from padspec.resolve.tag_sheets import TagSheet
from padspec.tags.beside import beside
from padspec.tags.compact import compact
from padspec.tags.content import Content
from padspec.tags.pieces import CAPS, LEAST_COLUMN, Sizes, Tag, TagMisfitError, sizes_of
from padspec.tags.sizing import least_size
from padspec.tags.stacked import stacked

#: A tag this many times as wide as it is high is a wide one.
_WIDE = 1.25
#: Without a symbol, tags lower than these are compact, in mm.
_LEAST_BESIDE, _LEAST_STACKED = 22.0, 34.0
#: Where words and symbol have no room, the words are tried so much smaller.
_SHARES = (1.0, 0.9, 0.8, 0.7, 0.6)


def arranged(content: Content, sheet: TagSheet, inner: Box) -> Tag:
    """The tag in the part of its label that may be printed on. Raises TagMisfitError."""
    misfit = TagMisfitError()
    for share in _SHARES:
        try:
            return _arranged(content, sheet, inner, sizes_of(sheet.label).times(share))
        except TagMisfitError as error:
            misfit = error
    raise misfit


def _arranged(content: Content, sheet: TagSheet, inner: Box, sizes: Sizes) -> Tag:
    corner = max(1.2, sheet.corner - (inner.x if inner.x < sheet.corner else 0.0))
    symbol = least_size(content.pattern) if content.pattern is not None else None
    is_wide = inner.width >= _WIDE * inner.height
    if is_wide and _fits_beside(inner, symbol, sizes):
        return beside(content, inner, sizes, corner)
    if _fits_stacked(inner, symbol, sizes, content):
        return stacked(content, inner, sizes, corner)
    return compact(content, inner, sizes)


def _fits_beside(inner: Box, symbol: Size | None, sizes: Sizes) -> bool:
    if symbol is None:
        return inner.height >= _LEAST_BESIDE
    free = inner.width - symbol.width - sizes.gap
    return free >= max(LEAST_COLUMN, 0.28 * inner.width) and inner.height >= symbol.height - EPSILON


def _fits_stacked(inner: Box, symbol: Size | None, sizes: Sizes, content: Content) -> bool:
    if symbol is None:
        return inner.height >= _LEAST_STACKED
    variant = sizes.small * 1.2 if content.variant else 0.0
    words = sizes.name + variant + CAPS * sizes.price + CAPS * sizes.small + 4 * sizes.gap
    return inner.height >= symbol.height + words and inner.width >= symbol.width
