"""Mappings and lists while they are still being read: what the tree builder keeps on its stack."""

import re
from dataclasses import dataclass, replace

from padspec.base.errors import Problem
from padspec.base.place import Place
from padspec.reading.parsing.source import clipped
from padspec.reading.tree import Entry, Mapping, Node, Sequence

_COLOR = re.compile(r"(?<![a-z])color(?![a-z])")


@dataclass(frozen=True, slots=True)
class Key:
    """A key as it was written, with what it is read as."""

    written: str
    read_as: str
    place: Place
    plain: bool


@dataclass(frozen=True, slots=True)
class Opening:
    """How a mapping or list began: where, under which anchor, in braces or brackets or not.

    `count_before` is how many nodes came before it; `is_key` that it stands where a key belongs.
    """

    start: int
    place: Place
    anchor: str | None
    in_brackets: bool
    count_before: int
    is_key: bool


class OpenSequence:
    """A list whose end has not been read yet."""

    def __init__(self, opening: Opening) -> None:
        self.opening = opening
        self.height = 1
        self._items: list[Node] = []

    def take(self, node: Node) -> Problem | None:
        """Add an item."""
        self._items.append(node)
        return None

    def closed(self, place: Place | None) -> Sequence:
        """The finished list; `place` where its end told more about how far it reaches."""
        return Sequence(tuple(self._items), place or self.opening.place)


class OpenMapping:
    """A mapping whose end has not been read yet. Of a key that stands twice, the first value is kept.

    `names_are_free` says that the maker chooses the keys, so that none is respelled.
    """

    def __init__(self, opening: Opening, names_are_free: bool) -> None:
        self.opening = opening
        self.height = 1
        self._names_are_free = names_are_free
        self.awaits_value = False
        self.key: Key | None = None
        self._first_key: Place | None = None
        self._entries: dict[str, Entry] = {}
        self._spellings: dict[str, str] = {}

    def take_key(self, written: str, place: Place, plain: bool) -> None:
        """Remember the key until its value comes; `color` becomes `colour` here and nowhere else."""
        read_as = written if self._names_are_free else _COLOR.sub("colour", written)
        self.key = Key(written, read_as, place, plain)
        self.awaits_value = True
        self._first_key = self._first_key or place

    def skip_key(self) -> None:
        """Note that a key was refused: its value will be read and dropped."""
        self.key = None
        self.awaits_value = True

    def take(self, node: Node) -> Problem | None:
        """Add the value of the key that waits; the problem where the key stands a second time."""
        key, self.awaits_value = self.key, False
        if key is None:
            return None
        before = self._entries.get(key.read_as)
        if before is not None:
            return _twice(self._spellings[key.read_as], before.key_place, key)
        self._entries[key.read_as] = Entry(key.read_as, key.place, node)
        self._spellings[key.read_as] = key.written
        return None

    @property
    def last(self) -> Entry | None:
        """The entry that was added last."""
        return next(reversed(self._entries.values()), None)

    def mend_last(self, value: Node) -> None:
        """Give the last entry another value, in place of the key that waits for one."""
        if self.last is not None:
            self._entries[self.last.key] = replace(self.last, value=value)
        self.key, self.awaits_value = None, False

    def closed(self, place: Place | None) -> Mapping:
        """The finished mapping; `place` where its end told more about how far it reaches."""
        return Mapping(tuple(self._entries.values()), place or self._first_key or self.opening.place)


def _twice(first_spelling: str, first: Place, again: Key) -> Problem:
    lines = (
        f"line {first.line}" if first.line == again.place.line else f"lines {first.line} and {again.place.line}"
    )
    if first_spelling == again.written:
        message = f"{clipped(again.written)} stands twice in one mapping, on {lines}."
    else:
        message = f"{clipped(first_spelling)} and {clipped(again.written)} are the same key, on {lines}."
    return Problem(again.place, message, "Keep one of them.")
