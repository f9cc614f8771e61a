"""JSON Schema's types and keywords for values that are all text: what differs from the usual reading."""

from collections.abc import Callable, Iterator
from operator import ge, gt, le, lt
from typing import Any

from padspec.reading.checking import core_schema, quantities

Keyword = Callable[[Any, Any, Any, dict[str, Any]], Iterator[Any]]


class PlainText(str):
    """A text that was written without quotes, so that it may be a number or a truth value."""

    __slots__ = ()


def _is_string(_: Any, value: Any) -> bool:
    return isinstance(value, str) and not (isinstance(value, PlainText) and value == "")


def _is_integer(_: Any, value: Any) -> bool:
    return isinstance(value, PlainText) and core_schema.integer(value) is not None


def _is_number(_: Any, value: Any) -> bool:
    return isinstance(value, PlainText) and core_schema.number(value) is not None


def _is_boolean(_: Any, value: Any) -> bool:
    return isinstance(value, PlainText) and core_schema.boolean(value) is not None


def _numeric(holds: Callable[[float, float], bool]) -> Keyword:
    """A keyword that compares the number a plain text stands for, and lets all else pass."""

    def keyword(_: Any, limit: float, value: Any, __: dict[str, Any]) -> Iterator[Any]:
        found = core_schema.number(value) if isinstance(value, PlainText) else None
        if found is not None and not holds(found, limit):
            yield _error(f"{value} against {limit}")

    return keyword


def _format(_: Any, form: str, value: Any, __: dict[str, Any]) -> Iterator[Any]:
    if isinstance(value, str) and form in quantities.FORMATS and quantities.fault(form, value) is not None:
        yield _error(f"{value} is no {form}")


def _pattern(validator: Any, pattern: str, value: Any, schema: dict[str, Any]) -> Iterator[Any]:
    """The usual pattern; where there is a format that padspec judges, the pattern is for editors only."""
    from jsonschema import Draft202012Validator

    if schema.get("format") not in quantities.FORMATS:
        yield from Draft202012Validator.VALIDATORS["pattern"](validator, pattern, value, schema) or ()


def _length_bound(is_least: bool) -> Keyword:
    """`x-least` and `x-most`: bounds of a length, written as lengths."""

    def keyword(_: Any, bound: str, value: Any, __: dict[str, Any]) -> Iterator[Any]:
        if isinstance(value, str) and quantities.outside(value, bound, is_least):
            yield _error(f"{value} against {bound}")

    return keyword


def _error(message: str) -> Any:
    from jsonschema import ValidationError

    return ValidationError(message)


TYPES = {"string": _is_string, "integer": _is_integer, "number": _is_number, "boolean": _is_boolean}
KEYWORDS: dict[str, Any] = {
    "minimum": _numeric(ge),
    "maximum": _numeric(le),
    "exclusiveMinimum": _numeric(gt),
    "exclusiveMaximum": _numeric(lt),
    "format": _format,
    "pattern": _pattern,
    "x-least": _length_bound(is_least=True),
    "x-most": _length_bound(is_least=False),
}
