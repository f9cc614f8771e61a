"""Numbers of trade items (GTIN) as a maker writes them: check digits, the symbol each takes, who may use it.

Check digits are those of the GS1 General Specifications (modulo 10, weights 3 and 1 from the right).
"""

from dataclasses import dataclass
from typing import Literal

NumberKind = Literal["EAN-13", "UPC-A"]
#: The digits of each kind, the check digit among them.
KINDS: dict[int, NumberKind] = {12: "UPC-A", 13: "EAN-13"}
#: Beginnings of 13 digits that GS1 keeps for use inside one shop or company (GS1 General Specifications,
#: restricted circulation); of a UPC-A they are counted with a nought in front.
_INTERNAL = ("02", "04", "2")
#: A UPC-A does not begin with this: GS1 keeps 050 to 059 (list of GS1 prefixes, from memory).
_RESERVED = "5"


class GtinError(ValueError):
    """A text that is no whole number of a trade item; the second argument says how to mend it."""

    @property
    def message(self) -> str:
        """What is wrong."""
        return str(self.args[0])

    @property
    def mend(self) -> str:
        """How to mend it, with the digits to write."""
        return str(self.args[1])


@dataclass(frozen=True, slots=True)
class Gtin:
    """A number with a right check digit, and the symbol that it takes."""

    digits: str
    kind: NumberKind

    @property
    def key(self) -> str:
        """Fourteen digits, by which the same item is known however its number is written."""
        return self.digits.zfill(14)

    @property
    def is_internal(self) -> bool:
        """Whether it is for use inside one shop or company, and no other shop can sell by it."""
        return self.digits.zfill(13).startswith(_INTERNAL)


def check_digit(body: str) -> str:
    """The check digit of all digits before it.

    >>> check_digit("730001100001"), check_digit("501234567890"), check_digit("01234567890")
    ('7', '0', '5')
    """
    total = sum(int(digit) * (3 if place % 2 == 0 else 1) for place, digit in enumerate(reversed(body)))
    return str(-total % 10)


def gtin(text: str) -> Gtin:
    """The number in a text, spaces between its digits allowed. Raises GtinError.

    >>> gtin("5 012345 678900").kind, gtin("012345678905").kind
    ('EAN-13', 'UPC-A')
    """
    digits = "".join(text.split())
    if not (digits.isascii() and digits.isdigit()):
        raise GtinError(f"{text} is no number of a trade item.", "Write 12 digits (UPC-A) or 13 (EAN-13).")
    body, last = digits[:-1], digits[-1]
    if len(digits) == 12 and digits.startswith(_RESERVED):
        message = f"{digits} would be a UPC-A that begins with {_RESERVED}, and GS1 licenses none."
        whole = digits + check_digit(digits)
        raise GtinError(message, f'If it is an EAN-13 without its check digit, write "{whole}".')
    if len(digits) in KINDS and check_digit(body) == last:
        return Gtin(digits, KINDS[len(digits)])
    if len(digits) == 11:
        right = digits + check_digit(digits)
        raise GtinError(f"{digits} lacks its check digit, which is {right[-1]}.", f'Write barcode: "{right}".')
    if len(digits) not in KINDS:
        message = f"{digits} has {len(digits)} digits."
        raise GtinError(message, "A UPC-A has 12 and an EAN-13 has 13, the check digit among them.")
    right = body + check_digit(body)
    message = f"The check digit of {digits} is {last}, and should be {right[-1]}."
    mend = f'Look at the number again; those other digits make "{right}".'
    if len(digits) == 12:
        mend += f' If this is an EAN-13 without its check digit, write "{digits}{check_digit(digits)}".'
    raise GtinError(message, mend)
