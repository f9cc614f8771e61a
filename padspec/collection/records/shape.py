"""The shape that a stored record must have to be trusted: it may be damaged, or from another version."""

from dataclasses import dataclass
from pathlib import PurePosixPath
from typing import Any


@dataclass(frozen=True, slots=True)
class Shape:
    """Keys with the kinds of value each may have, the shape of what a list under a key holds, and that of a
    bundle under a key."""

    keys: tuple[tuple[str, tuple[type, ...]], ...]
    lists: tuple[tuple[str, "Shape"], ...] = ()
    bundles: tuple[tuple[str, "Shape"], ...] = ()

    def fits(self, data: Any) -> bool:
        """Whether some data has every key, each with a value of its kind."""
        return (
            isinstance(data, dict)
            and all(type(data.get(key, _MISSING)) in kinds for key, kinds in self.keys)
            and all(
                isinstance(data.get(key), list) and all(inner.fits(item) for item in data[key])
                for key, inner in self.lists
            )
            and all(inner.fits(data.get(key)) for key, inner in self.bundles)
        )


_MISSING = object()
_TEXT, _COUNT, _TEXT_OR_NONE, _LENGTH = (str,), (int,), (str, type(None)), (float, int)

#: What `report.finding_data` gives.
FINDING = Shape(
    (
        *((key, _TEXT) for key in ("check", "severity", "file", "message", "measured", "limit")),
        *((key, _COUNT) for key in ("line", "column", "length")),
        *((key, _TEXT_OR_NONE) for key in ("remedy", "allowed")),
    ),
    (("changes", Shape((("key", _TEXT), ("value", _TEXT)))),),
)
#: What `report.pad_data` gives.
SUMMARY = Shape(
    (
        *(
            (key, _TEXT)
            for key in (
                "design",
                "sku",
                "base_sku",
                "base_name",
                "currency",
                "studio",
                "layout",
                "file",
                "state",
                "sheet",
            )
        ),
        ("caution", _TEXT),
        *((key, _TEXT_OR_NONE) for key in ("about", "price")),
        *((key, _COUNT) for key in ("n_up", "cuts", "leaves", "copies")),
        ("tags", (list,)),
        ("variant", (dict,)),
    ),
    (("findings", FINDING), ("palette", Shape((("name", _TEXT), ("colour", _TEXT))))),
    (("trim", Shape((("width", _LENGTH), ("height", _LENGTH)))),),
)


def is_texts(data: Any) -> bool:
    """Whether this is a bundle of texts by text."""
    return isinstance(data, dict) and all(isinstance(value, str) for value in data.values())


def stays_inside(path: str) -> bool:
    """Whether a path is one below a folder, as those of written files are."""
    parts = PurePosixPath(path).parts
    return bool(parts) and ".." not in parts and parts[0] != "/" and "\0" not in path
