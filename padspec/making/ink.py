"""What ink a face takes, as pages of a cartridge's stated yield and as money: an estimate, and labelled as one.

The yield on a cartridge's box is counted in pages that cover about 5 % of A4 with each ink (the suite of
ISO/IEC 24712 that is printed by ISO/IEC 24711; the 5 % are industry's description, not the standard's number).
Without a press profile the inks are guessed from the screen's colours by K = 1 − max(R, G, B),
C = (1 − R − K) ÷ (1 − K) and so on, which knows nothing of a printer's own ways: good to a factor of two.
Coverage is a number to nine digits; from there on all is decimal to 28 digits, whatever the caller's own context.
"""

from dataclasses import dataclass
from decimal import Context, Decimal, localcontext
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from padspec.resolve.studio import Cartridge, Ink

#: A4 in mm², and the share of it that a page of the stated yield covers with one ink.
A4_AREA = Decimal(210 * 297)
YIELD_COVER = Decimal("0.05")
#: Pixels looked at together, so that a large picture takes no more memory than a small one.
_BAND = 1 << 18
_STEPS = 255
_EXACT = Context(prec=28)
_GUESSED = "Estimate: inks guessed from the screen's colours, good to a factor of two."
_BY_PROFILE = "Estimate: coverage by the press profile, cartridges by their stated yield at 5 % of A4."


@dataclass(frozen=True, slots=True)
class Coverage:
    """The mean of each ink over an area, as a share of one; together up to 4. `by_profile` says that a press
    profile separated them.
    """

    cyan: float
    magenta: float
    yellow: float
    black: float
    by_profile: bool = False

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
    """Cyan, magenta, yellow and black in pages of the stated yield; `cost` is None where a price is not stated.

    Nothing is rounded for display. `text` says what kind of estimate it is.
    """

    pages: tuple[Decimal, Decimal, Decimal, Decimal]
    cost: Decimal | None
    text: str


@dataclass(frozen=True, slots=True)
class _Tally:
    """For each value of a pixel's brightest channel: how many pixels have it, and their sums of R, G and B."""

    pixels: NDArray[np.int64]
    sums: NDArray[np.int64]


def coverage(pixels: NDArray[np.uint8]) -> Coverage:
    """The mean of each ink over sRGB pixels, shape (height, width, 3), not empty (else ValueError).

    By the naive formula, in whole numbers until the last step, so that every machine finds the same.

    >>> coverage(np.array([[[0x33, 0x66, 0x99]]], np.uint8)).inks
    (0.666666667, 0.333333333, 0.0, 0.4)
    """
    if pixels.ndim != 3 or pixels.shape[2] != 3 or not pixels.size:
        raise ValueError(f"pixels of height × width × 3 are wanted, not {pixels.shape}")
    height, width, _ = pixels.shape
    tally = _tally(pixels, max(1, _BAND // width))
    dark = Fraction(int(((_STEPS - np.arange(_STEPS + 1)) * tally.pixels).sum()), _STEPS)
    totals = (*(_tint(tally.pixels, sums) for sums in tally.sums), dark)
    cyan, magenta, yellow, black = (round(float(total / (height * width)), 9) for total in totals)
    return Coverage(cyan, magenta, yellow, black)


def ink_use(cover: Coverage, area: float, ink: Ink) -> InkUse:
    """What a face of an area in mm² takes: Σ area × cover ÷ (A4 × 5 %), × price ÷ yield, and the allowance on top.

    The cost is given where every ink that is used has its price.
    """
    with localcontext(_EXACT):
        share = _decimal(area) / (A4_AREA * YIELD_COVER) * (1 + _decimal(ink.allowance))
        cyan, magenta, yellow, black = (_decimal(part) * share for part in cover.inks)
        pages = (cyan, magenta, yellow, black)
        cost = _cost(pages, (ink.cyan, ink.magenta, ink.yellow, ink.black))
    return InkUse(pages, cost, _BY_PROFILE if cover.by_profile else _GUESSED)


def saved(without_panel: InkUse, with_panel: InkUse) -> InkUse:
    """What the white panel saves: a face whose panel were ground, less the face as it is."""
    with localcontext(_EXACT):
        a, b, c, d = (one - other for one, other in zip(without_panel.pages, with_panel.pages, strict=True))
        bare, real = without_panel.cost, with_panel.cost
        cost = None if bare is None or real is None else bare - real
    return InkUse((a, b, c, d), cost, with_panel.text)


def _tally(pixels: NDArray[np.uint8], rows: int) -> _Tally:
    counts, sums = np.zeros(_STEPS + 1, np.int64), np.zeros((3, _STEPS + 1), np.int64)
    for top in range(0, len(pixels), rows):
        channels = np.ascontiguousarray(pixels[top : top + rows].reshape(-1, 3).T)
        brightest = np.maximum(np.maximum(channels[0], channels[1]), channels[2])
        counts += np.bincount(brightest, minlength=_STEPS + 1)
        for channel in range(3):
            # Whole numbers below 2⁵³ are exact as floats.
            weighed = np.bincount(brightest, weights=channels[channel], minlength=_STEPS + 1)
            sums[channel] += weighed.astype(np.int64)
    return _Tally(counts, sums)


def _tint(pixels: NDArray[np.int64], sums: NDArray[np.int64]) -> Fraction:
    """Σ (m − R) ÷ m over the pixels, m being the brightest channel of each; black itself has none."""
    return sum(
        (Fraction(int(pixels[m]) * m - int(sums[m]), m) for m in range(1, _STEPS + 1)),
        Fraction(0),
    )


def _decimal(value: float) -> Decimal:
    return Decimal(str(round(value, 9)))


def _cost(pages: tuple[Decimal, ...], cartridges: tuple[Cartridge | None, ...]) -> Decimal | None:
    total = Decimal(0)
    for used, cartridge in zip(pages, cartridges, strict=True):
        if used and cartridge is None:
            return None
        if cartridge is not None:
            total += used * cartridge.price / cartridge.pages
    return total
