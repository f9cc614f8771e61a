"""Colours: what is printed is always an 8-bit sRGB value, so that every renderer draws the same one.

Conversions work on numpy arrays whose last axis holds the three channels, one colour or a whole picture.
sRGB is IEC 61966-2-1; OKLab is B. Ottosson's of 2020 with the matrices of CSS Color 4; CIELAB is
CIE 15 under D65.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

# Linear sRGB to XYZ under D65 (white x 0.3127, y 0.3290), the exact matrix that CSS Color 4 uses.
_XYZ_FROM_RGB = np.array(
    [
        [506752 / 1228815, 87881 / 245763, 12673 / 70218],
        [87098 / 409605, 175762 / 245763, 12673 / 175545],
        [7918 / 409605, 87881 / 737289, 1001167 / 1053270],
    ]
)
_WHITE = _XYZ_FROM_RGB.sum(axis=1)
_LMS_FROM_XYZ = np.array(
    [
        [0.8190224379967030, 0.3619062600528904, -0.1288737815209879],
        [0.0329836539323885, 0.9292868615863434, 0.0361446663506424],
        [0.0481771893596242, 0.2642395317527308, 0.6335478284694309],
    ]
)
OKLAB_FROM_LMS = np.array(
    [
        [0.2104542683093140, 0.7936177747023054, -0.0040720430116193],
        [1.9779985324311684, -2.4285922420485799, 0.4505937096174110],
        [0.0259040424655478, 0.7827717124575296, -0.8086757549230774],
    ]
)
LMS_FROM_RGB = _LMS_FROM_XYZ @ _XYZ_FROM_RGB
_RGB_FROM_LMS = np.linalg.inv(LMS_FROM_RGB)
_LMS_FROM_OKLAB = np.linalg.inv(OKLAB_FROM_LMS)


@dataclass(frozen=True, slots=True, order=True)
class Colour:
    """An sRGB colour of 8 bits a channel.

    >>> Colour.from_hex("#7a3b58").hex
    '#7a3b58'
    """

    red: int
    green: int
    blue: int

    @classmethod
    def from_hex(cls, text: str) -> "Colour":
        """From `#rgb` or `#rrggbb`; raises ValueError on anything else."""
        digits = text.removeprefix("#")
        if len(digits) == 3:
            digits = "".join(digit * 2 for digit in digits)
        if len(digits) != 6 or not text.startswith("#"):
            raise ValueError(text)
        return cls(*bytes.fromhex(digits))

    @classmethod
    def from_unit(cls, rgb: Floats) -> "Colour":
        """From three channels between 0 and 1; what lies outside is clipped."""
        red, green, blue = (int(c) for c in np.floor(np.clip(np.round(rgb, 9), 0, 1) * 255 + 0.5))
        return cls(red, green, blue)

    @property
    def hex(self) -> str:
        """The colour as `#rrggbb`."""
        return f"#{self.red:02x}{self.green:02x}{self.blue:02x}"

    @property
    def unit(self) -> Floats:
        """The three channels between 0 and 1."""
        return np.array([self.red, self.green, self.blue]) / 255

    @property
    def is_neutral(self) -> bool:
        """Whether it is a pure grey, black and white included."""
        return self.red == self.green == self.blue


WHITE = Colour(255, 255, 255)
BLACK = Colour(0, 0, 0)


def linear_from_srgb(rgb: Floats) -> Floats:
    """Undo the sRGB transfer curve; channels between 0 and 1."""
    linear: Floats = np.where(rgb <= 0.04045, rgb / 12.92, ((np.maximum(rgb, 0) + 0.055) / 1.055) ** 2.4)
    return linear


def srgb_from_linear(rgb: Floats) -> Floats:
    """Apply the sRGB transfer curve; channels between 0 and 1."""
    bent = 1.055 * np.maximum(rgb, 0) ** (1 / 2.4) - 0.055
    curved: Floats = np.where(rgb <= 0.0031308, rgb * 12.92, bent)
    return curved


def xyz_from_srgb(rgb: Floats) -> Floats:
    """CIE XYZ under D65, white at Y = 1."""
    xyz: Floats = linear_from_srgb(rgb) @ _XYZ_FROM_RGB.T
    return xyz


def oklab_from_srgb(rgb: Floats) -> Floats:
    """OKLab lightness (0 to 1), a and b."""
    lab: Floats = np.cbrt(linear_from_srgb(rgb) @ LMS_FROM_RGB.T) @ OKLAB_FROM_LMS.T
    return lab


def srgb_from_oklab(lab: Floats) -> Floats:
    """The inverse of `oklab_from_srgb`; channels leave 0 to 1 where sRGB cannot show the colour."""
    return srgb_from_linear((lab @ _LMS_FROM_OKLAB.T) ** 3 @ _RGB_FROM_LMS.T)


def lab_from_srgb(rgb: Floats) -> Floats:
    """CIELAB under D65 (CIE 15, ISO 11664-4)."""
    t = xyz_from_srgb(rgb) / _WHITE
    f = np.where(t > 216 / 24389, np.cbrt(t), (24389 / 27 * t + 16) / 116)
    return np.stack([116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])], axis=-1)
