"""A texture laid on one face of a slab: resampled at twice the picture's resolution, lit, and painted."""

from dataclasses import dataclass

import numpy as np

from padspec.base.colour import linear_from_srgb
from padspec.base.geometry import Affine
from padspec.draw.deflate import Pixels
from padspec.flat_lay.geometry import Field, Point, Window, coverage, inverse

#: Samples of a texture for each pixel, each way.
FINER = 2
_LINEAR = linear_from_srgb(np.arange(256) / 255).astype(np.float32)
_RIM = 2


@dataclass(frozen=True, slots=True)
class Canvas:
    """The picture while it is painted: linear light, shape (height, width, 3)."""

    pixels: Field

    @property
    def frame(self) -> tuple[int, int]:
        """Width and height."""
        return self.pixels.shape[1], self.pixels.shape[0]

    def paint(self, part: Window, colours: Field, outline: tuple[Point, ...]) -> None:
        """Lay colours over a window, inside an outline."""
        covered = coverage(outline, part)[..., None]
        under = self.pixels[part.slices]
        under += (colours - under) * covered


def laid(texture: Pixels, by: Affine, part: Window) -> Field:
    """A texture as it is seen in a window, linear; `by` takes texture pixels to picture pixels.

    Its rim goes on outside, so that a pixel half in takes no foreign colour.
    """
    from PIL import Image

    rimmed = np.pad(texture, ((_RIM, _RIM), (_RIM, _RIM), (0, 0)), mode="edge")
    width, height = part.size
    shifted = Affine(e=-_RIM, f=-_RIM).then(by)
    finer = shifted.then(Affine(FINER, 0, 0, FINER, -FINER * part.left, -FINER * part.top))
    back = inverse(finer)
    seen = Image.fromarray(rimmed).transform(
        (width * FINER, height * FINER),
        Image.Transform.AFFINE,
        (back.a, back.c, back.e, back.b, back.d, back.f),
        Image.Resampling.BICUBIC,
    )
    return np.asarray(_LINEAR[np.asarray(seen.reduce(FINER))], np.float32)


def sized(texture: Pixels, pixels: tuple[int, int]) -> Pixels:
    """A texture at a resolution, which must be near what it is seen at: resampling by a map averages nothing."""
    from PIL import Image

    if (texture.shape[1], texture.shape[0]) == pixels:
        return texture
    return np.asarray(Image.fromarray(texture).resize(pixels, Image.Resampling.LANCZOS))
