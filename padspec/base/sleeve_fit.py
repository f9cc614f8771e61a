"""Whether a block slides into a bag that lies flat, and the largest that does. Plain geometry, in millimetres.

A bag W wide lying flat opens to a girth of 2 W, and a block w × t needs 2 (w + t): W ≥ w + t. Along, each face
covers the pad and half the thickness at the closed end: L ≥ h + t ÷ 2. The same is the bag makers' measuring rule:
width + depth, height + half the depth.
"""

from padspec.base.geometry import Size
from padspec.base.numbers import round_down

#: Sizes that are worked out are rounded down to this.
STEP = 0.5


def least_bag(pad: Size, thickness: float) -> Size:
    """The smallest bag that the block goes into, without any ease.

    >>> least_bag(Size(90, 190), 7.5)
    Size(width=97.5, height=193.75)
    """
    return Size(pad.width + thickness, pad.height + thickness / 2)


def largest_pad(bag: Size, thickness: float, ease: Size) -> Size:
    """The largest pad that slides into a bag with its ease, rounded down to half a millimetre; not positive where
    the block alone fills it.

    >>> largest_pad(Size(100, 205), 6.6, Size(3, 6))
    Size(width=90.0, height=195.5)
    """
    width, height = bag.width - thickness - ease.width, bag.height - thickness / 2 - ease.height
    return Size(round_down(width, STEP), round_down(height, STEP))
