"""Header art: the picture at its resolved size, in its frame if it has one, held off the edges by its inset."""

from padspec.base.geometry import Box
from padspec.base.numbers import EPSILON
from padspec.compose.face import Drawn, Placement, Room
from padspec.resolve.blocks.art import Art
from padspec.scene.nodes import Cause, Group, LayerName, Node, Picture, Shape
from padspec.scene.outline import rectangle, rounded


def need(block: Art) -> float:
    """The picture, its frame and the inset above; what stands below comes as near as the overlap says."""
    return block.inset + block.height + 2 * block.frame


def covering(block: Art) -> float:
    """How far the picture lies over what follows it: never more than its own height."""
    return min(block.overlap, block.height + 2 * block.frame)


def draw(block: Art, room: Room) -> Drawn:
    """The picture at the foot of its room, aligned between the insets; smaller where the room is too small."""
    scale = _scale(block, room.box)
    width, height = block.width * scale + 2 * block.frame, block.height * scale + 2 * block.frame
    spare = room.box.width - 2 * block.inset - width
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[block.align]
    outer = Box(room.box.x + block.inset + spare * share, room.box.bottom - height, width, height)
    placed = Placement(block.id, outer, short_by=block.height * (1 - scale))
    return Drawn(_nodes(block, outer) if scale else (), (placed,))


def draw_whole(block: Art, bleed_box: Box) -> Drawn:
    """A picture that fills the face: under everything else, its middle in the middle, cropped to the bleed."""
    x, y = bleed_box.centre
    box = Box(x - block.width / 2, y - block.height / 2, block.width, block.height)
    shown = Group((Picture(block.image, box, Cause(block.id, "art")),), clip=rectangle(bleed_box))
    return Drawn((("ground", shown),), (Placement(block.id, bleed_box),))


def _scale(block: Art, room: Box) -> float:
    """1, or less where the room cannot hold the picture in its frame."""
    taken = 2 * block.frame
    across = (room.width - 2 * block.inset - taken) / block.width
    upright = (room.height - block.inset - taken) / block.height
    scale = max(min(across, upright), 0.0)
    return 1.0 if scale > 1 - EPSILON else scale


def _nodes(block: Art, outer: Box) -> tuple[tuple[LayerName, Node], ...]:
    cause = Cause(block.id, "art")
    inner = outer.inset(block.frame)
    picture = Picture(block.image, inner, cause)
    shown: Node = Group((picture,), clip=rounded(inner, block.corner)) if block.corner else picture
    if not block.frame:
        return (("art", shown),)
    # The frame's corner runs parallel to the picture's.
    frame = Shape(rounded(outer, block.corner + block.frame), cause, fill=block.frame_colour)
    return (("art", frame), ("art", shown))
