"""Cuts in, offcuts out: clean paper that comes off in the order of the cutting and could become something."""

from collections.abc import Iterator, Sequence
from math import floor

from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON
from padspec.resolve.studio import Offcut
from padspec.scene.nodes import Shape
from padspec.scene.outline import bounds
from padspec.sheet.cutting.carry_out import Waste, carry_out
from padspec.sheet.cutting.plan import Cut, OffcutFound
from padspec.sheet.sheet import Sheet

#: Clean paper keeps this far from any ink, in mm, so that a cut a hair off shows none.
CLEAR = 0.5


def offcuts(cuts: Sequence[Cut], sheet: Sheet, things: tuple[Offcut, ...]) -> tuple[OffcutFound, ...]:
    """What could be made of the waste, in the order it comes off.

    Paper counts as clean outside all that is printed: bleed, crop marks, slug and scale bar. Each thing is told
    for itself, as if it were the only one made, in the clean rectangle of a piece that holds most of it; it may
    lie either way round.
    """
    ink = tuple(_ink(sheet))
    waste = carry_out(cuts, sheet).waste
    return tuple(found for piece in waste for thing in things for found in _made_of(piece, ink, thing))


def _ink(sheet: Sheet) -> Iterator[Box]:
    for slot in sheet.slots:
        yield from slot.printed
    for node in sheet.marks:
        if isinstance(node, Shape):
            yield bounds(node.outline).inset(-node.stroke.weight / 2 if node.stroke else 0.0)


def _made_of(piece: Waste, ink: tuple[Box, ...], thing: Offcut) -> Iterator[OffcutFound]:
    if not holds(piece.box.size, thing.size):
        return
    taken = [box.inset(-CLEAR) for box in ink if box.inset(-CLEAR).overlaps(piece.box)]
    least = min(thing.size.width, thing.size.height)
    best = _best(clean_rectangles(piece.box, taken, least), thing.size)
    if best is not None:
        yield OffcutFound(thing.name, thing.size, best, holds(best.size, thing.size), piece.cut)


def _best(rectangles: Iterator[Box], each: Size) -> Box | None:
    """The rectangle that holds most; of equals the largest, then the first from the left and the head."""
    found = [(holds(box.size, each), box) for box in rectangles]
    found = [(count, box) for count, box in found if count]
    if not found:
        return None
    return min(
        found,
        key=lambda one: (-one[0], -round(one[1].width * one[1].height, 6), round(one[1].x, 6), round(one[1].y, 6)),
    )[1]


def holds(room: Size, each: Size) -> int:
    """How many things of one size a rectangle holds, all of them the same way round.

    >>> holds(Size(100, 60), Size(30, 50)), holds(Size(29, 60), Size(30, 50))
    (4, 0)
    """
    return max(_in_rows(room, each), _in_rows(room, each.turned()))


def _in_rows(room: Size, each: Size) -> int:
    return floor(room.width / each.width + EPSILON) * floor(room.height / each.height + EPSILON)


def clean_rectangles(paper: Box, taken: Sequence[Box], least: float) -> Iterator[Box]:
    """Every rectangle of paper that touches nothing taken and cannot be made taller, at least `least` each way.

    For each pair of edges left and right, the heights that are free all the way across.
    """
    edges = sorted(
        {round(at, 9) for box in taken for at in (box.x, box.right) if paper.x < at < paper.right}
        | {paper.x, paper.right}
    )
    for place, left in enumerate(edges):
        for right in edges[place + 1 :]:
            if right - left < least - EPSILON:
                continue
            for top, foot in _free_heights(paper, taken, left, right):
                if foot - top >= least - EPSILON:
                    yield Box(left, top, right - left, foot - top)


def _free_heights(paper: Box, taken: Sequence[Box], left: float, right: float) -> Iterator[tuple[float, float]]:
    top = paper.y
    in_the_way = sorted((box.y, box.bottom) for box in taken if box.x < right - 1e-9 and box.right > left + 1e-9)
    for low, high in in_the_way:
        if low > top:
            yield top, min(low, paper.bottom)
        top = max(top, high)
    if top < paper.bottom:
        yield top, paper.bottom
