"""A face as four plates: a scene goes in, the pixels of its inks come out, by the renderer that makes the proofs.

Each plate is drawn by itself as grey, so that curves, clips and soft masks lie as they do in the file, and ink
mixes with ink as amounts do. What overprints is not drawn on the plates that it leaves alone.
"""

import numpy as np

from padspec.draw.deflate import Pixels
from padspec.draw.pdf import face_pdf
from padspec.draw.png import png_file, rasterise
from padspec.draw.press.inking import PlateInking
from padspec.press.cover import Cover, measure_cover
from padspec.press.inks import INKS, STEPS
from padspec.press.proof import soft_proof
from padspec.press.separate import Separator
from padspec.press.under import darkest_under_lines
from padspec.scene.nodes import Scene

#: Enough for squares of 1 mm; a plate of a face takes a tenth of a second.
COVER_PPI = 150


def face_separations(scene: Scene, separator: Separator, ppi: float = COVER_PPI) -> Pixels:
    """The inks of a face with its bleed, shape (height, width, 4), 255 where an ink is solid."""
    darkest = darkest_under_lines(scene, separator)
    plates = [
        STEPS - rasterise(face_pdf(scene, packed=False, inking=PlateInking(separator, ink, darkest)), ppi)[..., 0]
        for ink in INKS
    ]
    return np.stack(plates, axis=-1).astype(np.uint8)


def face_cover(scene: Scene, separator: Separator, ppi: float = COVER_PPI) -> Cover:
    """How much ink a face takes with its bleed, and where it is heaviest."""
    corner = scene.bleed_box
    return measure_cover(face_separations(scene, separator, ppi), ppi, (corner.x, corner.y))


def press_proof_png(scene: Scene, separator: Separator, ppi: float) -> bytes:
    """The soft proof of a face, trim only, as a PNG: what the press will print, on its own paper."""
    shown = soft_proof(face_separations(scene, separator, ppi), separator)
    start, right, foot = (
        round((scene.bleed + length) * ppi / 25.4) for length in (0.0, scene.size.width, scene.size.height)
    )
    return png_file(np.ascontiguousarray(shown[start:foot, start:right]), ppi)
