"""Units die here: a text as the maker wrote it in, exact millimetres (or a share of one) out.

Lengths are read as exact fractions, so that 9/32 in is 7.14375 mm to the last digit.
1 in = 25.4 mm exactly; 1 pt = 1/72 in (ISO 32000-1, 8.3.2.3).
"""

import re
from fractions import Fraction
from unicodedata import normalize

from padspec.base.errors import UnitError
from padspec.base.nearest import nearest

MM_PER_UNIT = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "in": Fraction(254, 10),
    "pt": Fraction(254, 720),
}

_NUMBER = r"(?:\d{1,6} +\d{1,4}/\d{1,4}|\d{1,6}/\d{1,4}|\d{1,6}(?:\.\d{1,9})?|\.\d{1,9})"
_QUANTITY = re.compile(rf"([-+−]?)({_NUMBER}) *([A-Za-z%\"″']*)")
#: Fractions that are one character, such as ⅝; each stands for its digits around U+2044 (Unicode, NFKC).
_ONE_CHARACTER = re.compile("([0-9]?) *([¼-¾⅐-⅞])")
_HOW = "Write a number and a unit, such as 8 mm, 0.8 cm, 3 5/8 in or 12 pt."
_FOREIGN = {
    '"': "in",
    "″": "in",
    "inch": "in",
    "inches": "in",
    **dict.fromkeys(("millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    "point": "pt",
    "points": "pt",
}


def parse_length(text: str) -> float:
    """Millimetres from a length with its unit; zero needs one as well.

    >>> parse_length("8 mm"), parse_length("0.8 cm"), parse_length("9/32 in"), parse_length("72 pt")
    (8.0, 8.0, 7.14375, 25.4)
    >>> parse_length("3 5/8 in"), parse_length("3⅝ in")
    (92.075, 92.075)

    Raises UnitError with the likely meaning for a bare number or an unknown unit.
    """
    number, unit = _split(text)
    if unit == "":
        raise UnitError(f"{text} has no unit.", f"Did you mean {text.strip()} mm? {_likely(number)}".rstrip())
    if unit not in MM_PER_UNIT:
        known = _FOREIGN.get(unit.lower()) or nearest(unit, MM_PER_UNIT)
        mend = f"Did you mean {_bare(text)} {known}?" if known else _HOW
        raise UnitError(f"{text} is not a length: the unit {unit} is not known here.", mend)
    return float(number * MM_PER_UNIT[unit])


def parse_share(text: str) -> float:
    """A percentage as a share of one.

    >>> parse_share("32 %"), parse_share("7.5%")
    (0.32, 0.075)

    Raises UnitError where the per cent sign is missing.
    """
    number, unit = _split(text)
    if unit != "%":
        likely = number * 100 if number <= 1 else number
        shown = f"{float(likely):g} %"
        raise UnitError(f"{text} is not a percentage.", f"Did you mean {shown}?" if unit == "" else "Write 70 %.")
    return float(number / 100)


def exact_share(text: str) -> Fraction:
    """A percentage as an exact share of one, for sums of money.

    >>> exact_share("2.6 %")
    Fraction(13, 500)
    """
    return _split(text)[0] / 100


def is_share(text: str) -> bool:
    """Whether the text means to be a percentage rather than a length."""
    return text.rstrip().endswith("%")


def mend_of_comma(text: str) -> str:
    """How a number with a comma in it is written; empty for a text without one.

    >>> mend_of_comma("90,5 mm"), mend_of_comma("1,000 mm")
    ('Decimals take a point: 90.5 mm.', 'Decimals take a point: 1.000 mm. Thousands take no sign: 1000 mm.')
    """
    point = re.sub(r"(\d),(\d)", r"\1.\2", text)
    if point == text:
        return ""
    thousands = re.sub(r"(\d),(\d{3})(?!\d)", r"\1\2", text)
    rest = f" Thousands take no sign: {thousands}." if thousands != text else ""
    return f"Decimals take a point: {point}.{rest}"


def _split(text: str) -> tuple[Fraction, str]:
    match = _QUANTITY.fullmatch(_with_plain_fractions(text).strip())
    if match is None:
        raise UnitError(f"{text!r} is not a quantity.", mend_of_comma(text.strip()) or _HOW)
    sign, number, unit = match.groups()
    try:
        value = sum((Fraction(part) for part in number.split()), Fraction(0))
    except ZeroDivisionError:
        raise UnitError(f"{text} divides by zero.", _HOW) from None
    return (-value if sign in ("-", "−") else value), unit


def _with_plain_fractions(text: str) -> str:
    """The same with fractions of one character, and those with a fraction slash, as digits around /.

    >>> _with_plain_fractions("3⅝ in"), _with_plain_fractions("-½ in"), _with_plain_fractions("5⁄8 in")
    ('3 5/8 in', '-1/2 in', '5/8 in')
    """
    opened = _ONE_CHARACTER.sub(lambda m: (m[1] and f"{m[1]} ") + normalize("NFKC", m[2]), text)
    return opened.replace("⁄", "/")


def _bare(text: str) -> str:
    match = _QUANTITY.fullmatch(_with_plain_fractions(text).strip())
    return f"{match.group(1)}{match.group(2)}" if match else text


def _likely(number: Fraction) -> str:
    if 0 < number <= 1:
        return f"Or {float(number * 100):g} % where a share is allowed."
    return ""
