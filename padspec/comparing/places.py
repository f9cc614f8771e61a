"""Where a fact stands in the maker's YAML now."""

from padspec.base.place import Place
from padspec.pipeline import Pad
from padspec.reading.tree import Mapping


def place_of(pad: Pad, section: str, key: str) -> Place:
    """The line of a block's key, or of a key of design or studio by its path; else the file as a whole."""
    for known in pad.design.keys:
        if known.block == section and known.name == key:
            return known.place
    for root in (pad.documents.design.root, pad.documents.studio.root):
        found = _at(root, key.split(".") if key else [section])
        if found is not None:
            return found
    return Place(pad.design.file, 0, 0)


def _at(root: Mapping, path: list[str]) -> Place | None:
    """The place of the value at a path of keys, None where nothing is written there."""
    bundle = root
    for name in path[:-1]:
        inner = bundle.get(name)
        if not isinstance(inner, Mapping):
            return None
        bundle = inner
    entry = bundle.entry(path[-1])
    return entry.value.place if entry is not None else None
