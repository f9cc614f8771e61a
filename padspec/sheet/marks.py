"""What is printed around the slots: crop marks, the slug and the scale bar, in the room that the bleed leaves.

Each side of the block has a strip from the printed bleed to the edge of the printable area. Crop marks come
first; the slug and the scale bar take what is left of a strip, clear of the marks. What finds no room is
left out and named.
"""

from dataclasses import dataclass
from functools import reduce
from typing import Literal

from padspec.base.colour import BLACK
from padspec.base.geometry import Affine, Box
from padspec.base.numbers import EPSILON
from padspec.compose.lettering.setting import set_line
from padspec.compose.lettering.shaping import ShapedLine, shape_line
from padspec.resolve.font import Font
from padspec.scene.nodes import Cause, Node, Part, Shape, Stroke
from padspec.scene.outline import Outline, bounds, line, mapped
from padspec.sheet.sheet import Slot

#: A quarter point, the thinnest line every printer holds; common practice for crop marks.
MARK_WEIGHT = 25.4 / 72 / 4
MARK_LEAST, MARK_MOST = 2.0, 5.0
#: From the printed bleed to the mark, so that a cut a hair outside never meets ink of the mark.
MARK_GAP = 0.3
#: Slug and scale bar keep this far from the bleed, and so far from marks that nobody takes one for the other.
CLEAR = 0.5
APART = 3.0
SLUG_SIZES = tuple(round(2.6 - 0.1 * n, 1) for n in range(13))
SCALE_BAR = 100.0
_TICK = 1.6
_LABEL = 1.7
#: Ink of a line of small print reaches this far above and below the baseline, as a share of its size.
_ABOVE, _BELOW = 0.74, 0.22

Side = Literal["foot", "head", "left", "right"]
SIDES: tuple[Side, ...] = ("foot", "head", "left", "right")


@dataclass(frozen=True, slots=True)
class Frame:
    """What marks stand around: the places of the trim lines that reach each side of the block, the printed bleed
    and the printable area.
    """

    lines: dict[Side, tuple[float, ...]]
    bleed: Box
    printable: Box


def frame_of(slots: tuple[Slot, ...], printable: Box) -> Frame:
    """The frame of some slots. A trim line reaches a side where no leaf stands in its way."""
    trims = [slot.trim for slot in slots]
    bleed = reduce(Box.joined, (box for slot in slots for box in slot.printed))
    return Frame({side: _reaching(side, trims) for side in SIDES}, bleed, printable)


def _reaching(side: Side, trims: list[Box]) -> tuple[float, ...]:
    across = side in ("foot", "head")
    found = {
        round(at, 6)
        for trim in trims
        for at in ((trim.x, trim.right) if across else (trim.y, trim.bottom))
        if not any(_is_past(side, other, trim) and _within(at, other, across) for other in trims)
    }
    return tuple(sorted(found))


def _is_past(side: Side, other: Box, trim: Box) -> bool:
    """Whether another leaf stands between this one and the side."""
    match side:
        case "foot":
            return other.y >= trim.bottom - EPSILON
        case "head":
            return other.bottom <= trim.y + EPSILON
        case "left":
            return other.right <= trim.x + EPSILON
        case "right":
            return other.x >= trim.right - EPSILON


