"""How many faces a sheet holds: every grid that fits, and which of them is best.

In each direction n faces fit where n × face + (n − 1) × gutter + 2 × least bleed ≤ printable length.
"""

from dataclasses import dataclass
from math import floor

from padspec.base.geometry import Sides, Size
from padspec.base.numbers import EPSILON
from padspec.resolve.design import Design
from padspec.sheet.sheet import Grid


@dataclass(frozen=True, slots=True)
class Bed:
    """A sheet in one orientation: its size as drawn and the margins that the printer cannot reach."""

    size: Size
    margins: Sides
    turned: bool

    @property
    def printable(self) -> Size:
        """What the printer reaches."""
        return Size(
            self.size.width - self.margins.left - self.margins.right,
            self.size.height - self.margins.top - self.margins.bottom,
        )


def beds(design: Design) -> tuple[Bed, Bed]:
    """The sheet upright and turned.

    Drivers differ in which way they turn a page, so the turned sheet takes the larger margin of each pair on
    both sides: right whichever way it goes.
    """
    margins, size = design.studio.margins, design.sheet.size
    upright, across = max(margins.top, margins.bottom), max(margins.left, margins.right)
    return Bed(size, margins, False), Bed(size.turned(), Sides(upright, across, upright, across), True)


def count(length: float, face: float, gutter: float, least_bleed: float) -> int:
    """How many faces fit along one length.

    >>> count(288.6, 90, 4, 1.5), count(201.6, 190, 4, 1.5), count(201.6, 90, 0, 0)
    (3, 1, 2)
    """
    return max(floor((length - 2 * least_bleed + gutter) / (face + gutter) + EPSILON), 0)


def taken(n: int, face: float, gutter: float) -> float:
    """The length that n faces with their gutters take, without bleed."""
    return n * face + max(n - 1, 0) * gutter


def cut_count(rows: int, columns: int, gutter: float) -> int:
    """Strokes that free every leaf while the stack is kept together: shared lines are cut once."""
    return (rows + 1) + (columns + 1) if gutter == 0 else 2 * rows + 2 * columns


def grids(design: Design) -> tuple[tuple[Grid, float], ...]:
    """The fullest grid of each orientation of sheet and face, with the least margin it leaves in mm."""
    found = []
    wish = design.sheet
    for bed in beds(design):
        for face_turned in (False, True):
            face = design.trim.turned() if face_turned else design.trim
            columns = count(bed.printable.width, face.width, wish.gutter, wish.least_bleed)
            rows = count(bed.printable.height, face.height, wish.gutter, wish.least_bleed)
            if rows and columns:
                spare = min(
                    bed.printable.width - taken(columns, face.width, wish.gutter),
                    bed.printable.height - taken(rows, face.height, wish.gutter),
                )
                cuts = cut_count(rows, columns, wish.gutter)
                found.append((Grid(rows, columns, bed.turned, face_turned, cuts), spare / 2))
    return tuple(found)


def best_grid(design: Design) -> Grid | None:
    """Most faces, then fewest cuts, then the widest margin, then sheet upright, then face upright."""

    def rank(candidate: tuple[Grid, float]) -> tuple[int, int, float, bool, bool]:
        grid, margin = candidate
        return -grid.n_up, grid.cuts, -round(margin, 6), grid.sheet_turned, grid.face_turned

    found = sorted(grids(design), key=rank)
    return found[0][0] if found else None


def largest_trims(design: Design) -> tuple[Size, ...]:
    """The largest face that would fit once, for each orientation of the sheet, in the face's own orientation."""
    least = design.sheet.least_bleed
    sizes = []
    for bed in beds(design):
        sizes.append(Size(bed.printable.width - 2 * least, bed.printable.height - 2 * least))
    return tuple(size for size in sizes if size.width > 0 and size.height > 0)
