"""Exact money: currencies by ISO 4217, amounts rounded to their coins, and sums that still add up.

Amounts are `Decimal` or `Fraction`, never a float. The digits of each currency come from the list of the ISO 4217
maintenance agency, by way of the package iso4217.
"""

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from functools import cache

from padspec.base.nearest import did_you_mean

Exact = Decimal | Fraction


class CurrencyError(ValueError):
    """A code that is no currency in use; the second argument says how to mend it."""


@cache
def minor_digits(currency: str) -> int:
    """Digits after the point that a currency counts in; raises CurrencyError.

    >>> minor_digits("CAD"), minor_digits("JPY"), minor_digits("KWD")
    (2, 0, 3)
    """
    from iso4217 import Currency

    known = {one.code: one.exponent for one in Currency}
    digits = known.get(currency)
    if digits is None:
        usable = sorted(code for code, exponent in known.items() if exponent is not None)
        mend = did_you_mean(currency, usable) or f"ISO 4217 lists {len(usable)} codes: CAD, EUR, JPY."
        raise CurrencyError(f"{currency} is no currency of ISO 4217 that is counted in coins.", mend)
    return digits


def rounded(amount: Exact, digits: int) -> Decimal:
    """The nearest amount with so many digits; halves go up, as a till has it.

    >>> rounded(Decimal("2.345"), 2), rounded(Fraction(1, 3), 3)
    (Decimal('2.35'), Decimal('0.333'))
    """
    scaled = Fraction(amount) * 10**digits
    whole = (2 * abs(scaled) + 1) // 2
    return Decimal(int(whole if scaled >= 0 else -whole)).scaleb(-digits)


def amount_text(amount: Exact, currency: str) -> str:
    """An amount in the coins of its currency, for a person.

    >>> amount_text(Decimal("6.5"), "CAD"), amount_text(Decimal(1200), "JPY")
    ('6.50 CAD', '1200 JPY')
    """
    return f"{rounded(amount, minor_digits(currency)):f} {currency}"


def rounded_together(parts: Sequence[Exact], digits: int) -> tuple[Decimal, ...]:
    """Each part rounded so that together they are the rounded whole, to the last coin.

    Every part is rounded down, and the coins that are then missing go to the parts that lost most by it (largest
    remainder), so that no part is a whole coin off. For parts that are not negative.

    >>> [str(part) for part in rounded_together([Fraction(1, 3)] * 3, 2)]
    ['0.34', '0.33', '0.33']
    """
    coins = [Fraction(part) * 10**digits for part in parts]
    down = [int(coin // 1) for coin in coins]
    missing = int(rounded(sum((Fraction(part) for part in parts), Fraction(0)), digits).scaleb(digits)) - sum(down)
    losers = sorted(range(len(coins)), key=lambda at: (down[at] - coins[at], at))
    for at in losers[:missing]:
        down[at] += 1
    return tuple(Decimal(number).scaleb(-digits) for number in down)


def exact_text(amount: Exact) -> str:
    """An amount as data: all its digits where they end within ten, else rounded there.

    >>> exact_text(Decimal("0.0400")), exact_text(Fraction(1, 3))
    ('0.04', '0.3333333333')
    """
    text = f"{rounded(amount, 10):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
