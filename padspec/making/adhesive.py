"""A design in, what brushing its glue edge takes out: area, grams, and how long it dries.

Area is the glue edge's length × the height of the stack; a rate of grams a square metre comes from the studio
(150 to 250 g/m² wet for a coat is common practice, no published source).
"""

from dataclasses import dataclass

from padspec.making.block import Block
from padspec.resolve.design import Design

_SQUARE_METRE = 1e6


@dataclass(frozen=True, slots=True)
class Gluing:
    """For one pad: the `area` of the edge in mm² and the `grams` of wet adhesive for all coats."""

    area: float
    grams: float


def gluing_of(design: Design, block: Block) -> Gluing:
    """What one pad takes."""
    adhesive = design.studio.bench.adhesive
    edge = design.trim.width if design.studio.bench.glued_across else design.trim.height
    area = edge * block.stacked.value
    return Gluing(area, area * adhesive.rate * adhesive.coats / _SQUARE_METRE)


def drying_minutes(design: Design) -> float:
    """All the waiting at the clamp: between coats, and until the last has set."""
    adhesive = design.studio.bench.adhesive
    return (adhesive.coats - 1) * adhesive.dry_minutes + adhesive.set_minutes
