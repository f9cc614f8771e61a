"""The heading: one or a few lines of lettering, fitted to the width they have.

A heading keeps its size where it fits. One that is too wide shrinks a little, then breaks into lines of
even length, then shrinks to the least size; a short one is never blown up. Lines are centred by their ink,
not by their advance, so that an A or a quote at the end does not push the line aside.
"""

from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate

from padspec.base.geometry import Affine, Box
from padspec.base.numbers import EPSILON
from padspec.compose.face import Drawn, Placement, Room
from padspec.compose.lettering import ShapedLine, cap_height, shape_line
from padspec.resolve.design import Font, Heading
from padspec.scene.nodes import Cause, LayerName, Node, Shape
from padspec.scene.outline import mapped

#: From baseline to baseline, as a share of the em.
LEADING = 1.12
#: What is kept below the last baseline for descenders, as a share of the em.
DESCENT = 0.22
#: One line may shrink to this share of the wished size before a second line is begun.
SHRINK_FIRST = 0.8


@dataclass(frozen=True, slots=True)
class Fitted:
    """Lettering that fits: its size (em in mm), its lines at an em of 1 mm, and whether it still is too wide."""

    size: float
    lines: tuple[ShapedLine, ...]
    too_wide_by: float


def need(block: Heading, width: float, margin: float) -> float:
    """The height of the lettering with the air below it; none where there is no text."""
    if not block.text:
        return 0.0
    fitted = fit(block, width)
    return margin + _height(block, fitted) + block.space


def draw(block: Heading, room: Room, margin: float) -> Drawn:
    """One shape a line."""
    box = Box(room.box.x + margin, room.box.y + margin, room.box.width - 2 * margin, room.box.height - margin)
    if not block.text:
        return Drawn(placements=(Placement(block.id, Box(box.x, room.box.y, box.width, 0.0)),))
    fitted = fit(block, box.width)
    nodes: list[tuple[LayerName, Node]] = []
    for n, line in enumerate(fitted.lines):
        baseline = box.y + (cap_height(block.font) + n * LEADING) * fitted.size
        x = _start(block, line, box, fitted.size)
        outline = mapped(line.outline, Affine.scale(fitted.size).then(Affine.move(x, baseline)))
        if outline:
            nodes.append(("lettering", Shape(outline, Cause(block.id, "lettering"), fill=block.colour)))
    placed = Box(box.x, box.y, box.width, _height(block, fitted))
    return Drawn(tuple(nodes), (Placement(block.id, placed, size=fitted.size, short_by=fitted.too_wide_by),))


def fit(block: Heading, width: float) -> Fitted:
    """The largest lettering, no larger than wished, that fits a width in the lines allowed."""
    best: Fitted | None = None
    for count in range(1, block.lines + 1):
        lines = tuple(shape_line(block.font, text) for text in broken(block.font, block.text, count))
        widest = max((line.ink.width for line in lines), default=0.0)
        size = min(block.size, width / widest) if widest > 0 else block.size
        least = block.least_size
        fitted = Fitted(max(size, least), lines, widest * least - width if size < least else 0.0)
        if best is None or fitted.size > best.size + EPSILON or fitted.too_wide_by < best.too_wide_by - EPSILON:
            best = fitted
        if size >= SHRINK_FIRST * block.size:
            break
    assert best is not None
    return best


@lru_cache(maxsize=256)
def broken(font: Font, text: str, count: int) -> tuple[str, ...]:
    """The text in at most `count` lines whose widest line is as narrow as can be.

    Lines break where the maker broke them, however many that makes; else where Unicode allows (UAX #14). Each
    piece is shaped once and the search runs on sums, so that a long heading stays quick.
    """
    if "\n" in text:
        return tuple(text.split("\n"))
    pieces = _pieces(text)
    if count == 1 or len(pieces) == 1:
        return (text,)

    shaped = [_shaped_piece(font, piece) for piece in pieces]
    starts = [0.0, *accumulate(piece.advance for piece in shaped)]

    def width(start: int, end: int) -> float:
        """From the first ink to the last; kerning across a space is too little to matter."""
        return starts[end - 1] + shaped[end - 1].right - starts[start] - shaped[start].left

    # best[k][end]: the narrowest widest line when the first `end` pieces stand in k lines, and the last break.
    best: dict[tuple[int, int], tuple[float, int]] = {(0, 0): (0.0, 0)}
    for lines in range(1, count + 1):
        for end in range(lines, len(pieces) + 1):
            options = [
                (max(best[(lines - 1, start)][0], width(start, end)), start)
                for start in range(lines - 1, end)
                if (lines - 1, start) in best
            ]
            best[(lines, end)] = min(options)
    used = min(range(1, min(count, len(pieces)) + 1), key=lambda k: (round(best[(k, len(pieces))][0], 6), k))
    return _lines(pieces, best, used)


@dataclass(frozen=True, slots=True)
class _Piece:
    """A piece of a line at an em of 1 mm: how far it moves the pen, and where its ink begins and ends."""

    advance: float
    left: float
    right: float


@lru_cache(maxsize=1024)
def _shaped_piece(font: Font, text: str) -> _Piece:
    line = shape_line(font, text)
    return _Piece(line.advance, line.ink.x, line.ink.right)


def _lines(pieces: list[str], best: dict[tuple[int, int], tuple[float, int]], used: int) -> tuple[str, ...]:
    found: list[str] = []
    end = len(pieces)
    for lines in range(used, 0, -1):
        start = best[(lines, end)][1]
        found.insert(0, "".join(pieces[start:end]).strip())
        end = start
    return tuple(found)


def _pieces(text: str) -> list[str]:
    """The text cut at every place where a line may break; long texts only at spaces, to bound the work."""
    if text.isascii() or len(text) > 200:
        words = text.split(" ")
        return [word + " " for word in words[:-1]] + words[-1:]
    from uniseg.linebreak import line_break_units

    return list(line_break_units(text))


def _height(block: Heading, fitted: Fitted) -> float:
    return (cap_height(block.font) + (len(fitted.lines) - 1) * LEADING + DESCENT) * fitted.size


def _start(block: Heading, line: ShapedLine, box: Box, size: float) -> float:
    """Where the line's origin goes so that its ink is aligned."""
    ink = line.ink.width * size
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[block.align]
    return box.x + (box.width - ink) * share - line.ink.x * size
