"""What a finished sheet is: slots, printed bleed, marks and counts. A value; others make it and draw it."""

from dataclasses import dataclass
from functools import reduce

from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.scene.nodes import Node


@dataclass(frozen=True, slots=True)
class Slot:
    """One place of the n-up.

    `trim` is where the leaf lies on the sheet, `printed` that box with the bleed that really prints on
    each side (the face is clipped to it), `transform` takes face space to sheet space.
    """

    trim: Box
    printed: Box
    transform: Affine


@dataclass(frozen=True, slots=True)
class Grid:
    """How faces sit on a sheet: rows and columns, whether sheet and face are turned, and the cuts it takes."""

    rows: int
    columns: int
    sheet_turned: bool
    face_turned: bool
    cuts: int

    @property
    def n_up(self) -> int:
        """Faces a sheet."""
        return self.rows * self.columns


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet ready to be drawn. Millimetres from its top left corner, the sheet already turned.

    `left_out` names the marks that found no room; `outer_bleed` is what prints past the block of slots on
    each side.
    """

    size: Size
    size_name: str
    title: str
    grid: Grid
    gutter: float
    slots: tuple[Slot, ...]
    printable: Box
    outer_bleed: Sides
    inner_bleed: float
    marks: tuple[Node, ...]
    left_out: tuple[str, ...]
    copies: int

    @property
    def trim_box(self) -> Box:
        """The box around all slots' trims."""
        return reduce(Box.joined, (slot.trim for slot in self.slots))

    @property
    def bleed_box(self) -> Box:
        """The box around all that prints of the faces."""
        return reduce(Box.joined, (slot.printed for slot in self.slots))
