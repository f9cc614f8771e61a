"""A design in, its block out: how thick and how heavy one pad is, each with how far it may be off.

Thickness is leaves × caliper + board + magnet (ISO 534: caliper is grammage × bulk), weight is area × grammage and
volume × density; the adhesive, about a gram, is left out. What a delivery is off, it is off in every sheet, so the
paper's error counts whole; paper and board are off independently of each other, so their errors join by root of
squares.
"""

from dataclasses import dataclass
from math import hypot

from padspec.resolve.design import Design

_SQUARE_METRE, _CUBIC_CENTIMETRE = 1e6, 1e3


@dataclass(frozen=True, slots=True)
class Measure:
    """A figure and the ± limit that it may be off by, in the same unit."""

    value: float
    error: float

    def times(self, number: int) -> "Measure":
        """Of so many alike, from one delivery: off all the same way.

        >>> Measure(6.6, 0.5).times(10)
        Measure(value=66.0, error=5.0)
        """
        return Measure(self.value * number, self.error * number)


@dataclass(frozen=True, slots=True)
class Block:
    """One pad: `thickness` as it goes into a sleeve, `stacked` as it stands in the clamp without magnets (mm), and
    `weight` (g).
    """

    thickness: Measure
    stacked: Measure
    weight: Measure


def block_of(design: Design) -> Block:
    """The block of a design."""
    studio, bench, thick = design.studio, design.studio.bench, design.finish.thickness
    paper, board = studio.stock.tolerance, bench.board.tolerance
    area = design.trim.width * design.trim.height
    leaves = design.leaves * area * studio.stock.grammage / _SQUARE_METRE
    back = area * thick.board * bench.board.density / _CUBIC_CENTIMETRE
    magnets = design.finish.magnets * magnet_weight(design)
    off = hypot(thick.leaves * paper, thick.board * board)
    return Block(
        thickness=Measure(thick.whole, off),
        stacked=Measure(thick.stacked, off),
        weight=Measure(leaves + back + magnets, hypot(leaves * paper, back * board)),
    )


def magnet_weight(design: Design) -> float:
    """Grams of one magnet."""
    magnets = design.studio.bench.magnets
    return magnets.size.width * magnets.size.height * magnets.thickness * magnets.density / _CUBIC_CENTIMETRE
