"""The heading: one or a few lines of lettering, fitted to the width they have.

A heading keeps its size where it fits. One that is too wide shrinks a little, then breaks into lines of
even length, then shrinks to the least size; a short one is blown up only where it is to fill the width. Lines are
centred by their ink, not by their advance, so that an A or a quote at the end does not push the line aside; at a
side, quotes, points and dashes hang past it, so that the letters make the edge.
"""

from dataclasses import dataclass
from itertools import pairwise

from padspec.base.geometry import Affine, Box
from padspec.base.numbers import EPSILON, round_down, round_up
from padspec.compose.face import Drawn, Placement, Room, Seat
from padspec.compose.lettering.arc import bent
from padspec.compose.lettering.breaking import broken
from padspec.compose.lettering.edge import with_round_corners
from padspec.compose.lettering.ink import hanging, hangs
from padspec.compose.lettering.setting import set_line
from padspec.compose.lettering.shaping import ShapedLine, cap_height, shape_line
from padspec.resolve.blocks.heading import Heading
from padspec.scene.nodes import Cause, LayerName, Node, Shape, Stroke
from padspec.scene.outline import Outline, mapped

#: From baseline to baseline, as a share of the em.
LEADING = 1.12
#: What is kept below the last baseline for descenders, as a share of the em.
DESCENT = 0.22
#: One line may shrink to this share of the wished size before a second line is begun.
SHRINK_FIRST = 0.8
#: Lettering that is fitted comes in steps of so many mm: names of much the same length look alike, and lie alike.
_STEP = 0.05
#: How far signs reach beyond capitals and baseline is counted in steps of so much of the em, for the same reason.
_REACH = 0.05
#: Air between the signs below one line and those above the next, as a share of the em.
_BETWEEN_SIGNS = 0.1


@dataclass(frozen=True, slots=True)
class Measured:
    """One line at an em of 1 mm: its text, the box of its ink, whether its script has signs past capitals."""

    text: str
    ink: Box
    uneven: bool


@dataclass(frozen=True, slots=True)
class Fitted:
    """Lettering that fits: its size (em in mm), its lines at an em of 1 mm, and whether it still is too wide."""

    size: float
    lines: tuple[Measured, ...]
    too_wide_by: float


_NO_LINES = Fitted(0.0, (), 0.0)


@dataclass(frozen=True, slots=True)
class Laid:
    """Lettering in its place: how it fits, where each line's origin stands, and what the placement says."""

    fitted: Fitted
    origins: tuple[tuple[float, float], ...]
    placement: Placement


def need(block: Heading, width: float, margin: float) -> float:
    """The height of the lettering with the air below it; none where there is no text."""
    if not block.text:
        return 0.0
    fitted = fit(block, width)
    return margin + _height(block, fitted) + block.space


def draw(block: Heading, room: Room, margin: float) -> Drawn:
    """One shape a line; where letters have an edge, those of all lines lie under all letters."""
    laid = lay(block, room, margin)
    size = Affine.scale(laid.fitted.size)
    letters = tuple(
        mapped(_shaped(block, line.text).outline, size.then(Affine.move(*origin)))
        for line, origin in zip(laid.fitted.lines, laid.origins, strict=True)
    )
    return Drawn(_painted(block, letters), (laid.placement,), (Seat(block.id, room, margin),))


def lay(block: Heading, room: Room, margin: float) -> Laid:
    """The lettering in its room, measured and placed but not drawn."""
    box = Box(room.box.x + margin, room.box.y + margin, room.box.width - 2 * margin, room.box.height - margin)
    if not block.text:
        return Laid(_NO_LINES, (), Placement(block.id, Box(box.x, room.box.y, box.width, 0.0)))
    fitted = fit(block, box.width)
    head = _head(block, fitted, box, room)
    starts = (_start(block, line, box, fitted.size) for line in fitted.lines)
    placed = Box(box.x, head, box.width, _height(block, fitted))
    placement = Placement(block.id, placed, size=fitted.size, short_by=fitted.too_wide_by)
    return Laid(fitted, tuple(zip(starts, _baselines(block, fitted, head), strict=True)), placement)


def fit(block: Heading, width: float) -> Fitted:
    """The largest lettering, no larger than wished, that fits a width in the lines allowed.

    Lettering that is to fill the width may become as large as `most_size`.
    """
    best: Fitted | None = None
    room = max(width - 2 * block.edge_width, 0.0)
    most, least = block.most_size if block.fit == "width" else block.size, block.least_size
    for count in range(1, block.lines + 1):
        lines = tuple(_line(block, text) for text in broken(block.font, block.text, count, block.tracking))
        widest = max((line.ink.width for line in lines), default=0.0)
        size = min(most, round_down(room / widest, _STEP)) if widest > 0 else most
        fitted = Fitted(max(size, least), lines, widest * least - room if size < least else 0.0)
        if best is None or fitted.size > best.size + EPSILON or fitted.too_wide_by < best.too_wide_by - EPSILON:
            best = fitted
        if size >= SHRINK_FIRST * block.size:
            break
    assert best is not None
    return best


