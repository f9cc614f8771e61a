"""Picking among pads: by their SKUs, and by the values of their variants."""

from collections.abc import Sequence
from fnmatch import fnmatchcase

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean, nearest
from padspec.base.place import Place
from padspec.collection.own_sku import own_skus
from padspec.collection.targets import Target


def only(targets: Sequence[Target], words: Sequence[str]) -> tuple[Target, ...]:
    """The pads that the words mean, all where there are none: SKUs, in which * stands for any letters, values of
    variants, and axis=value.

    A pad is picked when one of the words that are SKUs means it or its design (where there are such), and for each
    axis that is named one of the values is its own. Raises ProblemsError for a word that means nothing here.
    """
    if not words:
        return tuple(targets)
    skus = own_skus(targets)
    told = {target.key: target.variation.sku_of(skus[target.root, target.path]) for target in targets}
    axes = _axes(targets)
    codes: list[str] = []
    values: dict[str, set[str]] = {}
    problems: list[Problem] = []
    for word in words:
        axis, value = _axis_of(word, axes)
        if axis:
            values.setdefault(axis, set()).add(value)
        elif any(_is_meant(word, told[t.key], skus[t.root, t.path]) for t in targets):
            codes.append(word)
        else:
            problems.append(_unknown(word, sorted(told.values()), axes))
    if problems:
        raise ProblemsError(*problems)
    found = tuple(
        target
        for target in targets
        if (not codes or any(_is_meant(c, told[target.key], skus[target.root, target.path]) for c in codes))
        and all(dict(target.variation.values).get(axis) in some for axis, some in values.items())
    )
    if not found:
        message = f"No pad is all of {', '.join(words)} at once."
        raise ProblemsError(Problem(Place("--only", 0, 0), message, "Leave one of them out."))
    return found


def _axes(targets: Sequence[Target]) -> dict[str, list[str]]:
    """Every axis with its values, in the order in which they come."""
    found: dict[str, dict[str, None]] = {}
    for target in targets:
        for axis, value in target.variation.values:
            found.setdefault(axis, {})[value] = None
    return {axis: list(values) for axis, values in found.items()}


def _axis_of(word: str, axes: dict[str, list[str]]) -> tuple[str, str]:
    """The axis and value that a word names, or two empty texts."""
    axis, sign, value = word.partition("=")
    if sign and value in axes.get(axis, ()):
        return axis, value
    having = [name for name, values in axes.items() if word in values]
    return (having[0], word) if len(having) == 1 else ("", "")


def _is_meant(word: str, sku: str, own: str) -> bool:
    """Whether a word means a SKU or that of its design; case does not count, as it does not on many disks."""
    return any(fnmatchcase(name.casefold(), word.casefold()) for name in (sku, own))


def _unknown(word: str, skus: list[str], axes: dict[str, list[str]]) -> Problem:
    axis, sign, value = word.partition("=")
    place = Place(f"--only {word}", 0, 0)
    having = [name for name, values in axes.items() if word in values]
    if len(having) > 1:
        return Problem(place, f"{word} is a value of {' and of '.join(having)}.", f"Write {having[0]}={word}.")
    if sign and axis in axes:
        return Problem(place, f"{axis} has no value {value}.", did_you_mean(value, axes[axis]))
    known = [*(value for values in axes.values() for value in values), *skus]
    near = f"Did you mean {found}?" if (found := nearest(word, known)) else did_you_mean(word, known[:40])
    return Problem(place, f"{word} is no SKU and no value of a variant here.", near)
