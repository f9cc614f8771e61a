"""Whether what is drawn is the same: one digest over all that the drawn files of a pad hang on.

A comment, a tag, a limit or an accepted finding changes the design's file and its findings, and not a line of the
face: its files need not be drawn again then.
"""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from typing import Any

from padspec.base.place import Place
from padspec.draw.outputs import DrawWish
from padspec.pipeline import Pad
from padspec.resolve.design import Design
from padspec.resolve.font import Font
from padspec.resolve.key import Key
from padspec.scene.nodes import Raster, Vector
from padspec.workspace import content_digest

#: What of a design no drawn file shows.
_UNSEEN = frozenset({"file", "place", "limits", "allowances", "keys", "listing"})
_SEEN = tuple(field.name for field in fields(Design) if field.name not in _UNSEEN)
#: Checks whose findings are drawn over the proof of the sheet.
_SHOWN = ("cut-visibility", "miscut-shows")


def drawn_digest(pad: Pad, wish: DrawWish) -> str:
    """The same for two pads of one installed padspec only if every drawn file is the same byte for byte."""
    design = pad.design
    told = [f"{name} {'|'.join(_parts(getattr(design, name)))}" for name in _SEEN]
    shown = [(f.check, f.counts, f.measured) for f in pad.findings if f.check in _SHOWN]
    return content_digest("\n".join([*told, repr((pad.failed, pad.sheet is None, wish, shown))]).encode())


def _parts(value: Any) -> Iterator[str]:
    """Every plain value that something is made of, in order; where it was written does not count."""
    match value:
        case Place() | Key():
            return
        case Raster() | Vector():
            yield f"{value.name} {value.digest}"
        case Font():
            yield f"{value.digest} {replace(value, data=b'')!r}"
        case bytes():
            yield content_digest(value)
        case tuple() | list():
            yield f"({len(value)}"
            for item in value:
                yield from _parts(item)
        case _ if is_dataclass(value):
            yield type(value).__name__
            for field in fields(value):
                yield from _parts(getattr(value, field.name))
        case _:
            yield repr(value)
