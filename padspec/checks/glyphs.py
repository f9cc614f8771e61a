"""Characters that neither the font nor its fallbacks have."""

import unicodedata
from collections.abc import Iterator

from padspec.base.findings import Finding, Remedy, Severity
from padspec.checks.check import Limits, Subject
from padspec.fonts import families
from padspec.resolve.blocks.words import Words, words_of
from padspec.resolve.coverage import lacking, missing_characters, of_family
from padspec.resolve.design import blocks

#: So many characters are named, so many fonts offered.
_MOST_NAMED, _MOST_OFFERED = 6, 3


def missing_glyph(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (there is no limit to set: none may be missing)
    """Does a font have every character? An error that cannot be allowed: an empty box would print.

    What a font lacks is taken from the fonts that stand in for it; what none of them has is found here, in every
    text of the face. A fact of the font files (the OpenType cmap table), not a matter of taste. Remedy: the fonts
    at hand, installed or in the folder fonts/, that have the characters.
    """
    for words in words_of(blocks(subject.design)):
        missing = lacking(words.font, words.text)
        if missing:
            yield _finding(subject, words, missing)


def fonts_with(text: str, weight: int) -> tuple[str, ...]:
    """The installed families that have every character of a text."""
    fonts = (of_family(family, weight) for family in families())
    return tuple(font.name for font in fonts if font is not None and not missing_characters(font, text))


def _finding(subject: Subject, words: Words, missing: str) -> Finding:
    named = ", ".join(_named(c) for c in missing[:_MOST_NAMED])
    more = f" and {len(missing) - _MOST_NAMED} more" if len(missing) > _MOST_NAMED else ""
    return Finding(
        check="missing-glyph",
        severity=Severity.ERROR,
        place=subject.design.key(words.block, words.text_key).place,
        message=f"Neither {words.font.name} nor a font that stands in for it has {named}{more}.",
        measured=f"{len(missing)} missing",
        limit="0",
        remedy=_remedy(subject, words, missing),
    )


def _named(character: str) -> str:
    return f"{character} (U+{ord(character):04X} {unicodedata.name(character, 'WITHOUT A NAME')})"


def _remedy(subject: Subject, words: Words, missing: str) -> Remedy:
    """The font to set: one that has what is missing. A file comes last: its path depends on where it is named."""
    key = subject.design.key(words.block, words.font_key)
    installed = fonts_with(missing, words.font.weight)
    at_hand = (*installed, *words.font.beside)
    what = "it" if len(missing) == 1 else "them all"
    if not at_hand:
        return Remedy(
            f"No font at hand has {what}: put one that does into fonts/ and name it, or change the text."
        )
    others = f" So has {', '.join(at_hand[1:_MOST_OFFERED])}." if at_hand[1:] else ""
    change = ((key.path, at_hand[0]),) if installed or "/" not in key.place.file else ()
    return Remedy(f"Set {words.font_key}: {at_hand[0]}, which has {what}.{others}", change)
