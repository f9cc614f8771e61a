"""How likely it is that a leaf shows a white sliver, or a panel off its middle, and the bleed that prevents it.

Print and cut are off independently, both as measured from the edges of the paper. The printer shifts the whole
print (placement: across and down, independently) and turns it a little about the middle of the edge that leads
(skew: so much at the far end of the sheet); each cut is straight and off for itself. Every error is normal and
its ± limit held 95 % of the time: σ = limit ÷ 1.96.

What is reckoned how. The turn is small: cos θ = 1 and sin θ = θ, which is wrong by less than 0.001 mm on A3 with
1 mm of skew. Given the turn, an edge is off by a normal error (tail by erfc, closed form); two edges across from
each other share the shift (bivariate normal); the two directions are independent. The turn is then averaged over
by quadrature, a rule for each sign and finer where an edge begins to fail: at an edge it bends at 0, so that
a Gauss–Hermite rule across 0 would be good to three digits only. Off-centre is bivariate normal as it stands.
Chances are good to 1e-10 within this model; how true the limits are matters far more.

More bleed never raises a chance; nor does a larger limit. A larger error never lowers one that is under a half (a
convex set of half the probability or more loses by added noise: Ehrhard's inequality); a hopeless edge may gain.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import fsum, hypot, inf, sqrt

import numpy as np

from padspec.base.colour import Floats
from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON
from padspec.sheet.chances.normal_tails import both_beyond, mean_over_normal, tail

#: A normal error stays within this many σ 95 % of the time.
SIGMAS = 1.96
#: What `bleed_for_chance` counts in, mm.
_STEPS_A_MM = 10


@dataclass(frozen=True, slots=True)
class Errors:
    """± limits in mm, held 95 % of the time: the print's place, its skew at the far end of the sheet, each cut."""

    placement: float
    skew: float
    cutter: float


@dataclass(frozen=True, slots=True)
class Edges:
    """The bleed in mm that prints past each edge of a leaf; None where a butted neighbour shares the cut, which
    shows its ground rather than white.
    """

    left: float | None
    head: float | None
    right: float | None
    foot: float | None

    @classmethod
    def all(cls, bleed: float) -> "Edges":
        """The same on every edge."""
        return cls(bleed, bleed, bleed, bleed)

    def with_bleed(self, bleed: float) -> "Edges":
        """The same bleed on every edge that is cut free."""
        edges = (self.left, self.head, self.right, self.foot)
        return Edges(*(None if edge is None else bleed for edge in edges))


@dataclass(frozen=True, slots=True)
class OverLeaves:
    """What a sheet's leaves come to: the greatest chance, which leaf has it (the first, from 0), and the mean."""

    worst: float
    worst_leaf: int
    mean: float


@dataclass(frozen=True, slots=True)
class _Edge:
    """One edge as the print's turn sees it: its `room` before white shows, and how far its two ends are moved
    across it (mm a radian; positive eats up room).
    """

    room: float
    ends: tuple[float, float]

    def slack(self, turns: Floats) -> Floats:
        """What is left of its room at each turn, where the end that is worse off tells."""
        return np.asarray(self.room - np.maximum(self.ends[0] * turns, self.ends[1] * turns), np.float64)


def chance_of_sliver(leaf: Box, sheet: Size, bleed: Edges, errors: Errors, limit: float = 0.0) -> float:
    """The chance, as a share of one, that a leaf shows white wider than `limit` mm at any of its edges.

    `leaf` is its trim on the sheet as that is fed, its head leading. Exact where all errors are 0.
    """
    across, down = _pairs(leaf, sheet, bleed, limit)
    placement, turn, cutter = _sigmas(errors, sheet)
    if hypot(placement, cutter) == 0:
        return _by_turn_alone(across + down, turn)

    def at(turns: Floats) -> Floats:
        one, other = (_white(pair, turns, placement, cutter) for pair in (across, down))
        return one + other - one * other

    if turn == 0:
        return float(at(np.zeros(1))[0])
    breaks = _where_edges_fail(across + down, turn, hypot(placement, cutter))
    return mean_over_normal(lambda z: at(z * turn), breaks)


def chance_off_centre(leaf: Box, sheet: Size, errors: Errors, limit: float) -> float:
    """The chance that print and leaf have their middles more than `limit` mm (0 or more) apart, across or down."""
    x, y = leaf.centre
    placement, turn, cutter = _sigmas(errors, sheet)
    # The middle of a leaf is the mean of two cuts.
    own = hypot(placement, cutter / sqrt(2))
    moved = (-y * turn, (x - sheet.width / 2) * turn)
    spread = tuple(hypot(own, by) for by in moved)
    reach = [np.array([limit / s]) for s in spread if s > 0]
    either = sum(2 * float(tail(z)[0]) for z in reach)
    if len(reach) < 2:
        return either
    correlation = moved[0] * moved[1] / (spread[0] * spread[1])
    both = sum(float(both_beyond(reach[0], reach[1], sign * correlation)[0]) for sign in (1, -1))
    return either - 2 * both


