"""Where a setting stands."""

from dataclasses import dataclass

from padspec.base.place import Place


@dataclass(frozen=True, slots=True)
class Key:
    """Where a setting of a block stands in the files, and the path of keys that would set it."""

    block: str
    name: str
    place: Place
    path: tuple[str, ...]
