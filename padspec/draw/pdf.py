"""Sheets and single faces as PDF: scene and sheet go in, the bytes of the file come out.

A face is one form, placed once in every slot that shows it; a picture is one object, whatever uses it.
Geometry stays in millimetres with y downwards: one matrix at the head of each page turns it into points.
"""

from collections.abc import Iterable, Sequence
from io import BytesIO

import pikepdf
from pikepdf import Array, Dictionary, Name, Object, Pdf

from padspec.base.colour import WHITE, Colour
from padspec.base.geometry import Affine, Box, Size, mapped_box
from padspec.draw.faces import FaceForms, content_stream, number_array
from padspec.draw.lengths import box_text
from padspec.draw.metadata import describe
from padspec.draw.operators import (
    POINTS,
    clip_operator,
    fill_operator,
    matrix_operator,
    page_matrix,
)
from padspec.scene.nodes import Layer, Scene
from padspec.sheet.sheet import Sheet, Slot

_VERSION = "1.6"


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
            _add_sheet(pdf, faces, sheet, scenes)
        if first is None:
            raise ValueError("a sheet PDF needs at least one sheet")
        describe(pdf, first.title, first.copies, date)
        return _saved(pdf)


def face_pdf(scene: Scene, background: Colour = WHITE, packed: bool = True) -> bytes:
    """One page of the face, trim and bleed, over a plain background: for proofs and for looking at pixels.

    Its pictures are deflated unless it is not `packed`, which is large and quickly made.
    """
    bleed = scene.bleed_box
    trim = Box(0, 0, scene.size.width, scene.size.height).moved(-bleed.x, -bleed.y)
    page = Box(0, 0, bleed.width, bleed.height)
    with pikepdf.new() as pdf:
        lines = [
            matrix_operator(page_matrix(page.height)),
            f"{fill_operator(background)} {box_text(page)} re f",
            matrix_operator(Affine.move(-bleed.x, -bleed.y)),
            "/Face Do",
        ]
        forms = {"/Face": FaceForms(pdf, packed=packed).form(scene)}
        _add_page(pdf, page.size, {"TrimBox": trim, "BleedBox": page}, lines, forms)
        return _saved(pdf)


def _add_sheet(pdf: Pdf, faces: FaceForms, sheet: Sheet, scenes: Sequence[Scene]) -> None:
    names, forms = _face_forms(faces, scenes)
    lines = [matrix_operator(page_matrix(sheet.size.height)), *_corrected(sheet.correction)]
    for slot, name in zip(sheet.slots, names, strict=True):
        lines += _placed(slot, name)
    marks, pictures = faces.marks(Scene(sheet.size, 0, (Layer("marks", sheet.marks),)))
    moved = sheet.correction
    boxes = {"TrimBox": mapped_box(sheet.trim_box, moved), "BleedBox": mapped_box(sheet.bleed_box, moved)}
    _add_page(pdf, sheet.size, boxes, lines + marks, forms | pictures)


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


def _add_page(pdf: Pdf, size: Size, boxes: dict[str, Box], lines: Sequence[str], forms: dict[str, Object]) -> None:
    """A page with nested boxes (ISO 32000-1, 14.11.2) and a group whose colours blend as RGB (11.6.6)."""
    media = _page_box(Box(0, 0, size.width, size.height), size.height)
    page = Dictionary(
        Type=Name.Page,
        MediaBox=media,
        CropBox=media,
        Resources=Dictionary(XObject=Dictionary(forms)),
        Contents=pdf.make_indirect(content_stream(pdf, lines)),
        Group=Dictionary(S=Name.Transparency, CS=Name.DeviceRGB),
    )
    for name, box in boxes.items():
        page[f"/{name}"] = _page_box(box, size.height)
    pdf.pages.append(pikepdf.Page(pdf.make_indirect(page)))


def _page_box(box: Box, page_height: float) -> Array:
    """A box in points with y upwards: left, bottom, right, top."""
    edges = (box.x, page_height - box.bottom, box.right, page_height - box.y)
    return number_array(*(edge * POINTS for edge in edges))


def _saved(pdf: Pdf) -> bytes:
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
