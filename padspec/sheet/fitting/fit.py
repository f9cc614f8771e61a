"""How many faces a sheet holds, and which arrangement of them is best.

In each direction n faces fit where n × face + (n − 1) × gutter + 2 × least bleed ≤ printable length. Faces are
tried upright and turned, then both mixed as far as straight cuts can part them. The paper is always taken as it is
fed: to turn the paper is to turn every face.
"""

from dataclasses import dataclass
from math import floor

from padspec.base.geometry import Size
from padspec.base.numbers import EPSILON
from padspec.resolve.design import Design
from padspec.sheet.arrangement import Arrangement, Grid, Split, extent, faces
from padspec.sheet.bed import Bed, bed_of
from padspec.sheet.fitting.guillotine import Piece, best_cutting
from padspec.sheet.fitting.strokes import strokes


@dataclass(frozen=True, slots=True)
class Fit:
    """An arrangement that fits, the cuts it takes, and the least that it leaves free in either direction."""

    arrangement: Arrangement
    cuts: int
    spare: float

    @property
    def n_up(self) -> int:
        """Faces a sheet."""
        return faces(self.arrangement)


def count(length: float, face: float, gutter: float, least_bleed: float) -> int:
    """How many faces fit along one length.

    >>> count(288.6, 90, 4, 1.5), count(201.6, 190, 4, 1.5), count(201.6, 90, 0, 0)
    (3, 1, 2)
    """
    return max(floor((length - 2 * least_bleed + gutter) / (face + gutter) + EPSILON), 0)


def room(bed: Bed, least_bleed: float) -> Size:
    """What trims and the gutters between them may take of a sheet."""
    return Size(bed.printable.width - 2 * least_bleed, bed.printable.height - 2 * least_bleed)


def fits(design: Design) -> tuple[Fit, ...]:
    """Every arrangement worth comparing: as many faces as fit, or just as many as were asked for."""
    wanted = design.sheet.n_up
    return _fullest(design) if wanted is None else _with(wanted, design)


def best_fit(design: Design) -> Fit | None:
    """Most faces, then fewest cuts, then the widest margin, then the face upright; None where none fits."""
    return min(fits(design), key=lambda fit: (-fit.n_up, fit.cuts, -round(fit.spare, 6)), default=None)


def _fullest(design: Design) -> tuple[Fit, ...]:
    """The fullest grid of each orientation of the face, and a mixture of both where that is better than either."""
    area, gutter = room(bed_of(design), design.sheet.least_bleed), design.sheet.gutter
    grids = [Grid(*_most(area, face, gutter), face, lies) for face, lies in _faces(design.trim)]
    found = [_fit(grid, area, gutter) for grid in grids if faces(grid)]
    best = best_cutting(area, (Piece(design.trim, 1.0),), gutter).arrangement if found else None
    if isinstance(best, Split):
        found.append(_fit(best, area, gutter))
    return tuple(found)


def _with(wanted: int, design: Design) -> tuple[Fit, ...]:
    """Every grid of just so many faces that fits; where there is none, the fullest mixture if it holds as many."""
    area, gutter = room(bed_of(design), design.sheet.least_bleed), design.sheet.gutter
    found = []
    for face, lies in _faces(design.trim):
        most_rows, most_columns = _most(area, face, gutter)
        for rows in range(1, most_rows + 1):
            if wanted % rows == 0 and wanted // rows <= most_columns:
                found.append(_fit(Grid(rows, wanted // rows, face, lies), area, gutter))
    return tuple(found) or tuple(fit for fit in _fullest(design) if fit.n_up == wanted)


def largest_grid(design: Design, n_up: int = 1) -> Grid | None:
    """The grid of so many faces that leaves most of the design's trim: what fits once it is made no larger than
    that. None where the margins leave nothing.
    """
    area, gutter = room(bed_of(design), design.sheet.least_bleed), design.sheet.gutter
    found = []
    for rows in (rows for rows in range(1, n_up + 1) if n_up % rows == 0):
        columns = n_up // rows
        width = (area.width - (columns - 1) * gutter) / columns
        height = (area.height - (rows - 1) * gutter) / rows
        for face, lies in _faces(design.trim):
            fitting = Size(min(width, face.width), min(height, face.height))
            if min(fitting.width, fitting.height) > 0:
                found.append(Grid(rows, columns, fitting, lies))
    return max(
        found, key=lambda grid: (round(grid.face.width * grid.face.height, 6), not grid.turned), default=None
    )


def _faces(trim: Size) -> tuple[tuple[Size, bool], tuple[Size, bool]]:
    return (trim, False), (trim.turned(), True)


def _most(area: Size, face: Size, gutter: float) -> tuple[int, int]:
    """Rows and columns."""
    return count(area.height, face.height, gutter, 0.0), count(area.width, face.width, gutter, 0.0)


def _fit(arrangement: Arrangement, area: Size, gutter: float) -> Fit:
    size = extent(arrangement, gutter)
    spare = min(area.width - size.width, area.height - size.height)
    return Fit(arrangement, strokes(arrangement, gutter), spare)
