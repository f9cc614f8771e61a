"""Colours as people see them whose sight lacks one kind of cone.

The matrices are those of G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, "A Physiologically-based Model for
Simulation of Color Vision Deficiency", IEEE Transactions on Visualization and Computer Graphics 15 (2009)
1291-1298, at severity 1.0; they work on linear sRGB and keep greys as they are.
"""

from typing import Literal, get_args

import numpy as np

from padspec.base.colour import Colour, Floats, linear_from_srgb, srgb_from_linear

#: Lacking the cones for long, middle or short waves: red-blind, green-blind and blue-blind sight.
Deficiency = Literal["protanopia", "deuteranopia", "tritanopia"]
DEFICIENCIES: tuple[Deficiency, ...] = get_args(Deficiency)

_SEEN_FROM_RGB: dict[Deficiency, Floats] = {
    "protanopia": np.array(
        [
            [0.152286, 1.052583, -0.204868],
            [0.114503, 0.786281, 0.099216],
            [-0.003882, -0.048116, 1.051998],
        ]
    ),
    "deuteranopia": np.array(
        [
            [0.367322, 0.860646, -0.227968],
            [0.280085, 0.672501, 0.047413],
            [-0.011820, 0.042940, 0.968881],
        ]
    ),
    "tritanopia": np.array(
        [
            [1.255528, -0.076749, -0.178779],
            [-0.078411, 0.930809, 0.147602],
            [0.004733, 0.691367, 0.303900],
        ]
    ),
}


def as_seen(rgb: Floats, deficiency: Deficiency) -> Floats:
    """sRGB channels between 0 and 1 (last axis) as seen with a deficiency.

    What the model moves out of sRGB is clipped, as a screen would show it.
    """
    seen = linear_from_srgb(rgb) @ _SEEN_FROM_RGB[deficiency].T
    return srgb_from_linear(np.clip(seen, 0.0, 1.0))


def colour_as_seen(colour: Colour, deficiency: Deficiency) -> Colour:
    """One colour as seen with a deficiency.

    >>> colour_as_seen(Colour(255, 0, 0), "protanopia").hex, colour_as_seen(Colour(90, 90, 90), "tritanopia").hex
    ('#6d5f00', '#5a5a5a')
    """
    return Colour.from_unit(as_seen(colour.unit, deficiency))
