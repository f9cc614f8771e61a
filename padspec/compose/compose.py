"""Design in, Face out: the ground, then the stack of blocks from head to foot, sorted into layers."""

from padspec.base.geometry import Box
from padspec.compose.blocks import art, panel
from padspec.compose.face import Drawn, Face, Room
from padspec.compose.ground.ground import draw_ground
from padspec.compose.stack import draw_stack
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.design import Design, blocks
from padspec.scene.nodes import LAYERS, Layer, Scene


def compose(design: Design) -> Face:
    """The face of a design. Total: a block without room is drawn as small as it gets and its placement says so."""
    trim = Box(0, 0, design.trim.width, design.trim.height)
    drawn = draw_stack(design.face, Room(trim), _face_margin(design))
    ground = draw_ground(design.ground, design.trim, design.sheet.bleed, _covers(design, drawn))
    ground = ground.and_(_whole_pictures(design, trim))
    placements = (*ground.placements, *drawn.placements)
    return Face(_layered(design, ground.and_(drawn)), placements, drawn.seats)


def _face_margin(design: Design) -> float:
    """How far blocks that stand on the bare ground keep from the edges: clear of every safe margin."""
    safe = design.safe
    return max(safe.left, safe.right, safe.top, safe.bottom) + 1


def _whole_pictures(design: Design, trim: Box) -> Drawn:
    """Pictures that lie under the whole face, in the order of the layout."""
    drawn = Drawn()
    for block in blocks(design):
        if isinstance(block, Art) and block.fills == "face":
            drawn = drawn.and_(art.draw_whole(block, trim.inset(-design.sheet.bleed)))
    return drawn


def _covers(design: Design, drawn: Drawn) -> tuple[Box, ...]:
    boxes = {placement.block: placement.box for placement in drawn.placements}
    panels = [block for block in blocks(design) if isinstance(block, Panel)]
    return tuple(cover for block in panels for cover in panel.covers(block, boxes[block.id]))


def _layered(design: Design, drawn: Drawn) -> Scene:
    layers = (Layer(name, tuple(node for at, node in drawn.nodes if at == name)) for name in LAYERS)
    return Scene(design.trim, design.sheet.bleed, tuple(layer for layer in layers if layer.nodes))
