"""A price that may be unknown, typed."""

from decimal import Decimal

from padspec.resolve.settings import Settings


def price_of(settings: Settings, key: str = "price") -> Decimal | None:
    """The amount under a key; None where it is unknown."""
    if not settings.has(key) or settings.text(key) == "unknown":
        return None
    return settings.amount(key)
