"""Header art: the picture at its resolved size, held off the edges of the face by its inset."""

from padspec.base.geometry import Box
from padspec.base.numbers import EPSILON
from padspec.compose.face import Drawn, Placement, Room
from padspec.resolve.design import Art
from padspec.scene.nodes import Cause, Picture


def need(block: Art) -> float:
    """The picture and the inset above it; what stands below comes as near as the overlap says."""
    return block.inset + block.height


def draw(block: Art, room: Room) -> Drawn:
    """The picture at the foot of its room, aligned between the insets; smaller where the room is too small."""
    width, height = _within(block, room.box)
    spare = room.box.width - 2 * block.inset - width
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[block.align]
    box = Box(room.box.x + block.inset + spare * share, room.box.bottom - height, width, height)
    placed = Placement(block.id, box, short_by=block.height - height)
    if width == 0:
        return Drawn(placements=(placed,))
    return Drawn((("art", Picture(block.image, box, Cause(block.id, "art"))),), (placed,))


def _within(block: Art, room: Box) -> tuple[float, float]:
    """The picture's size, brought down in proportion where the room cannot hold it."""
    across, upright = room.width - 2 * block.inset, room.height - block.inset
    scale = max(min(across / block.width, upright / block.height), 0.0)
    return (block.width, block.height) if scale > 1 - EPSILON else (block.width * scale, block.height * scale)
