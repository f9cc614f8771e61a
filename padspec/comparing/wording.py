"""What is said of one field: its word and unit, or why it is never told; and values put into words."""

from collections.abc import Callable
from dataclasses import dataclass, fields, is_dataclass
from decimal import Decimal
from typing import Any, Literal

from padspec.base.colour import Colour
from padspec.base.geometry import Sides, Size
from padspec.base.numbers import mm_text, number_text, percent_text
from padspec.workspace import content_digest

Unit = Literal[
    "text",
    "quoted",
    "mm",
    "share",
    "rough share",
    "degrees",
    "count",
    "number",
    "numbers",
    "flag",
    "colour",
    "size",
    "sides",
    "pixels",
    "texts",
    "pairs",
    "money",
    "seconds",
    "minutes",
    "digest",
    "content",
    "shifts",
    "factors",
    "list",
]


@dataclass(frozen=True, slots=True)
class Word:
    """How a field is told: by what word and in what unit.

    An empty word leaves it to the parts of the field, which are told by their own. `key` is the key of the YAML,
    its path where that is the design's; `none` is what None or nothing means; `section` the head it is told under.
    Where the field `beside` is nothing, this one does nothing, and is not told.
    """

    what: str
    unit: Unit = "text"
    key: str = ""
    none: str = "none"
    section: str = ""
    beside: str = ""


@dataclass(frozen=True, slots=True)
class Apart:
    """A field that is not told by itself, and why."""

    why: str


Words = dict[str, Word | Apart]
#: A text longer than this is shortened, its end kept.
_MOST = 60


def worded(value: Any, word: Word) -> str:
    """A value of a field in words."""
    if value is None or value == "" or value == ():
        return word.none
    return _WAYS[word.unit](value)


def quoted(text: str) -> str:
    """A text in quotes, on one line, shortened in the middle where it is long."""
    line = " ".join(text.split())
    if len(line) > _MOST:
        line = f"{line[: _MOST - 21].rstrip()} … {line[-18:].lstrip()}"
    return f"“{line}”"


def _texts(value: tuple[Any, ...]) -> str:
    return ", ".join(item.hex if isinstance(item, Colour) else str(item) for item in value)


def _size(value: Size) -> str:
    return f"{mm_text(value.width)} × {mm_text(value.height)}"


def _sides(value: Sides) -> str:
    sides = (value.left, value.top, value.right, value.bottom)
    if max(sides) - min(sides) < 1e-6:
        return mm_text(value.left)
    names = ("left", "head", "right", "foot")
    return ", ".join(f"{name} {mm_text(side)}" for name, side in zip(names, sides, strict=True))


def _item(value: Any) -> str:
    """A small bundle by its values, such as `A3 297 mm × 420 mm 0.09`."""
    parts = (getattr(value, field.name) for field in fields(value))
    return " ".join(_part(part) for part in parts if part is not None)


def _part(value: Any) -> str:
    if isinstance(value, Size):
        return _size(value)
    return f"{value:f}" if isinstance(value, Decimal) else str(value)


def _list(value: Any) -> str:
    items = value if isinstance(value, tuple) else (value,)
    return "; ".join(_item(item) if is_dataclass(item) else str(item) for item in items)


def _content(value: bytes) -> str:
    return content_digest(value)[:8]


#: One way for each unit.
_WAYS: dict[Unit, Callable[[Any], str]] = {
    "text": str,
    "quoted": quoted,
    "mm": lambda value: mm_text(value, 3),
    "share": lambda value: percent_text(float(value), 2),
    "rough share": lambda value: percent_text(value, 0),
    "degrees": lambda value: f"{number_text(value, 2)}°",
    "count": str,
    "number": str,
    "numbers": lambda value: " : ".join(number_text(part) for part in value),
    "flag": lambda value: "yes" if value else "no",
    "colour": lambda value: value.hex,
    "size": _size,
    "sides": _sides,
    "pixels": lambda value: f"{value[0]} × {value[1]} pixels" if value[0] else "drawn in lines",
    "texts": _texts,
    "pairs": lambda value: ", ".join(f"{axis} {name}" for axis, name in value),
    "money": lambda value: f"{value:f}",
    "seconds": lambda value: f"{number_text(value, 2)} s",
    "minutes": lambda value: f"{number_text(value, 2)} min",
    "digest": lambda value: value[:8],
    "content": _content,
    "shifts": lambda value: f"{mm_text(value[0], 3)} right, {mm_text(value[1], 3)} down",
    "factors": lambda value: f"{percent_text(value[0], 3)} across, {percent_text(value[1], 3)} down",
    "list": _list,
}
