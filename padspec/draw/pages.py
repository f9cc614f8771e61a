"""Pages of a PDF and its bytes: what sheets for a home printer and for a press have in common.

Geometry stays in millimetres with y downwards: one matrix at the head of each page turns it into points.
"""

from collections.abc import Sequence
from io import BytesIO

import pikepdf
from pikepdf import Array, Dictionary, Name, Object, Pdf

from padspec.base.geometry import Affine, Box, Size, mapped_box
from padspec.draw.faces import FaceForms, content_stream, number_array, resources_of
from padspec.draw.inking import SCREEN, Inking
from padspec.draw.operators import POINTS, clip_operator, matrix_operator, page_matrix
from padspec.scene.nodes import Layer, Scene
from padspec.sheet.sheet import Sheet, Slot

_VERSION = "1.6"


def add_sheet(pdf: Pdf, faces: FaceForms, sheet: Sheet, scenes: Sequence[Scene], inking: Inking = SCREEN) -> None:
    """A page of one sheet, a scene for every slot; ValueError where there are not as many."""
    names, forms = _face_forms(faces, scenes)
    lines = [matrix_operator(page_matrix(sheet.size.height)), *_corrected(sheet.correction)]
    for slot, name in zip(sheet.slots, names, strict=True):
        lines += _placed(slot, name)
    marks, pictures = faces.marks(Scene(sheet.size, 0, (Layer("marks", sheet.marks),)))
    moved = sheet.correction
    paper = Box(0, 0, sheet.size.width, sheet.size.height)
    # Shifted against what the printer does, bleed may reach past the page; a box may not (ISO 32000-1, 14.11.2.1).
    boxes = {
        "TrimBox": mapped_box(sheet.trim_box, moved).within(paper),
        "BleedBox": mapped_box(sheet.bleed_box, moved).within(paper),
    }
    add_page(pdf, sheet.size, boxes, lines + marks, forms | pictures, inking)


def _corrected(correction: Affine) -> list[str]:
    """The matrix that makes good what the printer shifts and stretches; none where it does neither."""
    return [] if correction == Affine() else [matrix_operator(correction)]


def _placed(slot: Slot, name: str) -> list[str]:
    return ["q", clip_operator(*slot.printed), matrix_operator(slot.transform), f"{name} Do", "Q"]


def _face_forms(faces: FaceForms, scenes: Sequence[Scene]) -> tuple[list[str], dict[str, Object]]:
    """The form's name for each scene, and the forms by name; a scene that stands twice has one form."""
    # By identity: comparing two faces by value would cost more than drawing one.
    names: dict[int, str] = {}
    forms: dict[str, Object] = {}
    for scene in scenes:
        if id(scene) not in names:
            name = names[id(scene)] = f"/Face-{len(names) + 1}"
            forms[name] = faces.form(scene)
    return [names[id(scene)] for scene in scenes], forms


def add_page(
    pdf: Pdf,
    size: Size,
    boxes: dict[str, Box],
    lines: Sequence[str],
    forms: dict[str, Object],
    inking: Inking = SCREEN,
) -> None:
    """A page with nested boxes (ISO 32000-1, 14.11.2) and a group that blends in the inking's space (11.6.6)."""
    media = page_box(Box(0, 0, size.width, size.height), size.height)
    page = Dictionary(
        Type=Name.Page,
        MediaBox=media,
        CropBox=media,
        Resources=resources_of(forms, inking),
        Contents=pdf.make_indirect(content_stream(pdf, lines)),
        Group=Dictionary(S=Name.Transparency, CS=inking.space),
    )
    for name, box in boxes.items():
        page[f"/{name}"] = page_box(box, size.height)
    pdf.pages.append(pikepdf.Page(pdf.make_indirect(page)))


def page_box(box: Box, page_height: float) -> Array:
    """A box in points with y upwards: left, bottom, right, top."""
    edges = (box.x, page_height - box.bottom, box.right, page_height - box.y)
    return number_array(*(edge * POINTS for edge in edges))


def saved(pdf: Pdf) -> bytes:
    """The file's bytes. The library deflates nothing itself, and the identifier is made from the content."""
    file = BytesIO()
    pdf.save(
        file,
        force_version=_VERSION,
        deterministic_id=True,
        fix_metadata_version=False,
        compress_streams=False,
        object_stream_mode=pikepdf.ObjectStreamMode.disable,
    )
    return file.getvalue()
