"""How thick a finished pad is, from what lies in it. Millimetres."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Thickness:
    """The leaves together, the board, and the magnets behind it."""

    leaves: float
    board: float
    magnet: float

    @property
    def stacked(self) -> float:
        """As it stands in the clamp, before magnets go on: n × caliper + board.

        >>> round(Thickness(50 * 0.12, 22 * 0.0254, 0).stacked, 4)
        6.5588
        """
        return self.leaves + self.board

    @property
    def whole(self) -> float:
        """As it goes into its sleeve."""
        return self.stacked + self.magnet
