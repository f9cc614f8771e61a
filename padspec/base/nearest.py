"""The nearest known word to one that is not known: what every `did you mean` asks.

Words are compared as Jaro (1989) compares names, which counts letters in place and letters that changed
places, and moved together for a common beginning as Winkler (1990) does: people get beginnings right.
"""

from collections.abc import Iterable

#: Below this nothing is near enough to be meant.
_LEAST = 0.75
#: How much of what is missing to likeness each letter of a common beginning makes good, for so many letters.
_BEGINNING, _MOST_LETTERS = 0.125, 4
#: How like `font-weight` a bare `weight` counts.
_PART = 0.8
#: A known word so many times as long or as short was not meant.
_MOST_STRETCH = 2.5


def nearest(word: str, known: Iterable[str]) -> str:
    """The likeliest of the known words, or an empty text where none is near.

    >>> nearest("pich", ["pitch", "panel"]), nearest("heder", ["sheet", "heading"]), nearest("zzz", ["pad"])
    ('pitch', 'heading', '')
    """
    words = list(known)
    likeness = [_likeness(word.lower(), other.lower()) for other in words]
    best = max(likeness, default=0.0)
    return words[likeness.index(best)] if best >= _LEAST else ""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A mend for an unknown word: the nearest one, else the whole list.

    >>> did_you_mean("doots", ["dots", "stripes"])
    'Did you mean dots?'
    """
    words = list(known)
    near = nearest(word, words)
    return f"Did you mean {near}?" if near else f"Known here: {', '.join(words)}."


def _likeness(word: str, other: str) -> float:
    """From 0 to 1; rounded, so that a limit or a tie never hangs on the last bit."""
    if word != other and word in other.split("-"):
        return _PART
    if not word or not other or max(len(word), len(other)) > _MOST_STRETCH * min(len(word), len(other)):
        return 0.0
    alike = _jaro(word, other)
    common = 0
    for one, two in zip(word[:_MOST_LETTERS], other, strict=False):
        if one != two:
            break
        common += 1
    return round(alike + common * _BEGINNING * (1 - alike), 9)


def _jaro(word: str, other: str) -> float:
    """Letters shared at nearly the same place, as a part of either word, less those in another order."""
    reach = max(max(len(word), len(other)) // 2 - 1, 0)
    taken: list[int] = []
    for index, letter in enumerate(word):
        places = range(max(0, index - reach), min(len(other), index + reach + 1))
        found = next((place for place in places if place not in taken and other[place] == letter), None)
        if found is not None:
            taken.append(found)
    if not taken:
        return 0.0
    shared = len(taken)
    moved = sum(one != two for one, two in zip(taken, sorted(taken), strict=True)) / 2
    return (shared / len(word) + shared / len(other) + (shared - moved) / shared) / 3
