"""The slots of an arrangement: where each leaf lies, and how much bleed really prints around it.

Bleed stops at the printable area, and half-way to a neighbour. Where grids of unequal width meet, an edge may be
shared with a neighbour in part only; the free part then gets its bleed as a strip of its own.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

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


@dataclass(frozen=True, slots=True)
class _Plain:
    """A leaf before its strips: where it lies, its edges in stretches, and the bleed along each whole edge."""

    trim: Box
    stretches: dict[Edge, list[_Stretch]]
    bleed: Sides
    around: tuple[Box, ...]


def make_slots(grids: tuple[Placed, ...], gutter: float, printable: Box, wish: float) -> tuple[Slot, ...]:
    """Every slot, grids first to last, in each row by row. `wish` is the bleed where there is room for it."""
    places = [(place.grid.turned, place.grid.item, trim) for place in grids for trim in _trims(place, gutter)]
    trims = [trim for _, _, trim in places]
    plain = [_plain(trim, trims, printable, wish) for trim in trims]
    return tuple(_slot(leaf, turned, item, plain) for (turned, item, _), leaf in zip(places, plain, strict=True))


def _trims(place: Placed, gutter: float) -> Iterator[Box]:
    grid, box = place.grid, place.box
    for row in range(grid.rows):
        for column in range(grid.columns):
            x = box.x + column * (grid.face.width + gutter)
            y = box.y + row * (grid.face.height + gutter)
            yield Box(x, y, grid.face.width, grid.face.height)


def _plain(trim: Box, trims: list[Box], printable: Box, wish: float) -> _Plain:
    stretches = {edge: _stretches(edge, trim, trims, printable, wish) for edge in EDGES}
    left, head, right, foot = (min(part.depth for part in stretches[edge]) for edge in EDGES)
    bleed = Sides(left, head, right, foot)
    return _Plain(trim, stretches, bleed, _around(trim, bleed, trims))


def _slot(leaf: _Plain, turned: bool, item: int, plain: list[_Plain]) -> Slot:
    trim, bleed = leaf.trim, leaf.bleed
    depths = dict(zip(EDGES, (bleed.left, bleed.top, bleed.right, bleed.bottom), strict=True))
    others = [other for other in plain if other is not leaf]
    strips = tuple(
        strip
        for edge, parts in leaf.stretches.items()
        for part in parts
        if part.depth > depths[edge] + EPSILON
        for strip in _strips(edge, leaf, part, others)
    )
    return Slot(
        trim=trim,
        printed=(*leaf.around, *strips),
        bleed=bleed,
        butted=tuple(edge for edge, parts in leaf.stretches.items() if any(p.shared for p in parts)),
        transform=(Affine.quarter_turn(trim.width) if turned else Affine()).then(Affine.move(trim.x, trim.y)),
        turned=turned,
        item=item,
    )


def _stretches(edge: Edge, trim: Box, trims: list[Box], printable: Box, wish: float) -> list[_Stretch]:
    """An edge in parts: those that look at a neighbour nearby, the nearest telling, and the free rest."""
    start, end = _along(edge, trim)
    free = max(min(wish, _gap(edge, trim, printable, outwards=False)), 0.0)
    near: list[_Stretch] = []
    for other in trims:
        gap = _gap(edge, trim, other, outwards=True)
        low, high = (min(max(at, start), end) for at in _along(edge, other))
        if other is trim or gap < -_TOUCH or high - low <= _TOUCH:
            continue
        if gap <= _TOUCH or gap / 2 < free:  # one farther off is of no account
            near.append(_Stretch(low, high, max(gap / 2, 0.0), gap <= _TOUCH))
    ends = sorted({start, end, *(at for part in near for at in (part.start, part.end))})
    return [_least(low, high, near, free) for low, high in pairwise(ends) if high - low > _TOUCH]


def _least(low: float, high: float, near: list[_Stretch], free: float) -> _Stretch:
    """One part of an edge, as its nearest neighbour leaves it."""
    covering = [part for part in near if part.start <= low + _TOUCH and part.end >= high - _TOUCH]
    nearest = min(covering, key=lambda part: part.depth, default=_Stretch(low, high, free, shared=False))
    return replace(nearest, start=low, end=high)


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


def _strips(edge: Edge, leaf: _Plain, part: _Stretch, others: list[_Plain]) -> Iterator[Box]:
    """The strips of a stretch, less where a neighbour's own bleed prints; round the corners of the leaf where that
    prints on no other.
    """
    for free in _clear_of(edge, leaf.trim, part, others):
        longer = _strip(edge, leaf.trim, _round_the_corner(edge, leaf.trim, free, leaf.bleed))
        hit = any(longer.overlaps(other.trim, _TOUCH) for other in others)
        yield _strip(edge, leaf.trim, free) if hit else longer


def _clear_of(edge: Edge, trim: Box, part: _Stretch, others: list[_Plain]) -> list[_Stretch]:
    """What is left of a stretch where the bleed of other leaves takes its part of the paper."""
    left = [part]
    for box in (box for other in others for box in other.around):
        low, high = _along(edge, box)
        for piece in tuple(left):
            if _strip(edge, trim, piece).overlaps(box, _TOUCH):
                left.remove(piece)
                left += [replace(piece, end=low)] if low > piece.start + _TOUCH else []
                left += [replace(piece, start=high)] if high < piece.end - _TOUCH else []
    return sorted(left, key=lambda piece: piece.start)


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
