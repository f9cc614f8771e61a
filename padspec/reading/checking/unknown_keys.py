"""Keys that the schema does not know: the nearest one that it does, or where the key belongs."""

from functools import cache

from padspec.base.errors import Problem
from padspec.base.nearest import did_you_mean, nearest
from padspec.reading.checking.expectation import example, words
from padspec.reading.checking.fault import Fault
from padspec.reading.checking.schemas import KINDS, Kind, known_keys, root
from padspec.reading.parsing.slips import without_space
from padspec.reading.parsing.source import MOST_PROBLEMS, clipped

_MOST_HOMES = 3
_FILE_NAMES = {
    "design": "a design (NAME.pad.yaml)",
    "studio": "the studio (studio.yaml)",
    "layout": "a layout (layouts/NAME.yaml)",
    "collection": "a collection (collection.yaml)",
    "job": "a job (NAME.job.yaml)",
}


def unknown_keys(fault: Fault) -> tuple[Problem, ...]:
    """One problem for each key of a mapping that its schema does not know."""
    return tuple(_unknown(key, _known(fault), fault) for key in _strangers(fault)[:MOST_PROBLEMS])


def misspelt_keys(fault: Fault) -> frozenset[str]:
    """The known keys of a mapping that its unknown ones were likely meant to be."""
    return frozenset(_likely(key, _known(fault), fault) for key in _strangers(fault)[:MOST_PROBLEMS]) - {""}


def _known(fault: Fault) -> tuple[str, ...]:
    # What is needed may be said by a part of the schema that names no keys itself.
    return tuple(fault.error.schema.get("properties", ()) or fault.schema.properties)


def _strangers(fault: Fault) -> list[str]:
    return [key for key in fault.error.instance if key not in _known(fault)]


def _unknown(key: str, known: tuple[str, ...], fault: Fault) -> Problem:
    place = fault.inner(key).key_place
    meant = without_space(key, place)
    if meant is not None and meant.key in known:
        mend = f"Write {meant.key}: with a space after the colon."
        return Problem(place, meant.problem.message, mend)
    message = f"{clipped(key)} is not a key of {fault.dotted}."
    return Problem(place, message, _mend(key, known, fault))


def _likely(key: str, known: tuple[str, ...], fault: Fault) -> str:
    """The known key that an unknown one was likely meant to be, empty where it is none of them."""
    meant = without_space(key, fault.inner(key).key_place)
    if meant is not None and meant.key in known:
        return meant.key
    near = nearest(clipped(key), known)
    return "" if _elsewhere(key, near, known, fault) else near


def _mend(key: str, known: tuple[str, ...], fault: Fault) -> str:
    word = clipped(key)
    near = nearest(word, known)
    return (
        _elsewhere(key, near, known, fault)
        or (f"Did you mean {near}?" if near else "")
        or did_you_mean(word, fault.schema.properties or known)
    )


def _elsewhere(key: str, near: str, known: tuple[str, ...], fault: Fault) -> str:
    """Where a key belongs that is known in another place: it was more likely misplaced than misspelt."""
    in_block = {part for part in known if part in fault.error.instance}
    homes = sorted(_homes(fault.kind).get(key, ()), key=lambda home: home.split(".")[-1] not in in_block)
    if homes and key not in near:
        return f"It belongs in {words(homes[:_MOST_HOMES])}{_shown_there(homes[0], key, fault.kind)}."
    files = [_FILE_NAMES[other] for other in KINDS if other != fault.kind and key in root(other).properties]
    return f"It belongs in {words(files)}." if files and not fault.path else ""


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
