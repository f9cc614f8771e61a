"""A design in, what prints on one of its leaves out: its face, composed with all the bleed that a look needs."""

from padspec.checks.shared_cuts.measures import HAIR, STEP
from padspec.checks.shared_cuts.prints import RasterPrint, print_of
from padspec.checks.under import Under, look_under
from padspec.compose.compose import compose
from padspec.compose.face import Face
from padspec.resolve.design import Design, with_sheet


def leaf_print(design: Design, face: Face, under: Under | None, off: float) -> RasterPrint:
    """What prints on a leaf and past it, as far as a cut may be off; `under` is what is rendered of it already."""
    if face.scene.bleed < off:
        # How the ground would go on past a bleed that is too short must be drawn to be known.
        face, under = compose(with_sheet(design, bleed=off)), None
    return print_of(face, under or look_under(face), max(off, HAIR + STEP))
