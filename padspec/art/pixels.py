"""A decoded picture: what every step of this stage takes and gives."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Bytes = NDArray[np.uint8]


@dataclass(frozen=True, slots=True, eq=False)
class Pixels:
    """An upright picture in sRGB with straight (not premultiplied) alpha.

    `rgba` has the shape (height, width, 4), rows from the top. It is made read-only rather than copied,
    because a picture may take 400 MB: hand over an array that nobody else writes to.
    Raises ValueError where the array is of another kind, which is a mistake in the program.
    """

    rgba: Bytes

    def __post_init__(self) -> None:
        if self.rgba.dtype != np.uint8 or self.rgba.ndim != 3 or self.rgba.shape[2] != 4:
            raise ValueError(f"not 8-bit RGBA rows: {self.rgba.dtype} {self.rgba.shape}")
        if not (self.rgba.shape[0] and self.rgba.shape[1]):
            raise ValueError("a picture has at least one pixel")
        self.rgba.setflags(write=False)

    @property
    def width(self) -> int:
        """Pixels from left to right."""
        return int(self.rgba.shape[1])

    @property
    def height(self) -> int:
        """Pixels from top to bottom."""
        return int(self.rgba.shape[0])

    @property
    def has_transparency(self) -> bool:
        """Whether any pixel is less than wholly opaque."""
        # The least value rather than a comparison, which would take a byte more for each pixel.
        return bool(self.rgba[..., 3].min() < 255)
