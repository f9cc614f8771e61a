"""Embedded colour profiles: from the colours that a file means to sRGB."""

from collections.abc import Callable
from io import BytesIO
from itertools import product

import numpy as np
from PIL import Image, ImageCms

from padspec.art.errors import ArtError

ToSrgb = Callable[[Image.Image], Image.Image]

_CHANNELS = {"GRAY": "L", "RGB": "RGB", "CMYK": "CMYK"}
# A profile that moves no colour of a coarse grid by more than this is sRGB itself under some name.
_SAME = 1
_GRID = 17


def srgb_converter(profile: bytes, mode: str, name: str) -> ToSrgb:
    """A function from bands of the picture in this mode (L, RGB, CMYK) to RGB bands in sRGB.

    Relative colorimetric with black point compensation (ICC.1, ISO 15076-1; the compensation is
    ISO 18619). A file without a profile is taken for sRGB, and CMYK for the plain complement.

    Raises ArtError for a broken profile or one for another kind of colour: guessing what the colours
    meant would show only on paper.
    """
    if not profile:
        return as_srgb
    try:
        source = ImageCms.ImageCmsProfile(BytesIO(profile))
        space = source.profile.xcolor_space.strip()
        takes = _takes(space, mode)
        transform = ImageCms.buildTransform(
            source,
            ImageCms.createProfile("sRGB"),
            takes,
            "RGB",
            ImageCms.Intent.RELATIVE_COLORIMETRIC,
            ImageCms.Flags.BLACKPOINTCOMPENSATION,
        )
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError, KeyError) as trouble:
        raise ArtError(
            f"{name}: the colour profile embedded in the picture ({len(profile)} bytes) cannot be used.",
            "Open it in a picture editor, convert it to sRGB and save it again.",
        ) from trouble

    def through(band: Image.Image) -> Image.Image:
        converted = ImageCms.applyTransform(band if band.mode == takes else band.convert(takes), transform)
        assert converted is not None
        return converted

    return as_srgb if takes == "RGB" and _changes_nothing(through) else through


def _takes(space: str, mode: str) -> str:
    """The mode to hand to a profile for this space; grey may go through a profile for RGB."""
    wanted = _CHANNELS[space]
    if wanted != mode and not (mode == "L" and wanted == "RGB"):
        raise ValueError(f"a {space} profile in a picture of mode {mode}")
    return wanted


def as_srgb(band: Image.Image) -> Image.Image:
    """The band of a file whose colours are taken for sRGB: as RGB, nothing else changed."""
    return band if band.mode == "RGB" else band.convert("RGB")


def _changes_nothing(convert: ToSrgb) -> bool:
    steps = np.linspace(0, 255, _GRID).round().astype(np.uint8)
    grid = np.array(list(product(steps, repeat=3)), dtype=np.uint8).reshape(_GRID, -1, 3)
    moved = np.asarray(convert(Image.fromarray(grid))).astype(int) - grid
    return bool(np.abs(moved).max() <= _SAME)
