"""How many sheets to print."""

from math import ceil

from padspec.base.numbers import EPSILON


def copies_to_print(pads: int, leaves: int, n_up: int, overs: float, test_sheets: int) -> int:
    """Sheets for some pads of one design: leaves with overs, and the test sheets, joined and counted off.

    ⌈(pads × leaves × (1 + overs) + n-up × test sheets) ÷ n-up⌉

    >>> copies_to_print(1, 50, 3, 0.05, 2)
    20
    """
    return ceil((pads * leaves * (1 + overs) + n_up * test_sheets) / n_up - EPSILON)
