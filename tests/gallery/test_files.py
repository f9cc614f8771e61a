"""The book and the page: what a reader of PDF, of HTML and of SVG finds in them."""

from html.parser import HTMLParser
from io import BytesIO
from xml.etree import ElementTree

import pikepdf
import pypdfium2
import pytest
from kit import disc

from padspec.gallery.book import book_pdf
from padspec.gallery.browser_page import face_files, page_html
from padspec.gallery.make import make_gallery
from padspec.gallery.specimen import Gallery
from padspec.gallery.wish import GalleryWish
from padspec.gallery.write import write_gallery
from padspec.workspace import MemoryWorkspace

FILES = {
    "studio.yaml": b"studio: Ink & <Paper>\n",
    "a.pad.yaml": b"pad: A\ntrim: {width: 90 mm, height: 190 mm}\nart: {file: art/a.png}\n",
    "art/a.png": disc(1200, 1200),
}
POINTS = 72 / 25.4


@pytest.fixture(scope="module")
def gallery() -> Gallery:
    wish = GalleryWish(layouts=("ruled", "full-picture"), grounds=("dots", "plain"))
    return make_gallery(("a.pad.yaml",), MemoryWorkspace(FILES), wish, "Tea & toast", lambda _: None)


@pytest.fixture(scope="module")
def book(gallery: Gallery) -> bytes:
    return book_pdf(gallery)


class Tags(HTMLParser):
    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag, attrs) -> None:
        self.found.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.words.append(data)

    def named(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.found if name == tag]


def test_there_is_a_page_of_all_layouts_and_one_for_each_with_a_bookmark(book: bytes) -> None:
    with pikepdf.open(BytesIO(book)) as pdf, pdf.open_outline() as outline:
        assert len(pdf.pages) == 3
        assert [item.title for item in outline.root] == ["Tea & toast", "Ruled", "Full picture"]
        a4 = [0, 0, 210 * POINTS, 297 * POINTS]
        assert [float(v) for v in pdf.pages[0].MediaBox] == pytest.approx(a4, abs=1e-3)


def test_every_face_is_one_form_however_many_pages_show_it(book: bytes) -> None:
    with pikepdf.open(BytesIO(book)) as pdf:
        faces = [
            [form.objgen for name, form in page.Resources.XObject.items() if name.startswith("/Face")]
            for page in pdf.pages
        ]
    overview, *pages = faces
    assert [len(some) for some in faces] == [2, 2, 2]
    assert overview == [some[0] for some in pages]


def test_a_face_stands_where_the_page_places_it_whole_and_upright(gallery: Gallery, book: bytes) -> None:
    # The ruled face's dotted ground is the first on page 2: its upper left corner has the ground's colour.
    pixels = pypdfium2.PdfDocument(book)[1].render(scale=2, rev_byteorder=True).to_numpy()
    ground = gallery.specimens[0].scene.layers[0].nodes[0].fill
    x, y = (round(at * POINTS * 2) for at in (16 + 1.2, 29.6 + 8.5 + 0.4))
    assert tuple(pixels[y, x][:3]) == pytest.approx((ground.red, ground.green, ground.blue), abs=3)


def test_the_same_gallery_makes_the_same_files(gallery: Gallery, book: bytes) -> None:
    again = make_gallery(
        ("a.pad.yaml",),
        MemoryWorkspace(FILES),
        GalleryWish(layouts=("ruled", "full-picture"), grounds=("dots", "plain")),
        "Tea & toast",
        lambda _: None,
    )
    assert book_pdf(again) == book
    assert page_html(again) == page_html(gallery)
    assert face_files(again) == face_files(gallery)


def test_an_empty_book_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one face"):
        book_pdf(Gallery("", "", (), ()))


def test_the_page_shows_every_face_with_its_words(gallery: Gallery) -> None:
    page = Tags(page_html(gallery))
    images = [image for image in page.named("img") if image.get("loading")]
    assert [image["src"] for image in images] == list(face_files(gallery))
    assert images[0]["alt"] == "ruled on dots, 90 × 190 mm"
    assert len(page.named("figure")) == 4
    told = " ".join(page.words)
    assert "Ink & <Paper>" in told
    assert "Tea & toast" in told


def test_the_page_asks_for_nothing_but_its_faces(gallery: Gallery) -> None:
    text = page_html(gallery)
    page = Tags(text)
    asked = {a[k] for _, a in page.found for k in ("src", "href") if a.get(k)}
    assert asked == {*face_files(gallery), "data:,"}
    assert "http" not in text
    assert "@import" not in text


def test_filters_offer_the_layouts_and_grounds_that_are_there(gallery: Gallery) -> None:
    page = Tags(page_html(gallery))
    values = [option["value"] for option in page.named("option")]
    assert values == ["", "full-picture", "ruled", "", "dots", "plain"]
    assert {figure["data-layout"] for figure in page.named("figure")} == {"ruled", "full-picture"}


def test_what_was_found_stands_under_its_face(gallery: Gallery) -> None:
    # The disc's 900 pixels over 154 mm are 148 ppi.
    page = Tags(page_html(gallery))
    counts = [int(figure["data-found"]) for figure in page.named("figure")]
    assert counts[:2] == [0, 0]
    assert all(counts[2:])
    assert sum("art-resolution" in words for words in page.words) == 2


def test_a_face_file_ends_at_the_trim_and_holds_its_picture(gallery: Gallery) -> None:
    svg = ElementTree.fromstring(face_files(gallery)["faces/ruled-plain-90x190.svg"])
    assert svg.get("viewBox") == "0 0 90 190"
    (image,) = svg.iter("{http://www.w3.org/2000/svg}image")
    assert image.get("{http://www.w3.org/1999/xlink}href", "").startswith("data:image/png;base64,")


def test_faces_of_an_earlier_book_go_and_other_files_stay(gallery: Gallery) -> None:
    output = MemoryWorkspace({})
    write_gallery(gallery, output)
    output.write("faces/mine.svg", b"")
    fewer = Gallery(gallery.title, gallery.studio, gallery.specimens[:1], ())
    told = write_gallery(fewer, output)
    assert set(output.files) == {"gallery.pdf", "gallery.html", "faces/ruled-dots-90x190.svg", "faces/mine.svg"}
    assert told == ("gallery.pdf", "gallery.html", "faces/ruled-dots-90x190.svg")