def over_leaves(chances: Sequence[float]) -> OverLeaves:
    """The chances of the leaves of one sheet, at least one, in short.

    >>> over_leaves([0.01, 0.03, 0.02])
    OverLeaves(worst=0.03, worst_leaf=1, mean=0.02)
    """
    worst = max(chances)
    return OverLeaves(worst, chances.index(worst), round(fsum(chances) / len(chances), 15))


def bleed_for_chance(
    leaf: Box, sheet: Size, free: Edges, errors: Errors, limit: float = 0.0, chance: float = 0.01
) -> float:
    """The least bleed, the same on all `free` edges (those not None) and in tenths of a mm, that brings the chance
    of a sliver down to `chance`, which must be above 0 (else ValueError).
    """
    if not chance > 0:
        raise ValueError(f"no bleed brings the chance down to {chance}")

    def passes(tenths: int) -> bool:
        bleed = free.with_bleed(tenths / _STEPS_A_MM)
        return chance_of_sliver(leaf, sheet, bleed, errors, limit) <= chance * (1 + EPSILON)

    most = 1
    while not passes(most):
        most *= 2
    least = 0
    while least < most:
        middle = (least + most) // 2
        least, most = (least, middle) if passes(middle) else (middle + 1, most)
    return most / _STEPS_A_MM


def _sigmas(errors: Errors, sheet: Size) -> tuple[float, float, float]:
    """σ of the placement in mm, of the turn in radians and of a cut in mm; what is below EPSILON is none."""
    limits = (errors.placement, errors.skew, errors.cutter)
    placement, skew, cutter = (limit / SIGMAS if limit > EPSILON else 0.0 for limit in limits)
    return placement, skew / sheet.height, cutter


def _pairs(leaf: Box, sheet: Size, bleed: Edges, limit: float) -> tuple[tuple[_Edge, ...], tuple[_Edge, ...]]:
    """The edges that can show white, those across from each other together.

    Turned by θ, a point moves by −θ × its way down and by θ × its way right, as seen from the pivot.
    """
    top, bottom = leaf.y, leaf.bottom
    west, east = leaf.x - sheet.width / 2, leaf.right - sheet.width / 2
    across = ((bleed.left, (-top, -bottom)), (bleed.right, (top, bottom)))
    down = ((bleed.head, (west, east)), (bleed.foot, (-west, -east)))
    one, other = (
        tuple(_Edge(depth + limit, ends) for depth, ends in pair if depth is not None) for pair in (across, down)
    )
    return one, other


def _white(pair: tuple[_Edge, ...], turns: Floats, placement: float, cutter: float) -> Floats:
    """The chance that any of these edges shows white, at each turn."""
    spread = hypot(placement, cutter)
    rooms = [edge.slack(turns) / spread for edge in pair]
    either = np.asarray(sum((tail(room) for room in rooms), np.zeros_like(turns)), np.float64)
    if len(rooms) < 2:
        return either
    # A shift that bares one edge covers the other.
    return either - both_beyond(rooms[0], rooms[1], -((placement / spread) ** 2))


def _where_edges_fail(edges: tuple[_Edge, ...], turn: float, spread: float) -> Iterator[float]:
    """Around which turns, in σ, an end goes from clear to white, where it does so in less than half a σ."""
    for edge in edges:
        for arm in (edge.ends[0] * turn, edge.ends[1] * turn):
            if abs(arm) > 2 * spread:
                middle, width = edge.room / arm, spread / abs(arm)
                yield from (middle + step * width for step in (-6, -4, -2, 0, 2, 4, 6))


def _by_turn_alone(edges: tuple[_Edge, ...], turn: float) -> float:
    """The same where nothing but the turn is left to chance: closed form, 0 or 1 without a turn."""
    if turn == 0:
        return float(any(edge.room < -EPSILON for edge in edges))
    return sum(_half(edges, sign * turn) for sign in (1, -1))


def _half(edges: tuple[_Edge, ...], turn: float) -> float:
    """The chance of white together with a turn to this side: the turns clear of it are one interval, in σ."""
    low, high = 0.0, inf
    for edge in edges:
        arm = max(end * turn for end in edge.ends)
        if arm > 0:
            high = min(high, edge.room / arm)
        elif edge.room < 0:
            low = max(low, edge.room / arm if arm < 0 else inf)
    if low >= high:
        return 0.5
    beyond = tail(np.array([low, high]))
    return 0.5 - float(beyond[0]) + float(beyond[1])
