"""One design in, its colour test strip out: patches of the face at real size, each with the line that gives it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.base.numbers import EPSILON
from padspec.compose.compose import compose
from padspec.draw.pdf import sheets_pdf
from padspec.resolve.design import Design
from padspec.scene.nodes import Node, Scene
from padspec.scene.outline import circle
from padspec.sheet.arrangement import Grid
from padspec.sheet.bed import Bed, bed_of
from padspec.sheet.sheet import Sheet, Slot
from padspec.test_prints.ladders import RUNGS, Ladder, Rung
from padspec.test_prints.setting import (
    CAPS,
    HEADING,
    LEADING,
    SMALL,
    TITLE,
    Nodes,
    Type,
    broken,
    filled_outline,
    ruled,
    type_of,
    words,
)
from padspec.test_prints.window import best_window, cropped

#: A patch at real size, and the most and the least air between two.
PATCH = Size(36.0, 30.0)
MOST_GAP, LEAST_GAP = 4.0, 2.0
#: What is printed keeps this far inside the printable area.
_INSIDE = 2.0
_SMALL_LEADING = 3.2
_LADDER_HEAD, _UNDER_PATCH, _BETWEEN = 7.4, 3.6, 4.4


@dataclass(frozen=True, slots=True)
class Patch:
    """One rung where it lies on the paper."""

    rung: Rung
    box: Box


@dataclass(frozen=True, slots=True)
class StripPage:
    """The patches of one page, and the words and lines beside them."""

    patches: tuple[Patch, ...]
    nodes: Nodes


@dataclass(frozen=True, slots=True)
class _Line:
    """Rungs that stand side by side, with the name of their ladder where it begins here."""

    name: str
    rungs: tuple[Rung, ...]


def strip_pdf(design: Design, found: Sequence[Ladder], date: str | None) -> bytes:
    """The strip as it prints."""
    own = compose(design)
    window = best_window(own, PATCH)
    scenes = {id(design): cropped(own.scene, window)}
    sheets = []
    for page in strip_pages(design, found, window.size):
        for patch in page.patches:
            given = patch.rung.design
            if id(given) not in scenes:
                scenes[id(given)] = cropped(compose(given).scene, window)
        sheets.append(_sheet(design, page, window, scenes))
    return sheets_pdf(sheets, date=date)


def strip_pages(design: Design, found: Sequence[Ladder], size: Size) -> tuple[StripPage, ...]:
    """The ladders laid out under each other, with patches of this size, on as many pages as they take."""
    face = type_of(design.small_print)
    area = bed_of(design).printable.inset(_INSIDE)
    n = max(min(int((area.width + LEAST_GAP) / (size.width + LEAST_GAP) + EPSILON), RUNGS), 1)
    gap = min(MOST_GAP, (area.width - n * size.width) / (n - 1)) if n > 1 else 0.0
    width = n * size.width + (n - 1) * gap
    left = area.x + (area.width - width) / 2
    head, y = _head(design, Box(left, area.y, width, 0), face)
    pages: list[StripPage] = []
    patches: list[Patch] = []
    nodes: list[Node] = list(head)
    for line in _lines(found, n):
        height = _height(line, size, face)
        if patches and y + height > area.bottom + EPSILON:
            pages.append(StripPage(tuple(patches), tuple(nodes)))
            patches, nodes, y = [], [], area.y
        boxes = [
            Box(left + i * (size.width + gap), y + _lead(line), size.width, size.height)
            for i in range(len(line.rungs))
        ]
        patches += [Patch(rung, box) for rung, box in zip(line.rungs, boxes, strict=True)]
        nodes += _captions(line, left, y, width, boxes, face)
        y += height + _BETWEEN
    return (*pages, StripPage(tuple(patches), tuple(nodes)))


def _lines(found: Sequence[Ladder], n: int) -> Iterator[_Line]:
    for ladder in found:
        for start in range(0, len(ladder.rungs), n):
            yield _Line(ladder.name if start == 0 else "", ladder.rungs[start : start + n])


def _lead(line: _Line) -> float:
    return _LADDER_HEAD if line.name else 0.0


def _height(line: _Line, size: Size, face: Type) -> float:
    most = max(len(_told(rung, size.width, face)) for rung in line.rungs)
    return _lead(line) + size.height + _UNDER_PATCH + most * _SMALL_LEADING


def _told(rung: Rung, width: float, face: Type) -> tuple[str, ...]:
    """The line under a patch, broken at its spaces where the patch is narrower."""
    return broken(rung.line.text, width, face.text, SMALL)


def _head(design: Design, room: Box, face: Type) -> tuple[Nodes, float]:
    """What the strip is of and how it is read, and where the first ladder begins."""
    baseline = room.y + TITLE * CAPS
    told = (
        f"{design.name}, {design.sku}, on {design.sheet.size_name}. Print at 100 %, let it dry, look by daylight. "
        f"The line under a patch gives it: write it into {design.file}, or change the value that is there."
    )
    lines = broken(told, room.width, face.text)
    first = baseline + 6.4
    nodes = [words("Colour strip", room.x, baseline, face.strong, TITLE)]
    nodes += [words(text, room.x, first + n * LEADING, face.text) for n, text in enumerate(lines)]
    return tuple(nodes), first + len(lines) * LEADING + 1.2


def _captions(line: _Line, left: float, y: float, width: float, boxes: list[Box], face: Type) -> Nodes:
    nodes: list[Node] = []
    if line.name:
        nodes.append(ruled(left, y, left + width, y))
        nodes.append(words(line.name, left, y + 1.9 + HEADING * 0.85 * CAPS, face.strong, HEADING * 0.85))
    for rung, box in zip(line.rungs, boxes, strict=True):
        nodes += _caption(rung, box, face)
    return tuple(nodes)


def _caption(rung: Rung, box: Box, face: Type) -> Iterator[Node]:
    """The step, with a dot where it is the design's own, and the line that gives it."""
    baseline = box.bottom + _UNDER_PATCH
    x = box.x
    if rung.is_own:
        yield filled_outline(circle(x + 0.8, baseline - SMALL * 0.36, 0.8))
        x += 2.6
    yield words(rung.step, x, baseline, face.strong, SMALL)
    for n, text in enumerate(_told(rung, box.width, face), 1):
        yield words(text, box.x, baseline + n * _SMALL_LEADING, face.text, SMALL)


def _sheet(
    design: Design, page: StripPage, window: Box, scenes: dict[int, Scene]
) -> tuple[Sheet, tuple[Scene, ...]]:
    bed = bed_of(design)
    return _laid(design, bed, page, window), tuple(scenes[id(patch.rung.design)] for patch in page.patches)


def _laid(design: Design, bed: Bed, page: StripPage, window: Box) -> Sheet:
    """Each patch as a slot that shows the window of its face."""
    size = page.patches[0].box.size
    return Sheet(
        size=bed.size,
        size_name=design.sheet.size_name,
        title=" · ".join((design.name, design.sku, "colour strip")),
        arrangement=Grid(1, len(page.patches), size, turned=False),
        cuts=0,
        gutter=0.0,
        slots=tuple(_slot(patch.box, window) for patch in page.patches),
        printable=bed.printable,
        marks=page.nodes,
        left_out=(),
        copies=1,
        correction=bed.correction,
    )


def _slot(box: Box, window: Box) -> Slot:
    to_sheet = Affine.move(box.x - window.x, box.y - window.y)
    return Slot(box, (box,), Sides.all(0.0), (), to_sheet, turned=False)
