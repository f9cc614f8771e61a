"""Grain that is the same on every machine: bits of a seeded generator, never its distributions.

The stream of PCG64 is fixed (M. E. O'Neill, 2014; NEP 19 holds numpy to it); what numpy makes of one is not.
"""

import numpy as np
from numpy.typing import NDArray

from padspec.flat_lay.geometry import Field


def bytes_of(seed: int, height: int, width: int) -> NDArray[np.uint8]:
    """Independent bytes, shape (height, width), each of 0 to 255 as often."""
    words = np.random.PCG64(seed).random_raw(-(-height * width // 8))
    return words.astype("<u8").view(np.uint8)[: height * width].reshape(height, width)


def noise(seed: int, height: int, width: int) -> Field:
    """Independent values from -1 to 1, shape (height, width)."""
    return bytes_of(seed, height, width).astype(np.float32) / np.float32(127.5) - np.float32(1)


def coarse(seed: int, frame: tuple[int, int], step: float) -> Field:
    """Smooth values of about -1 to 1 over a frame, changing over `step` pixels."""
    from PIL import Image

    width, height = frame
    step = max(step, 1.0)
    small = noise(seed, int(height / step) + 3, int(width / step) + 3)
    box = (1.0, 1.0, 1 + width / step, 1 + height / step)
    return np.asarray(Image.fromarray(small).resize(frame, Image.Resampling.BICUBIC, box), np.float32)


def tooth(seed: int, frame: tuple[int, int], scale: float) -> Field:
    """The relief of uncoated paper under raking light, about -1 to 1: light slopes and dark ones.

    `scale` is pixels for a millimetre: fibres of a third of a millimetre, and cloudiness of three.
    """
    width, height = frame
    relief = coarse(seed, (width + 1, height + 1), scale * 0.32)
    slopes = relief[:-1, :-1] - relief[1:, 1:]
    strength = np.float32(max(scale * 0.32, 1.0) * 0.35)
    return np.asarray(slopes * strength + np.float32(0.35) * coarse(seed + 1, frame, scale * 3), np.float32)
