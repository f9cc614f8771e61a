"""The page of a comparison and its pictures, written: none of an earlier comparison is left among them."""

import re
from collections.abc import Iterator
from html import unescape

from padspec.comparing.as_data import picture_path
from padspec.comparing.comparison import Comparison
from padspec.comparing.page import page_html
from padspec.workspace import Workspace

PAGE = "index.html"
_PICTURE = re.compile(r'<img src="(faces/[^"/]+\.png)"')


def write_comparison(comparison: Comparison, output: Workspace) -> tuple[str, ...]:
    """Write pictures and then the page; their paths under the output folder, the page first."""
    files = dict(_pictures(comparison))
    # A picture is taken away only where the page that is replaced named it.
    for path in sorted(_pictures_there(output) - files.keys()):
        output.remove(path)
    for path, data in files.items():
        output.write(path, data)
    output.write(PAGE, page_html(comparison).encode("utf-8"))
    return PAGE, *files


def _pictures(comparison: Comparison) -> Iterator[tuple[str, bytes]]:
    for pad in comparison.pads:
        if pad.shown is not None:
            for name, data in pad.shown.files.items():
                yield picture_path(pad, name, pad.shown), data


def _pictures_there(output: Workspace) -> set[str]:
    if not output.is_file(PAGE):
        return set()
    return {unescape(path) for path in _PICTURE.findall(output.read(PAGE).decode("utf-8", "replace"))}
