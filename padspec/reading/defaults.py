"""The built-in defaults, read from the schemas: an editor that shows a default shows the one that holds."""

from functools import cache
from typing import Any

from padspec.base.place import Place
from padspec.reading.checking.schemas import BLOCKS, Kind, Schema, root
from padspec.reading.tree import Entry, Mapping, Node, Scalar, Sequence

_PLACE = Place("padspec's default", 0, 0)


@cache
def defaults(kind: Kind, *path: str) -> Mapping:
    """The defaults of the keys at a place of a file, such as `defaults("studio", "printer", "margins")`.

    Without a path: of the file's top level. A key that has no default of its own but holds keys with
    defaults appears as a Mapping of those; a key without any is absent. Raises KeyError where the schema
    knows no such path.
    """
    schema = root(kind).at(path)
    if schema is None:
        raise KeyError(f"{kind} has no {'.'.join(path)}")
    return _mapping(schema)


@cache
def block_defaults(kind_of_block: str) -> Mapping:
    """The defaults of one kind of block, such as art or rows; KeyError for a word that is none."""
    if kind_of_block not in BLOCKS:
        raise KeyError(kind_of_block)
    return _mapping(root(f"block-{kind_of_block}"))


def _mapping(schema: Schema) -> Mapping:
    found = ((key, _default(child)) for key, child in schema.properties.items())
    return Mapping(tuple(Entry(key, _PLACE, node) for key, node in found if node is not None), _PLACE)


def _default(schema: Schema) -> Node | None:
    if "default" in schema.data:
        return node_from(schema.data["default"], _PLACE)
    if schema.data.get("type") != "object":
        return None
    inner = _mapping(schema)
    return inner if inner.entries else None


def node_from(value: Any, place: Place) -> Node:
    """A JSON value as the node that it would be when read from a maker's file."""
    if isinstance(value, dict):
        entries = ((key, node_from(inner, place)) for key, inner in value.items())
        return Mapping(tuple(Entry(key, place, node) for key, node in entries), place)
    if isinstance(value, list):
        return Sequence(tuple(node_from(item, place) for item in value), place)
    if isinstance(value, bool):
        return Scalar("true" if value else "false", place)
    # An empty text has to be quoted in a file, or it would be a missing value.
    return Scalar(str(value), place, plain=value != "")
