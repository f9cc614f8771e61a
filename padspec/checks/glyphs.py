"""Characters that the font does not have."""

import unicodedata
from collections.abc import Iterator

from padspec.base.findings import Finding, Remedy, Severity
from padspec.checks.check import Limits, Subject
from padspec.compose.lettering import missing_characters
from padspec.fonts import families, family_file
from padspec.resolve.design import Font, Heading, blocks
from padspec.workspace import content_digest


def missing_glyph(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (there is no limit to set: none may be missing)
    """Does the font have every character? An error that cannot be allowed: an empty box would print.

    A fact of the font file (the OpenType cmap table), not a matter of taste. Remedy: an installed font that has
    all the characters.
    """
    for block in blocks(subject.design):
        if not isinstance(block, Heading):
            continue
        missing = missing_characters(block.font, block.text)
        if missing:
            yield _finding(subject, block, missing)


def fonts_with(text: str, weight: int) -> tuple[str, ...]:
    """The installed families that have every character of a text."""
    found = []
    for family in families():
        data = family_file(family)
        if data is not None and not missing_characters(Font(family, content_digest(data), data, weight), text):
            found.append(family)
    return tuple(found)


def _finding(subject: Subject, block: Heading, missing: str) -> Finding:
    named = ", ".join(f"{c} (U+{ord(c):04X} {unicodedata.name(c, 'without a name')})" for c in missing[:6])
    more = f" and {len(missing) - 6} more" if len(missing) > 6 else ""
    others = fonts_with(block.text, block.font.weight)
    key = subject.design.key(block.id, "font")
    remedy = (
        Remedy(f"Set font: {others[0]}, which has them all.", ((key.path, others[0]),))
        if others
        else Remedy(
            "Name a font file of your own that has them, or change the text; no installed font has them all."
        )
    )
    return Finding(
        check="missing-glyph",
        severity=Severity.ERROR,
        place=subject.design.key(block.id, "text").place,
        message=f"{block.font.name} has no {named}{more}.",
        measured=f"{len(missing)} missing",
        limit="0",
        remedy=remedy,
    )
