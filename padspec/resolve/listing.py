"""What a shop wants to know of a pad beside its face: what it belongs to, its tags, price and description."""

from dataclasses import dataclass
from decimal import Decimal
from urllib.parse import urlsplit

from padspec.base.gtin import GtinError, gtin
from padspec.reading.variation import Variation
from padspec.resolve.settings import Settings

#: Bytes that a QR code of version 40 holds at level M (ISO/IEC 18004, table 7).
MOST_LINK = 2331


@dataclass(frozen=True, slots=True)
class Listing:
    """How a pad is listed. `own_sku` and `own_name` are those of its design, without the variant; `values` are the
    variant's, by axis, in the order of the axes; the price is what the shop asks in the studio's currency, None
    where none is stated. `barcode` is the digits of the trade item, the check digit among them, and `link` a page
    about the pad, for the symbol on its tag; both are empty where there is none.
    """

    own_sku: str
    own_name: str
    values: tuple[tuple[str, str], ...]
    tags: tuple[str, ...]
    price: Decimal | None
    about: str
    barcode: str = ""
    link: str = ""


def read_listing(own: Settings, sku: str, variation: Variation) -> Listing:
    """The listing of a design with this SKU; tags in the order written, each once."""
    return Listing(
        own_sku=sku,
        own_name=own.text("pad"),
        values=variation.values,
        tags=tuple(dict.fromkeys(own.texts("tags"))),
        price=own.amount("price") if own.has("price") else None,
        about=own.text("about") if own.has("about") else "",
        barcode=_barcode(own) if own.has("barcode") else "",
        link=read_link(own) if own.has("link") else "",
    )


def _barcode(own: Settings) -> str:
    try:
        return gtin(own.text("barcode")).digits
    except GtinError as error:
        own.troubles.add(own.place("barcode"), error.message, error.mend)
        return ""


def read_link(own: Settings) -> str:
    """The link of some settings, as a QR code can hold it; what is wrong with it is a trouble."""
    link = own.text("link")
    fault = _link_fault(link)
    if fault is not None:
        own.troubles.add(own.place("link"), *fault)
    return link


def _link_fault(link: str) -> tuple[str, str] | None:
    """What is wrong with a link, and how to mend it."""
    if not link.startswith("https://"):
        return f"{link[:60]} does not begin with https://.", "Write the whole address: https://example.com/moth."
    odd = next((letter for letter in link if not "!" <= letter <= "~"), None)
    if odd is not None:
        return (
            f"{odd!r} cannot stand in an address.",
            "Copy the address from a browser, which writes such signs as %.",
        )
    if len(link) > MOST_LINK:
        message = f"The link has {len(link)} characters."
        return message, f"A QR code holds {MOST_LINK} at level M (ISO/IEC 18004), and one for a tag some 60."
    try:
        host = urlsplit(link).hostname
    except ValueError:
        host = None
    return None if host else (f"{link} names no place.", "Write the whole address: https://example.com/moth.")
