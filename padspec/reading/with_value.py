"""One value set in what a maker wrote, as if the maker had written it: to try what a change would do."""

from padspec.base.place import Place
from padspec.reading.tree import Entry, Mapping, Scalar


def with_value(root: Mapping, path: tuple[str, ...], text: str) -> Mapping:
    """The bundle with one value set; what stood there is replaced."""
    key, *rest = path
    place = Place("what is proposed", 1, 1)
    below = root.get(key)
    inner = below if isinstance(below, Mapping) else Mapping((), place)
    value = with_value(inner, tuple(rest), text) if rest else Scalar(text, place, plain=not text.startswith("#"))
    others = tuple(entry for entry in root.entries if entry.key != key)
    return Mapping((*others, Entry(key, place, value)), root.place)
