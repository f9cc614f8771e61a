"""How many strokes an arrangement takes, the stack kept together inside each grid.

Four strokes square the outside. Inside, a line that butted leaves share is cut once, a gutter twice; a piece that
is shorter than the one it was parted from is trimmed once more.
"""

from typing import assert_never

from padspec.base.geometry import Size
from padspec.base.numbers import EPSILON
from padspec.sheet.arrangement import Arrangement, Grid, Split, extent


def strokes(arrangement: Arrangement, gutter: float) -> int:
    """Strokes of the whole plan.

    >>> face = Size(90, 190)
    >>> strokes(Grid(2, 3, face, False), 0), strokes(Grid(2, 3, face, False), 4)
    (7, 10)
    """
    return 4 + _inside(arrangement, extent(arrangement, gutter), gutter)


def a_line(gutter: float) -> int:
    """Strokes between two neighbours."""
    return 2 if gutter > 0 else 1


def _inside(arrangement: Arrangement, region: Size, gutter: float) -> int:
    """Strokes inside a region whose four edges are cut already; it begins where the arrangement does."""
    own = extent(arrangement, gutter)
    trims = (region.width > own.width + EPSILON) + (region.height > own.height + EPSILON)
    match arrangement:
        case Grid(rows, columns):
            return trims + a_line(gutter) * (rows - 1 + columns - 1)
        case Split(upright, one, other):
            a, b = extent(one, gutter), extent(other, gutter)
            if upright:
                parts = (Size(a.width, own.height), Size(b.width, own.height))
            else:
                parts = (Size(own.width, a.height), Size(own.width, b.height))
            inner = _inside(one, parts[0], gutter) + _inside(other, parts[1], gutter)
            return trims + a_line(gutter) + inner
        case _:
            assert_never(arrangement)
