"""Cuts in, numbered badges out: where on the cut diagram each number stands, and the thin line that leads to it.

All in millimetres of the drawing. A badge stands outside the sheet where its cut runs out of it, level cuts on the
right and upright ones at the foot if that way is free; badges too near each other are spread along their side.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

from padspec.base.geometry import Affine, Box, mapped_box
from padspec.sheet.cutting.plan import TOUCH, Cut
from padspec.sheet.sheet import Edge, Sheet

#: Badges are this large, this far from the paper, and no nearer to each other.
RADIUS, REACH, APART = 2.0, 5.4, 4.5
#: A leader runs straight out of the paper before it slants.
_STRAIGHT = 1.3
#: Among the leaves badges keep this many times their radii apart; where they cannot, smaller sizes are tried.
_CLEAR, _SIZES = 1.1, 12


@dataclass(frozen=True, slots=True)
class Callout:
    """A cut's number in a circle around `centre`, and the points of the line from the cut's end to it.

    `side` is the side of the sheet that it stands on, None where it had to stand on the cut itself.
    """

    number: int
    side: Edge | None
    leader: tuple[tuple[float, float], ...]
    centre: tuple[float, float]
    radius: float


def side_of(cut: Cut, sheet: Sheet) -> Edge | None:
    """The side where a cut leaves the block of leaves, nothing lying before it; None where neither end does."""
    block = sheet.trim_box
    if cut.upright:
        return _first(("foot", cut.end >= block.bottom - TOUCH), ("head", cut.start <= block.y + TOUCH))
    return _first(("right", cut.end >= block.right - TOUCH), ("left", cut.start <= block.x + TOUCH))


def _first(*sides: tuple[Edge, bool]) -> Edge | None:
    return next((side for side, is_free in sides if is_free), None)


def callouts(cuts: Sequence[Cut], sheet: Sheet, to_drawing: Affine) -> tuple[Callout, ...]:
    """A badge for every cut, in the order of their numbers; `to_drawing` takes the sheet to the drawing."""
    paper = mapped_box(Box(0, 0, sheet.size.width, sheet.size.height), to_drawing)
    found: list[Callout] = []
    for side in ("foot", "head", "right", "left"):
        here = [cut for cut in cuts if side_of(cut, sheet) == side]
        found += _along(side, sorted(here, key=lambda cut: (cut.at, cut.number)), paper, to_drawing)
    found += _among_the_leaves([cut for cut in cuts if side_of(cut, sheet) is None], found, to_drawing)
    return tuple(sorted(found, key=lambda callout: callout.number))


def _along(side: Edge, cuts: list[Cut], paper: Box, to_drawing: Affine) -> list[Callout]:
    """The badges of one side, each as near to its cut as its neighbours let it."""
    upright = side in ("foot", "head")
    start, end = (paper.x, paper.right) if upright else (paper.y, paper.bottom)
    apart = min(APART, (end - start) / max(len(cuts), 1))
    radius = min(RADIUS, RADIUS / APART * apart)
    ends = [_end(cut, side, to_drawing) for cut in cuts]
    places = spread([x if upright else y for x, y in ends], apart, start, end)
    return [
        _callout(cut.number, side, tip, place, paper, radius)
        for cut, tip, place in zip(cuts, ends, places, strict=True)
    ]


def _end(cut: Cut, side: Edge, to_drawing: Affine) -> tuple[float, float]:
    along = cut.end if side in ("foot", "right") else cut.start
    return to_drawing.of(cut.at, along) if cut.upright else to_drawing.of(along, cut.at)


def _callout(
    number: int, side: Edge, tip: tuple[float, float], place: float, paper: Box, radius: float
) -> Callout:
    x, y = tip
    match side:
        case "foot":
            bend, centre = (x, paper.bottom + _STRAIGHT), (place, paper.bottom + REACH)
        case "head":
            bend, centre = (x, paper.y - _STRAIGHT), (place, paper.y - REACH)
        case "right":
            bend, centre = (paper.right + _STRAIGHT, y), (paper.right + REACH, place)
        case "left":
            bend, centre = (paper.x - _STRAIGHT, y), (paper.x - REACH, place)
    return Callout(number, side, (tip, bend, centre), centre, radius)


def _among_the_leaves(cuts: Sequence[Cut], outside: Sequence[Callout], to_drawing: Affine) -> list[Callout]:
    """Badges on the cuts themselves, all of one size: the largest of a few with which they keep clear."""
    found: list[Callout] = []
    for radius in (RADIUS * 0.85**smaller for smaller in range(_SIZES)):
        found = []
        for cut in cuts:
            found.append(_on_the_cut(cut, radius, (*outside, *found), to_drawing))
        if all(_is_clear(one, (*outside, *found[:place])) for place, one in enumerate(found)):
            break
    return found


def _on_the_cut(cut: Cut, radius: float, placed: Sequence[Callout], to_drawing: Affine) -> Callout:
    """On its own line, as near its start as no other badge stands; at its middle where there is no such place."""
    ends = ((cut.at, cut.start), (cut.at, cut.end)) if cut.upright else ((cut.start, cut.at), (cut.end, cut.at))
    (x, y), (far_x, far_y) = to_drawing.of(*ends[0]), to_drawing.of(*ends[1])
    length, step = max(far_x - x, far_y - y), radius / 8
    for place in (2 * radius + number * step for number in range(floor((length - 3 * radius) / step) + 1)):
        centre = (x, y + place) if cut.upright else (x + place, y)
        badge = Callout(cut.number, None, (), centre, radius)
        if _is_clear(badge, placed):
            return badge
    return Callout(cut.number, None, (), ((x + far_x) / 2, (y + far_y) / 2), radius)


def _is_clear(badge: Callout, others: Sequence[Callout]) -> bool:
    return all(_distance(badge.centre, other.centre) >= (badge.radius + other.radius) * _CLEAR for other in others)


def _distance(one: tuple[float, float], other: tuple[float, float]) -> float:
    return float(((one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2) ** 0.5)


def spread(wishes: Sequence[float], apart: float, start: float, end: float) -> list[float]:
    """Rising places at least `apart`, as near as can be to the wishes (least squares), between start and end.

    Groups that press on each other share their mean: isotonic regression by pooling neighbours.

    >>> spread([10.0, 11.0, 30.0], 4.0, 0.0, 40.0)
    [8.5, 12.5, 30.0]
    """
    groups: list[tuple[float, int]] = []
    for number, wish in enumerate(wishes):
        mean, count = wish - number * apart, 1
        while groups and groups[-1][0] > mean:
            before, many = groups.pop()
            mean, count = (before * many + mean * count) / (many + count), many + count
        groups.append((mean, count))
    flat = [mean for mean, count in groups for _ in range(count)]
    most = end - (len(flat) - 1) * apart
    return [round(min(max(mean, start), most) + number * apart, 9) for number, mean in enumerate(flat)]
