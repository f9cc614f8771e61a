"""What a shop wants to know of a pad beside its face: what it belongs to, its tags, price and description."""

from dataclasses import dataclass
from decimal import Decimal

from padspec.reading.variation import Variation
from padspec.resolve.settings import Settings


@dataclass(frozen=True, slots=True)
class Listing:
    """How a pad is listed. `own_sku` and `own_name` are those of its design, without the variant; `values` are the
    variant's, by axis, in the order of the axes; the price is what the shop asks in the studio's currency, None
    where none is stated.
    """

    own_sku: str
    own_name: str
    values: tuple[tuple[str, str], ...]
    tags: tuple[str, ...]
    price: Decimal | None
    about: str


def read_listing(own: Settings, sku: str, variation: Variation) -> Listing:
    """The listing of a design with this SKU; tags in the order written, each once."""
    return Listing(
        own_sku=sku,
        own_name=own.text("pad"),
        values=variation.values,
        tags=tuple(dict.fromkeys(own.texts("tags"))),
        price=own.amount("price") if own.has("price") else None,
        about=own.text("about") if own.has("about") else "",
    )
