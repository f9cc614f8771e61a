"""Every field that a resolved design is made of has its word, or a reason to be told elsewhere."""

import sys
import types
import typing
from dataclasses import fields, is_dataclass

import pytest

from padspec.base.colour import Colour
from padspec.base.geometry import Sides, Size
from padspec.base.place import Place
from padspec.comparing.wording import Apart, Word, worded
from padspec.comparing.words import WORDS
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.table import READERS
from padspec.resolve.design import Design
from padspec.resolve.key import Key
from padspec.scene.nodes import Raster, Vector

#: What is told in one line, or never.
_LEAVES = (Colour, Size, Sides, Place, Key, Raster, Vector)


def parts_of(hint: object) -> set[type]:
    """The dataclasses that a type is made of."""
    found: set[type] = set()
    for inner in typing.get_args(hint):
        found |= parts_of(inner)
    if isinstance(hint, type) and is_dataclass(hint) and not isinstance(hint, types.GenericAlias):
        found.add(hint)
    return found


def is_its_own(kind: type) -> bool:
    """Whether a module of padspec holds it by its name: a slotted dataclass leaves one without slots behind."""
    return kind.__module__.startswith("padspec.") and vars(sys.modules[kind.__module__]).get(kind.__name__) is kind


def kinds_under(kind: type) -> set[type]:
    return {kind}.union(*(kinds_under(inner) for inner in kind.__subclasses__()))


def reached(kind: type) -> set[type]:
    """A dataclass with all that its fields hold, whatever the depth."""
    found: set[type] = set()
    to_do = [kind]
    while to_do:
        one = to_do.pop()
        if one in found or one in _LEAVES:
            continue
        found.add(one)
        for hint in typing.get_type_hints(one).values():
            to_do += parts_of(hint)
        if one is Block:
            to_do += [inner for inner in kinds_under(Block) if is_its_own(inner)]
    return found


KINDS = sorted(reached(Design), key=lambda kind: kind.__name__)
#: What other blocks are built on is never there by itself.
TOLD = [kind for kind in KINDS if kind.__name__ not in ("Block", "Holder")]


def test_the_walk_finds_blocks_and_the_workshop() -> None:
    names = {kind.__name__ for kind in TOLD}
    assert {"Design", "Rows", "Squares", "Heading", "Edge", "Pattern", "Cartridge", "Font", "Stack"} <= names
    assert len(READERS) >= 8


@pytest.mark.parametrize("kind", TOLD, ids=lambda kind: kind.__name__)
def test_every_field_has_a_word_or_a_reason(kind: type) -> None:
    assert kind in WORDS, f"{kind.__name__} has no words in comparing/words.py"
    assert set(WORDS[kind]) == {field.name for field in fields(kind)}
    assert all(word.why for word in WORDS[kind].values() if isinstance(word, Apart))


def test_no_words_are_kept_for_what_a_design_no_longer_has() -> None:
    assert set(WORDS) == set(TOLD)


@pytest.mark.parametrize("kind", TOLD, ids=lambda kind: kind.__name__)
def test_no_two_fields_of_one_kind_are_called_alike(kind: type) -> None:
    words = [word.what for word in WORDS[kind].values() if isinstance(word, Word) and word.what]
    assert len(words) == len(set(words))


@pytest.mark.parametrize(
    ("value", "word", "said"),
    [
        (7.14375, Word("", "mm"), "7.144 mm"),
        (0.3, Word("", "share"), "30 %"),
        (45.0, Word("", "degrees"), "45°"),
        (True, Word("", "flag"), "yes"),
        (Colour(122, 59, 88), Word("", "colour"), "#7a3b58"),
        (Size(90.0, 190.0), Word("", "size"), "90 mm × 190 mm"),
        (Sides(4.2, 4.2, 4.2, 4.2), Word("", "sides"), "4.2 mm"),
        (Sides(1.0, 2.0, 3.0, 4.0), Word("", "sides"), "left 1 mm, head 2 mm, right 3 mm, foot 4 mm"),
        (None, Word("", "count", none="as many as fit"), "as many as fit"),
        ("Before\n dark", Word("", "quoted"), "“Before dark”"),
        ((2.0, 1.0), Word("", "numbers"), "2 : 1"),
        ((("colourway", "dusk"), ("size", "A5")), Word("", "pairs"), "colourway dusk, size A5"),
        ((0, 0), Word("", "pixels"), "drawn in lines"),
        ((1.001, 1.0), Word("", "factors"), "100.1 % across, 100 % down"),
    ],
)
def test_values_are_told_in_their_units(value: object, word: Word, said: str) -> None:
    assert worded(value, word) == said


def test_a_long_text_keeps_its_beginning_and_its_end() -> None:
    said = worded("a" * 50 + " and at the very end", Word("", "quoted"))
    assert len(said) <= 62
    assert said.startswith("“aaaa")
    assert said.endswith("at the very end”")
