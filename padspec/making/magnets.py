"""A pad and its magnets in, whether they hold it on steel out.

Straight off, a magnet holds area × pull; a pad on a door slides down before it comes off, and against sliding a
share of the pull holds (15 % to 25 % on smooth steel). What it must hold is the weight of a full pad times a
safety factor. Pull falls with all paint, paper or glue between: measured figures are worth more than these.
"""

from dataclasses import dataclass
from math import ceil

from padspec.base.numbers import EPSILON
from padspec.making.block import Block, magnet_weight
from padspec.resolve.design import Design

_SQUARE_CENTIMETRE = 100.0


@dataclass(frozen=True, slots=True)
class Hold:
    """Grams that the magnets of a pad hold straight off (`pull`) and against sliding (`slide`), the grams that it
    must hold (`needed`), whether the maker measured the pull, and how many magnets would do (`enough`; 0 where no
    number would: each weighs as much as it holds).
    """

    count: int
    area: float
    pull: float
    slide: float
    weight: float
    needed: float
    measured: bool
    enough: int

    @property
    def holds(self) -> bool:
        """Whether the pad stays up."""
        return self.slide >= self.needed - EPSILON


def hold_of(design: Design, block: Block) -> Hold | None:
    """How the magnets of a design hold it; None where it has none."""
    count, magnets = design.finish.magnets, design.studio.bench.magnets
    if not count:
        return None
    area = magnets.size.width * magnets.size.height / _SQUARE_CENTIMETRE
    each = area * magnets.pull * magnets.slide
    own = magnet_weight(design)
    bare = block.weight.value + block.weight.error - count * own
    gain = each - magnets.safety * own
    return Hold(
        count=count,
        area=count * area,
        pull=count * area * magnets.pull,
        slide=count * each,
        weight=block.weight.value,
        needed=magnets.safety * (block.weight.value + block.weight.error),
        measured=magnets.measured,
        enough=max(ceil(magnets.safety * bare / gain - EPSILON), 1) if gain > 0 else 0,
    )


def fit_on_back(design: Design) -> bool:
    """Whether the magnets of a design find room on its back, side by side in one of their two directions."""
    size, count, trim = design.studio.bench.magnets.size, design.finish.magnets, design.trim
    return any(
        int(trim.width // one.width) * int(trim.height // one.height) >= count for one in (size, size.turned())
    )
