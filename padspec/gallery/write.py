"""The files of the pattern book, written: each whole, and none of an earlier book left among them."""

import re

from padspec.gallery.book import book_pdf
from padspec.gallery.browser_page import face_files, page_html
from padspec.gallery.specimen import Gallery
from padspec.workspace import Workspace

BOOK, PAGE = "gallery.pdf", "gallery.html"
_FACE = re.compile(r'<img src="(faces/[^"/]+\.svg)"')


def write_gallery(gallery: Gallery, output: Workspace) -> tuple[str, ...]:
    """Write book, page and faces; the paths written, under the output folder. The page comes after its faces."""
    files = face_files(gallery)
    page = page_html(gallery)
    # A face is taken away only where the page that is replaced named it.
    for path in sorted(_faces_there(output) - files.keys()):
        output.remove(path)
    files[BOOK] = book_pdf(gallery)
    files[PAGE] = page.encode("utf-8")
    for path, data in files.items():
        output.write(path, data)
    return BOOK, PAGE, *(path for path in files if path not in (BOOK, PAGE))


def _faces_there(output: Workspace) -> set[str]:
    if not output.is_file(PAGE):
        return set()
    return set(_FACE.findall(output.read(PAGE).decode("utf-8", "replace")))
