"""What a symbol says in, its modules out: bars of EAN-13, UPC-A and Code 128, squares of a QR code.

The patterns come from well-kept libraries; they draw nothing here, and no font or picture of theirs is used.
Figures are in modules (X), the width of the narrowest bar.
"""

from dataclasses import dataclass
from typing import Literal

from padspec.base.gtin import Gtin

Kind = Literal["EAN-13", "UPC-A", "Code 128", "QR"]


@dataclass(frozen=True, slots=True)
class Digits:
    """Human-readable letters under the bars: a text, where its middle stands in modules, and its size as a
    share.
    """

    text: str
    middle: float
    size: float = 1.0


@dataclass(frozen=True, slots=True)
class Bars:
    """A linear symbol: its modules (True is black), the quiet zones left and right, which stretches of modules
    reach down between the digits, and the letters under it.
    """

    kind: Kind
    text: str
    modules: tuple[bool, ...]
    quiet: tuple[int, int]
    long: tuple[tuple[int, int], ...]
    letters: tuple[Digits, ...]

    @property
    def width(self) -> int:
        """Modules with both quiet zones."""
        return len(self.modules) + sum(self.quiet)


@dataclass(frozen=True, slots=True)
class Squares:
    """A QR code: its rows of modules, without its quiet zone of four."""

    text: str
    rows: tuple[tuple[bool, ...], ...]
    version: int

    @property
    def width(self) -> int:
        """Modules with both quiet zones (ISO/IEC 18004: four on each side)."""
        return len(self.rows) + 2 * QR_QUIET


Pattern = Bars | Squares
QR_QUIET = 4
#: Guard bars of 95 modules (GS1 General Specifications): the ends and the middle; a UPC-A draws its outer digits
#: long too.
_EAN_LONG = ((0, 3), (45, 50), (92, 95))
_UPC_LONG = ((0, 10), (45, 50), (85, 95))
_DIGIT = 7


def number_bars(number: Gtin) -> Bars:
    """The bars of a trade item's number."""
    from barcode import get

    digits = number.digits
    if number.kind == "EAN-13":
        made = get("ean13", digits[:12]).build()[0]
        # The first digit stands in the quiet zone, its left edge where that begins.
        letters = (Digits(digits[0], -7.5), *_cells(digits[1:7], 3), *_cells(digits[7:], 50))
        return Bars("EAN-13", digits, _modules(made), (11, 7), _EAN_LONG, letters)
    made = get("upca", digits[:11]).build()[0]
    outer = (Digits(digits[0], -5.5, 0.75), Digits(digits[11], 95 + 5.5, 0.75))
    letters = (*outer, *_cells(digits[1:6], 10), *_cells(digits[6:11], 50))
    return Bars("UPC-A", digits, _modules(made), (9, 9), _UPC_LONG, letters)


def _cells(digits: str, start: int) -> tuple[Digits, ...]:
    """Each digit in the middle of its own seven modules."""
    return tuple(Digits(digit, start + _DIGIT * (n + 0.5)) for n, digit in enumerate(digits))


def sku_bars(sku: str) -> Bars:
    """The bars of a SKU (Code 128, ISO/IEC 15417). Raises ValueError for letters outside ASCII."""
    from barcode import get

    if not sku.isascii():
        raise ValueError(sku)
    made = _modules(get("code128", sku).build()[0])
    return Bars("Code 128", sku, made, (10, 10), (), (Digits(sku, len(made) / 2),))


def link_squares(link: str) -> Squares:
    """The QR code of a link, at level M (15 % can be lost), as small as it gets."""
    import segno

    code = segno.make_qr(link, error="m", boost_error=False)
    rows = tuple(tuple(bool(module) for module in row) for row in code.matrix)
    return Squares(link, rows, int(code.version))


def _modules(bits: str) -> tuple[bool, ...]:
    return tuple(bit == "1" for bit in bits)
