"""The picture freed from the even ground that it was drawn, scanned or photographed on."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from padspec.art.cutting.backdrop import backdrop
from padspec.art.cutting.chambers import lost_share
from padspec.art.cutting.ground import flooded
from padspec.art.cutting.unmix import unmixed
from padspec.art.pixels import Bytes, Pixels
from padspec.art.trim import VISIBLE_ALPHA
from padspec.base.colour import WHITE, Colour

#: A picture with more than this share of pixels that let something through is cut out already.
VISIBLE_SHARE = 0.001
_LETS_THROUGH = 250
#: A flood that takes more than this took the picture itself for its ground.
MOST_REMOVED = 0.98


@dataclass(frozen=True, slots=True)
class Cutout:
    """The picture after the attempt, and what was measured.

    `border_spread` is the OKLab distance from the border's own smooth colour within which 85 % of the
    border lies (even up to `EVEN_LIMIT`), `border_colour` its median, `removed` the share of the
    picture's opacity that went. Where the border is transparent, spread is 0 and the colour white.
    """

    pixels: Pixels
    method: Literal["transparency", "even", "none"]
    border_spread: float
    border_colour: Colour
    removed: float


def cut_out(pixels: Pixels, mode: Literal["auto", "even", "none"]) -> Cutout:
    """Free the picture from an even ground.

    `auto` leaves a picture alone that has transparency, else removes an even ground, else does nothing;
    `even` removes an even ground from a partly transparent picture too; `none` only measures.
    The method of the result says what was done: `none` after `even` means that the border is uneven, or
    that ground and picture cannot be told apart.
    """
    behind = backdrop(pixels.rgba, VISIBLE_ALPHA)
    if behind is None:
        return Cutout(pixels, "none" if mode == "none" else "transparency", 0.0, WHITE, 0.0)
    untouched = Cutout(pixels, "none", behind.spread, behind.colour, 0.0)
    if mode == "none":
        return untouched
    if mode == "auto" and _shows_through(pixels.rgba):
        return Cutout(pixels, "transparency", behind.spread, behind.colour, 0.0)
    if not behind.is_even:
        return untouched
    flood = flooded(pixels.rgba, behind)
    ground = flood.ground
    if round(float(ground.mean()), 9) > MOST_REMOVED:
        return untouched
    import time

    t = time.time()
    print("lost", lost_share(ground), time.time() - t)
    freed = unmixed(pixels.rgba, ground, flood.held, flood.backdrop)
    before, after = (int(rgba[..., 3].sum(dtype=np.int64)) for rgba in (pixels.rgba, freed))
    return Cutout(Pixels(freed), "even", behind.spread, behind.colour, round(1 - after / max(before, 1), 6))


def _shows_through(rgba: Bytes) -> bool:
    return bool(round(float((rgba[..., 3] < _LETS_THROUGH).mean()), 9) > VISIBLE_SHARE)
