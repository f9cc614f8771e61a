"""Grammage: the weight of paper as the maker wrote it in, grams a square metre out.

Grades sold by the pound name the weight of a ream of 500 sheets in the grade's basic size. The formula is that of
TAPPI T 410 and ISO 536: pounds × 453.59237 g ÷ (500 × the sheet's area); an inch is 25.4 mm exactly. Basic sizes
are those of the US Government Paper Specification Standards.
"""

import re
from fractions import Fraction

from padspec.base.errors import UnitError
from padspec.base.nearest import nearest
from padspec.base.units import mend_of_comma

#: Square inches of each grade's basic size: bond 17 × 22, text and book 25 × 38, cover 20 × 26, index 25½ × 30½,
#: tag 24 × 36, bristol 22½ × 28½.
BASIC_AREAS = {
    "bond": Fraction(374),
    "text": Fraction(950),
    "cover": Fraction(520),
    "index": Fraction("777.75"),
    "tag": Fraction(864),
    "bristol": Fraction("641.25"),
}
LEAST, MOST = 20, 1000
_GRAMS_A_POUND = Fraction("453.59237")
_REAM = 500
_SQUARE_METRES_A_SQUARE_INCH = Fraction("0.00064516")
_WRITTEN = re.compile(r"(\d{1,4}(?:\.\d{1,4})?) *(g/m2|g/m²|gsm|lb)? *([A-Za-z]*)")
_HOW = "Write it so: 100 g/m2, or pounds with the grade: 28 lb bond."


def parse_grammage(text: str) -> float:
    """Grams a square metre.

    >>> parse_grammage("100 g/m2"), round(parse_grammage("28 lb bond"), 2), round(parse_grammage("65 lb cover"), 2)
    (100.0, 105.27, 175.77)

    Raises UnitError where the unit or the grade is missing or unknown, or the paper is none that prints.
    """
    match = _WRITTEN.fullmatch(text.strip())
    if match is None:
        raise UnitError(f"{text!r} is not a grammage.", mend_of_comma(text.strip()) or _HOW)
    number, unit, grade = match.groups()
    grams = Fraction(number)
    if unit == "lb":
        grams *= _pound_of(text, grade)
    elif unit is None or grade:
        raise UnitError(f"{text} has no unit of weight that is known here.", f"Did you mean {number} g/m2?")
    if not LEAST <= grams <= MOST:
        shown = f"{float(grams):.0f} g/m2"
        raise UnitError(f"{text} is {shown}: no paper to print on.", f"Papers have {LEAST} to {MOST} g/m2.")
    return float(grams)


def _pound_of(text: str, grade: str) -> Fraction:
    """Grams a square metre that one pound of a grade makes."""
    area = BASIC_AREAS.get(grade.lower())
    if area is None:
        known = nearest(grade.lower(), BASIC_AREAS) if grade else None
        mend = (
            f"Did you mean {known}?"
            if known
            else f"A pound of each grade weighs otherwise: {', '.join(BASIC_AREAS)}."
        )
        raise UnitError(f"{text} names no grade that is known here.", mend)
    return _GRAMS_A_POUND / (_REAM * area * _SQUARE_METRES_A_SQUARE_INCH)
