"""Two edges compared, place by place: where the eye tells their colours apart, and for how long it does not."""

import numpy as np
from numpy.typing import NDArray

from padspec.base.colour import Floats, lab_from_srgb
from padspec.base.difference import ciede2000

#: Side by side, colours further apart than this by CIEDE2000 are seen as two (common practice).
DIFFERENT = 5.0

Span = tuple[float, float]
Flags = NDArray[np.bool_]


def differences(one: Floats, other: Floats) -> Floats:
    """CIEDE2000 between two arrays of sRGB colours (channels 0 to 1, last axis), to a millionth."""
    return np.round(ciede2000(lab_from_srgb(one), lab_from_srgb(other)), 6)


def different(distances: Floats) -> Flags:
    """Where the two are told apart."""
    return np.asarray(distances > DIFFERENT)


def spans(flags: Flags, bounds: Floats) -> tuple[Span, ...]:
    """The unbroken stretches where a flag is set; `bounds` are the places between the flags, one more than these.

    >>> spans(np.array([True, True, False, True]), np.array([0.0, 1.0, 2.0, 3.0, 4.5]))
    ((0.0, 2.0), (3.0, 4.5))
    """
    edged = np.concatenate([[False], flags, [False]]).astype(int)
    starts, ends = np.flatnonzero(np.diff(edged) == 1), np.flatnonzero(np.diff(edged) == -1)
    return tuple((float(bounds[a]), float(bounds[b])) for a, b in zip(starts, ends, strict=True))


def taken_by(stretches: tuple[Span, ...]) -> float:
    """Their lengths added up."""
    return sum(end - start for start, end in stretches)


def longest(stretches: tuple[Span, ...]) -> float:
    """The length of the longest; 0 where there is none."""
    return max((end - start for start, end in stretches), default=0.0)
