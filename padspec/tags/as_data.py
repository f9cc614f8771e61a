"""What was put on which label, as plain data: tags.json and `padspec tags --json`."""

from typing import Any

from padspec.base.geometry import Size
from padspec.base.numbers import EPSILON
from padspec.resolve.tag_sheets import TagSheet
from padspec.tags.content import Content
from padspec.tags.pattern import Bars, Squares
from padspec.tags.sheets import TagSheets
from padspec.tags.sizing import Sized


def tags_data(sheets: TagSheets, contents: tuple[Content, ...], notes: tuple[str, ...]) -> dict[str, Any]:
    """The sheet, what each pad's tag holds, where its labels are, and what is to be told. Lengths are
    millimetres.
    """
    numbers = [sum(seat.tag == n for seat in sheets.seats) for n in range(len(contents))]
    return {
        "sheet": _sheet(sheets.sheet),
        "pages": sheets.pages,
        "labels": len(sheets.seats),
        "tags": [
            {
                "sku": content.sku,
                "name": content.name,
                "variant": content.variant or None,
                "studio": content.studio,
                "price": content.price.text if content.price else None,
                "labels": number,
                "symbol": symbol_data(tag.symbol),
            }
            for content, tag, number in zip(contents, sheets.tags, numbers, strict=True)
        ],
        "places": [
            {
                "page": seat.page + 1,
                "row": seat.place // sheets.sheet.columns + 1,
                "column": seat.place % sheets.sheet.columns + 1,
                "sku": contents[seat.tag].sku,
            }
            for seat in sheets.seats
        ],
        "notes": list(notes),
    }


def symbol_data(sized: Sized | None) -> dict[str, Any] | None:
    """A symbol's measures. Every edge is a whole number of modules from its left, exact to 0.001 mm in the
    file.
    """
    if sized is None:
        return None
    size = sized.size
    common = {"x_dimension": _mm(sized.x), "width": _mm(size.width), "height": _mm(size.height)}
    match sized.pattern:
        case Squares(text, _, version):
            return {
                "kind": "QR",
                "text": text,
                "version": version,
                "level": "M",
                **common,
                "quiet_zone": _mm(4 * sized.x),
            }
        case Bars() as bars:
            left, right = bars.quiet
            return {
                "kind": bars.kind,
                "text": bars.text,
                "magnification": round(sized.magnification, 4),
                **common,
                "bar_height": _mm(sized.bars),
                "full_bar_height": _mm(sized.full),
                "quiet_left": _mm(left * sized.x),
                "quiet_right": _mm(right * sized.x),
            }


def _sheet(sheet: TagSheet) -> dict[str, Any]:
    return {
        "name": sheet.name,
        "paper": sheet.size_name,
        **_size("label", sheet.label),
        "rows": sheet.rows,
        "columns": sheet.columns,
        "left": _mm(sheet.left),
        "top": _mm(sheet.top),
        "across": _mm(sheet.across),
        "down": _mm(sheet.down),
        "cut": sheet.cut,
    }


def _size(name: str, size: Size) -> dict[str, float]:
    return {f"{name}_width": _mm(size.width), f"{name}_height": _mm(size.height)}


def _mm(length: float) -> float:
    return round(length + EPSILON, 4)
