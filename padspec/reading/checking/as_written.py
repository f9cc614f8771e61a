"""What a maker meant by one value where keys belong: the same value under the key that takes it.

`art: phone.jpg` is shown as `art: {file: phone.jpg}`, `trim: 90 x 190 mm` as its width and height, and where
the value says no (`heading: none`), how the schema's `x-leave-out` leaves that part out.
"""

import re
from typing import Any

from padspec.base.errors import UnitError
from padspec.base.numbers import number_text
from padspec.base.paper import sheet_size
from padspec.base.units import parse_length
from padspec.reading.checking import quantities
from padspec.reading.checking.keywords import TYPES, PlainText
from padspec.reading.checking.schemas import Schema
from padspec.reading.tree import Scalar

#: Words that mean that something is not wanted.
REFUSALS = ("none", "no", "off", "false", "null", "~", "nothing", "without")
_SIZE = re.compile(r"([0-9 ./,¼-¾⅐-⅞]+?) *([A-Za-z\"″]*) *(?:x|×|by) *([0-9 ./,¼-¾⅐-⅞]+?) *([A-Za-z\"″]*)")
_INCH = ('"', "″")


def left_out(schema: Schema, node: Scalar) -> str:
    """How to have none of a part, where that is what the value says; empty where it does not."""
    return str(schema.data.get("x-leave-out", "")) if node.text.lower() in REFUSALS else ""


def meant(schema: Schema, node: Scalar) -> dict[str, Any] | list[str] | None:
    """The mapping or list that was likely meant by one value; None where none takes it.

    A size such as 90 x 190 mm becomes width and height, a length goes to the first key that takes lengths,
    any other value to the first key that takes it at all.
    """
    if schema.items is not None:
        return [node.text] if _takes(schema.items, node) else None
    mapping = _mapping(schema)
    if mapping is None:
        return None
    sides = _sides(node.text)
    if sides and _takes_sides(mapping):
        return dict(sides)
    found = _fitting(mapping, node, sides)
    return found if found and set(mapping.required) <= found.keys() else None


def _mapping(schema: Schema) -> Schema | None:
    """The one mapping that a schema allows, by itself or among its alternatives."""
    found = [branch for branch in (schema.branches or (schema,)) if branch.data.get("type") == "object"]
    return found[0] if len(found) == 1 else None


def _fitting(mapping: Schema, node: Scalar, sides: dict[str, str] | None) -> dict[str, Any] | None:
    """The value under the first key that takes it."""
    keys = mapping.properties
    for key, inner in keys.items():
        if chosen := _choice_inside(inner, node.text):
            return {key: chosen}
    fits: dict[str, Any] = {key: node.text for key, inner in keys.items() if _takes(inner, node)}
    if sides and not fits:
        fits = {key: sides for key, inner in keys.items() if any(map(_takes_sides, inner.branches))}
    if _is_quantity(node.text):
        measures = (key for key in fits if "length" in str(keys[key].data.get("format")))
        fits = dict.fromkeys(measures, node.text) or fits
    return next(({key: value} for key, value in fits.items()), None)


def _choice_inside(schema: Schema, word: str) -> dict[str, str] | None:
    """The mapping that a word makes by itself, where it is one of the choices of the one key that is needed."""
    mapping = _mapping(schema)
    needed = list(mapping.required) if mapping else []
    if mapping is None or len(needed) != 1:
        return None
    choices = mapping.properties[needed[0]].data.get("enum", ())
    return {needed[0]: word} if word in choices else None


def _sides(text: str) -> dict[str, str] | None:
    return size(text) or _sheet_sides(text) if len(text) <= quantities.LONGEST else None


def size(text: str) -> dict[str, str] | None:
    """Width and height from a text that names both; a unit that stands once is meant for both.

    >>> size("90 x 190 mm"), size('3 1/2" × 8 1/2"'), size("A4")
    ({'width': '90 mm', 'height': '190 mm'}, {'width': '3 1/2 in', 'height': '8 1/2 in'}, None)
    """
    match = _SIZE.fullmatch(text.strip())
    if match is None:
        return None
    width, first, height, second = (part.strip().replace(",", ".") for part in match.groups())
    last = second or first or "mm"
    sides = {"width": _measure(width, first or last), "height": _measure(height, last)}
    return sides if all(map(_is_quantity, sides.values())) else None


def _measure(number: str, unit: str) -> str:
    return f"{number} {'in' if unit in _INCH else unit}"


def _sheet_sides(text: str) -> dict[str, str] | None:
    try:
        _, sheet = sheet_size(text)
    except KeyError:
        return None
    return {"width": f"{number_text(sheet.width)} mm", "height": f"{number_text(sheet.height)} mm"}


def _is_quantity(text: str) -> bool:
    try:
        parse_length(text)
    except UnitError:
        return quantities.fault("share", text) is None
    return True


def _takes_sides(schema: Schema) -> bool:
    return {"width", "height"} <= set(schema.required)


def _takes(schema: Schema, node: Scalar) -> bool:
    """Whether a schema accepts one value."""
    data = schema.data
    if schema.branches:
        return any(_takes(branch, node) for branch in schema.branches)
    if "enum" in data:
        return node.text in data["enum"]
    value = PlainText(node.text) if node.plain else node.text
    kind = data.get("type")
    if not isinstance(kind, str) or kind not in TYPES or not TYPES[kind](None, value):
        return False
    if data.get("format") in quantities.FORMATS:
        return quantities.fault(data["format"], node.text) is None
    return re.search(data.get("pattern", ""), node.text) is not None
