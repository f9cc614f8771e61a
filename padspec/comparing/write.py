"""The page of a comparison and its pictures, written: none of an earlier comparison is left among them."""

import re
from collections.abc import Iterator
from html import unescape

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.comparing.as_data import picture_path
from padspec.comparing.comparison import Comparison
from padspec.comparing.page import MARK, page_html
from padspec.workspace import Workspace

PAGE = "index.html"
_PICTURE = re.compile(r'<img src="(faces/[^"/]+\.png)"')


def write_comparison(comparison: Comparison, output: Workspace) -> tuple[str, ...]:
    """Write pictures and then the page; their paths under the output folder, the page first.

    Raises ProblemsError where a page stands there that is none of ours.
    """
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
    page = output.read(PAGE).decode("utf-8", "replace")
    if MARK not in page:
        message = "This page is none that padspec compare wrote, and would be written over."
        raise ProblemsError(Problem(Place(PAGE, 0, 0), message, "Write elsewhere: --out FOLDER."))
    return {unescape(path) for path in _PICTURE.findall(page)}
