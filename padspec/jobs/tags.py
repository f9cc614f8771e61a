"""A job's pads in, their tags on a sheet of labels out: which sheet, which symbol, and what is to be told."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from padspec.base.errors import Problem, ProblemsError
from padspec.base.gtin import gtin
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.jobs.plan import Wanted
from padspec.pipeline import Pad
from padspec.reading.document import Document
from padspec.reading.tree import Mapping
from padspec.resolve.settings import Troubles
from padspec.resolve.tag_sheets import TagSheet, read_tag_sheets
from padspec.resolve.workshop import read_sheet
from padspec.resolve.written_price import WrittenPrice, read_written_price
from padspec.tags.arrange import arranged
from padspec.tags.content import Content, content_of, unwritable
from padspec.tags.grid import CARDS, bed_of_tags, card_sheet, inner_box, reach_notes
from padspec.tags.pattern import Pattern, link_squares, number_bars, sku_bars
from padspec.tags.pieces import Tag, TagMisfitError
from padspec.tags.sheets import TagSheets, left_out, seated

SymbolWish = Literal["auto", "number", "sku", "link", "none"]
#: So many pads that share a number are named.
_MOST_TOLD = 3
SYMBOLS: tuple[SymbolWish, ...] = ("auto", "number", "sku", "link", "none")


@dataclass(frozen=True, slots=True)
class TagWish:
    """How tags are wished for: the sheet by name (None: the first that the studio has), the symbol, the first free
    label (from 1) of the first sheet, and whether the labels' outlines are drawn.
    """

    sheet: str | None = None
    symbol: SymbolWish = "auto"
    start: int = 1
    outlines: bool = False


@dataclass(frozen=True, slots=True)
class MadeTags:
    """The sheets, the content of each tag in the order of the job, and what is to be told."""

    sheets: TagSheets
    contents: tuple[Content, ...]
    notes: tuple[str, ...]


def make_tags(pads: Sequence[Pad], wanted: Sequence[Wanted], wish: TagWish) -> MadeTags:
    """The tags of a job, one for each pad wanted. Raises ProblemsError with all that is wrong."""
    by_sku = {pad.design.sku: pad for pad in pads}
    ordered = [by_sku[one.design.sku] for one in wanted]
    document = _studio(ordered)
    troubles = Troubles()
    written = read_written_price(document.root, troubles)
    sheets = _sheets(document, troubles)
    troubles.raise_if_any()
    sheet = _sheet(sheets, document, ordered[0], wish)
    _refuse_start(sheet, wish.start)
    contents = _contents(ordered, written, wish.symbol)
    bed = bed_of_tags(sheet, ordered[0].design.studio)
    tags = _tags(ordered, contents, sheet, wish)
    made = TagSheets(
        title=f"{ordered[0].design.studio.name} · tags on {sheet.name}",
        sheet=sheet,
        bed=bed,
        tags=tags,
        seats=seated([one.pads for one in wanted], sheet.count, wish.start - 1),
        outlines=wish.outlines,
        small_print=ordered[0].design.small_print,
    )
    return MadeTags(made, contents, (*reach_notes(sheet, bed), *_left_out(made), *_notes(ordered, contents, tags)))


def _studio(pads: Sequence[Pad]) -> Document:
    """The one studio of all pads."""
    files = {pad.documents.studio.file: pad for pad in pads}
    if len(files) > 1:
        (_, (other, pad)) = list(files.items())[:2]
        message = f"These pads have {len(files)} studios, one of them {other}."
        raise ProblemsError(Problem(pad.design.place, message, "Make the tags of one studio at a time."))
    return pads[0].documents.studio


def _sheets(document: Document, troubles: Troubles) -> tuple[TagSheet, ...]:
    usual = read_sheet(document.root, Mapping((), document.root.place), troubles)
    return read_tag_sheets(document.root, (usual.size_name, usual.size), troubles)


def _sheet(sheets: tuple[TagSheet, ...], document: Document, pad: Pad, wish: TagWish) -> TagSheet:
    """The sheet that is wished for: one of the studio's, else plain card."""
    name = wish.sheet or (sheets[0].name if sheets else CARDS)
    named = next((sheet for sheet in sheets if sheet.name == name), None)
    if named is not None:
        return named
    if name != CARDS:
        known = [*(sheet.name for sheet in sheets), CARDS]
        message = f"{document.file} has no tag sheet {name}."
        mend = f"{did_you_mean(name, known)} Sheets: {', '.join(known)}."
        raise ProblemsError(Problem(Place("--sheet", 0, 0), message, mend))
    usual = read_sheet(document.root, Mapping((), document.root.place), Troubles())
    return card_sheet(usual.size_name, usual.size, pad.design.studio, document.file)


def _refuse_start(sheet: TagSheet, start: int) -> None:
    if start > sheet.count:
        message = f"A sheet of {sheet.name} has {sheet.count} labels, and --from asks for label {start}."
        mend = f"Count row by row from 1 to {sheet.count}; a used-up sheet is no start."
        raise ProblemsError(Problem(Place(f"--from {start}", 0, 0), message, mend))


