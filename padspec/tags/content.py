"""What one tag says and how it looks: a composed pad in, words, price, symbol, colours, fonts and picture out."""

from dataclasses import dataclass, replace

from padspec.base.colour import WHITE, Colour
from padspec.base.contrast import contrast
from padspec.compose.face import Face
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.coverage import lacking
from padspec.resolve.design import Design, blocks
from padspec.resolve.font import Font
from padspec.resolve.written_price import PriceText, WrittenPrice
from padspec.tags.motif import Motif, motif_of
from padspec.tags.pattern import Pattern

#: For words where the palette's own colour is too light to be read on white (WCAG 2, 1.4.3: 4.5 to 1).
INK, QUIET = Colour.from_hex("#2d2a26"), Colour.from_hex("#5f5952")
_LEAST_CONTRAST = 4.5


@dataclass(frozen=True, slots=True)
class Look:
    """Fonts and colours of a tag: `title` and `colour` are those of the pad's own lettering where they can be
    read.
    """

    title: Font
    text: Font
    strong: Font
    colour: Colour
    motif: Motif


@dataclass(frozen=True, slots=True)
class Content:
    """The words of a tag, each empty where there is none; its price and its symbol, or None."""

    name: str
    variant: str
    sku: str
    studio: str
    price: PriceText | None
    pattern: Pattern | None
    look: Look

    @property
    def shown_sku(self) -> str:
        """The SKU where no symbol spells it out already."""
        return "" if self.pattern is not None and self.pattern.text == self.sku else self.sku


def content_of(design: Design, face: Face, written: WrittenPrice, pattern: Pattern | None) -> Content:
    """The tag of a pad."""
    listing = design.listing
    return Content(
        name=listing.own_name,
        variant=", ".join(value for _, value in listing.values),
        sku=design.sku,
        studio=design.studio.name,
        price=None if listing.price is None else written.of(listing.price),
        pattern=pattern,
        look=_look(design, face),
    )


def _look(design: Design, face: Face) -> Look:
    palette = dict(design.palette)
    lettering = palette.get("lettering", INK)
    headings = [block for block in blocks(design) if isinstance(block, Heading)]
    plain = design.small_print
    title = max(headings, key=lambda block: block.size).font if headings else replace(plain, weight=800)
    return Look(
        title=title,
        text=replace(plain, weight=500),
        strong=replace(plain, weight=700),
        colour=lettering if contrast(lettering, WHITE) >= _LEAST_CONTRAST else INK,
        motif=motif_of(design, face),
    )


def unwritable(content: Content) -> str:
    """The characters of a tag that no font here has."""
    price = content.price.text if content.price else ""
    small = lacking(content.look.text, content.variant + content.studio)
    return "".join(dict.fromkeys(lacking(content.look.title, content.name + price) + small))
