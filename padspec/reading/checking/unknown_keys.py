"""Keys that the schema does not know: the nearest one that it does, or where the key belongs."""

from functools import cache

from padspec.base.errors import Problem
from padspec.base.nearest import did_you_mean, nearest
from padspec.reading.checking.expectation import example, words
from padspec.reading.checking.fault import Fault
from padspec.reading.checking.schemas import KINDS, Kind, known_keys, root
from padspec.reading.parsing.source import MOST_PROBLEMS, clipped

_MOST_HOMES = 3
_FILE_NAMES = {
    "design": "a design (NAME.pad.yaml)",
    "studio": "the studio (studio.yaml)",
    "layout": "a layout (layouts/NAME.yaml)",
    "collection": "a collection (collection.yaml)",
}


def unknown_keys(fault: Fault) -> tuple[Problem, ...]:
    """One problem for each key of a mapping that its schema does not know."""
    known = tuple(fault.error.schema.get("properties", ()))
    strangers = [key for key in fault.error.instance if key not in known]
    return tuple(
        Problem(
            fault.inner(key).key_place,
            f"{clipped(key)} is not a key of {fault.dotted}.",
            _mend(key, known, fault),
        )
        for key in strangers[:MOST_PROBLEMS]
    )


def _mend(key: str, known: tuple[str, ...], fault: Fault) -> str:
    """The nearest key of the mapping; but a key that is known elsewhere was more likely misplaced."""
    word = clipped(key)
    near = nearest(word, known)
    in_block = {part for part in fault.error.instance if part in known}
    homes = sorted(_homes(fault.kind).get(key, ()), key=lambda home: home.split(".")[-1] not in in_block)
    if homes and key not in near:
        return f"It belongs in {words(homes[:_MOST_HOMES])}{_shown_there(homes[0], key, fault.kind)}."
    files = [_FILE_NAMES[other] for other in KINDS if other != fault.kind and key in root(other).properties]
    if files and not fault.path:
        return f"It belongs in {words(files)}."
    if near:
        return did_you_mean(word, known)
    return did_you_mean(word, fault.schema.properties or known)


def _shown_there(home: str, key: str, kind: Kind) -> str:
    path = home.split(".")
    schema = root(kind).at((*path, key))
    line = example(key, schema) if schema else ""
    return f": {home}: {{{line}}}" if line and len(path) == 1 else ""


@cache
def _homes(kind: Kind) -> dict[str, tuple[str, ...]]:
    """For each key below the top level, the dotted paths of the mappings that know it, shortest first."""
    found: dict[str, list[str]] = {}
    for path, _ in known_keys(root(kind)):
        if len(path) > 1:
            found.setdefault(path[-1], []).append(".".join(path[:-1]))
    return {key: tuple(sorted(homes, key=lambda home: home.count("."))) for key, homes in found.items()}
