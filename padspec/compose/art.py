"""Header art: the picture at its resolved size, held off the edges of the face by its inset."""

from padspec.base.geometry import Box
from padspec.compose.face import Drawn, Placement, Room
from padspec.resolve.design import Art
from padspec.scene.nodes import Cause, Picture


def need(block: Art) -> float:
    """The picture and the inset above it; what stands below comes as near as the overlap says."""
    return block.inset + block.height


def draw(block: Art, room: Room) -> Drawn:
    """The picture at the foot of its room, aligned between the insets."""
    spare = room.box.width - 2 * block.inset - block.width
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[block.align]
    box = Box(room.box.x + block.inset + spare * share, room.box.bottom - block.height, block.width, block.height)
    picture = Picture(block.image, box, Cause(block.id, "art"))
    return Drawn((("art", picture),), (Placement(block.id, box),))
