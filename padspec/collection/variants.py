"""The variants of a design: every combination of the axes that is not excluded, each with its code and name."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from unicodedata import combining, normalize

from padspec.base.errors import Problem
from padspec.base.nearest import did_you_mean
from padspec.collection.axes import Axis, Value, merged
from padspec.reading.tree import Mapping, Node, Scalar, Sequence
from padspec.reading.variation import OWN_NAME, OWN_SKU, Variation

_NO_CODE = re.compile(r"[^A-Za-z0-9_-]")
_NO_CODE_BUT_DOTS = re.compile(r"[^A-Za-z0-9._-]")
_PLACEHOLDER = re.compile(r"\{([^{}]*)\}")
DESIGN = "design"


@dataclass(frozen=True, slots=True)
class Member:
    """One pad of a collection: a design's path and what is varied in it."""

    path: str
    variation: Variation


@dataclass(frozen=True, slots=True)
class Exclusion:
    """A combination that is not made: values of some axes and paths of some designs, all at once."""

    values: tuple[tuple[str, frozenset[str]], ...]
    designs: frozenset[str]

    def holds(self, path: str, values: tuple[tuple[str, str], ...]) -> bool:
        """Whether this design with these values is left out."""
        chosen = dict(values)
        return (not self.designs or path in self.designs) and all(chosen[a] in some for a, some in self.values)


@dataclass(frozen=True, slots=True)
class Patterns:
    """How variants are coded and named; {sku}, {name} and {axis} stand in them."""

    sku: str
    name: str

    @classmethod
    def of(cls, root: Mapping, axes: tuple[Axis, ...], problems: list[Problem]) -> "Patterns":
        """Those of a collection file, or the usual ones; what is wrong with them is added to the problems."""
        names = [axis.name for axis in axes]
        values = [f"{{{name}}}" for name in names]
        for key in ("sku", "name"):
            written = root.get(key)
            if isinstance(written, Scalar):
                problems += _faults(key, written, names)
        return cls(
            sku=root.text("sku") or "--".join([OWN_SKU, *(["-".join(values)] if values else [])]),
            name=root.text("name") or ", ".join([OWN_NAME, *values]),
        )

    def variation(self, values: tuple[Value, ...], axes: tuple[Axis, ...], file: str) -> Variation:
        """The variation that one value of each axis makes."""
        chosen = {axis.name: value.name for axis, value in zip(axes, values, strict=True)}
        codes = {name: code_of(value) for name, value in chosen.items()}
        return Variation(
            values=tuple(chosen.items()),
            settings=merged(values),
            sku=_put_in(self.sku, codes | {"sku": OWN_SKU}),
            name=_put_in(self.name, chosen | {"name": OWN_NAME}),
            file=file,
        )


def code_of(value: str) -> str:
    """A value as it stands in a SKU: letters without their accents, all other signs as hyphens.

    >>> code_of("Été à Köln")
    'Ete-a-Koln'
    """
    plain = "".join(letter for letter in normalize("NFKD", value) if not combining(letter))
    return _NO_CODE.sub("-", plain)


def nameless(axes: tuple[Axis, ...]) -> Iterator[Problem]:
    """A problem for each value of which nothing is left in a SKU."""
    for axis in axes:
        for value in axis.values:
            if value.name and not code_of(value.name).strip("-_"):
                message = f"{value.name} has no letter A to Z and no digit, so nothing of it is left in a SKU."
                yield Problem(value.place, message, "Call it by such: the name on the pad itself may be any.")


def combined(
    path: str, axes: tuple[Axis, ...], excluded: tuple[Exclusion, ...], patterns: Patterns, file: str
) -> Iterator[Variation]:
    """Every combination of the axes' values that is made of one design, the last axis turning fastest."""
    for values in product(*(axis.values for axis in axes)):
        chosen = tuple((axis.name, value.name) for axis, value in zip(axes, values, strict=True))
        if not any(exclusion.holds(path, chosen) for exclusion in excluded):
            yield patterns.variation(values, axes, file)


def read_exclusions(
    root: Mapping, axes: tuple[Axis, ...], designs: dict[str, str], problems: list[Problem]
) -> tuple[Exclusion, ...]:
    """The combinations that a collection leaves out; names that it does not have are added to the problems.

    `designs` are its designs as they are written there, with their paths.
    """
    known = {axis.name: [value.name for value in axis.values] for axis in axes} | {DESIGN: list(designs)}
    listed = root.get("exclude")
    found = []
    for item in listed.items if isinstance(listed, Sequence) else ():
        if isinstance(item, Mapping):
            found.append(_exclusion(item, known, designs, problems))
    return tuple(found)


def _exclusion(
    item: Mapping, known: dict[str, list[str]], designs: dict[str, str], problems: list[Problem]
) -> Exclusion:
    values: list[tuple[str, frozenset[str]]] = []
    paths: set[str] = set()
    for entry in item.entries:
        if entry.key not in known:
            message = f"No axis is called {entry.key}."
            problems.append(Problem(entry.key_place, message, did_you_mean(entry.key, list(known))))
            continue
        named = _texts(entry.value)
        for value in named:
            if value.text not in known[entry.key]:
                what = "design" if entry.key == DESIGN else f"value of {entry.key}"
                message = f"{value.text} is no {what} here."
                problems.append(Problem(value.place, message, did_you_mean(value.text, known[entry.key])))
        if entry.key == DESIGN:
            paths |= {designs[value.text] for value in named if value.text in designs}
        else:
            values.append((entry.key, frozenset(value.text for value in named)))
    return Exclusion(tuple(values), frozenset(paths))


def _texts(node: Node) -> tuple[Scalar, ...]:
    items = node.items if isinstance(node, Sequence) else (node,)
    return tuple(item for item in items if isinstance(item, Scalar))


def _faults(key: str, written: Scalar, axes: list[str]) -> Iterator[Problem]:
    """What is wrong with a pattern: a placeholder that means nothing, the design's own or an axis left out."""
    named = _PLACEHOLDER.findall(written.text)
    known = [key, *axes]
    for name in named:
        if name not in known:
            message = f"{{{name}}} means nothing in {key}."
            yield Problem(written.place, message, did_you_mean(name, known))
    if any(name not in known for name in named):
        return
    if key not in named:
        message = f"Without {{{key}}} every design would have the same {key}."
        yield Problem(written.place, message, f'Write, say, "{{{key}}}-{written.text[:40]}".')
    stray = _NO_CODE_BUT_DOTS.search(_PLACEHOLDER.sub("", written.text)) if key == "sku" else None
    if stray is not None:
        message = f"{stray[0]} stands in sku, which names folders."
        yield Problem(written.place, message, "Use letters A to Z, digits, dots, hyphens and underscores.")
    missing = [axis for axis in axes if axis not in named]
    if missing and key == "sku":
        message = f"Variants that differ in {missing[0]} alone would share a SKU: {{{missing[0]}}} is not in it."
        yield Problem(written.place, message, f'Write, say, "{written.text[:40]}-{{{missing[0]}}}".')


def _put_in(pattern: str, values: dict[str, str]) -> str:
    return _PLACEHOLDER.sub(lambda match: values.get(match[1], match[0]), pattern)
