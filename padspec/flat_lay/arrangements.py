"""How the pads lie: slabs on the plan, undermost first, and the view that fits them into the frame."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import cos, degrees, radians, sin

from padspec.base.geometry import Box
from padspec.flat_lay.geometry import Point, Slab, View, seen_box
from padspec.flat_lay.light import CAST
from padspec.flat_lay.wish import LEAST_IN_FAN, MOST_IN_FAN, PadLook, Wish

#: How much of the frame the pads fill, across or down, whichever is more.
_FILL = {"single": 0.79, "stack": 0.80, "fan": 0.88}
#: The pile, undermost first: how each pad lies against the uppermost, as shares of its width, and its turn.
_PILE: tuple[tuple[float, float, float], ...] = ((0.030, 0.020, 5.5), (-0.035, 0.010, -3.5), (0.0, 0.0, 0.0))
#: The leaf beside the pile: its middle as shares of width and height, its turn, and how it lifts at the right.
_BESIDE, _BESIDE_TURN, _LIFT = (0.60, 0.10), 14.0, 4.0
#: The fan: degrees from pad to pad, and in all.
_STEP, _SPAN = 13.0, 60.0
#: How much of a pad's width is seen beside the next at its middle, how much of all, and what lean is too steep.
_SHOWN, _SHOWN_OF_ALL, _STEEPEST = 0.58, 2.6, 0.40


def arranged(pads: Sequence[PadLook], wish: Wish) -> tuple[Slab, ...]:
    """The slabs of an arrangement, undermost first. Raises ValueError where it needs another number of pads."""
    least, most = (LEAST_IN_FAN, MOST_IN_FAN) if wish.arrange == "fan" else (1, 1)
    if not least <= len(pads) <= most:
        raise ValueError(f"{wish.arrange} takes {least} to {most} pads, not {len(pads)}")
    match wish.arrange:
        case "single":
            slabs: tuple[Slab, ...] = (_flat(0, pads[0]),)
        case "stack":
            slabs = _stack(pads[0])
        case "fan":
            slabs = _fan(pads)
    return tuple(_turned(slab, wish.turn) for slab in slabs)


def fitted(slabs: Sequence[Slab], wish: Wish) -> View:
    """The view in which the slabs fill their part of the frame, with their shadow, in its middle."""
    box = _around(slabs)
    width, height = wish.frame
    scale = _FILL[wish.arrange] * min(width / box.width, height / box.height)
    x, y = box.centre
    return View(scale, (width / 2 - scale * x, height / 2 - scale * y))


def _around(slabs: Sequence[Slab]) -> Box:
    """All that is seen, and a third of the longest shadow: it weighs less than what casts it."""
    plain = View(1.0)
    box = seen_box(slabs[0], plain)
    for slab in slabs[1:]:
        box = box.joined(seen_box(slab, plain))
    top = max(max(slab.left, slab.right) + slab.thickness for slab in slabs)
    return Box(box.x, box.y, box.width + CAST[0] * top / 3, box.height + CAST[1] * top / 3)


def _flat(look: int, pad: PadLook) -> Slab:
    return Slab(look, pad.trim.width, pad.trim.height, pad.thickness, (0.0, 0.0))


def _stack(pad: PadLook) -> tuple[Slab, ...]:
    """A leaf on the table, its inner edge under a pile of three."""
    whole = _flat(0, pad)
    width, height = pad.trim.width, pad.trim.height
    x, y = _BESIDE if width <= height else (_BESIDE[1], _BESIDE[0])
    leaf = replace(
        whole, centre=(x * width, y * height), turn=_BESIDE_TURN, thickness=pad.caliper, right=_LIFT, leaf=True
    )
    pile = [
        replace(
            whole,
            centre=(across * width, down * width),
            turn=turn,
            left=place * pad.thickness,
            right=place * pad.thickness,
        )
        for place, (across, down, turn) in enumerate(_PILE)
    ]
    return (leaf, *pile)


def _fan(pads: Sequence[PadLook]) -> tuple[Slab, ...]:
    """Like cards in a hand: each leans on the one before, its right edge on the table."""
    shown = min(_SHOWN, _SHOWN_OF_ALL / (len(pads) - 1))
    step = radians(min(_STEP, _SPAN / (len(pads) - 1)))
    widest = max(pad.trim.width for pad in pads)
    tallest = max(pad.trim.height for pad in pads)
    # The heads, where the pictures are, lie on one circle; the middles of the tallest are as far apart as shown.
    reach = max(shown * widest / step, tallest / 2)
    angles = [0.0]
    for before, pad in pairwise(pads):
        # From left edge to left edge, so that a wide pad does not hide a narrow one before it.
        apart = shown * before.trim.width + (pad.trim.width - before.trim.width) / 2
        angles.append(angles[-1] + max(apart, shown * pad.trim.width) / reach)
    slabs = []
    for place, (pad, angle) in enumerate(zip(pads, angles, strict=True)):
        turn = angle - angles[-1] / 2
        out = reach + tallest / 2 - pad.trim.height / 2
        left = pads[place - 1].thickness / max(shown, _STEEPEST) if place else 0.0
        slabs.append(
            replace(_flat(place, pad), centre=(out * sin(turn), -out * cos(turn)), turn=degrees(turn), left=left)
        )
    return tuple(slabs)


def _turned(slab: Slab, turn: float) -> Slab:
    """The slab carried round the plan's origin."""
    return replace(slab, centre=_carried(slab.centre, turn), turn=slab.turn + turn)


def _carried(point: Point, turn: float) -> Point:
    c, s = cos(radians(turn)), sin(radians(turn))
    return c * point[0] - s * point[1], s * point[0] + c * point[1]
