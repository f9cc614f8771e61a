"""A variant's settings laid over its design: the last word on every key they name."""

from collections.abc import Iterator
from dataclasses import replace

from padspec.reading.checking.schemas import BLOCKS
from padspec.reading.gather import Documents
from padspec.reading.tree import Entry, Mapping, Node, Sequence
from padspec.reading.variation import Variation
from padspec.resolve.in_colourway import without_roles
from padspec.resolve.settings import merge


def varied(documents: Documents) -> Documents:
    """The documents as if the variation's settings stood in the design; its SKU and name are still to be made.

    What they say of a kind of block wins over what the design says of one block. Another colourway drops the
    colours that design and studio chose for the roles; a palette beside it has the last word.
    """
    settings = documents.variation.settings
    if not settings.entries:
        return documents
    design, studio = documents.design.root, documents.studio.root
    if settings.get("colourway") is not None:
        design, studio = without_roles(design), without_roles(studio)
    kinds = dict(_kinds_by_id(documents.layout.root.get("face")))
    design = merge(_giving_way(design, settings, kinds), settings)
    return replace(
        documents,
        design=documents.design.with_root(design),
        studio=documents.studio.with_root(studio),
        variation=replace(documents.variation, settings=Variation().settings),
    )


def over(lower: Mapping, upper: Mapping) -> Mapping:
    """One bundle of a variation over another, as `varied` lays both over a design."""
    return merge(_palette_giving_way(lower, upper), upper)


def _giving_way(design: Mapping, settings: Mapping, kinds: dict[str, str]) -> Mapping:
    """The design less what the settings replace for a whole kind of block, and less the colours they name."""
    design = _palette_giving_way(design, settings)
    named = {entry.key: entry.value for entry in settings.entries if entry.key in BLOCKS}
    blocks = design.get("blocks")
    if not named or not isinstance(blocks, Mapping):
        return design
    entries = []
    for entry in blocks.entries:
        above = named.get(kinds.get(entry.key, ""))
        taken = frozenset(above.keys) if isinstance(above, Mapping) else frozenset()
        entries.append(_less(entry, taken))
    return _with_entry(design, "blocks", Mapping(tuple(entries), blocks.place))


def _palette_giving_way(lower: Mapping, upper: Mapping) -> Mapping:
    """A colour is one value: what another palette names is replaced whole, never mixed key by key."""
    below, above = lower.get("palette"), upper.get("palette")
    if not isinstance(below, Mapping) or not isinstance(above, Mapping):
        return lower
    kept = tuple(entry for entry in below.entries if entry.key not in above.keys)
    return _with_entry(lower, "palette", Mapping(kept, below.place))


def _less(entry: Entry, taken: frozenset[str]) -> Entry:
    if not isinstance(entry.value, Mapping):
        return entry
    kept = tuple(inner for inner in entry.value.entries if inner.key not in taken)
    return Entry(entry.key, entry.key_place, Mapping(kept, entry.value.place))


def _with_entry(root: Mapping, key: str, value: Node) -> Mapping:
    entries = (Entry(e.key, e.key_place, value) if e.key == key else e for e in root.entries)
    return Mapping(tuple(entries), root.place)


def _kinds_by_id(face: Node | None) -> Iterator[tuple[str, str]]:
    """Every block of a layout by its id, with its kind."""
    for item in face.items if isinstance(face, Sequence) else ():
        if isinstance(item, Mapping) and item.entries:
            kind, body = item.entries[0].key, item.entries[0].value
            if isinstance(body, Mapping):
                yield body.text("id"), kind
                yield from _kinds_by_id(body.get("holds"))
