"""One card for each reading of the calibration page: what to look at, and the line of studio.yaml it goes to."""

from padspec.base.colour import BLACK
from padspec.base.geometry import Affine, Box
from padspec.base.numbers import mm_text, number_text
from padspec.base.units import parse_length
from padspec.scene.nodes import Group, Node
from padspec.scene.outline import line
from padspec.test_prints.cards import Blank, Card, air, heading, paragraph, printer_card, stacked
from padspec.test_prints.scales import Cross
from padspec.test_prints.setting import SMALL, Type, drawn, filled, words
from padspec.test_prints.steps import (
    SCREENED,
    THINNED,
    TINTS,
    WEIGHTS,
    Stretch,
    stretches,
    tint,
    weight_in_points,
)

_ROW = 3.6
#: So many of the lightest greys are named by their value.
_NAMED = 6


def scale_card(cross: Cross, width: float, face: Type) -> Card:
    """Scale, with the percentage for each half millimetre."""
    across, down = stretches(cross.across), stretches(cross.down)
    tables = (
        *_table("across, x", across, 0.0, face),
        *_table("down, y", down, width / 2 + 2, face),
    )
    rows = max(len(across), len(down)) + 1
    return stacked(
        (
            heading("1", "Scale", width, face),
            paragraph("Measure both bars of the cross from end tick to end tick.", width, face),
            air(1.6),
            Card(rows * _ROW, tables),
            air(1.2),
            paragraph(
                f"Between two rows: measured ÷ {number_text(cross.across)} (or {number_text(cross.down)}) × 100. "
                "Outside the table the print dialogue scales to fit: stop, set it to 100 %, print again.",
                width,
                face,
            ),
            printer_card((("scale: {x: ", Blank(), " %, y: ", Blank(), " %}"),), face),
        )
    )


def _table(name: str, rows: tuple[Stretch, ...], x: float, face: Type) -> tuple[Node, ...]:
    """Measured lengths on the left, percentages on the right, the true one strong."""
    measured_at, percent_at = x + 12.5, x + 28.5
    found: list[Node] = [words(name, x, 2.4, face.strong, SMALL)]
    for n, row in enumerate(rows, 1):
        font, baseline = face.strong if row.is_true else face.text, n * _ROW + 2.4
        found.append(words(f"{row.measured} mm", measured_at, baseline, font, SMALL, "right"))
        found.append(words(f"{row.percentage} %", percent_at, baseline, font, SMALL, "right"))
    return tuple(found)


def offset_card(cross: Cross, width: float, face: Type) -> Card:
    """Offset: where the middle of the cross came to lie."""
    x, y = (mm_text(at) for at in cross.middle)
    return stacked(
        (
            heading("2", "Offset", width, face),
            paragraph(
                f"Measure from the left edge of the paper to the upright bar, and from its top edge to the level "
                f"bar. Enter what is more than {x} and {y}; what is less, with a minus.",
                width,
                face,
            ),
            printer_card((("offset: {x: ", Blank(), " mm, y: ", Blank(), " mm}"),), face),
        )
    )


def margins_card(width: float, face: Type, is_corrected: bool) -> Card:
    """Margins: where the scales at the edges begin."""
    told = [
        "Each scale at an edge counts millimetres inwards. Read where its line begins, up to the next half: "
        "of the two at a side, the larger.",
    ]
    if not is_corrected:
        told.append(
            "If 1 or 2 is off, enter those first; then read the scales of "
            "padspec\u00a0calibrate\u00a0--corrected instead."
        )
    lines = (
        ("margins: {left: ", Blank(), " mm, right: ", Blank(), " mm,"),
        ("                 top: ", Blank(), " mm, bottom: ", Blank(), " mm}"),
    )
    return stacked(
        (
            heading("3", "Margins", width, face),
            *(paragraph(text, width, face) for text in told),
            printer_card(lines, face),
        )
    )


def tints_card(width: float, face: Type) -> Card:
    """Tints: the lightest ground that prints."""
    label, side = 10.0, (width - 10.0) / len(TINTS)
    height = 4.6
    nodes: list[Node] = []
    for row, (name, colour) in enumerate(THINNED):
        y = 3.2 + row * (height + 1.0)
        nodes.append(words(name, 0, y + height / 2 + SMALL * 0.35, face.text, SMALL))
        for n, percent in enumerate(TINTS):
            patch = Box(label + n * side, y, side - 0.9, height)
            nodes.append(filled(patch, tint(colour, percent)))
    for n, percent in enumerate(TINTS):
        middle = label + n * side + (side - 0.9) / 2
        nodes.append(words(str(percent), middle, 2.1, face.text, SMALL, "centre"))
    nodes.append(words("%", label - 1.6, 2.1, face.text, SMALL, "right"))
    greys = ", ".join(f"{percent} % {tint(BLACK, percent).hex}" for percent in TINTS[:_NAMED])
    told = (
        "The lightest step that you see is the lightest ground that prints: keep the ground of a design as dark "
        f"as that. In grey: {greys}."
    )
    return stacked(
        (
            heading("4", "Tints", width, face),
            paragraph(told, width, face),
            air(1.4),
            Card(3.2 + len(THINNED) * (height + 1.0), tuple(nodes)),
        )
    )


def lines_card(width: float, face: Type) -> Card:
    """Lines: the thinnest that the printer holds, in black and in colours made of dots."""
    told = (
        "By magnifier: the thinnest line without a gap, in black and in both colours made of dots, and its unit."
    )
    first = 26.5
    sample = (width - first - 2 * 3.0) / 3
    starts = tuple(first + n * (sample + 3.0) for n in range(3))
    row = 4.1
    nodes: list[Node] = [
        words(name, x, 2.1, face.text, SMALL)
        for name, x in zip(("black", "grey", "mulberry"), starts, strict=True)
    ]
    for n, weight in enumerate(WEIGHTS, 1):
        y = n * row + 1.2
        nodes.append(words(weight, 11.0, y + 0.75, face.strong, SMALL, "right"))
        nodes.append(words(weight_in_points(weight), 23.0, y + 0.75, face.text, SMALL, "right"))
        nodes += _samples(weight, y, sample, starts)
    lines = (("least-line: ", Blank(20.0)), ("least-screened-line: ", Blank(20.0)))
    return stacked(
        (
            heading("5", "Lines", width, face),
            paragraph(told, width, face),
            air(1.6),
            Card((len(WEIGHTS) + 1) * row, tuple(nodes)),
            printer_card(lines, face),
        )
    )


def _samples(weight: str, y: float, length: float, starts: tuple[float, ...]) -> list[Node]:
    """One line in black and in each colour that is made of dots."""
    return [
        Group((drawn(line(0, 0, length, 0), parse_length(weight), colour),), Affine.move(x, y))
        for x, colour in zip(starts, (BLACK, *SCREENED), strict=True)
    ]
