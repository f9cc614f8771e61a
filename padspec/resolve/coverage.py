"""Which characters a font has, itself and by the fonts that stand in for it."""

import unicodedata
from functools import lru_cache
from typing import Any

from padspec.fonts import family_file
from padspec.resolve.font import Font
from padspec.workspace import content_digest


@lru_cache(maxsize=64)
def of_family(family: str, weight: int) -> Font | None:
    """The font of an installed family, without fallbacks of its own; None where no package holds it."""
    data = family_file(family)
    return Font(family, content_digest(data), data, weight) if data is not None else None


def missing_characters(font: Font, text: str) -> str:
    """The characters of a text for which the font itself has no glyph, each once, in order.

    Accents are joined to their letters first (Unicode NFC), as shaping does; a letter that the font has only in
    parts (NFD) is not missing.
    """
    text = unicodedata.normalize("NFC", text)
    found = _found(font)
    if found.issuperset(text):
        return ""
    characters = dict.fromkeys(text)
    missing = [c for c in characters if c not in found and not _needs_no_glyph(c) and not _has(font, c)]
    found.update(characters.keys() - missing)
    return "".join(missing)


@lru_cache(maxsize=64)
def _found(font: Font) -> set[str]:  # noqa: ARG001 (what it is known by)
    """The characters that were looked for in a font and found, or need no glyph: most texts have no others."""
    return set()


def lacking(font: Font, text: str) -> str:
    """The characters of a text that neither the font nor any of its fallbacks has, each once, in order."""
    missing = missing_characters(font, text)
    for family in font.fallbacks if missing else ():
        stand_in = of_family(family, font.weight)
        missing = missing_characters(stand_in, missing) if stand_in is not None else missing
    return missing


def families_used(font: Font, text: str) -> tuple[str, ...]:
    """The fallback families that a text really takes characters from, in the order of the fallbacks."""
    missing, found = missing_characters(font, text), []
    for family in font.fallbacks if missing else ():
        stand_in = of_family(family, font.weight)
        left = missing_characters(stand_in, missing) if stand_in is not None else missing
        found += [family] if left != missing else []
        missing = left
    return tuple(found)


def _has(font: Font, character: str) -> bool:
    glyph = _reader(font).get_nominal_glyph
    if glyph(ord(character)):
        return True
    parts = unicodedata.normalize("NFD", character)
    return len(parts) > 1 and all(glyph(ord(part)) for part in parts)


def _needs_no_glyph(character: str) -> bool:
    """Spaces, and the joiners and direction marks that steer shaping (Unicode general category Cf)."""
    return character.isspace() or unicodedata.category(character) == "Cf"


@lru_cache(maxsize=64)
def _reader(font: Font) -> Any:
    import uharfbuzz as hb  # type: ignore[import-untyped]

    return hb.Font(hb.Face(hb.Blob(font.data)))
