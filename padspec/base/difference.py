"""CIEDE2000 of many pairs of colours at once.

After the implementation notes of G. Sharma, W. Wu and E. N. Dalal, Color Research and Application 30 (2005)
21-30, with kL = kC = kH = 1; the numbers of their equations stand beside the lines.
"""

import numpy as np

from padspec.base.colour import Floats

_25_TO_7 = 25.0**7


def ciede2000(one: Floats, other: Floats) -> Floats:
    """The difference of two arrays of CIELAB colours (last axis), pair by pair; other axes broadcast."""
    (l1, c1, h1), (l2, c2, h2) = _lch(one, other)
    neutral = c1 * c2 == 0
    turn = h2 - h1
    turn = np.where(turn > 180, turn - 360, np.where(turn < -180, turn + 360, turn))  # (10)
    turn = np.where(neutral, 0.0, turn)
    by_hue = 2 * np.sqrt(c1 * c2) * np.sin(np.radians(turn) / 2)  # (11)
    lightness, chroma, hue = (l1 + l2) / 2, (c1 + c2) / 2, _between(h1, h2, neutral)  # (12) to (14)
    away = (lightness - 50) ** 2
    lightly = (l2 - l1) / (1 + 0.015 * away / np.sqrt(20 + away))  # (15), (19)
    strongly = (c2 - c1) / (1 + 0.045 * chroma)  # (20)
    hued = by_hue / (1 + 0.015 * chroma * _hue_weight(hue))  # (21)
    squared = lightly**2 + strongly**2 + hued**2 + _rotation(chroma, hue) * strongly * hued  # (22)
    return np.asarray(np.sqrt(np.maximum(squared, 0.0)), dtype=np.float64)


def _lch(one: Floats, other: Floats) -> tuple[tuple[Floats, Floats, Floats], tuple[Floats, Floats, Floats]]:
    """Lightness, chroma and hue in degrees of both, a* stretched where the pair is near grey: (2) to (7)."""
    mean = (np.hypot(one[..., 1], one[..., 2]) + np.hypot(other[..., 1], other[..., 2])) / 2
    stretch = 1 + 0.5 * (1 - np.sqrt(mean**7 / (mean**7 + _25_TO_7)))

    def polar(lab: Floats) -> tuple[Floats, Floats, Floats]:
        a, b = lab[..., 1] * stretch, lab[..., 2]
        return lab[..., 0], np.hypot(a, b), np.degrees(np.arctan2(b, a)) % 360

    return polar(one), polar(other)


def _between(h1: Floats, h2: Floats, neutral: Floats) -> Floats:
    """The mean of two hues the shorter way round; that of a colour and a grey is the colour's own: (14)."""
    total = h1 + h2
    far = np.abs(h1 - h2) > 180
    mean = np.where(far, np.where(total < 360, total + 360, total - 360), total) / 2
    return np.asarray(np.where(neutral, total, mean))


def _hue_weight(hue: Floats) -> Floats:
    """How much a step of hue counts: (15)."""
    angle = np.radians(hue)
    waves = (
        -0.17 * np.cos(angle - np.radians(30)),
        0.24 * np.cos(2 * angle),
        0.32 * np.cos(3 * angle + np.radians(6)),
        -0.20 * np.cos(4 * angle - np.radians(63)),
    )
    return np.asarray(1 + sum(waves))


def _rotation(chroma: Floats, hue: Floats) -> Floats:
    """How chroma and hue pull on each other among blues: (16) to (18)."""
    turned = 30 * np.exp(-(((hue - 275) / 25) ** 2))
    strength = 2 * np.sqrt(chroma**7 / (chroma**7 + _25_TO_7))
    return np.asarray(-strength * np.sin(np.radians(2 * turned)))
