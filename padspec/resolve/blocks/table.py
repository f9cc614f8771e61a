"""Every kind of block with its reader: one line each. A new kind is a file here, one in compose/blocks, a schema
`block-KIND.schema.json`, and a line in each of the three tables (the third is BLOCKS of the schemas).
"""

from collections.abc import Callable

from padspec.resolve.blocks.art import read_art
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.columns import read_columns
from padspec.resolve.blocks.grid import read_grid
from padspec.resolve.blocks.heading import read_heading
from padspec.resolve.blocks.marks import read_marks
from padspec.resolve.blocks.panel import read_panel
from padspec.resolve.blocks.rows import read_rows
from padspec.resolve.blocks.space import read_space
from padspec.resolve.blocks.stack import read_stack
from padspec.resolve.drafts import Draft
from padspec.resolve.means import Means

READERS: dict[str, Callable[[Draft, Means], Block | None]] = {
    "art": read_art,
    "heading": read_heading,
    "label": read_heading,
    "brand": read_heading,
    "rows": read_rows,
    "grid": read_grid,
    "marks": read_marks,
    "space": read_space,
}
#: Kinds that hold other blocks.
HOLDERS: dict[str, Callable[[Draft, Means, tuple[Block, ...]], Block]] = {
    "panel": read_panel,
    "columns": read_columns,
    "stack": read_stack,
}


def read_blocks(drafts: tuple[Draft, ...], means: Means) -> tuple[Block, ...]:
    """The blocks, head to foot; an art block without a picture is left out."""
    return tuple(block for draft in drafts if (block := _read(draft, means)) is not None)


def _read(draft: Draft, means: Means) -> Block | None:
    if draft.kind in HOLDERS:
        return HOLDERS[draft.kind](draft, means, read_blocks(draft.holds, means))
    return READERS[draft.kind](draft, means)