def _line(block: Heading, text: str) -> Measured:
    # Only lettering on an arc has to be drawn before its size is known.
    line = _shaped(block, text) if block.arc else set_line(block.font, text, block.tracking)
    return Measured(text, line.ink, line.uneven)


def _shaped(block: Heading, text: str) -> ShapedLine:
    return bent(shape_line(block.font, text, block.tracking), block.arc)


def _painted(block: Heading, letters: tuple[Outline, ...]) -> tuple[tuple[LayerName, Node], ...]:
    cause, edge = Cause(block.id, "lettering"), Cause(block.id, "outline")
    shapes: list[Shape] = []
    if block.edge is not None:
        # Half of the stroke lies under the letters, which keep their shape.
        stroke = Stroke(block.edge.colour, 2 * block.edge.width, cap="round")
        shapes += [Shape(with_round_corners(outline), edge, stroke=stroke) for outline in letters if outline]
    shapes += [Shape(outline, cause, fill=block.colour) for outline in letters if outline]
    return tuple(("lettering", shape) for shape in shapes)


def _height(block: Heading, fitted: Fitted) -> float:
    last = _drops(block, fitted.lines)[-1] + _fall(block, fitted.lines[-1])
    return last * fitted.size + 2 * block.edge_width


def _head(block: Heading, fitted: Fitted, box: Box, room: Room) -> float:
    """Where the lettering begins. What is in the middle is its capitals and last baseline, not its descenders."""
    drops = _drops(block, fitted.lines)
    spare = room.box.height - _height(block, fitted)
    match block.seat:
        case "head":
            return box.y
        case "foot":
            return room.box.y + max(spare, 0.0)
        case "middle":
            middle = (drops[-1] * fitted.size + 2 * block.edge_width) / 2
            return max(room.box.y + room.box.height / 2 - middle, room.box.y)


def _baselines(block: Heading, fitted: Fitted, head: float) -> tuple[float, ...]:
    return tuple(head + block.edge_width + drop * fitted.size for drop in _drops(block, fitted.lines))


def _drops(block: Heading, lines: tuple[Measured, ...]) -> tuple[float, ...]:
    """How far below the head each baseline lies, in ems: capitals, an even leading, and more for signs beyond."""
    more = _rise(block, lines[0]) - cap_height(block.font)
    found = [cap_height(block.font) + more]
    for n, (above, line) in enumerate(pairwise(lines), 1):
        signs = _fall(block, above) + _rise(block, line) + _BETWEEN_SIGNS
        more += max(signs - LEADING, 0.0) if above.uneven or line.uneven else 0.0
        found.append(cap_height(block.font) + n * LEADING + more)
    return tuple(found)


def _rise(block: Heading, line: Measured) -> float:
    """How far a line reaches above its baseline, in ems: as high as capitals, or as its signs or its arc."""
    if block.arc:
        return -line.ink.y
    cap = cap_height(block.font)
    return max(cap, round_up(-line.ink.y, _REACH)) if line.uneven else cap


def _fall(block: Heading, line: Measured) -> float:
    """How far a line reaches below its baseline, in ems."""
    if block.arc:
        return max(DESCENT, line.ink.bottom)
    return max(DESCENT, round_up(line.ink.bottom, _REACH)) if line.uneven else DESCENT


def _start(block: Heading, line: Measured, box: Box, size: float) -> float:
    """Where the line's origin goes so that its ink is aligned."""
    ink, edge = line.ink.width * size, block.edge_width
    match block.align:
        case "left":
            return box.x - line.ink.x * size + edge - _hanging(block, line, 0) * size
        case "centre":
            return box.x + (box.width - ink) * 0.5 - line.ink.x * size
        case "right":
            return box.x + (box.width - ink) - line.ink.x * size - edge + _hanging(block, line, -1) * size


def _hanging(block: Heading, line: Measured, at: int) -> float:
    """How far the mark at one end hangs past the edge, in ems."""
    letters = () if block.arc else set_line(block.font, line.text, block.tracking).letters
    if not letters or not hangs(letters[at].character):
        return 0.0
    return hanging(letters[at].character, _shaped(block, line.text).letters[at].outline)