def _contents(pads: Sequence[Pad], written: WrittenPrice, symbol: SymbolWish) -> tuple[Content, ...]:
    problems: list[Problem] = []
    found = []
    for pad in pads:
        pattern = None
        try:
            pattern = _pattern(pad, symbol)
        except ProblemsError as error:
            problems += error.problems
        found.append(content_of(pad.design, pad.face, written, pattern))
    if symbol in ("auto", "number"):
        problems += _twins(pads)
    if problems:
        raise ProblemsError(*problems)
    return tuple(found)


def _pattern(pad: Pad, symbol: SymbolWish) -> Pattern | None:
    """The symbol of a pad; auto is its number, else its link, else none."""
    listing, sku = pad.design.listing, pad.design.sku
    match symbol:
        case "none":
            return None
        case "sku":
            try:
                return sku_bars(sku)
            except ValueError:
                mend = "Write one of letters A to Z and digits: sku: NG-MOTH."
                message = f"Code 128 has no sign for some letters of the SKU {sku}."
                raise ProblemsError(Problem(pad.design.place, message, mend)) from None
        case "number" | "link" if not (listing.barcode if symbol == "number" else listing.link):
            key = 'barcode: "2000000000107"' if symbol == "number" else "link: https://example.com/moth"
            message = f"{sku} has no {symbol} for its tag."
            raise ProblemsError(Problem(pad.design.place, message, f"Write one, such as {key}, or --symbol auto."))
        case "link":
            return link_squares(listing.link)
        case _:
            if listing.barcode:
                return number_bars(gtin(listing.barcode))
            return link_squares(listing.link) if listing.link else None


def _twins(pads: Sequence[Pad]) -> Iterator[Problem]:
    """Pads that share a number: a till would sell one for the other. Each number is told once."""
    holders: dict[str, list[Pad]] = {}
    for pad in pads:
        barcode = pad.design.listing.barcode
        if barcode:
            holders.setdefault(gtin(barcode).key, []).append(pad)
    for shared in holders.values():
        if len(shared) > 1:
            last = shared[-1]
            node = last.documents.design.root.get("barcode")
            skus = [pad.design.sku for pad in shared]
            rest = f" and {len(skus) - _MOST_TOLD} more" if len(skus) > _MOST_TOLD else ""
            message = f"{len(skus)} pads have the number {last.design.listing.barcode}: "
            mend = (
                "Give each a number of its own, variants by an axis with a table: "
                'set: {barcode: "{number}"}. Or leave it off: --symbol none.'
            )
            place = node.place if node else last.design.place
            yield Problem(place, f"{message}{', '.join(skus[:_MOST_TOLD])}{rest}.", mend)


def _tags(pads: Sequence[Pad], contents: Sequence[Content], sheet: TagSheet, wish: TagWish) -> tuple[Tag, ...]:
    inner = inner_box(sheet, bed_of_tags(sheet, pads[0].design.studio))
    problems, found = [], []
    for pad, content in zip(pads, contents, strict=True):
        try:
            found.append(arranged(content, sheet, inner))
        except TagMisfitError as error:
            mend = f"Take a larger label, {_others(content, wish)} or --symbol none."
            message = f"{content.sku} on {sheet.name}: {error}"
            problems.append(Problem(pad.design.place, message, mend))
    if problems:
        raise ProblemsError(*problems)
    return tuple(found)


def _others(content: Content, wish: TagWish) -> str:
    return "a shorter SKU" if wish.symbol == "sku" else "a shorter link" if content.pattern else "fewer words"


def _left_out(made: TagSheets) -> tuple[str, ...]:
    missing = left_out(made)
    return (f"There is no room around the tags for: {', '.join(missing)}.",) if missing else ()


def _notes(pads: Sequence[Pad], contents: Sequence[Content], tags: Sequence[Tag]) -> Iterator[str]:
    unpriced = [content.sku for content in contents if content.price is None]
    if unpriced:
        yield f"No price on the tags of {', '.join(unpriced)}: write price: in the design."
    numbered = [
        pad.design.sku
        for pad, tag in zip(pads, tags, strict=True)
        if tag.symbol is not None
        and tag.symbol.pattern.text == pad.design.listing.barcode
        and gtin(pad.design.listing.barcode).is_internal
    ]
    if numbered:
        yield (
            f"The numbers of {', '.join(numbered)} begin with 02, 04 or 2: they are for use in your own shop, and "
            "no other shop can sell by them."
        )
    alike: dict[str, list[str]] = {}
    for content, tag in zip(contents, tags, strict=True):
        lost = unwritable(content)
        own = (f"no font at hand has {lost}, so boxes stand there. Name a font that has them.",) if lost else ()
        for note in (*own, *tag.notes):
            alike.setdefault(note, []).append(content.sku)
    for note, skus in alike.items():
        yield f"{', '.join(skus)}: {note}"
