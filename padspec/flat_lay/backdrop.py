"""What the pads lie on: a sheet of coloured paper, and the colour that sits well under a design."""

from collections.abc import Sequence
from math import atan2, degrees, hypot

import numpy as np

from padspec.base.colour import Colour, Floats, linear_from_srgb, oklab_from_srgb
from padspec.base.mixing import from_lch
from padspec.flat_lay.geometry import Field
from padspec.flat_lay.grain import tooth
from padspec.flat_lay.wish import PadLook

_SEED = 20117
_TOOTH = 0.012
#: The colour that is chosen: its OKLab lightness under pads with light and with dark rims, and its chroma.
_UNDER_LIGHT, _UNDER_DARK = 0.845, 0.90
_LEAST_CHROMA, _MOST_CHROMA = 0.03, 0.05
#: A rim lighter than this is a light one.
_LIGHT_RIM = 0.72
#: Rims with less chroma than this lie on the warm hue of uncoated paper.
_COLOURLESS, _PAPER_HUE, _PAPER_CHROMA = 0.006, 75.0, 0.022


def lit_backdrop(colour: Colour, frame: tuple[int, int], scale: float) -> Field:
    """Paper of this colour in an even light, linear, shape (height, width, 3)."""
    grain = 1 + np.float32(_TOOTH) * tooth(_SEED, frame, scale)
    return np.asarray(grain[..., None] * linear_from_srgb(colour.unit).astype(np.float32), np.float32)


def fitting_colour(pads: Sequence[PadLook]) -> Colour:
    """A backdrop for these pads: muted, and of the hue across from their rims, so that pads stand out from it."""
    means = [oklab_from_srgb(_rim(pad)) for pad in pads]
    lightness, a, b = (round(float(sum(mean[n] for mean in means)) / len(means), 6) for n in range(3))
    under = _UNDER_LIGHT if lightness > _LIGHT_RIM else _UNDER_DARK
    chroma = hypot(a, b)
    if chroma < _COLOURLESS:
        return from_lch(under, _PAPER_CHROMA, _PAPER_HUE)
    return from_lch(under, min(max(chroma, _LEAST_CHROMA), _MOST_CHROMA), degrees(atan2(-b, -a)))


def _rim(pad: PadLook) -> Floats:
    """The mean colour along the edges of a face, which lies against the backdrop; channels from 0 to 1."""
    face = pad.face
    deep = max(1, min(face.shape[:2]) // 40)
    parts = [face[:deep], face[-deep:], face[:, :deep], face[:, -deep:]]
    rim = np.concatenate([part.reshape(-1, 3) for part in parts])
    return np.asarray(rim.mean(axis=0) / 255, np.float64)
