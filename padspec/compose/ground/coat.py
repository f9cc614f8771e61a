"""What a kind of pattern hands back: coats of colour, each with its outlines, back to front."""

from typing import NamedTuple

import numpy as np

from padspec.base.colour import Colour, oklab_from_srgb, srgb_from_oklab
from padspec.scene.outline import Outline


class Coat(NamedTuple):
    """One colour and every outline that is filled with it.

    `compact` outlines are small marks of their own, which are left out as soon as their middle is hidden.
    """

    colour: Colour
    outlines: tuple[Outline, ...]
    compact: bool = False


def blend(one: Colour, other: Colour, share: float) -> Colour:
    """A colour this share of the way from one to another, mixed in OKLab.

    >>> blend(Colour(0, 0, 0), Colour(255, 255, 255), 0.5).hex
    '#636363'
    """
    start, end = oklab_from_srgb(one.unit), oklab_from_srgb(other.unit)
    return Colour.from_unit(srgb_from_oklab(np.asarray(start + (end - start) * share)))
