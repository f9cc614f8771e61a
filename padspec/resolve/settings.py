"""Typed access to layered settings: what was written last wins, and every value remembers its place.

The schema has checked the form of everything by now. What can still be wrong is collected in `Troubles`,
so that a maker sees all of it at once.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from decimal import Decimal

from padspec.base.errors import Problem, ProblemsError, UnitError
from padspec.base.place import Place
from padspec.base.units import is_share, parse_length, parse_share
from padspec.reading.checking.core_schema import integer, number
from padspec.reading.tree import Entry, Mapping, Node, Scalar, Sequence

#: Keys whose value is replaced whole, never merged with the one it overrides.
_WHOLE = frozenset({"size"})
_BESIDE_A_COLOUR = ("lighten", "darken")


class Troubles:
    """Problems found while resolving, kept until the end so that all are shown together."""

    def __init__(self) -> None:
        self._found: list[Problem] = []

    def add(self, place: Place, message: str, mend: str = "") -> None:
        """Remember one."""
        problem = Problem(place, message, mend)
        if problem not in self._found:
            self._found.append(problem)

    def raise_if_any(self) -> None:
        """Raise ProblemsError with everything found, in order of place."""
        if self._found:
            raise ProblemsError(*sorted(self._found, key=lambda p: (p.place.file, p.place.line, p.place.column)))


def merge(lower: Mapping, upper: Mapping) -> Mapping:
    """Two bundles as one: key by key, the upper wins; a colour or a size is one value and replaces whole."""
    entries = {entry.key: entry for entry in lower.entries}
    if any(key in upper.keys for key in ("colour", *_BESIDE_A_COLOUR)):
        # What stands beside a colour goes with it: a new colour, or a new mixing of it, drops the old mixing.
        entries = {key: entry for key, entry in entries.items() if key not in _BESIDE_A_COLOUR}
    for entry in upper.entries:
        below = entries.get(entry.key)
        if below is not None and not _is_whole(entry.key):
            entries[entry.key] = Entry(entry.key, entry.key_place, _merged(below.value, entry.value))
        else:
            entries[entry.key] = entry
    return Mapping(tuple(entries.values()), upper.place if upper.entries else lower.place)


def _is_whole(key: str) -> bool:
    return key in _WHOLE or key == "colour" or key.endswith("-colour")


def _merged(lower: Node, upper: Node) -> Node:
    if isinstance(lower, Mapping) and isinstance(upper, Mapping):
        return merge(lower, upper)
    return upper


@dataclass(frozen=True, slots=True)
class Settings:
    """One bundle of settings with its defaults already under it."""

    bundle: Mapping
    troubles: Troubles = field(compare=False)

    def has(self, key: str) -> bool:
        """Whether the key has a value, its own or a default."""
        return self.bundle.get(key) is not None

    def place(self, key: str) -> Place:
        """Where the value stands; the bundle's own place where the key is absent."""
        node = self.bundle.get(key)
        return node.place if node is not None else self.bundle.place

    def node(self, key: str) -> Node:
        """The value as it was written; KeyError where neither the maker nor the schema gives one."""
        node = self.bundle.get(key)
        if node is None:
            raise KeyError(key)
        return node

    def text(self, key: str) -> str:
        """A text, as written."""
        node = self.node(key)
        return node.text if isinstance(node, Scalar) else ""

    def integer(self, key: str) -> int:
        """A whole number."""
        return integer(self.text(key)) or 0

    def number(self, key: str) -> float:
        """A bare number."""
        return float(number(self.text(key)) or 0)

    def amount(self, key: str) -> Decimal:
        """An exact number, such as a price."""
        whole = integer(self.text(key))
        return Decimal(self.text(key) if whole is None else whole)

    def sections(self, key: str) -> "tuple[Settings, ...]":
        """The bundles of a list; none where it is absent."""
        node = self.bundle.get(key)
        items = node.items if isinstance(node, Sequence) else ()
        return tuple(Settings(item, self.troubles) for item in items if isinstance(item, Mapping))

    def texts(self, key: str) -> tuple[str, ...]:
        """The texts of a list; none where it is no list."""
        node = self.bundle.get(key)
        items = node.items if isinstance(node, Sequence) else ()
        return tuple(item.text for item in items if isinstance(item, Scalar))

    def numbers(self, key: str) -> tuple[float, ...]:
        """The bare numbers of a list; none where it is no list."""
        return tuple(float(number(text) or 0) for text in self.texts(key))

    def flag(self, key: str) -> bool:
        """True or false."""
        return self.text(key).lower() == "true"

    def length(self, key: str) -> float:
        """Millimetres."""
        return self._quantity(key, parse_length)

    def share(self, key: str) -> float:
        """A percentage as a share of one."""
        return self._quantity(key, parse_share)

    def length_or_share(self, key: str, whole: float) -> float:
        """Millimetres, from a length or a percentage of `whole`."""
        if is_share(self.text(key)):
            return self._quantity(key, parse_share) * whole
        return self._quantity(key, parse_length)

    def section(self, key: str) -> "Settings":
        """A bundle inside this one; empty where it is absent."""
        node = self.bundle.get(key)
        return Settings(node if isinstance(node, Mapping) else Mapping((), self.bundle.place), self.troubles)

    def _quantity(self, key: str, parse: Callable[[str], float]) -> float:
        try:
            return parse(self.text(key))
        except UnitError as error:
            self.troubles.add(self.place(key), error.message, error.mend)
            return 1.0
