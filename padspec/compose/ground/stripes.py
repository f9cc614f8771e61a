"""Stripes at any angle: bands one `size` apart, centre to centre."""

from math import floor

from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON
from padspec.compose.ground.bands import bands
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.half_plane import Point, direction
from padspec.resolve.ground import Pattern

#: Stripes that turn so little from a leaf's edge run along it.
_ALONG = 1e-6


def stripes(pattern: Pattern, area: Box, trim: Size) -> tuple[Coat, ...]:
    """At angle 0 the bands stand upright; a positive angle turns them clockwise.

    A band's middle runs through the middle of the trim, so both sides end alike; out of step through its corner.
    """
    wave, through = _placed(pattern, trim)
    return (Coat(pattern.colour, bands(wave, pattern.mark, through, area)),)


def _placed(pattern: Pattern, trim: Size) -> tuple[Point, Point]:
    c, s = direction(pattern.angle)
    middle = (trim.width / 2, trim.height / 2)
    counts = (c * trim.width / pattern.size, s * trim.height / pattern.size)
    match pattern.phase:
        case "centred":
            return (c / pattern.size, s / pattern.size), middle
        case "run-on":
            across, upright = (0.0 if abs(count) < _ALONG else _whole(count) for count in counts)
            if across == upright == 0:
                # Stripes wider than the leaf: one of them, where the leaf holds more of it.
                wide = abs(counts[0]) >= abs(counts[1])
                across, upright = (1.0, 0.0) if wide else (0.0, 1.0)
            return (across / trim.width, upright / trim.height), middle
        case "out-of-step":
            across, upright = (0.0 if abs(count) < _ALONG else _half(count) for count in counts)
            return (across / trim.width, upright / trim.height), (0.0, 0.0)


def _whole(count: float) -> float:
    return float(floor(round(count, 9) + 0.5))


def _half(count: float) -> float:
    """The nearest half number.

    >>> _half(7.9), _half(-0.2)
    (7.5, -0.5)
    """
    return floor(count + EPSILON) + 0.5
