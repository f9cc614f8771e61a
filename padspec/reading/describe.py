"""What a key means, for `padspec explain`: the schemas' own words, laid out to be read."""

from collections.abc import Iterator
from textwrap import fill, indent
from typing import Any

from padspec.reading.checking.expectation import as_yaml, expected, words
from padspec.reading.checking.schemas import BLOCKS, KINDS, Kind, Schema, known_keys, root, schema_data

_WIDTH = 88
_MOST_PATHS = 4
_MOST_EXAMPLES = 3
#: Keys below these are names of checks, which are explained elsewhere: found by their full path only.
_CHECK_NAMES = ("limits", "allow")


def describe(word: str) -> str | None:
    """The explanation of a key or a kind of file, or None where there is no such key.

    `word` is a dotted path (`rows.pitch`), one with the file's kind before it (`studio.printer.margins`), a
    kind of file (`design`), or the last part of paths (`pitch`). Keys with the same meaning in several places
    are told once, with those places.
    """
    told: dict[str, dict[str, list[str]]] = {}
    for kind, path, schema in _meant(word.strip().replace("color", "colour")):
        body = _body(path.rpartition(".")[2], schema)
        if path in BLOCKS:
            body += "\n" + _in_a_layout(path)
        told.setdefault(body, {}).setdefault(path or "a file of this kind", []).append(kind)
    sections = [f"{_title(places)}\n{body}" for body, places in told.items()]
    return "\n\n".join(sections) or None


def headwords() -> tuple[str, ...]:
    """The known words worth a line in a list: not the parts of a colour at every place, nor the names of checks
    again under `allow` and `limits`."""
    mixes = tuple(f"colour.{part}" for part in ("darken", "from", "lighten", "near", "rank"))
    return tuple(
        word
        for word in known_words()
        if (not word.endswith(mixes) and word.partition(".")[0] not in _CHECK_NAMES) or word in _CHECK_NAMES
    )


def known_words() -> tuple[str, ...]:
    """Every word that can be explained, sorted: kinds of file and dotted paths of keys."""
    found = {".".join(path) for kind in KINDS for path, _ in _paths(kind)}
    return tuple(sorted(found | set(KINDS)))


def _meant(word: str) -> list[tuple[Kind, str, Schema]]:
    parts = word.split(".") if word else []
    found = [(kind, word, schema) for kind in KINDS if parts and (schema := root(kind).at(parts))]
    for kind in KINDS:
        if parts and parts[0] == kind and (schema := root(kind).at(parts[1:])):
            found.append((kind, ".".join(parts[1:]), schema))
    if found or len(parts) != 1:
        return found
    ends = (path for path in _all_paths() if path[1][-1] == word and path[1][0] not in _CHECK_NAMES)
    return [(kind, ".".join(path), schema) for kind, path, schema in ends]


def _all_paths() -> Iterator[tuple[Kind, tuple[str, ...], Schema]]:
    for kind in KINDS:
        for path, schema in _paths(kind):
            yield kind, path, schema


def _paths(kind: Kind) -> Iterator[tuple[tuple[str, ...], Schema]]:
    """The fixed keys of a kind; what lies inside the blocks of a layout is told under the design's keys."""
    return ((path, schema) for path, schema in known_keys(root(kind)) if kind != "layout" or len(path) == 1)


def _title(places: dict[str, list[str]]) -> str:
    paths = list(places)
    kinds = [kind for kind in KINDS if any(kind in found for found in places.values())]
    more = ", …" if len(paths) > _MOST_PATHS else ""
    return f"{', '.join(paths[:_MOST_PATHS])}{more} ({words([*kinds], 'and')})"


def _body(key: str, schema: Schema) -> str:
    parts = [f"{schema.data['title']}. {schema.data['description']}", f"Expected: {expected(schema)}."]
    if "default" in schema.data:
        parts.append(f"Default: {as_yaml(schema.data['default'])}")
    lines = [fill(part, _WIDTH - 2, subsequent_indent="  ") for part in parts]
    lines += _examples(key, schema)
    lines += _sub_keys(schema)
    return indent("\n".join(lines), "  ")


def _examples(key: str, schema: Schema) -> list[str]:
    shown = schema.data.get("examples", [])[:_MOST_EXAMPLES]
    lines = [line for value in shown for line in _in_lines(key, value)]
    return ["For example:", *(f"  {line}" for line in lines)] if lines else []


def _in_a_layout(kind_of_block: str) -> str:
    """A block of this kind as a layout places it."""
    placed = schema_data(f"block-{kind_of_block}")["x-laid"]
    lines = _in_lines("", [{kind_of_block: placed}])
    return indent("\n".join(["In a layout, under face:", *(f"  {line}" for line in lines)]), "  ")


def _in_lines(key: str, value: Any) -> list[str]:
    """An example on one line where it fits, else each of its entries on a line of its own, as YAML."""
    start = f"{key}: " if key else ""
    whole = start + as_yaml(value)
    if not isinstance(value, list | dict) or (key and len(whole) <= _WIDTH - 8):
        return [whole]
    if isinstance(value, dict):
        inner = [line for name, part in value.items() for line in _in_lines(name, part)]
    else:
        inner = [line for part in value for line in _dashed(part)]
    return [f"{key}:", *(f"  {line}" for line in inner)] if key else inner


def _dashed(value: Any) -> list[str]:
    first, *rest = _in_lines("", value)
    return [f"- {first}", *(f"  {line}" for line in rest)]


def _sub_keys(schema: Schema) -> list[str]:
    keys = schema.properties
    if not keys:
        return []
    room = max(len(key) for key in keys) + 2
    lines = []
    for key, inner in keys.items():
        first = inner.data["description"].split(". ")[0].rstrip(".")
        lines.append(fill(f"  {key.ljust(room)}{first}.", _WIDTH - 2, subsequent_indent=" " * (room + 2)))
    return ["Keys:", *lines]
