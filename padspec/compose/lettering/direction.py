"""Which way the parts of a line run: a text in, its runs in the order they are seen from left to right, out.

A run has one direction and one script, which is what HarfBuzz shapes. Directions follow the Unicode
Bidirectional Algorithm (UAX #9) through python-bidi; scripts follow UAX #24 through fontTools.
"""

import unicodedata
from dataclasses import dataclass
from itertools import groupby
from typing import Any

#: Bidirectional types that can make a line run otherwise than from left to right.
_TURNING = frozenset({"R", "AL", "AN", "RLE", "RLO", "RLI", "FSI"})
_CLOSING = {"(": ")", "[": "]", "{": "}", "⟨": "⟩"}
#: Isolates, which python-bidi does not know; without them the line is ordered by its letters alone.
_ISOLATES = dict.fromkeys(range(0x2066, 0x206A))
#: Below this there is Latin and what any script shares, nothing else.
_PAST_LATIN = "\u0250"
#: Dashes, quotes and the like (Unicode block General Punctuation), which any script shares.
_PUNCTUATION = frozenset(map(chr, range(0x2010, 0x2028)))
#: Scripts that take the script of their neighbours: common and inherited characters.
_ANY = frozenset({"Zyyy", "Zinh"})


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text, in the order it is read, that runs one way in one script."""

    text: str
    leftwards: bool


def visual_runs(text: str) -> tuple[Run, ...]:
    """The runs of a line from left to right; none where nothing of it is shown.

    >>> [run.text for run in visual_runs("Notes")]
    ['Notes']
    >>> [(run.text, run.leftwards) for run in visual_runs("\u05e7\u05e0\u05d9 2026")]
    [('2026', False), ('\u05e7\u05e0\u05d9 ', True)]
    """
    text = text.translate(_ISOLATES)
    if not any(unicodedata.bidirectional(c) in _TURNING for c in text):
        return tuple(Run(part, False) for part in _by_script(text))
    levels = [
        (level, "".join(character for _, character in group))
        for level, group in groupby(_levelled(text), key=lambda pair: pair[0])
    ]
    if not levels:
        return ()
    runs = []
    for level, part in _reordered(levels):
        scripts = _by_script(part)
        runs += [Run(s, level % 2 == 1) for s in (reversed(scripts) if level % 2 else scripts)]
    return tuple(runs)


def _levelled(text: str) -> list[tuple[int, str]]:
    """Each character that is shown with its embedding level (UAX #9, rules X1 to I2)."""
    from bidi import algorithm

    storage = algorithm.get_empty_storage()  # type: ignore[no-untyped-call]
    storage["base_level"] = algorithm.get_base_level(text)
    storage["base_dir"] = ("L", "R")[storage["base_level"]]
    algorithm.get_embedding_levels(text, storage)  # type: ignore[no-untyped-call]
    for character in storage["chars"]:
        # A character newer than Python's tables has no type there; most of those that are unassigned are L.
        character["type"] = character["type"] or "L"
    algorithm.explicit_embed_and_overrides(storage)  # type: ignore[no-untyped-call]
    algorithm.resolve_weak_types(storage)  # type: ignore[no-untyped-call]
    _pair_brackets(storage["chars"], storage["base_level"])
    algorithm.resolve_neutral_types(storage, False)  # type: ignore[no-untyped-call]
    algorithm.resolve_implicit_levels(storage, False)  # type: ignore[no-untyped-call]
    return [(int(character["level"]), str(character["ch"])) for character in storage["chars"]]


def _pair_brackets(characters: list[dict[str, Any]], base_level: int) -> None:
    """Brackets that belong together run the same way (rule N0), which python-bidi leaves out."""
    base, other = ("L", "R") if base_level == 0 else ("R", "L")
    strong = {"L": "L", "R": "R", "EN": "R", "AN": "R"}
    for first, last in _brackets(characters):
        inside = {strong.get(c["type"]) for c in characters[first + 1 : last]}
        before = [strong[c["type"]] for c in characters[:first] if c["type"] in strong]
        if base in inside:
            direction = base
        elif other in inside:
            direction = other if (before[-1] if before else base) == other else base
        else:
            continue
        characters[first]["type"] = characters[last]["type"] = direction


def _brackets(characters: list[dict[str, Any]]) -> list[tuple[int, int]]:
    """Where brackets open and close, outermost first."""
    waiting: list[tuple[int, str]] = []
    found = []
    for n, character in enumerate(characters):
        if character["ch"] in _CLOSING:
            waiting.append((n, _CLOSING[character["ch"]]))
        elif any(closes == character["ch"] for _, closes in waiting):
            while waiting[-1][1] != character["ch"]:
                waiting.pop()
            found.append((waiting.pop()[0], n))
    return sorted(found)


def _reordered(levels: list[tuple[int, str]]) -> list[tuple[int, str]]:
    """Runs in the order seen: from the highest level down to the lowest odd one, each stretch reversed (L2)."""
    order = list(levels)
    odd = [level for level, _ in levels if level % 2]
    for least in range(max(level for level, _ in levels), min(odd, default=1) - 1, -1):
        order = [
            run
            for inside, group in groupby(order, key=lambda run: run[0] >= least)
            for run in (reversed(list(group)) if inside else group)
        ]
    return order


def _by_script(text: str) -> list[str]:
    """The text cut where the script changes; marks, digits and spaces go with what stands before them."""
    if all(character < _PAST_LATIN or character in _PUNCTUATION for character in text):
        return [text]
    from fontTools.unicodedata import script

    parts: list[str] = []
    current = ""
    for character in text:
        name = script(character)
        if parts and (name in _ANY or name == current or current in _ANY or not current):
            parts[-1] += character
        else:
            parts.append(character)
        current = name if name not in _ANY else current
    return parts
