"""Everything that a maker may change in a pad, as named facts in words.

The facts are read off the resolved design, field by field, so that a change in the studio or in a layout shows as
what it does in each design, and so that a new kind of block cannot be forgotten. What follows from them and is
worth telling (rows that fit, leaves on a sheet) is added.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from typing import Any

from padspec.base.colour import Colour
from padspec.base.geometry import Sides, Size
from padspec.base.numbers import mm_text
from padspec.comparing.wording import Word, worded
from padspec.comparing.words import WORDS
from padspec.pipeline import Pad
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.block import Block, Holder
from padspec.resolve.blocks.grid import Grid
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import Design, blocks
from padspec.workspace import joined

#: What is told in one line of words, however it is made up.
_WHOLE = (Colour, Size, Sides)
#: A pitch or size as drawn is told where it is this much off what was asked for, in mm.
_OFF = 0.005
_MOST_PARTS = 4
_ORDER, _HOLDS = "blocks from head to foot", "holds"
#: Words for which blocks there are and in what order, which need not be told where blocks come or go.
ORDERS = (_ORDER, _HOLDS)
#: Heads that are no blocks.
HEADS = frozenset(
    {"palette", "limits", "accepted", "face"}.union(
        word.section for words in WORDS.values() for word in words.values() if isinstance(word, Word)
    )
)
_QUOTED = Word("", "quoted")


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact: what it is called and its value in words.

    `section` is the block's id or another head, empty for the design itself; `key` the key that sets it; `head`
    says that facts of its parts are told beside it, so that it counts only where all of it comes or goes. `colour`
    and `count` are the value itself where a change can be measured.
    """

    section: str
    what: str
    text: str
    key: str = ""
    head: bool = False
    colour: Colour | None = None
    count: int | None = None


Facts = dict[tuple[str, str], Fact]


def facts(pad: Pad, seen: Mapping[str, str] | None = None) -> Facts:
    """The facts of a pad by section and word, in the order in which they are told.

    `seen` are the digests of the files that the pad was made from, as its workspace gives them: with them, a
    picture whose pixels changed under the same name is told.
    """
    return {(fact.section, fact.what): fact for fact in every_fact(pad, seen)}


def every_fact(pad: Pad, seen: Mapping[str, str] | None = None) -> tuple[Fact, ...]:
    """The facts of a pad in their order; no two of one section have the same word."""
    return (
        *_told(pad.design, ""),
        *_palette(pad.design),
        *_rules(pad.design),
        *(fact for block in blocks(pad.design) for fact in _of_block(block, pad)),
        *_of_sheet(pad),
        *_files(pad.design, seen or {}),
    )


def kinds(design: Design) -> dict[str, str]:
    """Every block by its id, with its kind in a word."""
    return {block.id: type(block).__name__.lower() for block in blocks(design)}


def _told(value: Any, section: str, prefix: str = "") -> Iterator[Fact]:
    """The facts of a frozen dataclass, field by field."""
    for field in fields(value):
        word = WORDS[type(value)][field.name]
        if isinstance(word, Word) and (not word.beside or getattr(value, word.beside)):
            yield from _field(getattr(value, field.name), word, word.section or section, prefix)


def _field(value: Any, word: Word, section: str, prefix: str) -> Iterator[Fact]:
    what = " ".join(part for part in (prefix, word.what) if part)
    nested = is_dataclass(value) and not isinstance(value, _WHOLE) and word.unit != "list"
    if not nested:
        colour = value if isinstance(value, Colour) else None
        count = value if word.unit == "count" and isinstance(value, int) else None
        yield Fact(section, what, worded(value, word), word.key, colour=colour, count=count)
        return
    parts = tuple(_told(value, section, what))
    if word.what:
        text = ", ".join(f"{part.what.removeprefix(what).strip()} {part.text}" for part in parts[:_MOST_PARTS])
        yield Fact(section, what, text, word.key, head=True)
    yield from parts


def _palette(design: Design) -> Iterator[Fact]:
    for name, colour in design.palette:
        yield Fact("palette", name, colour.hex, f"palette.{name}", colour=colour)


def _rules(design: Design) -> Iterator[Fact]:
    """The limits that the maker set, and the findings that are accepted."""
    for limit in design.limits:
        level = f" for a {limit.severity.word}" if limit.severity else ""
        yield Fact("limits", f"{limit.check}{level}", limit.text, f"limits.{limit.check}")
    for allowance in design.allowances:
        yield Fact("accepted", allowance.check, worded(allowance.reason, _QUOTED), "allow")


def _of_block(block: Block, pad: Pad) -> Iterator[Fact]:
    yield from _told(block, block.id)
    if isinstance(block, Holder):
        inside = ", ".join(inner.id for inner in block.holds)
        yield Fact(block.id, _HOLDS, inside or "nothing", "holds")
    yield from _as_drawn(block, pad)


def _as_drawn(block: Block, pad: Pad) -> Iterator[Fact]:
    """What a block came to on the face: how many rows, and sizes that are not what was asked for."""
    placement = next((one for one in pad.face.placements if one.block == block.id), None)
    if placement is None:
        return
    if placement.rows:
        yield Fact(block.id, "number of rows", str(placement.rows), "pitch", count=placement.rows)
    match block:
        case Rows() | Grid() if placement.pitch and abs(placement.pitch - block.pitch) > _OFF:
            yield Fact(block.id, "pitch as drawn", mm_text(placement.pitch), "pitch")
        case Heading() if placement.size and abs(placement.size - block.size) > _OFF:
            yield Fact(block.id, "size as drawn", mm_text(placement.size), "size")
        case _:
            pass


def _of_sheet(pad: Pad) -> Iterator[Fact]:
    order = ", ".join(block.id for block in pad.design.face)
    yield Fact("face", _ORDER, order or "none")
    sheet = pad.sheet
    if sheet is None:
        yield Fact("sheet", "leaves on a sheet", "none: it does not fit", "sheet.n-up", count=0)
        return
    yield Fact("sheet", "leaves on a sheet", str(sheet.n_up), "sheet.n-up", count=sheet.n_up)
    yield Fact("sheet", "sheets for a pad", str(sheet.copies), "leaves", count=sheet.copies)
    yield Fact("sheet", "cuts", str(sheet.cuts), count=sheet.cuts)
    yield Fact("sheet", "marks left out for want of room", ", ".join(sheet.left_out) or "none", "sheet.marks")


def _files(design: Design, seen: Mapping[str, str]) -> Iterator[Fact]:
    """The content of every picture file, by a few digits of its digest."""
    for block in blocks(design):
        if isinstance(block, Art):
            file = design.key(block.id, "file").place.file
            yield from _content(block.id, "content of the picture", file, block.file, seen)
    pattern = design.ground.pattern
    if pattern is not None and pattern.picture is not None:
        stem = pattern.picture.image.name
        paths = [path for path in seen if path.rpartition("/")[2].startswith(f"{stem}.")]
        for path in paths[:1]:
            yield Fact("ground", "content of the pattern's picture", seen[path][:8], "ground.pattern.file")


def _content(section: str, what: str, file: str, named: str, seen: Mapping[str, str]) -> Iterator[Fact]:
    try:
        path = joined(file, named)
    except ValueError:
        return
    if seen.get(path):
        yield Fact(section, what, seen[path][:8], "file")
