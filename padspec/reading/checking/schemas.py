"""The schemas as padspec itself walks them: a schema object that knows its file and follows its `$ref`s.

Defaults, explanations and `did you mean` all come from here, so that the JSON files stay the only place
where a key is described.
"""

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from padspec.resources import schema_text

Kind = Literal["design", "studio", "layout", "collection", "job"]
KINDS: tuple[Kind, ...] = ("design", "studio", "layout", "collection", "job")
#: The kinds of block that a layout may hold, each described in `block-KIND.schema.json`.
BLOCKS = (
    "art",
    "heading",
    "label",
    "brand",
    "panel",
    "columns",
    "stack",
    "repeat",
    "rows",
    "grid",
    "marks",
    "space",
)
#: Every schema by its stem.
SCHEMAS = ("common", "ground", *(f"block-{kind}" for kind in BLOCKS), *KINDS)


@cache
def schema_data(name: str) -> dict[str, Any]:
    """One schema file by its stem, as JSON; shared, so never to be changed."""
    loaded: dict[str, Any] = json.loads(schema_text(name))
    return loaded


@dataclass(frozen=True, slots=True, eq=False)
class Schema:
    """One schema object and the stem of the file that it stands in, its `$ref` already followed.

    Keywords beside a `$ref` win over those of what it points at, as an editor shows them. `form`
    is the title of the definition of a value that a `$ref` led to (such a title starts with a small
    letter): it says what the value looks like.
    """

    file: str
    data: dict[str, Any]
    form: str = ""

    @property
    def properties(self) -> "dict[str, Schema]":
        """The keys that a mapping of this schema knows, those of its alternatives included."""
        found = {key: opened(self.file, data) for key, data in self.data.get("properties", {}).items()}
        for branch in self.branches:
            found = {**branch.properties, **found}
        return found

    @property
    def branches(self) -> "tuple[Schema, ...]":
        """The alternatives of an `anyOf`."""
        return tuple(opened(self.file, data) for data in self.data.get("anyOf", ()))

    @property
    def free(self) -> "Schema | None":
        """The schema of the values under keys that the maker names freely, where there are such."""
        data = self.data.get("additionalProperties")
        return opened(self.file, data) if isinstance(data, dict) else None

    @property
    def required(self) -> tuple[str, ...]:
        """The keys that have to stand, those included that another key could stand for."""
        return tuple(self.data.get("required", self.data.get("else", {}).get("required", ())))

    @property
    def items(self) -> "Schema | None":
        """The schema of a list's entries, where it is a list."""
        data = self.data.get("items")
        return opened(self.file, data) if isinstance(data, dict) else None

    def child(self, key: str | int) -> "Schema | None":
        """The schema of one key, known or free, or of an entry of a list; or a key of every entry."""
        if isinstance(key, int):
            return self.items
        return (self.items or self).properties.get(key) or self.free

    def at(self, path: Iterable[str | int]) -> "Schema | None":
        """The schema at a path of keys and list positions, or None where the path leads nowhere."""
        found: Schema | None = self
        for key in path:
            found = found.child(key) if found else None
        return found


def opened(file: str, data: dict[str, Any]) -> Schema:
    """A schema object with its `$ref` followed, and that of what it points at."""
    form = ""
    while "$ref" in data:
        target, _, pointer = data["$ref"].partition("#")
        file = target.removesuffix(".schema.json") or file
        found: Any = schema_data(file)
        for part in filter(None, pointer.split("/")):
            found = found[part]
        title = found.get("title", "")
        form = title if title[:1].islower() else form
        data = {**found, **{key: value for key, value in data.items() if key != "$ref"}}
    return Schema(file, data, form)


@cache
def root(kind: str) -> Schema:
    """The whole schema of one kind of file."""
    return opened(kind, schema_data(kind))


def known_keys(schema: Schema, above: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Schema]]:
    """Every path of fixed keys under a schema with what stands there, from the top down.

    Lists are followed into their entries, but for blocks inside blocks; keys that the maker names are not.
    """
    level = [((*above, key), child) for key, child in (schema.items or schema).properties.items()]
    yield from level
    for path, child in level:
        if path[-1] != "holds":
            yield from known_keys(child, path)
