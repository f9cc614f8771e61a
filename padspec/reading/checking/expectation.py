"""What the schema expects at a place, in words and as a worked example."""

import re
from typing import Any

from padspec.base.numbers import number_text
from padspec.reading.checking.quantities import outside
from padspec.reading.checking.schemas import Schema

_MOST_KEYS = 6
_SAFE_PLAIN = re.compile(r"(?! )[A-Za-z0-9.][^#:,\[\]{}\"'\n]*(?<! )")


def expected(schema: Schema) -> str:
    """A noun phrase for what belongs there.

    >>> from padspec.reading.checking.schemas import root
    >>> expected(root("design").properties["leaves"])
    'a whole number from 1 to 1000'
    """
    if len(schema.branches) > 2:
        return f"a {schema.data['title']}"
    if schema.branches:
        return ", or ".join(expected(branch) for branch in schema.branches)
    if "enum" in schema.data:
        return words(schema.data["enum"])
    match schema.data.get("type"):
        case "integer":
            return f"a whole number{bounds(schema)}"
        case "number":
            return f"a number{bounds(schema)}"
        case "boolean":
            return "true or false"
        case "array":
            return "a list"
        case "object":
            return f"a mapping with {_keys(schema)}"
    if schema.data.get("format") == "length-or-share":
        return f"a length{bounds(schema)}, or a percentage{_shares(schema)}"
    form = f"a {schema.form}" if schema.form else f"a text{_characters(schema)}"
    return f"{form}{bounds(schema)}"


def words(values: list[str], joint: str = "or") -> str:
    """Words in a row.

    >>> words(["rule"]), words(["rule", "centre"]), words(["head", "foot", "left"], "and")
    ('rule', 'rule or centre', 'head, foot and left')
    """
    *most, last = values
    return f"{', '.join(most)} {joint} {last}" if most else last


def bounds(schema: Schema) -> str:
    """How far a number or a length may go, with a space before it; empty where nothing bounds it.

    >>> bounds(Schema("", {"x-least": "1 mm", "x-most": "300 mm"})), bounds(Schema("", {"maximum": 12}))
    (' from 1 mm to 300 mm', ' of at most 12')
    """
    least = _bound(schema.data.get("minimum", schema.data.get("x-least")))
    most = _bound(schema.data.get("maximum", schema.data.get("x-most")))
    if least and most:
        return f" from {least} to {most}"
    if most:
        return f" of at most {most}"
    return f" of at least {least}" if least else ""


def example(key: str, schema: Schema) -> str:
    """A line that could stand in the file, or just the value for an empty key; empty without an example.

    >>> from padspec.reading.checking.schemas import root
    >>> example("trim", root("design").properties["trim"])
    'trim: {width: 90 mm, height: 190 mm}'
    """
    shown = [*schema.data.get("examples", []), *([schema.data["default"]] if "default" in schema.data else [])]
    return (f"{key}: " if key else "") + as_yaml(shown[0]) if shown else ""


def as_yaml(value: Any) -> str:
    """A JSON value as YAML on one line, texts in quotes where they need them.

    >>> as_yaml({"colour": "#7a3b58", "marks": True, "count": 12})
    '{colour: "#7a3b58", marks: true, count: 12}'
    """
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {as_yaml(inner)}" for key, inner in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(as_yaml(item) for item in value) + "]"
    if isinstance(value, bool):
        return "true" if value else "false"
    text = str(value)
    if _SAFE_PLAIN.fullmatch(text) or re.fullmatch(r"-?[0-9.]+", text):
        return text
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n") + '"'


def _bound(value: Any) -> str:
    if value is None:
        return ""
    return value if isinstance(value, str) else number_text(value)


def _shares(schema: Schema) -> str:
    """How large a percentage may be that stands for a length."""
    over_nothing = outside("0 %", schema.data.get("x-least", "0 mm"), is_least=True)
    return " above 0 % and up to 100 %" if over_nothing else " from 0 % to 100 %"


def _characters(schema: Schema) -> str:
    least, most = schema.data.get("minLength", 0), schema.data.get("maxLength")
    return f" of {least} to {most} characters" if most is not None else ""


def _keys(schema: Schema) -> str:
    keys = list(schema.properties)
    if not keys:
        return "names of your own"
    if len(keys) > _MOST_KEYS:
        return f"keys such as {', '.join(keys[: _MOST_KEYS - 1])}"
    if schema.data.get("maxProperties") == 1:
        return f"one of the keys {words(keys)}"
    if set(keys) <= set(schema.required) or len(keys) == 1:
        return f"the keys {words(keys, 'and')}" if len(keys) > 1 else f"the key {keys[0]}"
    return f"any of the keys {words(keys, 'and')}"
