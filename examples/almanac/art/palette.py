"""The Kitchen Almanac colours, shared by every picture.

In: nothing. Out: named colours as `#rrggbb`, and `Tones`, the four or five
pots that one object is painted from. Each picture leads with one family and
borrows accents from the others, so that the set belongs together.
"""

from __future__ import annotations

from dataclasses import dataclass

CREAM = "#fdf4e0"
LINEN = "#f0dfbd"
STRAW = "#dcb877"
WICKER = "#b58446"
BARK = "#7b5236"
SOIL = "#523629"

BUTTER = "#fbe192"
HONEY = "#f3c44a"
MUSTARD = "#dd9d28"
OCHRE = "#b3701e"

BLUSH = "#f6c3ab"
CORAL = "#ec8062"
TOMATO = "#d6482f"
BRICK = "#a22f2a"
GARNET = "#741f2a"

PETAL = "#f3b3b9"
ROSE = "#dd6d84"
RASPBERRY = "#bd3a5c"
MULBERRY = "#86285a"
PLUM = "#5a2650"
AUBERGINE = "#3a1d3d"

MIST = "#d5dfbd"
SAGE = "#a0b98d"
FERN = "#719a67"
LEAF = "#4a7a52"
DEEP = "#2f5a45"
PINE = "#1e4038"

SKY = "#cfdfe2"
DUSTY = "#93b1bf"
DENIM = "#5f8aa2"
SLATE = "#3a6079"
INK = "#26405a"


@dataclass(frozen=True, slots=True)
class Tones:
    """The pots one object is painted from, darkest to lightest."""

    deep: str
    shade: str
    base: str
    light: str
    glint: str = CREAM


LEMON = Tones(OCHRE, MUSTARD, HONEY, BUTTER)
RED = Tones(GARNET, BRICK, TOMATO, CORAL, BLUSH)
RADISH = Tones(MULBERRY, RASPBERRY, ROSE, PETAL)
DAMSON = Tones(AUBERGINE, PLUM, "#7b3f73", "#a873a0", "#dcbcd3")
ENAMEL = Tones(SLATE, DENIM, DUSTY, SKY)
CARROT = Tones("#a84a1d", "#cf6a24", "#ea8d38", "#f7b268", BUTTER)
PEAR = Tones("#7f8a32", "#a9ad43", "#cdca63", "#e6e09a")
BASKET = Tones(BARK, WICKER, STRAW, LINEN)
WOOD = Tones(SOIL, BARK, WICKER, STRAW, LINEN)
PAPER = Tones("#c9a988", "#e2cba4", LINEN, CREAM, "#fffaf0")

LEAF_DARK = Tones(PINE, DEEP, LEAF, FERN, SAGE)
LEAF_MID = Tones(DEEP, LEAF, FERN, SAGE, MIST)
LEAF_PALE = Tones(LEAF, FERN, SAGE, MIST, CREAM)
LEAF_BLUE = Tones("#2a5560", "#46767a", "#6f9c96", "#a6c5b6", MIST)
