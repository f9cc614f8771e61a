"""Picture files in, upright sRGB pixels out.

Memory is bounded: beside Pillow's own decoded picture only the result is held whole, and mode, profile
and orientation are applied band by band on the way from one to the other.
"""

import warnings
from io import BytesIO
from math import sqrt

import numpy as np
from PIL import Image, ImageFile
from PIL.JpegImagePlugin import JpegImageFile
from PIL.PngImagePlugin import PngImageFile
from PIL.TiffImagePlugin import BITSPERSAMPLE, PHOTOMETRIC_INTERPRETATION, TiffImageFile
from PIL.WebPImagePlugin import WebPImageFile

from padspec.art.errors import ArtError
from padspec.art.pixels import Bytes, Pixels
from padspec.art.raster.channels import COLOUR_MODES, Coding, split_band
from padspec.art.raster.profile import ToSrgb, as_srgb, srgb_converter
from padspec.art.raster.sniffing import RasterFormat, foreign_kind, raster_format, sniff

__all__ = ["MOST_MEGAPIXELS", "decode", "refuse_too_large", "sniff"]

#: A picture with more pixels is refused: four bytes each, twice, would no longer fit beside the rest.
MOST_MEGAPIXELS = 100

_ORIENTATION = 0x0112  # TIFF 6.0, tag 274; Exif 2.32 uses the same
_PNG_BIT_DEPTH = 24  # its offset in a file: signature, length and type of IHDR, width, height
_BAND_PIXELS = 100_000
_SAVE_AGAIN = "Open it in a picture editor and save it again as PNG."

# Opened by class rather than by Image.open: its own limit is a global and comes without a useful message.
_READERS: dict[RasterFormat, type[ImageFile.ImageFile]] = {
    "PNG": PngImageFile,
    "JPEG": JpegImageFile,
    "WebP": WebPImageFile,
    "TIFF": TiffImageFile,
}


def decode(data: bytes, name: str) -> Pixels:
    """The picture in a PNG, JPEG, WebP or TIFF file; of several frames or pages, the first.

    Orientation tags are applied, embedded profiles honoured (see `srgb_converter`), 16 bits brought to 8.
    `name` stands in messages. Raises ArtError for anything that cannot be read whole, and for more than
    `MOST_MEGAPIXELS`, before a pixel is decoded.
    """
    form = raster_format(data)
    if form is None:
        raise ArtError(
            f"{name} is {foreign_kind(data)}, which cannot be used as a picture.",
            "Save it as PNG, JPEG, WebP or TIFF, or as SVG where it is a drawing.",
        )
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # what a reader grumbles about, it has either mended or not
        image = _opened(data, form, name)
        _loaded(image, form, name, len(data))
        return Pixels(_upright_srgb(image, data, name))


def refuse_too_large(width: int, height: int, name: str) -> None:
    """Raise ArtError for a picture of more than `MOST_MEGAPIXELS`, telling the size to bring it down to."""
    if width * height <= MOST_MEGAPIXELS * 1_000_000:
        return
    shrink = sqrt(MOST_MEGAPIXELS * 1e6 / (width * height))
    fit_width, fit_height = max(1, int(width * shrink)), max(1, int(height * shrink))
    raise ArtError(
        f"{name} is {width} × {height} pixels, {width * height / 1e6:.0f} megapixels;"
        f" the limit is {MOST_MEGAPIXELS}.",
        f"Reduce it to {fit_width} × {fit_height} pixels or less (a whole A4 sheet at 450 ppi: 3721 × 5262).",
    )


def _opened(data: bytes, form: RasterFormat, name: str) -> ImageFile.ImageFile:
    """The file with its header read, in a form and size that can be used."""
    try:
        image = _READERS[form](BytesIO(data))
    except Exception as trouble:  # a reader raises nearly anything on a damaged file
        raise _damaged(name, form, len(data)) from trouble
    refuse_too_large(image.width, image.height, name)
    if image.mode not in COLOUR_MODES or _is_unbounded(image, form):
        raise ArtError(
            f"{name} holds its colours in a form that is not read here ({form}, {image.mode}).",
            "Save it with 8 or 16 bits a channel in RGB, grey or CMYK.",
        )
    return image


