"""What ink each design of a job takes, and what its white panel saves: estimates."""

from dataclasses import dataclass

from padspec.base.colour import WHITE
from padspec.base.geometry import Box, bounded_ppi
from padspec.compose.compose import compose
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.making.ink import Coverage, InkUse, coverage, ink_use, saved
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.design import Design
from padspec.scene.nodes import Scene, without

#: Coverage is a mean: fine detail need not be seen pixel by pixel.
PPI = 150.0


@dataclass(frozen=True, slots=True)
class FaceInk:
    """The ink of one leaf, cut, and what its white panel saves (None where there is none)."""

    sku: str
    cover: Coverage
    use: InkUse
    panel_saves: InkUse | None


def face_ink(design: Design) -> FaceInk:
    """The ink of one leaf of a design. What bleed takes besides is left out.

    The inks are those of the printer at hand, guessed from the screen's colours, also if the studio has a press.
    """
    scene = compose(design).scene
    ink, area = design.studio.ink, design.trim.width * design.trim.height
    cover = _cover(scene)
    use = ink_use(cover, area, ink)
    if not _has_white_panel(design.face):
        return FaceInk(design.sku, cover, use, None)
    bare = ink_use(_cover(without(scene, "panel")), area, ink)
    return FaceInk(design.sku, cover, use, saved(bare, use))


def _has_white_panel(blocks: tuple[Block, ...]) -> bool:
    return any(isinstance(block, Panel) and block.colour == WHITE for block in blocks)


def _cover(scene: Scene) -> Coverage:
    ppi = bounded_ppi(scene.bleed_box.size, PPI)
    pixels = rasterise(face_pdf(scene, packed=False), ppi)
    trim = Box(scene.bleed, scene.bleed, scene.size.width, scene.size.height)
    left, top, right, bottom = (round(v * ppi / 25.4) for v in (trim.x, trim.y, trim.right, trim.bottom))
    return coverage(pixels[top:bottom, left:right])
