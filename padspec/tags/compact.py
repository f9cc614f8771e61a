"""A low tag: name and price on one line, studio and SKU small under them, the symbol across the foot."""

from padspec.base.geometry import Box, Size
from padspec.scene.nodes import Node
from padspec.tags.content import Content
from padspec.tags.pieces import (
    CAPS,
    DESCENDERS,
    LEAST_READ,
    Sizes,
    Tag,
    TagMisfitError,
    foot_lines,
    name_lines,
    price_size,
    price_width,
    refuse_crowded,
    set_lines,
    set_price,
    small_lines,
    symbol_at,
    symbol_notes,
    told,
)
from padspec.tags.sizing import Misfit, fitted
from padspec.tags.words import Align, reads_leftwards

#: The price takes no more of the width than this.
_PRICE = 0.44


def compact(content: Content, inner: Box, sizes: Sizes) -> Tag:
    """The tag; raises TagMisfitError where its symbol does not fit."""
    head, foot_of_head, notes = _head(content, inner, sizes)
    small = foot_lines(content, inner.x, inner.right, 0.0, sizes.small)
    height = -small[1]
    if content.pattern is None:
        line, top = foot_lines(content, inner.x, inner.right, inner.bottom, sizes.small)
        refuse_crowded(foot_of_head, top, content)
        return Tag((*head, *line), None, notes)
    baseline = foot_of_head + height
    line = foot_lines(content, inner.x, inner.right, baseline, sizes.small)[0]
    top = baseline + DESCENDERS * sizes.small + 0.5
    sized = fitted(content.pattern, Size(inner.width, inner.bottom - top))
    if isinstance(sized, Misfit):
        raise TagMisfitError(sized.message)
    size = sized.size
    symbol = symbol_at(sized, inner.centre[0] - size.width / 2, inner.bottom - size.height, content)
    return Tag((*symbol, *head, *line), sized, (*notes, *symbol_notes(sized)))


def _head(content: Content, inner: Box, sizes: Sizes) -> tuple[tuple[Node, ...], float, tuple[str, ...]]:
    """Name and price on one baseline, the variant under the name; where that ends, and what is told."""
    is_leftwards = reads_leftwards(content.name)
    near, far = (inner.right, inner.x) if is_leftwards else (inner.x, inner.right)
    near_align: Align = "right" if is_leftwards else "left"
    far_align: Align = "left" if is_leftwards else "right"
    nodes: list[Node] = []
    room, price = inner.width, 0.0
    if content.price is not None:
        price = price_size(content.price, content, _PRICE * inner.width, sizes.price)
        room -= price_width(content.price, content) * price + 1.5
    name = name_lines(content, room, sizes.name, 2)
    if name.size < LEAST_READ:
        return _under_each_other(content, inner, sizes, near, near_align)
    baseline = inner.y + CAPS * max(price, name.size)
    if content.price is not None:
        nodes += set_price(content.price, far, baseline, content, price, far_align)
    top = baseline - CAPS * name.size
    nodes += set_lines(name, near, top, content, near_align, is_title=True)
    end = top + name.height + DESCENDERS * name.size
    variant = small_lines(content.variant, content, room, sizes.small)
    if variant.lines:
        nodes += set_lines(variant, near, end + 0.2, content, near_align)
        end += 0.2 + CAPS * variant.size + DESCENDERS * variant.size
    return tuple(nodes), end + 0.3, told(("name", name), ("variant", variant))


def _under_each_other(
    content: Content, inner: Box, sizes: Sizes, near: float, align: Align
) -> tuple[tuple[Node, ...], float, tuple[str, ...]]:
    """A long name over the whole width, the price and the variant on a line under it."""
    name = name_lines(content, inner.width, sizes.name, 2)
    far = inner.right if align == "left" else inner.x
    far_align: Align = "right" if align == "left" else "left"
    nodes: list[Node] = [*set_lines(name, near, inner.y, content, align, is_title=True)]
    end = inner.y + name.height + DESCENDERS * name.size
    price, room = 0.0, inner.width
    if content.price is not None:
        price = price_size(content.price, content, _PRICE * inner.width, sizes.price * 0.8)
        room -= price_width(content.price, content) * price + 1.5
    variant = small_lines(content.variant, content, room, sizes.small)
    height = CAPS * max(price, variant.size if variant.lines else 0.0)
    baseline = end + (0.4 + height if height else 0.0)
    if content.price is not None:
        nodes += set_price(content.price, far, baseline, content, price, far_align)
    nodes += set_lines(variant, near, baseline - CAPS * variant.size, content, align)
    return tuple(nodes), baseline + 0.7, told(("name", name), ("variant", variant))
