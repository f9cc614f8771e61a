"""What an SVG file refers to: only itself and pictures embedded in it, never anything outside."""

import base64
import binascii
import re
from collections.abc import Iterable, Iterator
from io import BytesIO
from typing import Any
from urllib.parse import unquote_to_bytes

from PIL import Image, UnidentifiedImageError

#: Pictures may be embedded in these forms.
_EMBEDDED = re.compile(r"data:image/(png|jpe?g|webp|gif)\s*(?:;[^,]*?)?,", re.I)
_OPENERS = {"jpg": "JPEG", "jpeg": "JPEG", "png": "PNG", "webp": "WEBP", "gif": "GIF"}
# Values that cannot hold a CSS reference are not parsed: a path may be megabytes long.
_MAY_REFER = re.compile(r"url|src|image|cross-fade|\\", re.I)
_REFERRING = frozenset({"url", "src", "image", "image-set", "-webkit-image-set", "cross-fade"})


def is_inside(target: str) -> bool:
    """Whether an href stays in the file: a fragment, or a picture embedded as data.

    >>> is_inside("#wing"), is_inside("data:image/png;base64,iVBORw=="), is_inside("moth.png")
    (True, True, False)
    """
    target = target.strip()
    return target.startswith("#") or _EMBEDDED.match(target) is not None


def embedded_size(target: str) -> tuple[int, int] | None:
    """The pixels of a picture embedded as data, from its header alone; None where it cannot be read."""
    match = _EMBEDDED.match(target.strip())
    if match is None:
        return None
    head, _, body = target.strip().partition(",")
    try:
        plain = unquote_to_bytes(body)
        data = base64.b64decode(plain) if head.lower().rstrip().endswith("base64") else plain
        form = _OPENERS[match.group(1).lower()]
        Image.init()
        with Image.OPEN[form][0](BytesIO(data), "") as image:
            return image.size
    except (binascii.Error, UnidentifiedImageError, SyntaxError, OSError, ValueError):
        return None


def fragments(value: str) -> list[str]:
    """The ids that an attribute's value refers to by url(#…)."""
    return re.findall(r"url\(\s*[\"']?\s*#([^\"')\s]+)", value) if "url" in value else []


def outside_in_value(value: str) -> str | None:
    """The first reference in a CSS value (an attribute, a style) that is not to a part of the file."""
    if not _MAY_REFER.search(value):
        return None
    from tinycss2 import parse_component_value_list  # type: ignore[attr-defined]

    return next(_outside(parse_component_value_list(value)), None)  # type: ignore[no-untyped-call]


def outside_in_sheet(text: str) -> str | None:
    """The first reference in a style sheet that is not to a part of the file; @import is always one."""
    from tinycss2 import parse_stylesheet  # type: ignore[attr-defined]

    return next(_outside(parse_stylesheet(text)), None)  # type: ignore[no-untyped-call]


def _outside(nodes: Iterable[Any]) -> Iterator[str]:
    """References out of the file in CSS nodes, in order (CSS Syntax 3 component values and rules)."""
    for node in nodes:
        if node.type == "at-rule" and node.lower_at_keyword == "import":
            yield "@import"
        elif node.type == "at-rule" and node.lower_at_keyword == "namespace":
            continue
        elif node.type == "url":
            yield from _foreign(node.value)
        elif node.type == "error":
            if node.kind == "bad-url":
                yield "a broken url()"
        elif node.type == "function":
            if node.lower_name in _REFERRING:
                for part in node.arguments:
                    if part.type == "string":
                        yield from _foreign(part.value)
            yield from _outside(node.arguments)
        elif node.type in ("qualified-rule", "at-rule"):
            yield from _outside([*node.prelude, *(node.content or [])])
        elif node.type.endswith(" block"):
            yield from _outside(node.content)


def _foreign(target: str) -> Iterator[str]:
    if not target.strip().startswith("#"):
        yield target
