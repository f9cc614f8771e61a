"""LittleCMS set to one press: screen colours to inks, inks to CIELAB and back to the screen.

Arrays only: 8-bit steps in and out, CIELAB under D50 as floating point. A colour and a picture go through the
same transform, so that a ground and a picture of the same colour stay one.
"""

from functools import cached_property
from io import BytesIO
from typing import Any

import numpy as np
from numpy.typing import NDArray

from padspec.base.colour import Floats, xyz_from_srgb
from padspec.press.lab_planes import lab_from_planes, plane_profile
from padspec.press.profile import INTENTS, Press

Steps = NDArray[np.uint8]

# Bradford's adaptation of XYZ from D65 to D50 (the matrix that CSS Color 4 gives).
_D50_FROM_D65 = np.array(
    [
        [1.0479297925449969, 0.022946870601609652, -0.05019226628920524],
        [0.02962780877005599, 0.9904344267538799, -0.017073799063418826],
        [-0.009243040646204504, 0.015055191490298152, 0.7518742814281371],
    ]
)
#: The white of the profile connection space (ICC.1:2010, 7.2.16).
_WHITE = np.array([0.9642, 1.0, 0.8249])


def wanted_lab(rgb: Floats) -> Floats:
    """CIELAB under D50 of sRGB channels between 0 and 1, white at L* 100."""
    return lab_from_xyz(xyz_from_srgb(rgb) @ _D50_FROM_D65.T)


def lab_from_xyz(xyz: Floats) -> Floats:
    """CIELAB under D50 (CIE 15)."""
    t = xyz / _WHITE
    f = np.where(t > 216 / 24389, np.cbrt(t), (24389 / 27 * t + 16) / 116)
    return np.stack([116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])], axis=-1)


def xyz_from_lab(lab: Floats) -> Floats:
    """The inverse of `lab_from_xyz`."""
    y = (lab[..., 0] + 16) / 116
    f = np.stack([y + lab[..., 1] / 500, y, y - lab[..., 2] / 200], axis=-1)
    xyz: Floats = np.where(f > 6 / 29, f**3, (116 * f - 16) * 27 / 24389) * _WHITE
    return xyz


class Conversion:
    """The transforms of one press, each made when it is first used."""

    def __init__(self, press: Press) -> None:
        self.press = press

    def inks(self, rgb: Steps) -> Steps:
        """Inks, shape (..., 4), of sRGB steps, shape (..., 3). White is the bare paper whatever the intent."""
        inks = _applied(self._to_inks, rgb, "RGB")
        inks[(rgb == 255).all(axis=-1)] = 0
        return inks

    def lab(self, inks: Steps) -> Floats:
        """CIELAB under D50, shape (..., 3), that inks print, shape (..., 4).

        Against the paper as white, unless the intent is absolute.
        """
        planes = [_applied(plane, inks, "CMYK").astype(np.float64) for plane in self._to_planes]
        return lab_from_planes(np.stack(planes, axis=-1))

    def screen(self, inks: Steps) -> Steps:
        """sRGB steps that show the print as it looks, the colour of its paper included (absolute colorimetric)."""
        return _applied(self._to_screen, inks, "CMYK")

    @cached_property
    def _to_inks(self) -> Any:
        from PIL import ImageCms

        flags = ImageCms.Flags.HIGHRESPRECALC
        if self.press.black_point:
            flags |= ImageCms.Flags.BLACKPOINTCOMPENSATION
        return ImageCms.buildTransform(
            _screen_profile(), self._profile, "RGB", "CMYK", _number(self.press.intent), flags
        )

    @cached_property
    def _to_planes(self) -> tuple[Any, ...]:
        from PIL import ImageCms

        intent = "absolute" if self.press.intent == "absolute" else "relative"
        # Left as they are, the tables are read exactly; made into one table, they would be sampled anew.
        return tuple(
            ImageCms.buildTransform(
                self._profile,
                ImageCms.ImageCmsProfile(BytesIO(plane_profile(axis))),
                "CMYK",
                "I;16",
                _number(intent),
                ImageCms.Flags.NOOPTIMIZE,
            )
            for axis in range(3)
        )

    @cached_property
    def _to_screen(self) -> Any:
        from PIL import ImageCms

        return ImageCms.buildTransform(
            self._profile,
            _screen_profile(),
            "CMYK",
            "RGB",
            _number("absolute"),
            ImageCms.Flags.HIGHRESPRECALC,
        )

    @cached_property
    def _profile(self) -> Any:
        from PIL import ImageCms

        return ImageCms.ImageCmsProfile(BytesIO(self.press.profile.data))


def _number(intent: str) -> Any:
    from PIL import ImageCms

    return ImageCms.Intent(INTENTS.index(intent))


def _screen_profile() -> Any:
    """sRGB as the library makes it. It holds the clock, so it is used and never written."""
    from PIL import ImageCms

    return ImageCms.createProfile("sRGB")


def _applied(transform: Any, steps: Steps, mode: str) -> NDArray[Any]:
    """A transform over an array whose last axis holds the channels."""
    from PIL import Image, ImageCms

    across = steps.shape[-2] if steps.ndim > 1 else 1
    rows = np.ascontiguousarray(steps).reshape(-1, across, steps.shape[-1])
    image = Image.frombytes(mode, (across, len(rows)), rows.tobytes())
    found = np.array(ImageCms.applyTransform(image, transform))
    return found.reshape((*steps.shape[:-1], *found.shape[2:]))
