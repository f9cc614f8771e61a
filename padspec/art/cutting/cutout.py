"""The picture freed from the even ground that it was drawn, scanned or photographed on."""

from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from padspec.art.cutting.backdrop import backdrop
from padspec.art.cutting.chambers import gap_reach, lost_share
from padspec.art.cutting.fading import FOLLOWED, fading
from padspec.art.cutting.ground import Flood, flooded
from padspec.art.cutting.soften import Fade, fade_of, soften
from padspec.art.cutting.unmix import unmixed
from padspec.art.pixels import Bytes, Pixels
from padspec.art.trim import VISIBLE_ALPHA
from padspec.base.colour import WHITE, Colour

#: A picture with more than this share of pixels that let something through is cut out already.
VISIBLE_SHARE = 0.001
_LETS_THROUGH = 250
#: A flood that takes more than this took the picture itself for its ground.
MOST_REMOVED = 0.98


#: A picture that fades along less than this share of its edge has an edge.
LEAST_SOFT = 0.02
#: One that fades along more than this share of its edge, but too faintly to be un-mixed, is left alone.
MOST_FAINT = 0.25
#: An outline is told to leak if more than this share of what it encloses would go.
MOST_LOST = 0.5


@dataclass(frozen=True, slots=True)
class Doubt:
    """What makes a cut doubtful, with its measure.

    `soft-edge`: the picture fades along this `share` (0 to 1) of its edge, over more than `reach` pixels, too
    faintly or too roughly to be measured. `leaked`: this share of what its outlines enclose is taken for ground,
    through openings wider than `reach` pixels, the widest that are bridged.
    """

    kind: Literal["soft-edge", "leaked"]
    share: float
    reach: int


@dataclass(frozen=True, slots=True)
class Cutout:
    """The picture after the attempt, and what was measured.

    `border_spread` is the OKLab distance from the border's own smooth colour within which 85 % of the
    border lies (even up to `EVEN_LIMIT`), `border_colour` its median, `removed` the share of the
    picture's opacity that went. Where the border is transparent, spread is 0 and the colour white.
    `doubt` says what cannot be right about the cut, or would not be: then the method is `none`.
    """

    pixels: Pixels
    method: Literal["transparency", "even", "none"]
    border_spread: float
    border_colour: Colour
    removed: float
    doubt: Doubt | None = None


def cut_out(pixels: Pixels, mode: Literal["auto", "even", "none"]) -> Cutout:
    """Free the picture from an even ground.

    `auto` leaves a picture alone that has transparency, else removes an even ground, else does nothing;
    `even` removes an even ground from a partly transparent picture too; `none` only measures.
    The method of the result says what was done: `none` after `even` means that the border is uneven, or
    that ground and picture cannot be told apart; after `auto` also that the picture fades too faintly.
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
    leak = _leak(flood)
    if round(float(flood.ground.mean()), 9) > MOST_REMOVED:
        return replace(untouched, doubt=leak)
    fade, faint = _fade(pixels.rgba, flood)
    if faint and mode == "auto":
        return replace(untouched, doubt=faint)
    freed = unmixed(pixels.rgba, flood.ground, flood.held, flood.backdrop)
    if fade:
        soften(freed, pixels.rgba, fade, flood.backdrop.grain)
    removed = _removed(pixels.rgba, freed)
    return Cutout(Pixels(freed), "even", behind.spread, behind.colour, removed, faint or leak)


def _fade(rgba: Bytes, flood: Flood) -> tuple[Fade | None, Doubt | None]:
    """The fade that the picture ends in, if it does, and the doubt whether it can be un-mixed."""
    found = fading(flood.ground, flood.held, flood.steps, flood.shrink)
    if found.share < LEAST_SOFT:
        return None, None
    fade = fade_of(rgba, found, flood.backdrop)
    if fade.trusted:
        return fade, None
    if found.share <= MOST_FAINT:
        return None, None
    return fade, Doubt("soft-edge", found.share, FOLLOWED * found.cell)


def _leak(flood: Flood) -> Doubt | None:
    lost = lost_share(flood.ground)
    return Doubt("leaked", lost, 2 * gap_reach(flood.ground)) if lost > MOST_LOST else None


def _removed(before: Bytes, after: Bytes) -> float:
    whole, left = (int(rgba[..., 3].sum(dtype=np.int64)) for rgba in (before, after))
    return round(1 - left / max(whole, 1), 6)


def _shows_through(rgba: Bytes) -> bool:
    return bool(round(float((rgba[..., 3] < _LETS_THROUGH).mean()), 9) > VISIBLE_SHARE)
