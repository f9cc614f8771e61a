"""The pattern book as a PDF: pages as data go in, the bytes of the file come out.

Every face is one form, however many pages show it, and stays vector at any size.
"""

import pikepdf
from pikepdf import Object, OutlineItem, Pdf

from padspec.base.geometry import Affine
from padspec.draw.faces import FaceForms
from padspec.draw.metadata import describe
from padspec.draw.operators import matrix_operator, page_matrix
from padspec.draw.pages import add_page, saved
from padspec.gallery.lettering import book_fonts
from padspec.gallery.pages import PAGE, Page, PlacedFace, book_pages
from padspec.gallery.specimen import Gallery
from padspec.scene.nodes import Layer, Node, Scene


def book_pdf(gallery: Gallery) -> bytes:
    """The whole book, with a bookmark for each page. Raises ValueError where nothing is on show."""
    if not gallery.specimens:
        raise ValueError("a pattern book needs at least one face")
    with pikepdf.new() as pdf:
        drawn = _Drawn(pdf)
        pages = book_pages(gallery, book_fonts())
        for page in pages:
            drawn.add(page)
        with pdf.open_outline() as outline:
            outline.root.extend(OutlineItem(page.name, n) for n, page in enumerate(pages))
        describe(pdf, gallery.title, 1, None)
        return saved(pdf)


class _Drawn:
    """Adds pages to a file and remembers the form of every face."""

    __slots__ = ("_faces", "_forms", "_pdf")

    def __init__(self, pdf: Pdf) -> None:
        self._pdf = pdf
        self._faces = FaceForms(pdf)
        self._forms: dict[int, Object] = {}

    def add(self, page: Page) -> None:
        """One page at the end."""
        under, pictures = self._faces.marks(_furniture(page.under))
        over, _ = self._faces.marks(_furniture(page.over))
        forms: dict[str, Object] = dict(pictures)
        lines = [matrix_operator(page_matrix(PAGE.height)), *under]
        for n, face in enumerate(page.faces, 1):
            forms[f"/Face-{n}"] = self._form(face)
            lines += ["q", matrix_operator(_placing(face)), f"/Face-{n} Do", "Q"]
        add_page(self._pdf, PAGE, {}, [*lines, *over], forms)

    def _form(self, face: PlacedFace) -> Object:
        # By identity: comparing two faces by value would cost more than drawing one.
        key = id(face.specimen)
        if key not in self._forms:
            self._forms[key] = self._faces.form(face.specimen.scene)
        return self._forms[key]


def _placing(face: PlacedFace) -> Affine:
    scale = face.box.width / face.specimen.trim.width
    return Affine.scale(scale).then(Affine.move(face.box.x, face.box.y))


def _furniture(nodes: tuple[Node, ...]) -> Scene:
    return Scene(PAGE, 0.0, (Layer("marks", nodes),))
