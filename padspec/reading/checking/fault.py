"""One fault that the schema found, with what is needed to tell it: path, node, places, the schema there."""

from dataclasses import dataclass, replace
from typing import Any

from padspec.base.place import Place
from padspec.reading.checking.schemas import Kind, Schema, root
from padspec.reading.parsing.source import clipped
from padspec.reading.tree import Entry, Mapping, Node, Scalar, Sequence

Path = tuple[str | int, ...]
_FILES = {
    "design": "the design",
    "studio": "the studio",
    "layout": "the layout",
    "collection": "the collection",
    "job": "the job",
}


@dataclass(frozen=True, slots=True)
class Fault:
    """An error of jsonschema's (`error`) at a path of a file; `tree` is all of it, `lines` its text."""

    error: Any
    kind: Kind
    path: Path
    node: Node
    tree: Mapping
    lines: tuple[str, ...]

    def of(self, error: Any) -> "Fault":
        """The same for another error of the same file, such as one inside an alternative."""
        path = tuple(error.absolute_path)
        return replace(self, error=error, path=path, node=node_at(self.tree, path))

    @property
    def dotted(self) -> str:
        """The path as a maker reads it, list entries counted from 1; the file where the path is empty."""
        return dotted(self.path) or _FILES[self.kind]

    @property
    def key(self) -> str:
        """The last key on the path."""
        return next((part for part in reversed(self.path) if isinstance(part, str)), "")

    @property
    def schema(self) -> Schema:
        """All that the schema says about this place."""
        return root(self.kind).at(self.path) or Schema(self.kind, self.error.schema)

    @property
    def place(self) -> Place:
        """Where the value stands."""
        return self.node.place

    @property
    def key_place(self) -> Place:
        """Where the key of the value stands; the value itself in a list."""
        above = node_at(self.tree, self.path[:-1])
        entry = above.entry(str(self.path[-1])) if isinstance(above, Mapping) and self.path else None
        return entry.key_place if entry else self.place

    def inner(self, key: str) -> Entry:
        """The entry of a key in the mapping that is at fault; KeyError where it has none."""
        entry = self.node.entry(key) if isinstance(self.node, Mapping) else None
        if entry is None:
            raise KeyError(key)
        return entry

    @property
    def shown(self) -> str:
        """What stands there, short enough for a message."""
        return shown(self.node)


def dotted(path: Path) -> str:
    """A path of keys and list positions as one word: `face.1.panel.corner`."""
    return ".".join(clipped(str(part + 1 if isinstance(part, int) else part)) for part in path)


def shown(node: Node) -> str:
    """A value for a message: its text, or what kind of value it is."""
    if isinstance(node, Mapping):
        return "a mapping"
    if isinstance(node, Sequence):
        return "a list"
    return clipped(node.text) if node.plain else f'"{clipped(node.text)}"'


def node_at(tree: Node, path: Path) -> Node:
    """The node at a path, or the deepest one on the way to it."""
    for part in path:
        if isinstance(tree, Mapping) and isinstance(part, str):
            inner = tree.get(part)
        elif isinstance(tree, Sequence) and isinstance(part, int):
            inner = tree.items[part]
        else:
            inner = None
        if inner is None:
            return tree
        tree = inner
    return tree


def is_missing(node: Node) -> bool:
    """Whether a key was written without any value."""
    return isinstance(node, Scalar) and node.is_missing
