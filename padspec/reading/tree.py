"""What a maker wrote, as a tree: every value is still text and remembers where it stands."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

from padspec.base.place import Place


@dataclass(frozen=True, slots=True)
class Scalar:
    """A single value as it was written; `plain` says that it stood without quotes.

    A key without a value holds a plain Scalar with an empty text.
    """

    text: str
    place: Place
    plain: bool = True

    @property
    def is_missing(self) -> bool:
        """Whether nothing was written at all, which is not the same as an empty text in quotes."""
        return self.plain and self.text == ""


@dataclass(frozen=True, slots=True)
class Sequence:
    """A list of values."""

    items: "tuple[Node, ...]"
    place: Place


@dataclass(frozen=True, slots=True)
class Entry:
    """One key of a mapping with its value."""

    key: str
    key_place: Place
    value: "Node"


@dataclass(frozen=True, slots=True)
class Mapping:
    """Keys with their values, in the order in which they were written; no key stands twice."""

    entries: tuple[Entry, ...]
    place: Place

    def entry(self, key: str) -> Entry | None:
        """The entry of a key, or None where the key is absent."""
        return next((entry for entry in self.entries if entry.key == key), None)

    def get(self, key: str) -> "Node | None":
        """The value of a key, or None where the key is absent."""
        entry = self.entry(key)
        return None if entry is None else entry.value

    def text(self, key: str) -> str:
        """The single value of a key as it was written; empty where the key is absent or holds anything else."""
        node = self.get(key)
        return node.text if isinstance(node, Scalar) else ""

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys in the order in which they were written."""
        return tuple(entry.key for entry in self.entries)


Node = Scalar | Sequence | Mapping
Data: TypeAlias = "dict[str, Data] | list[Data] | str"


def scalars(node: Node) -> Iterator[Scalar]:
    """Every single value of a tree, in the order in which they were written."""
    match node:
        case Scalar():
            yield node
        case Sequence():
            for item in node.items:
                yield from scalars(item)
        case Mapping():
            for entry in node.entries:
                yield from scalars(entry.value)


def as_data(node: Node) -> "Data":
    """The tree as plain dicts, lists and texts, without places."""
    if isinstance(node, Mapping):
        return {entry.key: as_data(entry.value) for entry in node.entries}
    if isinstance(node, Sequence):
        return [as_data(item) for item in node.items]
    return node.text
