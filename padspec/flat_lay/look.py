"""What a design looks like as a finished pad: its face, rasterised from the PDF that prints, cut to its trim."""

import numpy as np

from padspec.base.colour import Colour
from padspec.base.geometry import bounded_ppi
from padspec.compose.face import Face
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.flat_lay.wish import BOARD, PadLook
from padspec.resolve.design import Design


def thickness_of(design: Design) -> float:
    """Leaves and board of a finished pad, in mm."""
    return design.leaves * design.studio.stock.caliper + BOARD


def look_of(design: Design, face: Face, ppi: float, board: Colour) -> PadLook:
    """The pad, its face at this resolution or as near as is no waste."""
    scene = face.scene
    per_mm = bounded_ppi(scene.bleed_box.size, ppi) / 25.4
    pixels = rasterise(face_pdf(scene, packed=False), per_mm * 25.4)
    start = round(scene.bleed * per_mm)
    across, down = (max(1, round(side * per_mm)) for side in (scene.size.width, scene.size.height))
    trimmed = np.ascontiguousarray(pixels[start : start + down, start : start + across])
    return PadLook(trimmed, design.trim, design.leaves, design.studio.stock.caliper, board)
