"""A four-sided mark around its middle, as checks and the crossings of gingham are."""

from dataclasses import dataclass

from padspec.compose.ground.half_plane import Point
from padspec.scene.outline import Outline, polygon


@dataclass(frozen=True, slots=True)
class Rhombus:
    """Two corners by their way from the middle; the others lie opposite."""

    one: Point
    other: Point

    @property
    def reach(self) -> float:
        """How far it stretches to any side at most."""
        return max(abs(part) for corner in (self.one, self.other) for part in corner)

    def at(self, x: float, y: float) -> Outline:
        """Its outline around a point."""
        (ax, ay), (bx, by) = self.one, self.other
        return polygon((x + ax, y + ay), (x + bx, y + by), (x - ax, y - ay), (x - bx, y - by))
