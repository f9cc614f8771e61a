"""A tree against the schema of its kind: every fault as a problem that says where, what and how to mend.

Scalars are text. A text without quotes counts as an integer, number or boolean where YAML 1.2 writes one so;
any text but a missing one counts as a string. `format` and the bounds of lengths are ours to judge.
"""

from functools import cache
from itertools import islice
from typing import Any

from padspec.base.errors import Problem
from padspec.reading.checking.fault import Fault, node_at
from padspec.reading.checking.keywords import KEYWORDS, TYPES, PlainText
from padspec.reading.checking.layout_ids import repeated_ids
from padspec.reading.checking.schemas import SCHEMAS, Kind, schema_data
from padspec.reading.checking.wording import problems_of
from padspec.reading.parsing.source import MOST_PROBLEMS
from padspec.reading.tree import Mapping, Node, Sequence


def check(root: Mapping, kind: Kind, text: str = "") -> tuple[Problem, ...]:
    """Every fault of a file of this kind, from head to foot, up to 200; empty where there is none.

    `text` is the file itself; with it, a colour that YAML took for a comment is recognised.
    """
    found: dict[Problem, None] = {}
    lines = tuple(text.splitlines())
    for error in islice(_validator(kind).iter_errors(_instance(root)), MOST_PROBLEMS):
        path = tuple(error.absolute_path)
        fault = Fault(error, kind, path, node_at(root, path), root, lines)
        found.update(dict.fromkeys(problems_of(fault)))
    if kind == "layout":
        found.update(dict.fromkeys(repeated_ids(root)))
    in_place = sorted(found, key=lambda p: (p.place.line, p.place.column, p.message))
    return tuple(in_place[:MOST_PROBLEMS])


def _instance(node: Node) -> Any:
    if isinstance(node, Mapping):
        return {entry.key: _instance(entry.value) for entry in node.entries}
    if isinstance(node, Sequence):
        return [_instance(item) for item in node.items]
    return PlainText(node.text) if node.plain else node.text


@cache
def _validator(kind: Kind) -> Any:
    from jsonschema import Draft202012Validator, validators
    from referencing import Registry
    from referencing.jsonschema import DRAFT202012

    types = Draft202012Validator.TYPE_CHECKER.redefine_many(TYPES)
    made: Any = validators.extend(Draft202012Validator, KEYWORDS, type_checker=types)  # type: ignore[no-untyped-call]
    # Without its `$schema`: jsonschema would judge a file that names its dialect by that dialect's own keywords.
    bare = [{key: value for key, value in schema_data(name).items() if key != "$schema"} for name in SCHEMAS]
    registry: Any = Registry().with_resources(
        (schema["$id"], DRAFT202012.create_resource(schema)) for schema in bare
    )
    return made(schema_data(kind), registry=registry)
