"""The colours a face needs, from the leading hue of its picture: a recipe, not a theme.

OKLab keeps equal lightness looking equal from hue to hue, so one set of numbers serves every picture. Where
a number alone would miss a contrast that the checks ask for, lightness is moved until there is room to spare.

`hue` is in degrees; None means a picture without colour, which gets the warm grey of uncoated paper.
"""

from padspec.base.colour import Colour
from padspec.base.contrast import contrast, luminance
from padspec.base.mixing import from_lch

ROLE_NAMES = ("paper", "ground", "pattern", "rule", "lettering")

PAPER_HUE = 75.0
NEUTRAL_SHARE = 0.3
#: The checks warn below 3 for squares and 4.5 for small lettering; these leave room to spare.
RULE_CONTRAST = 3.3
LETTERING_CONTRAST = 5.5


def ground(hue: float | None) -> Colour:
    """The background: pale, so that the picture and the paper lead."""
    return _tinted(0.925, 0.046, hue)


def pattern(hue: float | None) -> Colour:
    """What is drawn on the ground: a step deeper, quiet, never competing."""
    return _tinted(0.885, 0.064, hue)


def rule(hue: float | None, paper: Colour) -> Colour:
    """Rules and squares on the paper."""
    return _readable(0.62, 0.10, hue, (paper,), RULE_CONTRAST)


def lettering(hue: float | None, paper: Colour, behind: Colour) -> Colour:
    """The heading, legible on the paper and on the ground."""
    return _readable(0.44, 0.11, hue, (paper, behind), LETTERING_CONTRAST)


def _tinted(lightness: float, chroma: float, hue: float | None) -> Colour:
    if hue is None:
        return from_lch(lightness, chroma * NEUTRAL_SHARE, PAPER_HUE)
    return from_lch(lightness, chroma, hue)


def _readable(
    lightness: float, chroma: float, hue: float | None, under: tuple[Colour, ...], least: float
) -> Colour:
    """The colour nearest to the wish in lightness that keeps the least contrast on all that lies under it.

    On dark paper it is sought upwards, on light paper downwards; where even the end of the scale would miss
    the limit, that end is returned and the check will say so.
    """
    dark = max(float(luminance(colour.unit)) for colour in under) < 0.18
    start, step = (1 - lightness / 2, 0.01) if dark else (lightness, -0.01)
    for n in range(101):
        level = start + n * step
        if not 0 <= level <= 1:
            break
        colour = _tinted(level, chroma, hue)
        if min(contrast(colour, other) for other in under) >= least:
            return colour
    return _tinted(1.0 if dark else 0.0, 0.0, hue)
