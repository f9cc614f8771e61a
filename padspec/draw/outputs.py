"""Everything that is written for one pad: face, sheet, proofs and pictures, as bytes by path."""

import base64
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from padspec.base.geometry import Box, bounded_ppi, mapped_box
from padspec.compose.face import Face
from padspec.draw.cuts.diagram import cut_diagram_svg
from padspec.draw.pdf import face_pdf, sheet_pdf
from padspec.draw.png import mark_failed, picture_png, png_file, rasterise
from padspec.draw.stretches import CutStretches, with_stretches
from padspec.draw.svg import face_svg
from padspec.press.separate import Separator
from padspec.resolve.design import Design
from padspec.scene.nodes import Raster, Vector, pictures
from padspec.sheet.cutting.plan_cuts import plan_cuts
from padspec.sheet.sheet import Sheet

#: The face's proof shows the screen more than the eye sees on paper; the sheet's is for positions.
FACE_PPI, SHEET_SHARE = 200, 2


@dataclass(frozen=True, slots=True)
class DrawWish:
    """How to draw: pictures inside the SVG, a sheet even where checks found errors, and proofs or none."""

    embed: bool = False
    despite_errors: bool = False
    proofs: bool = True


def draw_outputs(
    design: Design,
    face: Face,
    sheet: Sheet | None,
    failed: bool,
    wish: DrawWish,
    overlays: Sequence[CutStretches] = (),
    press: Separator | None = None,
) -> dict[str, bytes]:
    """Files by path. A failed pad has marked proofs and no sheet.pdf, unless it is wished for despite errors.

    `overlays` are drawn over the proof of the sheet and nowhere else; `press` separates for work that is sent out.
    """
    folder = design.sku
    # Deflating lets go of Python: the picture's own file is made while the sheet is.
    with ThreadPoolExecutor(1) as beside:
        linked = beside.submit(_picture_files, face, wish)
        paper = sheet_pdf(face.scene, sheet, design.date) if sheet is not None else None
        files = {f"{folder}/face.svg": _svg(design, face, wish).encode("utf-8"), **linked.result()}
    if paper is not None and sheet is not None and (not failed or wish.despite_errors):
        files[f"{folder}/sheet.pdf"] = paper
        files[f"{folder}/cuts.svg"] = _cuts(design, sheet).encode("utf-8")
    if press is not None and (not failed or wish.despite_errors):
        from padspec.draw.press.outputs import press_files

        made = press_files(design, face, sheet, press, wish.proofs)
        files |= {f"{folder}/{name}": data for name, data in made.items()}
    if wish.proofs:
        proofs = _proofs(face, sheet, paper, failed, overlays)
        files |= {f"{folder}/{name}": data for name, data in proofs.items()}
    return files


def _cuts(design: Design, sheet: Sheet) -> str:
    """The sheet with its cuts numbered, for as many copies as one pad takes."""
    studio = design.studio
    plan = plan_cuts(sheet, studio.cutter, studio.stock, sheet.copies, studio.offcuts)
    return cut_diagram_svg(sheet, plan, design.small_print)


def picture_file(image: Raster | Vector) -> str:
    """The name of a drawn picture: the maker's stem and eight digits of its content."""
    return f"{image.name}-{image.digest}.{'png' if isinstance(image, Raster) else 'svg'}"


def _svg(design: Design, face: Face, wish: DrawWish) -> str:
    def href(image: Raster | Vector) -> str:
        if not wish.embed:
            return f"../art/{picture_file(image)}"
        kind = "png" if isinstance(image, Raster) else "svg+xml"
        return f"data:image/{kind};base64,{base64.b64encode(_picture_bytes(image)).decode('ascii')}"

    return face_svg(face.scene, design.name, href)


def _picture_files(face: Face, wish: DrawWish) -> dict[str, bytes]:
    """The pictures that the SVG links to: none where it holds them."""
    if wish.embed:
        return {}
    images = {picture_file(picture.image): picture.image for picture in pictures(face.scene)}
    return {f"art/{name}": _picture_bytes(image) for name, image in images.items()}


# All variants of a design link the same few pictures.
@lru_cache(maxsize=4)
def _picture_bytes(image: Raster | Vector) -> bytes:
    return picture_png(image) if isinstance(image, Raster) else image.svg


def _proofs(
    face: Face, sheet: Sheet | None, paper: bytes | None, failed: bool, overlays: Sequence[CutStretches]
) -> dict[str, bytes]:
    """The very PDF that prints, rasterised once: the face is cut from its first slot."""
    if sheet is None or paper is None:
        ppi = bounded_ppi(face.scene.bleed_box.size, FACE_PPI)
        trim = Box(0, 0, face.scene.size.width, face.scene.size.height).moved(face.scene.bleed, face.scene.bleed)
        whole = _cut(rasterise(face_pdf(face.scene, packed=False), ppi), trim, ppi)
        return {"face.png": png_file(mark_failed(whole), ppi)}
    ppi = bounded_ppi(sheet.size, FACE_PPI)
    pixels = rasterise(paper, ppi)
    first = sheet.slots[0]
    leaf = _cut(pixels, mapped_box(first.trim, sheet.correction), ppi)
    upright = np.rot90(leaf, 1) if first.turned else leaf
    small = with_stretches(_reduced(pixels, SHEET_SHARE), ppi / SHEET_SHARE, overlays, sheet.correction)
    shown = [mark_failed(upright), mark_failed(small)] if failed else [upright, small]
    return {
        "face.png": png_file(np.ascontiguousarray(shown[0]), ppi),
        "sheet.png": png_file(np.ascontiguousarray(shown[1]), ppi / SHEET_SHARE),
    }


def _cut(pixels: NDArray[np.uint8], box: Box, ppi: float) -> NDArray[np.uint8]:
    left, top, right, bottom = (round(v * ppi / 25.4) for v in (box.x, box.y, box.right, box.bottom))
    return pixels[top:bottom, left:right]


def _reduced(pixels: NDArray[np.uint8], share: int) -> NDArray[np.uint8]:
    """Every block of share × share pixels as its mean."""
    from PIL import Image

    return np.asarray(Image.fromarray(pixels).reduce(share))
