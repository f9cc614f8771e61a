"""Lengths, boxes and matrices as the text of a drawing, the same digits for both emitters."""

from functools import lru_cache

from padspec.base.geometry import Affine, Box
from padspec.base.numbers import number_text

#: A thousandth of a millimetre is a tenth of what a drawn position may be off.
_LENGTH_DIGITS = 3
#: The factors of a matrix are multiplied by up to some hundred millimetres.
_FACTOR_DIGITS = 6


# A patterned ground has tens of thousands of lengths and few different ones.
@lru_cache(maxsize=4096)
def length_text(value: float) -> str:
    """A length in millimetres, to the thousandth.

    >>> length_text(8.15), length_text(-0.0002)
    ('8.15', '0')
    """
    return number_text(value, _LENGTH_DIGITS)


def lengths_text(*values: float) -> str:
    """Lengths with spaces between."""
    return " ".join(map(length_text, values))


def box_text(box: Box) -> str:
    """Left, top, width and height, as a viewBox and the operator `re` take them."""
    return lengths_text(box.x, box.y, box.width, box.height)


def matrix_text(matrix: Affine) -> str:
    """The six numbers of a map, in the order that SVG and PDF share.

    >>> matrix_text(Affine.move(1, 2.5))
    '1 0 0 1 1 2.5'
    """
    m = matrix
    return " ".join(number_text(value, _FACTOR_DIGITS) for value in (m.a, m.b, m.c, m.d, m.e, m.f))
