"""How each kind of block is composed: one line each.

`gives_way` orders the kinds where there is too little height: the lowest gives way first.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from padspec.compose.blocks import art, columns, grid, heading, marks, panel, pile, rows, space
from padspec.compose.face import Drawn, Room, Stacking
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.columns import Columns
from padspec.resolve.blocks.grid import Grid
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.marks import Marks
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.blocks.space import Space
from padspec.resolve.blocks.stack import Stack


@dataclass(frozen=True, slots=True)
class Kind:
    """A block on its own: the height it needs in a width, and what it draws in a room, `margin` kept clear."""

    need: Callable[[Any, float, float], float]
    draw: Callable[[Any, Room, float], Drawn]
    gives_way: int


@dataclass(frozen=True, slots=True)
class HolderKind:
    """A block that holds others, and stacks them by what it is given."""

    need: Callable[[Any, float, Stacking], float]
    draw: Callable[[Any, Room, Stacking], Drawn]
    gives_way: int


KINDS: dict[type[Block], Kind | HolderKind] = {
    Rows: Kind(lambda b, _width, margin: rows.need(b, margin), rows.draw, 0),
    Grid: Kind(lambda b, _width, margin: grid.need(b, margin), grid.draw, 0),
    Space: Kind(lambda b, _width, _margin: space.need(b), lambda b, room, _margin: space.draw(b, room), 1),
    Marks: Kind(marks.need, marks.draw, 2),
    Art: Kind(lambda b, _width, _margin: art.need(b), lambda b, room, _margin: art.draw(b, room), 3),
    Panel: HolderKind(panel.need, panel.draw, 4),
    Columns: HolderKind(columns.need, columns.draw, 4),
    Stack: HolderKind(pile.need, pile.draw, 4),
    Heading: Kind(lambda b, width, margin: heading.need(b, width - 2 * margin, margin), heading.draw, 5),
}
