"""The smallest leaf on which something fits that does not fit now, found by trying."""

from bisect import bisect_left
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from math import floor

from padspec.base.geometry import Size
from padspec.base.numbers import EPSILON, mm_text
from padspec.compose.compose import compose
from padspec.compose.face import Face
from padspec.resolve.design import Design
from padspec.resolve.resized import resized

#: How much larger a leaf is tried, in mm each way.
_MOST = 240
#: No leaf is made larger than this.
_LARGEST = 1000.0

Fits = Callable[[Face], bool]


def least_trim(design: Design, fits: Fits) -> Size | None:
    """The trim nearest to the design's on whose face all fits: taller, else wider, else larger both ways.

    Whole millimetres are tried; None where none up to 240 mm larger does.
    """
    found = [(first, way) for way in ((0, 1), (1, 0), (1, 1)) if (first := _first(design, fits, way)) is not None]
    return _larger(design.trim, *min(found)) if found else None


def leaf_text(trim: Size) -> str:
    """A trim as it is said in a remedy."""
    return f"{mm_text(trim.width)} × {mm_text(trim.height)}"


def _first(design: Design, fits: Fits, way: tuple[int, int]) -> int | None:
    """How many millimetres larger, across or upright as `way` says, a leaf must be; None where none will do."""
    steps = range(1, _MOST + 1)
    first = bisect_left(steps, True, key=lambda n: fits(_face(design, _larger(design.trim, n, way))))
    return steps[first] if first < len(steps) else None


def _larger(trim: Size, by: int, way: tuple[int, int]) -> Size:
    """A trim larger by so many steps, to whole millimetres."""
    across, upright = way
    return Size(_stepped(trim.width, by * across), _stepped(trim.height, by * upright))


def _stepped(side: float, by: int) -> float:
    return min(floor(side + EPSILON) + by, _LARGEST) if by else side


# Blocks that repeat each ask for the same leaves.
@lru_cache(maxsize=32)
def _face(design: Design, trim: Size) -> Face:
    """The face on another trim, its pattern left out: that is slow to draw and takes no room."""
    bare = replace(design, ground=replace(design.ground, pattern=None))
    return compose(resized(bare, trim))
