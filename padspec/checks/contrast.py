"""The contrast checks: rules, squares and lettering on what really lies under them."""

from collections.abc import Iterator
from dataclasses import replace

from padspec.base.findings import Finding, Remedy
from padspec.base.numbers import number_text
from padspec.checks.check import Level, Limits, Subject
from padspec.checks.line_contrast import Lines, lines_of, nearest_passing
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.blocks.words import words_of
from padspec.resolve.design import blocks

#: WCAG 2 calls lettering large from 18 pt.
LARGE = 18 * 25.4 / 72
#: A line around letters that is thinner does not hold them apart from what lies under, in mm.
LEAST_EDGE = 0.3


def rule_contrast(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Will the rules show? WCAG 2 contrast of each rule against what lies under it (the face without its rules,
    sampled along the line, 5th percentile).

    Error below 1.5, warning below 1.8: common practice, no published source. A rule is meant to be faint, so
    the 3 : 1 of WCAG 2.2 SC 1.4.11 is not asked of it. Remedy: the nearest colour of the same hue, by CIEDE2000,
    that passes.
    """
    for lines in lines_of(subject, "rule"):
        measured = lines.worst(lines.colour)
        level = limits.missed_below(measured)
        if level is not None:
            yield _finding(
                subject, "rule-contrast", lines, level, measured, "The rules hardly show", "colour", limits
            )


def checkbox_contrast(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Will the squares show? Measured as for rules.

    Warning below 3: by analogy with WCAG 2.2 SC 1.4.11 (non-text contrast), since a square says where to tick.
    Remedy: the nearest colour of the same hue that passes, for the squares alone: rules may stay fainter.
    """
    own = {block.id for block in blocks(subject.design) if isinstance(block, Rows) and _own_square(block)}
    bare = {block.id for block in blocks(subject.design) if not (isinstance(block, Rows) and block.squares)}
    for lines in lines_of(subject, "checkbox"):
        measured = lines.worst(lines.colour)
        level = limits.missed_below(measured)
        if level is not None:
            finding = _finding(
                subject,
                "checkbox-contrast",
                lines,
                level,
                measured,
                "The squares hardly show",
                "colour" if lines.block in bare else "checkbox-colour",
                limits,
            )
            caused_by = "checkbox-colour" if lines.block in own else "colour"
            yield replace(finding, place=subject.design.key(lines.block, caused_by).place)


def harsh_rules(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Do the rules shout? Measured as for rule-contrast.

    Note above 10: common practice, no published source; black rules fight with handwriting. Remedy: the nearest
    colour of the same hue that is quieter.
    """
    level = limits.mildest
    for lines in lines_of(subject, "rule"):
        measured = lines.best(lines.colour)
        if limits.missed_above(measured) is None:
            continue
        softer = nearest_passing(lines.colour, lambda c, lines=lines: lines.best(c) <= level.value)  # type: ignore[misc]
        key = subject.design.key(lines.block, "colour")
        yield Finding(
            check="harsh-rules",
            severity=level.severity,
            place=key.place,
            message=f"The rules are harsh: {lines.colour.hex} stands out {number_text(measured, 1)} : 1.",
            measured=f"{number_text(measured, 2)} : 1",
            limit=level.text,
            remedy=_no_shade(level)
            if softer is None
            else Remedy(f'Set {".".join(key.path)}: "{softer.hex}", which is softer.', ((key.path, softer.hex),)),
        )


def lettering_contrast(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Can the heading be read? WCAG 2 contrast against what lies under the letters, or the line around them.

    Warning below 3 for lettering from 18 pt (6.35 mm), below 4.5 for smaller: by analogy with WCAG 2.2 SC 1.4.3.
    A limit of the maker's own holds for both. Remedy: the nearest colour of the same hue that passes.
    """
    sizes = {p.block: p.size for p in subject.face.placements}
    edges = {
        block.id: block.edge.colour
        for block in blocks(subject.design)
        if isinstance(block, Heading) and block.edge is not None and block.edge.width >= LEAST_EDGE
    }
    keys = {words.block: words.colour_key for words in words_of(blocks(subject.design))}
    for lines in lines_of(subject, "lettering"):
        usual = limits.mildest
        small = sizes.get(lines.block, LARGE) < LARGE - 1e-9
        level = Level(usual.severity, 4.5, "ratio") if small and usual.usual is None else usual
        held = Limits((level,))
        if lines.block in edges:
            # A line around the letters is what they stand against.
            lines = replace(lines, under=(edges[lines.block].unit[None, :],))
        measured = lines.worst(lines.colour)
        if held.missed_below(measured) is not None:
            words = "The small lettering is hard to read" if small else "The heading is hard to read"
            yield _finding(subject, "lettering-contrast", lines, level, measured, words, keys[lines.block], held)


def _own_square(block: Rows) -> bool:
    """Whether the squares have a colour setting of their own rather than following the rules."""
    return block.squares is not None and block.squares.colour != block.colour


def _finding(
    subject: Subject,
    check: str,
    lines: Lines,
    level: Level,
    measured: float,
    words: str,
    setting: str,
    limits: Limits,
) -> Finding:
    key = subject.design.key(lines.block, setting)
    target = limits.mildest.value
    better = nearest_passing(lines.colour, lambda colour: lines.worst(colour) >= target)
    return Finding(
        check=check,
        severity=level.severity,
        place=key.place,
        message=f"{words}: {lines.colour.hex} stands out {number_text(measured, 2)} : 1 from what lies under it.",
        measured=f"{number_text(measured, 3)} : 1",
        limit=level.text,
        remedy=_no_shade(limits.mildest)
        if better is None
        else Remedy(
            f'Set {".".join(key.path)}: "{better.hex}", the nearest colour that passes '
            f"({number_text(lines.worst(better), 2)} : 1).",
            ((key.path, better.hex),),
        ),
    )


def _no_shade(level: Level) -> Remedy:
    ratio = number_text(level.value, 2)
    return Remedy(f"No shade of this hue keeps {ratio} : 1 everywhere: make what lies under it quieter.")
