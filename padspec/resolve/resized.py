"""A design on a leaf of another size: sizes left to `auto`, and pictures by share, follow the leaf."""

from dataclasses import replace

from padspec.base.geometry import Size
from padspec.base.units import is_share
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.columns import Columns
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.stack import Stack
from padspec.resolve.design import Design
from padspec.resolve.drafts import scale_for


def resized(design: Design, trim: Size) -> Design:
    """The design as it would be resolved for this trim, to a tenth of a millimetre."""
    return replace(design, trim=trim, face=_resized(design.face, design, trim))


def _resized(some: tuple[Block, ...], design: Design, trim: Size) -> tuple[Block, ...]:
    return tuple(_block(block, design, trim) for block in some)


def _block(block: Block, design: Design, trim: Size) -> Block:
    def follows(key: str, value: float) -> float:
        if design.key(block.id, key).text != "auto" or not value:
            return value
        return round(value * scale_for(trim) / scale_for(design.trim), 1)

    def inset(value: float) -> float:
        safe = design.safe
        followed = follows("inset", value)
        return followed if followed == value else max(followed, safe.left, safe.top, safe.right, safe.bottom)

    match block:
        case Panel():
            return replace(
                block,
                holds=_resized(block.holds, design, trim),
                corner=follows("corner", block.corner),
                inset=inset(block.inset),
                pad=follows("pad", block.pad),
            )
        case Columns() | Stack():
            return replace(block, holds=_resized(block.holds, design, trim), inset=inset(block.inset))
        case Heading():
            size, least = follows("size", block.size), follows("least-size", block.least_size)
            return replace(block, size=size, least_size=least, most_size=follows("most-size", block.most_size))
        case Art():
            followed = replace(block, inset=inset(block.inset), overlap=follows("overlap", block.overlap))
            return _picture(followed, design, trim)
        case _:
            return block


def _picture(block: Art, design: Design, trim: Size) -> Art:
    """A picture whose height is a share of the leaf's, as far as the width between its insets allows."""
    if not is_share(design.key(block.id, "height").text):
        return block
    growth = trim.height / design.trim.height
    room = max(trim.width - 2 * (block.inset + block.frame), 1.0)
    growth = max(min(growth, room / block.width), min(1.0, room / block.width))
    return replace(block, width=block.width * growth, height=block.height * growth)
