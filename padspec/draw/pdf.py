"""Sheets and single faces as PDF: scene and sheet go in, the bytes of the file come out.

A face is one form, placed once in every slot that shows it; a picture is one object, whatever uses it.
"""

from collections.abc import Iterable, Sequence

import pikepdf

from padspec.base.colour import WHITE, Colour
from padspec.base.geometry import Affine, Box
from padspec.draw.faces import FaceForms
from padspec.draw.inking import SCREEN, Inking
from padspec.draw.lengths import box_text
from padspec.draw.metadata import describe
from padspec.draw.operators import matrix_operator, page_matrix
from padspec.draw.pages import add_page, add_sheet, saved
from padspec.scene.nodes import Layer, Scene
from padspec.sheet.sheet import Sheet


def sheet_pdf(scene: Scene, sheet: Sheet, date: str | None = None) -> bytes:
    """One sheet with the same face in every slot; `date` (YYYY-MM-DD) is written only where it is given."""
    return sheets_pdf([(sheet, [scene] * len(sheet.slots))], date=date)


def sheets_pdf(
    pages: Iterable[tuple[Sheet, Sequence[Scene]]], shared: Sequence[Layer] = (), date: str | None = None
) -> bytes:
    """Sheets one after the other, each with a scene for every slot, in the order of its slots.

    `shared` are layers that many of the scenes hold, such as all but the lettering of personal faces: they
    are drawn once in the file. Title and copies are those of the first sheet. Raises ValueError where there
    is no sheet, and where a sheet has not as many scenes as slots.
    """
    with pikepdf.new() as pdf:
        faces = FaceForms(pdf, shared)
        first: Sheet | None = None
        for sheet, scenes in pages:
            first = first or sheet
            add_sheet(pdf, faces, sheet, scenes)
        if first is None:
            raise ValueError("a sheet PDF needs at least one sheet")
        describe(pdf, first.title, first.copies, date)
        return saved(pdf)


def face_pdf(scene: Scene, background: Colour = WHITE, packed: bool = True, inking: Inking = SCREEN) -> bytes:
    """One page of the face, trim and bleed, over a plain background: for proofs and for looking at pixels.

    Its pictures are deflated unless it is not `packed`, which is large and quickly made. `inking` says how the
    colours of the face are written; those of the background stay as they are.
    """
    bleed = scene.bleed_box
    trim = Box(0, 0, scene.size.width, scene.size.height).moved(-bleed.x, -bleed.y)
    page = Box(0, 0, bleed.width, bleed.height)
    with pikepdf.new() as pdf:
        lines = [
            matrix_operator(page_matrix(page.height)),
            f"{SCREEN.fill(background, 'ground')} {box_text(page)} re f",
            matrix_operator(Affine.move(-bleed.x, -bleed.y)),
            "/Face Do",
        ]
        forms = {"/Face": FaceForms(pdf, packed=packed, inking=inking).form(scene)}
        add_page(pdf, page.size, {"TrimBox": trim, "BleedBox": page}, lines, forms, inking)
        return saved(pdf)
