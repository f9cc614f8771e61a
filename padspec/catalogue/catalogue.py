"""Built pads in, every file of the catalogue out."""

from collections.abc import Sequence

from padspec.catalogue.card import Card, Unread, card_of
from padspec.catalogue.page import Catalogue, page_html
from padspec.catalogue.pictures import FOLDER, Small, small_face, small_flat
from padspec.catalogue.tables import catalogue_csv, catalogue_json
from padspec.collection.records.in_catalogue import ASIDE, DATA, PAGE
from padspec.collection.site import Built
from padspec.workspace import FolderWorkspace

TABLE = "catalogue/catalogue.csv"


def write_catalogue(
    name: str, about: str, built: Sequence[Built], unread: Sequence[Unread], output: FolderWorkspace
) -> tuple[str, ...]:
    """Write the catalogue of some pads; the paths written, the page first. Raises ProblemsError.

    `name` and `about` are those of their collection, `unread` what it has no card of. Small pictures of an earlier
    catalogue go.
    """
    cards = tuple(_card(one, output) for one in built)
    pictures = _pictures(cards, output)
    studio = next((str(one.summary["studio"]) for one in built), "")
    files = {small.path: small.data for small in pictures.values()}
    for path in output.neighbours(FOLDER, ".jpg"):
        if path not in files:
            output.remove(path)
    for path, data in files.items():
        # Its name says what it was made of, and not that nobody has touched it since.
        if not output.is_file(path) or output.read(path) != data:
            output.write(path, data)
    catalogue = Catalogue(name, about, studio, cards, pictures, tuple(unread))
    texts = {
        PAGE: page_html(catalogue).encode("utf-8", "backslashreplace"),
        TABLE: catalogue_csv(cards),
        DATA: catalogue_json(name, about, studio, cards, unread),
    }
    for path, data in texts.items():
        output.write(path, data)
    output.remove(ASIDE)
    return (*texts, *files)


def _card(one: Built, output: FolderWorkspace) -> Card:
    return card_of(one.summary, one.files, output.is_file(f"{one.summary['sku']}/flat-lay.png"))


def _pictures(cards: tuple[Card, ...], output: FolderWorkspace) -> dict[str, Small]:
    faces = {card.face: small_face(card.face, card.width, output) for card in cards if card.face}
    return faces | {card.flat: small_flat(card.flat, output) for card in cards if card.flat}