def _within(at: float, other: Box, across: bool) -> bool:
    low, high = (other.x, other.right) if across else (other.y, other.bottom)
    return low + 1e-6 < at < high - 1e-6


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip beside the block in its own space: u along it, v across it, `to_sheet` lands it on the sheet."""

    side: Side
    length: float
    depth: float
    to_sheet: Affine
    box: Box

    def interval(self, box: Box) -> tuple[float, float]:
        """Where along the strip a box lies."""
        if self.side in ("foot", "head"):
            return box.x - self.box.x, box.right - self.box.x
        return self.box.bottom - box.bottom, self.box.bottom - box.y


@dataclass(frozen=True, slots=True)
class Marks:
    """The nodes to draw, and what was left out."""

    nodes: tuple[Node, ...]
    left_out: tuple[str, ...]


def draw_marks(frame: Frame, slug: str, font: Font) -> Marks:
    """Everything around the block that finds room."""
    crops, missing = _crop_marks(frame)
    nodes: list[Node] = list(crops)
    left_out = [f"crop marks {side}" for side in missing]
    slug_node = _slug(frame, slug, font, tuple(_box(node) for node in nodes))
    nodes += [slug_node] if slug_node else []
    bar = _scale_bar(frame, font, tuple(_box(node) for node in nodes))
    nodes += bar
    left_out += [] if slug_node else ["slug"]
    left_out += [] if bar else ["scale bar"]
    return Marks(tuple(nodes), tuple(left_out))


def _crop_marks(frame: Frame) -> tuple[list[Shape], list[Side]]:
    found: list[Shape] = []
    missing: list[Side] = []
    for strip in strips(frame):
        length = min(MARK_MOST, strip.depth - MARK_GAP)
        if length < MARK_LEAST - EPSILON:
            missing.append(strip.side)
            continue
        found += [_crop_mark(strip, position, length) for position in frame.lines[strip.side]]
    return found, missing


def _crop_mark(strip: Strip, position: float, length: float) -> Shape:
    box = strip.box
    match strip.side:
        case "foot":
            outline = line(position, box.y + MARK_GAP, position, box.y + MARK_GAP + length)
        case "head":
            outline = line(position, box.bottom - MARK_GAP, position, box.bottom - MARK_GAP - length)
        case "left":
            outline = line(box.right - MARK_GAP, position, box.right - MARK_GAP - length, position)
        case "right":
            outline = line(box.x + MARK_GAP, position, box.x + MARK_GAP + length, position)
    return _stroked(outline, "crop-mark", MARK_WEIGHT)


def strips(frame: Frame) -> tuple[Strip, ...]:
    """The four strips; lettering in the upright ones reads from foot to head."""
    area, bleed = frame.printable, frame.bleed
    boxes: tuple[tuple[Side, Box], ...] = (
        ("foot", Box(area.x, bleed.bottom, area.width, area.bottom - bleed.bottom)),
        ("head", Box(area.x, area.y, area.width, bleed.y - area.y)),
        ("left", Box(area.x, area.y, bleed.x - area.x, area.height)),
        ("right", Box(bleed.right, area.y, area.right - bleed.right, area.height)),
    )
    found = []
    for side, box in boxes:
        if side in ("foot", "head"):
            found.append(Strip(side, box.width, box.height, Affine.move(box.x, box.y), box))
        else:
            turned = Affine(a=0.0, b=-1.0, c=1.0, d=0.0, e=box.x, f=box.bottom)
            found.append(Strip(side, box.height, box.width, turned, box))
    return tuple(found)


def _gaps(strip: Strip, obstacles: tuple[Box, ...]) -> list[tuple[float, float]]:
    """The free stretches of a strip between what already stands in it, longest first."""
    blocked = sorted(strip.interval(box) for box in obstacles if box.inset(-CLEAR).overlaps(strip.box))
    found, start = [], 0.0
    for low, high in blocked:
        found.append((start, low - APART))
        start = max(start, high + APART)
    found.append((start, strip.length))
    return sorted(
        ((low, high) for low, high in found if high > low),
        key=lambda gap: (round(gap[0] - gap[1], 6), gap[0]),
    )


def _inner_edge(strip: Strip) -> tuple[float, float]:
    """The v range of a strip less the clearance to the bleed."""
    return (0.0, strip.depth - CLEAR) if strip.side in ("head", "left") else (CLEAR, strip.depth)


def _slug(frame: Frame, text: str, font: Font, obstacles: tuple[Box, ...]) -> Shape | None:
    shaped = shape_line(font, text)
    seat = _slug_seat(frame, shaped.advance, obstacles)
    return None if seat is None else Shape(mapped(shaped.outline, seat), Cause("sheet", "slug"), fill=BLACK)


def slug_seat(frame: Frame, text: str, font: Font) -> Affine | None:
    """The map that sets a line of this length, at an em of 1 mm, where the slug stands; None without room."""
    crops, _ = _crop_marks(frame)
    return _slug_seat(frame, set_line(font, text).advance, tuple(_box(node) for node in crops))


def _slug_seat(frame: Frame, advance: float, obstacles: tuple[Box, ...]) -> Affine | None:
    for size in SLUG_SIZES:
        for strip in strips(frame):
            low, high = _inner_edge(strip)
            for start, end in _gaps(strip, obstacles):
                if end - start >= advance * size and high - low >= (_ABOVE + _BELOW) * size - EPSILON:
                    baseline = (low + high) / 2 + (_ABOVE - _BELOW) / 2 * size
                    return _placed(size, start, baseline, strip)
    return None


def remark_in(leaf: Box, remark: str, font: Font) -> Shape:
    """A remark with no slug to stand in, on the foot of a leaf: a sheet printed despite errors must say so."""
    shaped = shape_line(font, remark)
    size = min(SLUG_SIZES[0], (leaf.width - 2 * APART) / shaped.advance)
    placed = Affine.scale(size).then(Affine.move(leaf.x + APART, leaf.bottom - APART))
    return Shape(mapped(shaped.outline, placed), Cause("sheet", "slug"), fill=BLACK)


def _scale_bar(frame: Frame, font: Font, obstacles: tuple[Box, ...]) -> list[Node]:
    label = shape_line(font, "100 mm")
    edge = MARK_WEIGHT / 2  # so that the first tick lies in the strip with all of its line
    needed = edge + SCALE_BAR + 1.2 + label.advance * _LABEL
    for strip in strips(frame):
        low, high = _inner_edge(strip)
        if high - low < _TICK + MARK_WEIGHT - EPSILON:
            continue
        for start, end in _gaps(strip, obstacles):
            if end - start >= needed - EPSILON:
                middle = (low + high) / 2
                start += (end - start - needed) / 2
                bar = mapped(_bar_outline(start + edge, middle), strip.to_sheet)
                baseline = middle + (_ABOVE - _BELOW) / 2 * _LABEL
                words = _lettered(label, _LABEL, start + edge + SCALE_BAR + 1.2, baseline, strip, "scale-bar")
                return [_stroked(bar, "scale-bar", MARK_WEIGHT), words]
    return []


def _bar_outline(start: float, middle: float) -> Outline:
    """A line with ticks whose middles are exactly 100 mm apart; a shorter tick each 10 mm."""
    top, foot = middle - _TICK / 2, middle + _TICK / 2
    steps: list[Outline] = [line(start, middle, start + SCALE_BAR, middle)]
    for n in range(11):
        x = start + SCALE_BAR * n / 10
        reach = 0.0 if n in (0, 10) else _TICK / 4
        steps.append(line(x, top + reach, x, foot - reach))
    return tuple(step for outline in steps for step in outline)


def _lettered(shaped: ShapedLine, size: float, u: float, v: float, strip: Strip, part: Part) -> Shape:
    return Shape(mapped(shaped.outline, _placed(size, u, v, strip)), Cause("sheet", part), fill=BLACK)


def _placed(size: float, u: float, v: float, strip: Strip) -> Affine:
    """From a line at an em of 1 mm to the sheet, its origin at (u, v) of a strip."""
    return Affine.scale(size).then(Affine.move(u, v)).then(strip.to_sheet)


def _stroked(outline: Outline, part: Part, weight: float) -> Shape:
    return Shape(outline, Cause("sheet", part), stroke=Stroke(BLACK, weight))


def _box(node: Node) -> Box:
    return bounds(node.outline) if isinstance(node, Shape) else Box(0, 0, 0, 0)
