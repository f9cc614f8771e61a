"""Line weight: whether the printer holds the rules."""

from collections.abc import Iterator

from padspec.base.colour import BLACK, Colour
from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import number_text, round_up
from padspec.checks.check import Level, Limits, Subject
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.grid import Grid
from padspec.resolve.blocks.marks import Marks
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import blocks

#: Colours that a four-ink printer lays down as one solid ink; everything else is screened.
SOLID = (BLACK, Colour(0, 255, 255), Colour(255, 0, 255), Colour(255, 255, 0))
MM_PER_PT = 25.4 / 72


def line_weight(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Will the printer hold the lines?

    Error below 0.25 pt, the usual hairline of prepress guides (0.088 mm); warning below 0.75 pt where the colour
    prints screened, that is, any but pure black or one solid ink, because a screen breaks thin lines into dots
    (common practice, no published source). The studio may state what its printer holds (printer: least-line and
    least-screened-line). Remedy: the weight that passes.
    """
    studio = subject.design.studio
    least = _held(limits.at(Severity.ERROR), studio.printer.least_line)
    least_screened = _held(limits.at(Severity.WARNING), studio.printer.least_screened_line)
    for block in blocks(subject.design):
        if not isinstance(block, Rows | Grid | Marks) or _is_dotted(block):
            continue
        screened = any(colour not in SOLID for colour in _colours(block))
        if block.weight < least.value - 1e-9:
            target = max(least.value, least_screened.value if screened else 0.0)
            yield _finding(subject, block, least, target, "thinner than a printer holds")
        elif screened and block.weight < least_screened.value - 1e-9:
            yield _finding(
                subject, block, least_screened, least_screened.value, "thin for a colour that is screened"
            )


def _colours(block: Rows | Grid | Marks) -> tuple[Colour, ...]:
    if isinstance(block, Rows) and block.squares is not None:
        return block.colour, block.squares.colour
    return (block.colour,)


def _held(level: Level, studio: float) -> Level:
    """The maker's limit in the design, else what the studio's printer holds."""
    return level if level.usual is not None else Level(level.severity, studio, level.unit)


def _is_dotted(block: Block) -> bool:
    """Dots are filled and have no line."""
    return isinstance(block, Grid) and block.mark == "dots"


def _finding(subject: Subject, block: Rows | Grid | Marks, level: Level, target: float, words: str) -> Finding:
    key = subject.design.key(block.id, "weight")
    enough = f"{number_text(round_up(target, 0.01), 2)} mm"
    return Finding(
        check="line-weight",
        severity=level.severity,
        place=key.place,
        message=f"Lines of {_both(block.weight)} are {words}.",
        measured=_both(block.weight),
        limit=f"{level.text} ({number_text(level.value / MM_PER_PT, 2)} pt)",
        remedy=Remedy(f"Draw them {enough} or heavier.", ((key.path, enough),)),
    )


def _both(weight: float) -> str:
    return f"{number_text(weight, 3)} mm ({number_text(weight / MM_PER_PT, 2)} pt)"
