"""Amounts of ink, in the 255 steps that the conversion has: exact to hand on, the same on every machine."""

from dataclasses import dataclass
from typing import Literal

Ink = Literal["cyan", "magenta", "yellow", "black"]
#: The process inks in the order of every array here and of the operators of PDF.
INKS: tuple[Ink, ...] = ("cyan", "magenta", "yellow", "black")
STEPS = 255


@dataclass(frozen=True, slots=True, order=True)
class Inks:
    """Cyan, magenta, yellow and black, each 0 (none) to 255 (solid)."""

    cyan: int
    magenta: int
    yellow: int
    black: int

    @property
    def steps(self) -> tuple[int, int, int, int]:
        """The four amounts in steps."""
        return self.cyan, self.magenta, self.yellow, self.black

    @property
    def shares(self) -> tuple[float, float, float, float]:
        """The four amounts between 0 and 1."""
        return self.cyan / STEPS, self.magenta / STEPS, self.yellow / STEPS, self.black / STEPS

    @property
    def count(self) -> int:
        """How many inks are printed at all."""
        return sum(amount > 0 for amount in self.steps)

    @property
    def cover(self) -> float:
        """Total area coverage, 0 to 4 (400 %).

        >>> Inks(0, 102, 255, 51).cover
        1.6
        """
        return round(sum(self.shares), 9)

    @property
    def is_black_only(self) -> bool:
        """Whether black, and nothing else, is printed."""
        return self.black > 0 and self.cyan == self.magenta == self.yellow == 0


NO_INK = Inks(0, 0, 0, 0)
SOLID_BLACK = Inks(0, 0, 0, STEPS)
