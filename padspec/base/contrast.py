"""Contrast and colour difference: plain functions that checks, `new` and the palette share."""

import numpy as np

from padspec.base.colour import Colour, Floats, lab_from_srgb, linear_from_srgb

# The rounded weights that WCAG 2 prints; the full-precision ones move ratios in the fourth digit.
_WCAG_WEIGHTS = np.array([0.2126, 0.7152, 0.0722])


def luminance(rgb: Floats) -> Floats:
    """WCAG 2 relative luminance of sRGB channels between 0 and 1 (last axis)."""
    return np.asarray(linear_from_srgb(rgb) @ _WCAG_WEIGHTS)


def contrast_ratios(colour: Colour, under: Floats) -> Floats:
    """WCAG 2 contrast, 1 to 21, of a colour against each of an array of sRGB values."""
    mine, theirs = luminance(colour.unit), luminance(under)
    return np.asarray((np.maximum(mine, theirs) + 0.05) / (np.minimum(mine, theirs) + 0.05))


def contrast(one: Colour, other: Colour) -> float:
    """WCAG 2 contrast of two colours; not rounded, since 2.999 fails 3 (Understanding SC 1.4.11).

    >>> round(contrast(Colour(0x76, 0x76, 0x76), Colour(255, 255, 255)), 2)
    4.54
    """
    return float(contrast_ratios(one, other.unit))


def delta_e_lab(lab: Floats, others: Floats) -> Floats:
    """CIEDE2000 (kL = kC = kH = 1) of one CIELAB colour, shape (3,), against many, shape (n, 3)."""
    from colormath.color_diff_matrix import delta_e_cie2000

    differences = delta_e_cie2000(np.asarray(lab, float), np.asarray(others, float))  # type: ignore[no-untyped-call]
    return np.asarray(differences, dtype=np.float64)


def delta_e(one: Colour, other: Colour) -> float:
    """CIEDE2000 of two sRGB colours, under D65."""
    return float(delta_e_lab(lab_from_srgb(one.unit), lab_from_srgb(other.unit)[None, :])[0])
