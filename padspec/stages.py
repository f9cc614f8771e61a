"""Any stage of a design as plain data, for `padspec show` and for other programs."""

from dataclasses import fields, is_dataclass
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from typing import Any

from padspec.base.colour import Colour
from padspec.base.money import exact_text
from padspec.base.place import Place
from padspec.draw.svg import path_text
from padspec.pipeline import Pad
from padspec.reading.tree import as_data
from padspec.report import finding_data
from padspec.scene.outline import Close, Curve, Line, Move
from padspec.workspace import content_digest

STAGES = ("document", "design", "face", "sheet", "findings")


def stage_data(pad: Pad, stage: str) -> Any:
    """One stage as dictionaries, lists, texts and numbers. Colours are hex, outlines path data, bytes a digest."""
    match stage:
        case "document":
            documents = pad.documents
            return {
                name: as_data(root.root)
                for name, root in (
                    ("design", documents.design),
                    ("studio", documents.studio),
                    ("layout", documents.layout),
                )
            }
        case "design":
            return _plain(pad.design)
        case "face":
            return _plain(pad.face)
        case "sheet":
            return _plain(pad.sheet)
        case "findings":
            return [finding_data(finding) for finding in pad.findings]
        case other:
            raise LookupError(other)


def _plain(value: Any) -> Any:
    match value:
        case Colour():
            return value.hex
        case Place():
            return str(value)
        case bytes():
            return {"bytes": len(value), "digest": content_digest(value)}
        case Decimal():
            return f"{value:f}"
        case Enum():
            return value.name.lower()
        case Decimal() | Fraction():
            return exact_text(value)
        case float():
            return round(value, 6)
        case tuple() if value and all(isinstance(part, Move | Line | Curve | Close) for part in value):
            return path_text(value)
        case tuple() | list():
            return [_plain(part) for part in value]
        case dict():
            return {str(key): _plain(part) for key, part in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        named = {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
        return {"kind": type(value).__name__.lower(), **named}
    return value
