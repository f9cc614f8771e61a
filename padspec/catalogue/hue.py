"""Which family of hues a colour belongs to, in a word: what people look for, and never by the colour alone."""

from padspec.base.colour import Colour
from padspec.base.mixing import lch

#: Families by the OKLCh hue at which each begins, in degrees (common practice, no published source: hues were
#: named on swatches of the strength that grounds have).
_FAMILIES = (
    (8.0, "red"),
    (42.0, "orange"),
    (75.0, "yellow"),
    (115.0, "green"),
    (175.0, "teal"),
    (220.0, "blue"),
    (285.0, "purple"),
    (335.0, "pink"),
)
NEUTRAL = "neutral"
FAMILIES = (*(name for _, name in _FAMILIES), NEUTRAL)
#: Below this OKLab chroma nobody calls a colour by a hue.
_LEAST_CHROMA = 0.012


def family(colour: Colour) -> str:
    """The family of a colour.

    >>> family(Colour.from_hex("#dfe9f2")), family(Colour.from_hex("#f3f2f0"))
    ('blue', 'neutral')
    """
    _, chroma, hue = lch(colour)
    if chroma < _LEAST_CHROMA:
        return NEUTRAL
    begun = [name for start, name in _FAMILIES if hue % 360 >= start]
    return begun[-1] if begun else _FAMILIES[-1][1]


def hue_order(colour: Colour) -> tuple[int, float, float]:
    """What colours are sorted by: families round the circle, hue, from light to dark; neutral ones last."""
    lightness, _, hue = lch(colour)
    name = family(colour)
    round_ = 0.0 if name == NEUTRAL else round((hue - _FAMILIES[0][0]) % 360, 6)
    return FAMILIES.index(name), round_, round(-lightness, 6)
