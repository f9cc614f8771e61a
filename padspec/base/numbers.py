"""Numbers become text here and nowhere else, so that both emitters and every message agree."""

from math import ceil, floor

#: Counts and comparisons tolerate this much, so that 150 mm really holds 30 rows of 5 mm.
EPSILON = 1e-9


def number_text(value: float, digits: int = 4) -> str:
    """A number in plain decimal, at most `digits` after the point, no trailing zeros, no minus zero.

    >>> number_text(8.50), number_text(-0.00001), number_text(90), number_text(1 / 3)
    ('8.5', '0', '90', '0.3333')
    """
    text = f"{value:.{digits}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def mm_text(value: float, digits: int = 2) -> str:
    """A length for a person to read.

    >>> mm_text(7.14375)
    '7.14 mm'
    """
    return f"{number_text(value, digits)} mm"


def percent_text(share: float, digits: int = 1) -> str:
    """A share of one for a person to read.

    >>> percent_text(0.315)
    '31.5 %'
    """
    return f"{number_text(share * 100, digits)} %"


def round_up(value: float, step: float) -> float:
    """The least multiple of `step` that is no less than `value`: a limit may be stated rounded, never missed.

    >>> round_up(2.701, 0.1)
    2.8
    """
    return round(ceil(value / step - EPSILON) * step, 9)


def round_down(value: float, step: float) -> float:
    """The greatest multiple of `step` that is no more than `value`.

    >>> round_down(27.09, 0.5)
    27.0
    """
    return round(floor(value / step + EPSILON) * step, 9)
