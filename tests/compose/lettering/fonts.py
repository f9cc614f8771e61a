"""Fonts for the tests of lettering, with the fonts that stand in for what they lack."""

from dataclasses import replace
from functools import cache

from padspec.fonts import FALLBACKS
from padspec.resolve.coverage import of_family
from padspec.resolve.font import Font


@cache
def shelved(name: str = "Fredoka", weight: int = 600) -> Font:
    """A family as a design gets it."""
    found = of_family(name, weight)
    assert found is not None
    return replace(found, fallbacks=tuple(family for family in FALLBACKS if family != name))
