"""One band of a picture, in whatever form its file holds it, as 8-bit colour and alpha apart.

The colour stays in the file's own space (grey, RGB or CMYK), so that a colour profile can still be
applied to it; alpha is never colour-managed.
"""

from dataclasses import dataclass

import numpy as np
from PIL import Image

from padspec.art.pixels import Bytes

#: The colour modes that a band is brought to.
COLOUR_MODES = {
    "1": "L",
    "L": "L",
    "LA": "L",
    "La": "L",
    "I": "L",
    "I;16": "L",
    "I;16B": "L",
    "I;16L": "L",
    "P": "RGB",
    "PA": "RGB",
    "RGB": "RGB",
    "RGBA": "RGB",
    "RGBa": "RGB",
    "RGBX": "RGB",
    "YCbCr": "RGB",
    "CMYK": "CMYK",
}


@dataclass(frozen=True, slots=True)
class Coding:
    """What the samples of a file mean beyond their mode.

    `deepest` is the value of full white in grey deeper than 8 bits, `inverted` whether 0 is white there;
    `key` the one colour that the file calls transparent, in the steps of the decoded samples.
    """

    deepest: int = 65535
    inverted: bool = False
    key: tuple[int, ...] | None = None


def split_band(band: Image.Image, coding: Coding) -> tuple[Image.Image, Bytes | None]:
    """The colour of a band in a mode of `COLOUR_MODES`' right side, and its alpha where it has any."""
    if band.mode.startswith("I"):
        return _deep_grey(band, coding)
    if band.mode in ("LA", "RGBA"):
        return band.convert(COLOUR_MODES[band.mode]), np.asarray(band.getchannel("A"))
    if band.mode in ("La", "RGBa", "PA") or (band.mode == "P" and "transparency" in band.info):
        straight = band.convert("LA" if band.mode == "La" else "RGBA")
        return straight.convert(COLOUR_MODES[band.mode]), np.asarray(straight.getchannel("A"))
    alpha = None
    if coding.key is not None:
        samples = np.asarray(band.convert("L") if band.mode == "1" else band)
        alpha = _keyed(samples.reshape(*samples.shape[:2], -1), coding.key)
    wanted = COLOUR_MODES[band.mode]
    return (band if band.mode == wanted else band.convert(wanted)), alpha


def _deep_grey(band: Image.Image, coding: Coding) -> tuple[Image.Image, Bytes | None]:
    # Pillow's own conversion of these modes clips or drops bits, depending on its version.
    samples = np.clip(np.asarray(band).astype(np.int64), 0, coding.deepest)
    alpha = None if coding.key is None else _keyed(samples[..., None], coding.key)
    if coding.inverted:
        samples = coding.deepest - samples
    grey = (samples * 255 + coding.deepest // 2) // coding.deepest
    return Image.fromarray(grey.astype(np.uint8)), alpha


def _keyed(samples: np.ndarray[tuple[int, ...], np.dtype[np.generic]], key: tuple[int, ...]) -> Bytes:
    matches = (samples == np.array(key)).all(axis=2)
    return np.where(matches, np.uint8(0), np.uint8(255))
