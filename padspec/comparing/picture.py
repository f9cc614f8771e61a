"""A face before and now as pixels of one size, and where they differ.

Both lie on a field that holds either, trim on trim at the top left corner. What changed stands in a strong colour
over the grey picture of now: the stronger, the larger the difference of the colours.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.base.colour import lab_from_srgb
from padspec.base.difference import ciede2000
from padspec.base.geometry import Box
from padspec.comparing.regions import regions
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.scene.nodes import Scene

Pixels = NDArray[np.uint8]
Mask = NDArray[np.bool_]

#: The longer side of a face is shown in so many pixels, and no finer than this many an inch.
LONGEST, MOST_PPI = 960, 200.0
_MM = 25.4
#: What changed, over grey; a difference of so much ΔE has the whole strength, and none has less than this share.
CHANGED = (214, 20, 92)
_FULL, _LEAST = 20.0, 0.45
#: How pale the grey picture of now is under what changed: from this to white.
_PALEST = 150.0


@dataclass(frozen=True, slots=True, eq=False)
class Panels:
    """Before, now and the difference, each of shape (height, width, 4), clear where there is no face.

    `share` is the part of the area of either face that changed, `places` the boxes of the largest changes in mm
    from the trim's top left corner, the largest first; `width` and `height` are the size of the field in mm.
    """

    before: Pixels
    now: Pixels
    difference: Pixels
    share: float
    places: tuple[Box, ...]
    width: float
    height: float


def panels(before: Scene, now: Scene) -> Panels:
    """Two faces to be looked at side by side."""
    ppi = _ppi(before, now)
    field = before.bleed_box.joined(now.bleed_box)
    old, new = (_on_field(scene, field, ppi) for scene in (before, now))
    height, width = (max(old.shape[n], new.shape[n]) for n in (0, 1))
    old, new = _grown(old, height, width), _grown(new, height, width)
    changed = (old != new).any(axis=2)
    either = (old[..., 3] > 0) | (new[..., 3] > 0)
    mm = _MM / ppi
    places = tuple(
        Box(field.x + box.x * mm, field.y + box.y * mm, box.width * mm, box.height * mm)
        for box in regions(changed, 1 / mm)
    )
    share = float(changed.sum() / max(int(either.sum()), 1))
    shown = difference(old, new, changed)
    return Panels(old, new, shown, share, places, width * mm, height * mm)


def only_face(scene: Scene) -> tuple[Pixels, float, float]:
    """The one face of a pad that has no other side, and the size of its field in mm."""
    ppi = _ppi(scene, scene)
    pixels = _on_field(scene, scene.bleed_box, ppi)
    return pixels, pixels.shape[1] * _MM / ppi, pixels.shape[0] * _MM / ppi


def difference(old: Pixels, new: Pixels, changed: Mask) -> Pixels:
    """The picture of now in pale grey, what changed in a strong colour; shapes (height, width, 4)."""
    seen = np.where(new[..., 3:] > 0, new, old)
    grey = seen[..., :3].astype(np.float64) @ np.array([0.2126, 0.7152, 0.0722])
    grey = _PALEST + grey * (255 - _PALEST) / 255
    shown = np.repeat(grey[..., None], 4, axis=2)
    strength = _strength(old[changed], new[changed])[:, None]
    shown[changed, :3] = np.array(CHANGED) * strength + shown[changed, :3] * (1 - strength)
    shown[..., 3] = seen[..., 3]
    return np.asarray(np.floor(shown + 0.5), dtype=np.uint8)


def _strength(old: Pixels, new: Pixels) -> NDArray[np.float64]:
    """How strongly each pair of pixels is marked, from the least to 1; shapes (n, 4)."""
    apart = ciede2000(lab_from_srgb(old[:, :3] / 255), lab_from_srgb(new[:, :3] / 255))
    apart = np.where(old[:, 3] != new[:, 3], _FULL, apart)
    return np.asarray(_LEAST + (1 - _LEAST) * np.minimum(apart / _FULL, 1.0))


def _ppi(one: Scene, other: Scene) -> float:
    field = one.bleed_box.joined(other.bleed_box)
    return min(MOST_PPI, LONGEST * _MM / max(field.width, field.height))


def _on_field(scene: Scene, field: Box, ppi: float) -> Pixels:
    """The pixels of a face with its bleed where it lies on the field, to the nearest pixel."""
    drawn = rasterise(face_pdf(scene, packed=False), ppi)
    left = round((scene.bleed_box.x - field.x) * ppi / _MM)
    top = round((scene.bleed_box.y - field.y) * ppi / _MM)
    height, width, _ = drawn.shape
    pixels = np.zeros((top + height, left + width, 4), np.uint8)
    pixels[top:, left:, :3] = drawn
    pixels[top:, left:, 3] = 255
    return pixels


def _grown(pixels: Pixels, height: int, width: int) -> Pixels:
    grown = np.zeros((height, width, 4), np.uint8)
    grown[: pixels.shape[0], : pixels.shape[1]] = pixels
    return grown
