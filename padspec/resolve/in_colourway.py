"""A design in another of the ready colourways: its own colours for the roles give way, all else stays."""

from dataclasses import replace

from padspec.reading.gather import Documents
from padspec.reading.tree import Entry, Mapping
from padspec.reading.with_value import with_value
from padspec.resolve.role_names import ROLE_NAMES


def in_colourway(documents: Documents, colourway: str) -> Documents:
    """The documents as if design and studio named this colourway and left the roles of the palette to it."""
    design = with_value(without_roles(documents.design.root), ("colourway",), colourway)
    return replace(
        documents,
        design=documents.design.with_root(design),
        studio=documents.studio.with_root(without_roles(documents.studio.root)),
    )


def without_roles(root: Mapping) -> Mapping:
    """A design or studio less the colours that it gives to the roles of the palette."""
    entry = root.entry("palette")
    if entry is None or not isinstance(entry.value, Mapping):
        return root
    kept = tuple(inner for inner in entry.value.entries if inner.key not in ROLE_NAMES)
    palette = Entry("palette", entry.key_place, Mapping(kept, entry.value.place))
    return Mapping(tuple(palette if inner is entry else inner for inner in root.entries), root.place)
