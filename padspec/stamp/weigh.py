"""How thin the lines of an artwork are: the drawn thing itself is opened by discs, and what does not hold one is
thin.

The least weight for rubber and for a simple print is 0.25 mm (common practice, no published source).
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.base.geometry import Box, bounded_ppi
from padspec.draw.png import rasterise
from padspec.stamp.artwork import Artwork

LEAST_WEIGHT = 0.25
#: Weights that are tried, heaviest first, in mm.
_STEPS = (0.25, 0.2, 0.15, 0.1, 0.05)
#: Corners are cut by a disc as well: so much of the ink may go before a part counts as thin.
_CORNERS = 0.04
_PPI = 1200.0
_INK = 128

Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Thin:
    """A part with lines under the least weight: what share of its ink lies in them, and how heavy they are,
    about.
    """

    part: str
    share: float
    weight: float


def thin_parts(made: Artwork, pdf: bytes) -> tuple[Thin, ...]:
    """The parts with lines thinner than 0.25 mm."""
    ppi = bounded_ppi(made.scene.size, _PPI)
    ink = rasterise(pdf, ppi)[..., 0] < _INK
    found = []
    for part in made.parts:
        own = _cut(ink, part.box, ppi / 25.4)
        share = lost(own, LEAST_WEIGHT, ppi)
        if share > _CORNERS:
            weight = next((step for step in _STEPS if lost(own, step, ppi) <= _CORNERS), 0.0)
            found.append(Thin(part.name, share, weight))
    return tuple(found)


def lost(ink: Mask, weight: float, ppi: float) -> float:
    """The share of ink that no disc as wide as this fits into."""
    total = int(ink.sum())
    # A disc of odd width in pixels, no wider than the weight.
    reach = max(int((weight / 25.4 * ppi - 1) / 2), 0)
    if not total or not reach:
        return 0.0
    offsets = [
        (dy, dx)
        for dy in range(-reach, reach + 1)
        for dx in range(-reach, reach + 1)
        if dy * dy + dx * dx <= reach * reach + reach / 2
    ]
    held = np.ones_like(ink)
    padded = np.pad(ink, reach)
    for offset in offsets:
        held &= _shifted(padded, offset, reach, ink.shape)
    opened = np.zeros_like(ink)
    padded = np.pad(held, reach)
    for offset in offsets:
        opened |= _shifted(padded, offset, reach, ink.shape)
    return float((ink & ~opened).sum() / total)


def _shifted(padded: Mask, offset: tuple[int, int], reach: int, shape: tuple[int, ...]) -> Mask:
    top, left = reach + offset[0], reach + offset[1]
    return padded[top : top + shape[0], left : left + shape[1]]


def _cut(ink: Mask, box: Box, scale: float) -> Mask:
    left, top = int(box.x * scale), int(box.y * scale)
    return ink[top : int(box.bottom * scale) + 2, left : int(box.right * scale) + 2]
