"""Faults that the schema found, in a maker's words: one function a keyword, one line each in WORDING."""

import re
from collections.abc import Callable
from dataclasses import replace

from padspec.base.errors import Problem
from padspec.base.nearest import did_you_mean
from padspec.reading.checking import as_written, quantities
from padspec.reading.checking.alternatives import fitting
from padspec.reading.checking.expectation import as_yaml, example, expected, words
from padspec.reading.checking.fault import Fault, is_missing
from padspec.reading.checking.keywords import TYPES, PlainText
from padspec.reading.checking.schemas import root
from padspec.reading.checking.unknown_keys import misspelt_keys, unknown_keys
from padspec.reading.parsing.slips import without_space
from padspec.reading.parsing.source import clipped
from padspec.reading.parsing.yaml_faults import comment_colour
from padspec.reading.tree import Mapping, Scalar, Sequence

_COMMENT_COLOUR = re.compile(r"[ \t]*(#(?:[0-9A-Fa-f]{6}|[0-9A-Fa-f]{3}))\b")
_TRUE_WORDS = ("yes", "on", "y", "true", "1")
_FALSE_WORDS = ("no", "off", "n", "false", "0")


def problems_of(fault: Fault) -> tuple[Problem, ...]:
    """What to tell the maker about one fault; several where one schema error covers several keys."""
    if "propertyNames" in fault.error.absolute_schema_path:
        return (_bad_name(fault),)
    if is_missing(fault.node):
        return (_no_value(fault),)
    return WORDING[fault.error.validator](fault)


def _no_value(fault: Fault) -> Problem:
    place = fault.place
    behind = "".join(fault.lines[place.line - 1 : place.line])[place.column - 1 :]
    match = _COMMENT_COLOUR.match(behind)
    if match:
        colour = match.group(1)
        return comment_colour(colour, replace(place, column=place.column + match.start(1), length=len(colour)))
    message = f"{fault.dotted} has no value; {expected(fault.schema)} belongs here."
    return Problem(place, message, _worked(fault))


def _worked(fault: Fault) -> str:
    in_list = not fault.path or isinstance(fault.path[-1], int)
    line = example("" if in_list else fault.key, fault.schema)
    return f"Write, for example, {line}." if line else f"Write {expected(fault.schema)}."


def _wrong(fault: Fault, mend: str = "") -> tuple[Problem, ...]:
    """What stands there and what belongs there."""
    message = f"{fault.dotted} is {fault.shown}; {expected(fault.schema)} belongs here."
    return (Problem(fault.place, message, mend or _worked(fault)),)


def _wrong_type(fault: Fault) -> tuple[Problem, ...]:
    if not isinstance(fault.node, Scalar):
        return _wrong(fault)
    spaceless = without_space(fault.node.text, fault.place) if fault.node.plain else None
    if spaceless is not None and spaceless.key in fault.schema.properties:
        return (spaceless.problem,)
    return _wrong(fault, _mend_of_type(fault, fault.node))


def _mend_of_type(fault: Fault, node: Scalar) -> str:
    """How one value of the wrong type becomes right; empty where only an example can be given."""
    word, wanted = node.text, str(fault.error.validator_value)
    if not node.plain and wanted in TYPES and TYPES[wanted](None, PlainText(word)):
        return f"Take the quotes off: {fault.key}: {word}."
    if wanted == "boolean" and word.lower() in _TRUE_WORDS + _FALSE_WORDS:
        return f"Did you mean {'true' if word.lower() in _TRUE_WORDS else 'false'}?"
    return _left_out(fault, node) or _as_written(fault, node) or _choices(fault)


def _left_out(fault: Fault, node: Scalar) -> str:
    """How to leave a part out, where the value asks for that."""
    told = as_written.left_out(fault.schema, node)
    needed = root(fault.kind).data.get("required", ())
    if told or node.text.lower() not in as_written.REFUSALS or len(fault.path) != 1 or fault.key in needed:
        return told
    return f"Take {fault.key} out, and its defaults hold."


def _as_written(fault: Fault, node: Scalar) -> str:
    """The value under the key that takes it, as a line to write."""
    found = as_written.meant(fault.schema, node)
    in_list = not fault.path or isinstance(fault.path[-1], int)
    return "" if found is None else f"Write {'' if in_list else f'{fault.key}: '}{as_yaml(found)}."