def _loaded(image: ImageFile.ImageFile, form: RasterFormat, name: str, size: int) -> None:
    try:
        image.load()
    except Exception as trouble:  # as above
        raise _damaged(name, form, size) from trouble


def _damaged(name: str, form: str, size: int) -> ArtError:
    return ArtError(f"{name} is a damaged or cut-off {form} file ({size} bytes).", _SAVE_AGAIN)


def _is_unbounded(image: Image.Image, form: RasterFormat) -> bool:
    """Whether the samples are 32-bit numbers without a known white."""
    return form == "TIFF" and image.mode == "I"


def _upright_srgb(image: Image.Image, data: bytes, name: str) -> Bytes:
    coding = _coding(image, data)
    profile = image.info.get("icc_profile")
    to_srgb = srgb_converter(profile if isinstance(profile, bytes) else b"", COLOUR_MODES[image.mode], name)
    orientation = _orientation(image)
    turned = orientation in (5, 6, 7, 8)
    shape = (image.width, image.height) if turned else (image.height, image.width)
    upright = np.empty((*shape, 4), np.uint8)
    as_stored = _stored_view(upright, orientation)
    rows = max(1, _BAND_PIXELS // image.width)
    for top in range(0, image.height, rows):
        foot = min(image.height, top + rows)
        as_stored[top:foot] = _rgba(image.crop((0, top, image.width, foot)), coding, to_srgb)
    return upright


def _rgba(band: Image.Image, coding: Coding, to_srgb: ToSrgb) -> Bytes:
    if band.mode == "RGBA" and to_srgb is as_srgb:
        return np.asarray(band)
    colour, alpha = split_band(band, coding)
    # In Pillow RGB lies in four bytes a pixel already.
    rgba = to_srgb(colour).convert("RGBA")
    if alpha is not None:
        rgba.putalpha(Image.fromarray(alpha))
    return np.asarray(rgba)


def _orientation(image: Image.Image) -> int:
    """The orientation tag, 1 to 8; a missing or unreadable one leaves the picture as it is stored."""
    try:
        value = image.getexif().get(_ORIENTATION, 1)
    except Exception:  # the tags are a file of their own, and often a broken one
        return 1
    return value if value in range(1, 9) else 1


def _stored_view(upright: Bytes, orientation: int) -> Bytes:
    """A view of the upright rows in the order that the file stores them (TIFF 6.0, Orientation)."""
    view = upright.transpose(1, 0, 2) if orientation in (5, 6, 7, 8) else upright
    if orientation in (3, 4, 6, 7):
        view = view[::-1]
    if orientation in (2, 3, 7, 8):
        view = view[:, ::-1]
    return view


def _coding(image: Image.Image, data: bytes) -> Coding:
    if isinstance(image, TiffImageFile):
        bits = image.tag_v2.get(BITSPERSAMPLE, (16,))
        deepest = (1 << int(bits[0] if isinstance(bits, tuple) else bits)) - 1
        return Coding(deepest, inverted=image.tag_v2.get(PHOTOMETRIC_INTERPRETATION) == 0)
    if isinstance(image, PngImageFile):
        return Coding(key=_png_key(image, data[_PNG_BIT_DEPTH]))
    return Coding()


def _png_key(image: Image.Image, bits: int) -> tuple[int, ...] | None:
    """The transparent colour of a PNG without alpha (tRNS, ISO/IEC 15948 11.3.2.1), as decoded.

    A file of 16-bit RGB is decoded to 8 bits, so that its key takes in what it shares them with.
    """
    key = image.info.get("transparency")
    if key is None or image.mode in ("P", "PA"):
        return None
    values = key if isinstance(key, tuple) else (key,)
    if image.mode == "L":
        return tuple(value * 255 // ((1 << bits) - 1) for value in values)
    return tuple(value >> 8 for value in values) if image.mode == "RGB" and bits == 16 else values
