"""What ink a face takes, as pages of a cartridge's stated yield and as money: an estimate, and labelled as one.

The yield on a cartridge's box is counted in pages that cover about 5 % of A4 with each ink (the suite of
ISO/IEC 24712 that is printed by ISO/IEC 24711; the 5 % are industry's description, not the standard's number).
Without a press profile the inks are guessed from the screen's colours by K = 1 − max(R, G, B),
C = (1 − R − K) ÷ (1 − K) and so on, which knows nothing of a printer's own ways: good to a factor of two.
"""

from dataclasses import dataclass
from decimal import Decimal

import numpy as np
from numpy.typing import NDArray

from padspec.resolve.studio import Cartridge, Ink

#: A4 in mm², and the share of it that a page of the stated yield covers with one ink.
A4_AREA = 210.0 * 297.0
YIELD_COVER = Decimal("0.05")
_BAND = 256


@dataclass(frozen=True, slots=True)
class Coverage:
    """The mean of each ink over an area, as a share of one; together up to 4."""

    cyan: float
    magenta: float
    yellow: float
    black: float

    @property
    def sum(self) -> float:
        """All inks together."""
        return self.cyan + self.magenta + self.yellow + self.black

    @property
    def inks(self) -> tuple[float, float, float, float]:
        """Cyan, magenta, yellow, black."""
        return self.cyan, self.magenta, self.yellow, self.black


@dataclass(frozen=True, slots=True)
class InkUse:
    """What a face takes of each ink, in pages of the stated yield; `cost` is None where a price is not stated."""

    pages: tuple[Decimal, Decimal, Decimal, Decimal]
    cost: Decimal | None


def inks_of(pixels: NDArray[np.uint8]) -> NDArray[np.float64]:
    """Cyan, magenta, yellow and black of sRGB pixels, by the naive formula: the last axis grows from 3 to 4.

    >>> inks_of(np.array([[255, 0, 0], [0x33, 0x66, 0x99]], np.uint8)).round(4).tolist()
    [[0.0, 1.0, 1.0, 0.0], [0.6667, 0.3333, 0.0, 0.4]]
    """
    rgb = pixels.astype(np.float64) / 255
    light = rgb.max(axis=-1, keepdims=True)
    tints = np.where(light > 0, (light - rgb) / np.where(light > 0, light, 1.0), 0.0)
    return np.concatenate([tints, 1 - light], axis=-1)


def coverage(pixels: NDArray[np.uint8]) -> Coverage:
    """The mean of each ink over a picture of height × width × 3."""
    total = np.zeros(4)
    for top in range(0, len(pixels), _BAND):
        total += inks_of(pixels[top : top + _BAND]).sum(axis=(0, 1))
    cyan, magenta, yellow, black = (
        round(float(share), 9) for share in total / (pixels.shape[0] * pixels.shape[1])
    )
    return Coverage(cyan, magenta, yellow, black)


def ink_use(cover: Coverage, area: float, ink: Ink) -> InkUse:
    """What a face of an area in mm² takes: Σ area × cover ÷ (A4 × 5 %), × price ÷ yield, and the allowance on top.

    The cost is given where every ink that is used has its price; it is not rounded here.
    """
    share = Decimal(str(area)) / Decimal(str(A4_AREA)) / YIELD_COVER * (1 + Decimal(str(ink.allowance)))
    cyan, magenta, yellow, black = (Decimal(str(part)) * share for part in cover.inks)
    pages = (cyan, magenta, yellow, black)
    cartridges = (ink.cyan, ink.magenta, ink.yellow, ink.black)
    priced = [_cost(used, cartridge) for used, cartridge in zip(pages, cartridges, strict=True) if used]
    known = [cost for cost in priced if cost is not None]
    return InkUse(pages, sum(known, Decimal(0)) if len(known) == len(priced) else None)


def _cost(pages: Decimal, cartridge: Cartridge | None) -> Decimal | None:
    return None if cartridge is None else pages * cartridge.price / cartridge.pages


def saved(without_panel: InkUse, with_panel: InkUse) -> InkUse:
    """What the white panel saves: a face whose panel were ground, less the face as it is."""
    a, b, c, d = (one - other for one, other in zip(without_panel.pages, with_panel.pages, strict=True))
    known = without_panel.cost is not None and with_panel.cost is not None
    cost = without_panel.cost - with_panel.cost if known else None  # type: ignore[operator]
    return InkUse((a, b, c, d), cost)
