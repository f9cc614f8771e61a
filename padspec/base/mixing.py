"""Mixing colours in OKLab: lightness, chroma and hue, lighten and darken, and staying inside sRGB."""

from math import atan2, cos, degrees, hypot, radians, sin

import numpy as np

from padspec.base.colour import Colour, Floats, oklab_from_srgb, srgb_from_oklab

_IN_GAMUT = 1e-6


def lch(colour: Colour) -> tuple[float, float, float]:
    """OKLab lightness, chroma and hue in degrees (0 to 360) of a colour."""
    lightness, a, b = (float(part) for part in np.round(oklab_from_srgb(colour.unit), 9))
    return lightness, hypot(a, b), degrees(atan2(b, a)) % 360


def from_lch(lightness: float, chroma: float, hue: float) -> Colour:
    """The sRGB colour at this lightness and hue with this chroma, or as much of it as sRGB can show.

    Chroma is reduced at constant lightness and hue, never clipped channel by channel, so that a hue
    does not turn.
    """
    lightness = min(max(lightness, 0.0), 1.0)
    a, b = cos(radians(hue)), sin(radians(hue))

    def at(share: float) -> Floats:
        return srgb_from_oklab(np.array([lightness, share * a, share * b]))

    low, high = 0.0, max(chroma, 0.0)
    if not _inside(at(high)):
        for _ in range(32):
            middle = (low + high) / 2
            low, high = (middle, high) if _inside(at(middle)) else (low, middle)
        high = low
    return Colour.from_unit(at(high))


def lighten(colour: Colour, share: float) -> Colour:
    """Lightness and chroma moved this share of the way to white.

    >>> lighten(Colour(0, 0, 0), 1.0).hex
    '#ffffff'
    """
    lightness, chroma, hue = lch(colour)
    return from_lch(lightness + (1 - lightness) * share, chroma * (1 - share), hue)


def darken(colour: Colour, share: float) -> Colour:
    """Lightness and chroma moved this share of the way to black.

    >>> darken(Colour(255, 255, 255), 1.0).hex
    '#000000'
    """
    lightness, chroma, hue = lch(colour)
    return from_lch(lightness * (1 - share), chroma * (1 - share), hue)


def _inside(rgb: Floats) -> bool:
    return bool((rgb >= -_IN_GAMUT).all() and (rgb <= 1 + _IN_GAMUT).all())
