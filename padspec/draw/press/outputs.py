"""What is written for work that is sent out: the press PDF and the soft proof of a face."""

from padspec.base.geometry import bounded_ppi
from padspec.compose.face import Face
from padspec.draw.press.pdf import press_pdf
from padspec.draw.press.separations import press_proof_png
from padspec.press.profile import Press
from padspec.press.separate import Separator
from padspec.press.single import single_page
from padspec.resolve.design import Design
from padspec.sheet.sheet import Sheet

PROOF_PPI = 200.0


def press_files(
    design: Design, face: Face, sheet: Sheet | None, separator: Separator, proof: bool
) -> dict[str, bytes]:
    """press.pdf, a single face or a whole sheet as the studio sends them, and press.png if a proof is wanted."""
    files = {"press.pdf": _paper(design, face, sheet, separator)}
    if proof:
        ppi = bounded_ppi(face.scene.bleed_box.size, PROOF_PPI)
        files["press.png"] = press_proof_png(face.scene, separator, ppi)
    return files


def _conversion(press: Press) -> tuple[str, str]:
    """How colours were brought into the press's, for who opens the file there."""
    point = "with" if press.black_point else "without"
    return press.profile.description, f"{press.intent} intent, {point} black-point compensation"


def _paper(design: Design, face: Face, sheet: Sheet | None, separator: Separator) -> bytes:
    press = design.studio.press
    if press is not None and press.pages == "sheet" and sheet is not None:
        return press_pdf([(sheet, [face.scene] * sheet.n_up)], separator, sheet.title, design.date)
    title = f"{design.name} · {design.sku}"
    slug = "  ·  ".join((title, f"{design.leaves} leaves a pad", *_conversion(separator.press)))
    page = single_page(design.trim, face.scene.bleed, title, slug, design.small_print)
    return press_pdf([(page, [face.scene])], separator, title, design.date)
