"""The contrast of rules and squares for people who see colours otherwise."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from padspec.base.colour import Colour
from padspec.base.colour_vision import DEFICIENCIES, Deficiency, as_seen, colour_as_seen
from padspec.base.findings import Finding, Remedy
from padspec.base.numbers import number_text
from padspec.checks.check import Level, Limits, Subject
from padspec.checks.line_contrast import Lines, lines_of, nearest_passing
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import blocks
from padspec.scene.nodes import Part

#: What squares are held to where the maker sets no limit of their own.
SQUARES_LIMIT = 2.5


@dataclass(frozen=True, slots=True)
class _Seen:
    """The lines of one colour with what lies under them, as each deficiency shows it."""

    under: tuple[tuple[Deficiency, Lines], ...]

    def contrasts(self, colour: Colour) -> dict[Deficiency, float]:
        """The least contrast of these lines, had they this colour, for each deficiency."""
        return {name: lines.worst(colour_as_seen(colour, name)) for name, lines in self.under}

    def worst(self, colour: Colour) -> float:
        """The least contrast of all."""
        return min(self.contrasts(colour).values())


def colour_vision(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Do rules and squares show to people who lack one kind of cone? Measured as for rule-contrast, with the lines
    and what lies under them as seen with protanopia, deuteranopia and tritanopia (G. M. Machado, M. M. Oliveira
    and L. A. F. Fernandes, IEEE TVCG 15, 2009, severity 1.0).

    Warning below 1.5 for rules and 2.5 for squares; a limit of the maker's own holds for both. No published source
    sets a figure for such sight. These are five sixths of the 1.8 and 3 that are asked for everybody: on white no
    colour that passes those falls under these, so that the finding speaks of lines told from dark or coloured
    paper by their hue more than by their lightness. Lines that fall short of the same limit for everybody are left
    to rule-contrast and checkbox-contrast. Remedy: the nearest colour of the same hue, by CIEDE2000, that passes
    with all three and without.
    """
    for part in ("rule", "checkbox"):
        level = _level(part, limits)
        for lines in lines_of(subject, part):
            if lines.worst(lines.colour) < level.value - 1e-9:
                continue
            seen = _seen(lines)
            measured = seen.contrasts(lines.colour)
            if min(measured.values()) < level.value - 1e-9:
                yield _finding(subject, part, lines, seen, level)


def _level(part: Part, limits: Limits) -> Level:
    usual = limits.mildest
    held_by_maker = usual.usual is not None
    return usual if part == "rule" or held_by_maker else replace(usual, value=SQUARES_LIMIT)


def _seen(lines: Lines) -> _Seen:
    def with_eyes(name: Deficiency) -> Lines:
        return replace(lines, under=tuple(as_seen(stretch, name) for stretch in lines.under))

    return _Seen(tuple((name, with_eyes(name)) for name in DEFICIENCIES))


def _finding(subject: Subject, part: Part, lines: Lines, seen: _Seen, level: Level) -> Finding:
    measured = seen.contrasts(lines.colour)
    hard = [name for name, ratio in measured.items() if ratio < level.value - 1e-9]
    least = number_text(min(measured.values()), 2)
    words = "rules" if part == "rule" else "squares"
    caused_by, mended_by = _keys(subject, part, lines)
    message = (
        f"With {_listed(hard)} the {words} hardly show: {lines.colour.hex} then stands out {least} : 1 "
        f"from what lies under it."
    )
    return Finding(
        check="colour-vision",
        severity=level.severity,
        place=subject.design.key(lines.block, caused_by).place,
        message=message,
        measured=f"{number_text(min(measured.values()), 3)} : 1",
        limit=level.text,
        remedy=_remedy(subject.design.key(lines.block, mended_by).path, lines, seen, level),
    )


def _remedy(path: tuple[str, ...], lines: Lines, seen: _Seen, level: Level) -> Remedy:
    def passes(colour: Colour) -> bool:
        return min(lines.worst(colour), seen.worst(colour)) >= level.value

    better = nearest_passing(lines.colour, passes)
    if better is None:
        ratio = number_text(level.value, 2)
        return Remedy(
            f"No shade of this hue keeps {ratio} : 1 for every eye: make what lies under it quieter or paler."
        )
    shown = number_text(seen.worst(better), 2)
    text = f'Set {".".join(path)}: "{better.hex}", the nearest colour that passes ({shown} : 1 at the least).'
    return Remedy(text, ((path, better.hex),))


def _keys(subject: Subject, part: Part, lines: Lines) -> tuple[str, str]:
    """The setting that the colour comes from and the one to mend it with.

    Squares of rows follow the rules until they have a colour of their own, and get one as a remedy; circles and
    boxes of other blocks have the colour of their block.
    """
    for block in blocks(subject.design):
        if part == "checkbox" and isinstance(block, Rows) and block.id == lines.block and block.squares:
            own = block.squares.colour != block.colour
            return ("checkbox-colour" if own else "colour"), "checkbox-colour"
    return "colour", "colour"


def _listed(names: list[Deficiency]) -> str:
    *most, last = names
    return f"{', '.join(most)} or {last}" if most else last
