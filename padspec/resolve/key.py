"""Where a setting stands."""

from dataclasses import dataclass

from padspec.base.place import Place


@dataclass(frozen=True, slots=True)
class Key:
    """Where a setting of a block stands in the files, and the path of keys that would set it.

    `text` is the value as it is written, or the default's; empty for a bundle or a list.
    """

    block: str
    name: str
    place: Place
    path: tuple[str, ...]
    text: str = ""
