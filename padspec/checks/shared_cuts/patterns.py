"""What a ground alone would print, worked out from its pattern without drawing it, so that many can be tried."""

from dataclasses import dataclass
from math import cos, radians, sin, sqrt
from typing import assert_never

import numpy as np
from numpy.typing import NDArray

from padspec.base.colour import Floats
from padspec.base.geometry import Box, Size
from padspec.resolve.design import Ground, Pattern

#: Each cell is looked at in so many places each way.
_LOOKS = 3


@dataclass(frozen=True, slots=True)
class GroundPrint:
    """The print of a leaf that bears nothing but its ground; a pattern's middle is the middle of the trim."""

    ground: Ground
    trim: Size
    bleed: float

    def cells(self, box: Box, rows: int, columns: int) -> Floats:
        """The mean sRGB colour of each cell, shape (rows, columns, 3), from nine places in it."""
        y = _middles(box.y, box.bottom, rows * _LOOKS) - self.trim.height / 2
        x = _middles(box.x, box.right, columns * _LOOKS) - self.trim.width / 2
        flat = self.ground.colour.unit
        if self.ground.pattern is None:
            return np.broadcast_to(flat, (rows, columns, 3))
        inked = _inked(self.ground.pattern, x[None, :], y[:, None])
        share = inked.reshape(rows, _LOOKS, columns, _LOOKS).mean(axis=(1, 3))[..., None]
        return np.asarray(flat + share * (self.ground.pattern.colour.unit - flat))


def sizes_that_run_on(pattern: Pattern, trim: Size) -> tuple[float, ...]:
    """Sizes of which a whole number goes into the face's width or height, so that the pattern may meet itself
    across a cut: those from half to twice the present one, nearest first, to a ten-thousandth of a millimetre.
    """
    turn = radians(pattern.angle)
    match pattern.kind:
        case "stripes":
            lengths = [
                side * part for side in (trim.width, trim.height) for part in (abs(cos(turn)), abs(sin(turn)))
            ]
        case "dots" if round(pattern.angle, 6) % 30:
            # The middles of dots turned like this meet no line along an edge at equal distances.
            return ()
        case "dots":
            # Rows of dots are √3 ÷ 2 apart, and every second one stands as the first does.
            lengths = [side / part for side in (trim.width, trim.height) for part in (1.0, sqrt(3))]
        case _:
            assert_never(pattern.kind)
    found = {
        round(length / n, 4)
        for length in lengths
        for n in range(max(int(length / pattern.size / 2), 1), int(2 * length / pattern.size) + 1)
    }
    return _nearest_first([size for size in found if size > 0], pattern.size)


def sizes_out_of_step(pattern: Pattern) -> tuple[float, ...]:
    """Sizes in tenths of a millimetre from half to twice the present one, nearest first."""
    tenths = range(max(round(pattern.size * 5), 5), min(round(pattern.size * 20), 5000) + 1)
    return _nearest_first([n / 10 for n in tenths], pattern.size)


def _nearest_first(sizes: list[float], wish: float) -> tuple[float, ...]:
    return tuple(sorted(sizes, key=lambda size: (round(abs(size - wish), 6), size)))


def _middles(start: float, end: float, count: int) -> Floats:
    return start + (np.arange(count) + 0.5) * (end - start) / count


def _inked(pattern: Pattern, x: Floats, y: Floats) -> NDArray[np.bool_]:
    """Whether places, in mm from the pattern's middle, lie on a stripe or a dot."""
    turn = radians(pattern.angle)
    half = pattern.size * pattern.mark / 2
    along, down = x * cos(turn) + y * sin(turn), y * cos(turn) - x * sin(turn)
    match pattern.kind:
        case "stripes":
            return np.asarray(np.abs(_off(along, pattern.size)) <= half)
        case "dots":
            # A lattice of dots is two lattices of rectangles, one in the middles of the other.
            step = pattern.size * sqrt(3)
            even = np.hypot(_off(along, pattern.size), _off(down, step))
            odd = np.hypot(_off(along + pattern.size / 2, pattern.size), _off(down + step / 2, step))
            return np.asarray(np.minimum(even, odd) <= half)
        case _:
            assert_never(pattern.kind)


def _off(values: Floats, period: float) -> Floats:
    """How far from the nearest whole multiple."""
    return np.asarray(values - np.round(values / period) * period)
