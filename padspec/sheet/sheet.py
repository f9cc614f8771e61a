"""What a finished sheet is: slots, printed bleed, marks and counts. A value; others make it and draw it."""

from dataclasses import dataclass
from functools import reduce
from typing import Literal

from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.scene.nodes import Node
from padspec.sheet.arrangement import Arrangement, Placed, placed

Edge = Literal["left", "head", "right", "foot"]
EDGES: tuple[Edge, ...] = ("left", "head", "right", "foot")


@dataclass(frozen=True, slots=True)
class Slot:
    """One place of the n-up.

    `trim` is where the leaf lies on the sheet; `printed` what the face is clipped to: that box with the bleed
    that really prints along each whole edge (`bleed`), then strips of bleed along the free part of an edge that
    a neighbour shares in part. `butted` names the edges of the sheet's own left, head, right and foot that touch
    a neighbour, so that no bleed can print there. `transform` takes face space to sheet space, `turned` says
    that the face lies on its side, `item` which face of a gang sheet this is.
    """

    trim: Box
    printed: tuple[Box, ...]
    bleed: Sides
    butted: tuple[Edge, ...]
    transform: Affine
    turned: bool
    item: int = 0


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet ready to be drawn. Millimetres from the top left corner of the paper as it is fed.

    `cuts` counts the strokes of the whole plan, the stack kept together; `left_out` names the marks that found no
    room; `correction` takes a place on the paper to the place where it must be drawn, so that a printer that
    shifts and stretches lands it there.
    """

    size: Size
    size_name: str
    title: str
    arrangement: Arrangement
    cuts: int
    gutter: float
    slots: tuple[Slot, ...]
    printable: Box
    marks: tuple[Node, ...]
    left_out: tuple[str, ...]
    copies: int
    correction: Affine = Affine()

    @property
    def n_up(self) -> int:
        """Faces a sheet."""
        return len(self.slots)

    @property
    def grids(self) -> tuple[Placed, ...]:
        """The grids of the arrangement where they lie on the paper."""
        return placed(self.arrangement, self.trim_box.x, self.trim_box.y, self.gutter)

    @property
    def trim_box(self) -> Box:
        """The box around all slots' trims."""
        return reduce(Box.joined, (slot.trim for slot in self.slots))

    @property
    def bleed_box(self) -> Box:
        """The box around all that prints of the faces."""
        return reduce(Box.joined, (box for slot in self.slots for box in slot.printed))

    @property
    def least_bleed(self) -> float:
        """The least bleed that prints past any edge but those that neighbours share."""
        return min(
            (
                depth
                for slot in self.slots
                for edge, depth in zip(EDGES, _depths(slot.bleed), strict=True)
                if edge not in slot.butted
            ),
            default=0.0,
        )


def _depths(sides: Sides) -> tuple[float, float, float, float]:
    return sides.left, sides.top, sides.right, sides.bottom
