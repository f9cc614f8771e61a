"""The nearest known word to one that is not known: what every `did you mean` asks."""

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(word: str, known: Iterable[str]) -> str:
    """The likeliest of the known words, or an empty text where none is near.

    >>> nearest("pich", ["pitch", "panel"])
    'pitch'
    """
    words = list(known)
    by_lower = {other.lower(): other for other in words}
    found = get_close_matches(word.lower(), list(by_lower), n=1, cutoff=0.6)
    return by_lower[found[0]] if found else ""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A mend for an unknown word: the nearest one, else the whole list.

    >>> did_you_mean("doots", ["dots", "stripes"])
    'Did you mean dots?'
    """
    words = list(known)
    near = nearest(word, words)
    return f"Did you mean {near}?" if near else f"Known here: {', '.join(words)}."
