"""A design with one thing changed: exactly what one line of its file would change."""

from collections.abc import Callable
from dataclasses import replace

from padspec.base.colour import Colour
from padspec.resolve.blocks.block import Block, Holder
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import Design
from padspec.test_prints.spec_lines import Reach


def with_ground(design: Design, colour: Colour) -> Design:
    """Another ground under the same pattern."""
    return replace(design, ground=replace(design.ground, colour=colour))


def with_panel(design: Design, reach: Reach, colour: Colour) -> Design:
    """Other panels, as far as the line reaches."""

    def changed(block: Block) -> Block:
        return replace(block, colour=colour) if isinstance(block, Panel) and block.id in reach.blocks else block

    return _mapped(design, changed)


def with_rule(design: Design, reach: Reach, colour: Colour) -> Design:
    """Other rules, and squares where they have the rules' colour."""

    def changed(block: Block) -> Block:
        if not isinstance(block, Rows) or block.id not in reach.blocks:
            return block
        squares = block.squares
        if squares is not None and block.id in reach.squares:
            squares = replace(squares, colour=colour)
        return replace(block, colour=colour, squares=squares)

    return _mapped(design, changed)


def with_weight(design: Design, reach: Reach, weight: float) -> Design:
    """Heavier or lighter rules and squares."""

    def changed(block: Block) -> Block:
        return replace(block, weight=weight) if isinstance(block, Rows) and block.id in reach.blocks else block

    return _mapped(design, changed)


def _mapped(design: Design, changed: Callable[[Block], Block]) -> Design:
    return replace(design, face=_mapped_blocks(design.face, changed))


def _mapped_blocks(some: tuple[Block, ...], changed: Callable[[Block], Block]) -> tuple[Block, ...]:
    """Every block changed, those that others hold as well."""
    opened = (
        replace(block, holds=_mapped_blocks(block.holds, changed)) if isinstance(block, Holder) else block
        for block in some
    )
    return tuple(changed(block) for block in opened)
