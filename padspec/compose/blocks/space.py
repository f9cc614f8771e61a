"""Empty height between blocks."""

from padspec.compose.face import Drawn, Placement, Room
from padspec.resolve.blocks.space import Space


def need(block: Space) -> float:
    """Its fixed height; one that grows needs none of its own."""
    return block.height or 0.0


def draw(block: Space, room: Room) -> Drawn:
    """Nothing, but where it lies is known."""
    return Drawn(placements=(Placement(block.id, room.box),))