def _choices(fault: Fault) -> str:
    """The words that may stand there and what else may; empty where there are no such words."""
    schema = fault.schema
    choices = [word for branch in schema.branches for word in branch.data.get("enum", ())]
    other = next((value for value in schema.data.get("examples", ()) if value not in choices), None)
    if not choices or other is None:
        return ""
    form = "keys such as" if isinstance(other, dict) else "a size such as"
    return f"Write {words(choices)}, or {form} {as_yaml(other)}."


def _missing(fault: Fault) -> tuple[Problem, ...]:
    problems = []
    misspelt = misspelt_keys(fault)
    for key in fault.error.validator_value:
        if key not in fault.error.instance and key not in misspelt:
            schema = fault.schema.child(key)
            line = example(key, schema) if schema else key
            problems.append(Problem(fault.place, f"{fault.dotted} lacks {key}.", f"Add, for example, {line}."))
    return tuple(problems)


def _not_a_choice(fault: Fault) -> tuple[Problem, ...]:
    word = fault.node.text if isinstance(fault.node, Scalar) else ""
    return _wrong(fault, did_you_mean(clipped(word), fault.error.validator_value))


def _not_a_quantity(fault: Fault) -> tuple[Problem, ...]:
    told = quantities.fault(fault.error.validator_value, str(fault.error.instance))
    message, mend = (told.message, told.mend) if told else ("", "")
    if fault.schema.branches and isinstance(fault.node, Scalar):
        mend = _as_written(fault, fault.node) or mend
    return (Problem(fault.place, f"{fault.dotted}: {message}", mend),)


def _out_of_bounds(fault: Fault) -> tuple[Problem, ...]:
    return _wrong(fault, f"Write {expected(fault.schema)}.")


def _wrong_count(fault: Fault) -> tuple[Problem, ...]:
    """Too few or too many entries of a list or keys of a mapping."""
    count, limit = len(fault.error.instance), fault.error.validator_value
    side = "at least" if fault.error.validator.startswith("min") else "at most"
    what = "keys" if isinstance(fault.node, Mapping) else "entries"
    message = f"{fault.dotted} has {count} {what}, but takes {side} {limit}."
    return (Problem(fault.place, message, _worked(fault)),)


def _repeated(fault: Fault) -> tuple[Problem, ...]:
    seen: set[str] = set()
    problems = []
    for item in fault.node.items if isinstance(fault.node, Sequence) else ():
        name = item.text if isinstance(item, Scalar) else ""
        if name in seen:
            problems.append(
                Problem(item.place, f"{clipped(name)} stands twice in {fault.dotted}.", "Take one out.")
            )
        seen.add(name)
    return tuple(problems)


def _excluded(fault: Fault) -> tuple[Problem, ...]:
    """What the schema rules out by `not`; its description says why."""
    keys = fault.error.validator_value.get("required", ())
    place, key = (fault.inner(keys[-1]).key_place, keys[-1]) if keys else (fault.key_place, fault.key)
    return (Problem(place, f"{fault.dotted}: {fault.error.schema['description']}", f"Take {key} out."),)


def _bad_name(fault: Fault) -> Problem:
    name = str(fault.error.instance)
    form = fault.error.schema["title"]
    message = f"{clipped(name)} cannot be a name in {fault.dotted}; a {form} belongs here."
    return Problem(fault.inner(name).key_place, message, "Choose such a name.")


def _alternatives(fault: Fault) -> tuple[Problem, ...]:
    chosen = fitting(fault.error)
    if not chosen:
        return _wrong_type(fault)
    told = [problem for error in chosen for problem in problems_of(fault.of(error))]
    return tuple(dict.fromkeys(told))


WORDING: dict[str, Callable[[Fault], tuple[Problem, ...]]] = {
    "additionalProperties": unknown_keys,
    "anyOf": _alternatives,
    "enum": _not_a_choice,
    "format": _not_a_quantity,
    "maxItems": _wrong_count,
    "maxLength": _wrong,
    "maxProperties": _wrong_count,
    "maximum": _out_of_bounds,
    "minItems": _wrong_count,
    "minLength": _wrong,
    "minProperties": _wrong_count,
    "minimum": _out_of_bounds,
    "not": _excluded,
    "pattern": _wrong,
    "required": _missing,
    "type": _wrong_type,
    "uniqueItems": _repeated,
    "x-least": _out_of_bounds,
    "x-most": _out_of_bounds,
}
