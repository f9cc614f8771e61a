"""The slots of an arrangement: where each leaf lies, and how much bleed really prints around it.

Bleed stops at the printable area, and half-way to a neighbour. Where grids of unequal width meet, an edge may be
shared with a neighbour in part only; the free part then gets its bleed as a strip of its own.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from padspec.base.geometry import Affine, Box, Sides
from padspec.base.numbers import EPSILON
from padspec.sheet.arrangement import Placed
from padspec.sheet.sheet import EDGES, Edge, Slot

#: Two edges nearer than this, in mm, touch.
_TOUCH = 1e-6


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A part of an edge, from `start` to `end` along it, the bleed that prints there, and whether it is shared."""

    start: float
    end: float
    depth: float
    shared: bool


def make_slots(grids: tuple[Placed, ...], gutter: float, printable: Box, wish: float) -> tuple[Slot, ...]:
    """Every slot, grids first to last, in each row by row. `wish` is the bleed where there is room for it."""
    places = [(place.grid.turned, place.grid.item, trim) for place in grids for trim in _trims(place, gutter)]
    trims = [trim for _, _, trim in places]
    return tuple(_slot(trim, turned, item, trims, printable, wish) for turned, item, trim in places)


def _trims(place: Placed, gutter: float) -> Iterator[Box]:
    grid, box = place.grid, place.box
    for row in range(grid.rows):
        for column in range(grid.columns):
            x = box.x + column * (grid.face.width + gutter)
            y = box.y + row * (grid.face.height + gutter)
            yield Box(x, y, grid.face.width, grid.face.height)


def _slot(trim: Box, turned: bool, item: int, trims: list[Box], printable: Box, wish: float) -> Slot:
    stretches = {edge: _stretches(edge, trim, trims, printable, wish) for edge in EDGES}
    depths = {edge: min(part.depth for part in parts) for edge, parts in stretches.items()}
    bleed = Sides(depths["left"], depths["head"], depths["right"], depths["foot"])
    strips = tuple(
        _strip_of(edge, trim, part, bleed, trims)
        for edge, parts in stretches.items()
        for part in parts
        if part.depth > depths[edge] + EPSILON
    )
    return Slot(
        trim=trim,
        printed=(*_around(trim, bleed, trims), *strips),
        bleed=bleed,
        butted=tuple(edge for edge, parts in stretches.items() if any(p.shared for p in parts)),
        transform=(Affine.quarter_turn(trim.width) if turned else Affine()).then(Affine.move(trim.x, trim.y)),
        turned=turned,
        item=item,
    )


def _stretches(edge: Edge, trim: Box, trims: list[Box], printable: Box, wish: float) -> list[_Stretch]:
    """An edge in parts: those that look at a neighbour nearby, and the free rest between them."""
    start, end = _along(edge, trim)
    free = max(min(wish, _gap(edge, trim, printable, outwards=False)), 0.0)
    parts: list[_Stretch] = []
    for other in trims:
        gap = _gap(edge, trim, other, outwards=True)
        low, high = _along(edge, other)
        if other is trim or gap < -_TOUCH or min(high, end) - max(low, start) <= _TOUCH:
            continue
        if gap > _TOUCH and gap / 2 >= free:  # far enough off to be of no account
            continue
        # A neighbour's own bleed prints past its ends, so that no strip has to reach into it.
        parts.append(_Stretch(max(low - wish, start), min(high + wish, end), max(gap / 2, 0.0), gap <= _TOUCH))
    return _filled(sorted(parts, key=lambda part: part.start), start, end, free)


def _filled(parts: list[_Stretch], start: float, end: float, free: float) -> list[_Stretch]:
    found, at = [], start
    for part in parts:
        if part.start > at + _TOUCH:
            found.append(_Stretch(at, part.start, free, shared=False))
        found.append(part)
        at = max(at, part.end)
    if end > at + _TOUCH:
        found.append(_Stretch(at, end, free, shared=False))
    return found


def _along(edge: Edge, box: Box) -> tuple[float, float]:
    return (box.y, box.bottom) if edge in ("left", "right") else (box.x, box.right)


def _gap(edge: Edge, trim: Box, other: Box, outwards: bool) -> float:
    """From an edge outwards to the facing edge of a neighbour, or to the same edge of an area around it."""
    match edge:
        case "left":
            return trim.x - (other.right if outwards else other.x)
        case "head":
            return trim.y - (other.bottom if outwards else other.y)
        case "right":
            return (other.x if outwards else other.right) - trim.right
        case "foot":
            return (other.y if outwards else other.bottom) - trim.bottom


def _around(trim: Box, bleed: Sides, trims: list[Box]) -> tuple[Box, ...]:
    """The leaf with its bleed: one box, or without the corners where another leaf touches one."""
    whole = trim.shrink(Sides(-bleed.left, -bleed.top, -bleed.right, -bleed.bottom))
    if not any(whole.overlaps(other, _TOUCH) for other in trims if other is not trim):
        return (whole,)
    across = trim.shrink(Sides(-bleed.left, 0, -bleed.right, 0))
    return across, trim.shrink(Sides(0, -bleed.top, 0, -bleed.bottom))


def _strip_of(edge: Edge, trim: Box, part: _Stretch, bleed: Sides, trims: list[Box]) -> Box:
    """The strip of a stretch, round the corners of the leaf where that prints on no other leaf."""
    longer = _strip(edge, trim, _round_the_corner(edge, trim, part, bleed))
    return _strip(edge, trim, part) if any(longer.overlaps(other, _TOUCH) for other in trims) else longer


def _round_the_corner(edge: Edge, trim: Box, part: _Stretch, bleed: Sides) -> _Stretch:
    """A stretch that ends with its edge reaches on as far as the bleed beyond that end."""
    start, end = _along(edge, trim)
    before, after = (bleed.top, bleed.bottom) if edge in ("left", "right") else (bleed.left, bleed.right)
    return replace(
        part,
        start=part.start - (before if part.start <= start + _TOUCH else 0.0),
        end=part.end + (after if part.end >= end - _TOUCH else 0.0),
    )


def _strip(edge: Edge, trim: Box, part: _Stretch) -> Box:
    length = part.end - part.start
    match edge:
        case "left":
            return Box(trim.x - part.depth, part.start, part.depth, length)
        case "head":
            return Box(part.start, trim.y - part.depth, length, part.depth)
        case "right":
            return Box(trim.right, part.start, part.depth, length)
        case "foot":
            return Box(part.start, trim.bottom, length, part.depth)
