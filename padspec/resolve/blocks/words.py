"""Everything on a face that is set in letters: which words, in which font, by which settings."""

from dataclasses import dataclass

from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.marks import Marks
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.font import Font

_DIGITS = "0123456789"


@dataclass(frozen=True, slots=True)
class Words:
    """Text of one block and its font, with the settings that say the text, the font and the colour."""

    block: str
    font: Font
    text: str
    text_key: str
    font_key: str
    colour_key: str


def words_of(blocks: tuple[Block, ...]) -> tuple[Words, ...]:
    """What blocks (holders opened already) have set in letters; blocks without words are left out."""
    return tuple(found for block in blocks if (found := _words(block)) is not None and found.text)


def _words(block: Block) -> Words | None:
    if isinstance(block, Heading):
        return Words(block.id, block.font, block.text, "text", "font", "colour")
    if isinstance(block, Marks) and block.numbered:
        return Words(block.id, block.font, _DIGITS, "numbered", "font", "numeral-colour")
    if isinstance(block, Rows) and block.labels:
        text = "\n".join(block.labels.texts) or _DIGITS
        return Words(block.id, block.labels.font, text, "labels", "label-font", "label-colour")
    return None
