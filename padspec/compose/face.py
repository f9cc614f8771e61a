"""What a composed face is: the scene, and where each block came to lie in it."""

from dataclasses import dataclass
from typing import Protocol

from padspec.base.geometry import Box
from padspec.resolve.blocks.block import Block
from padspec.scene.nodes import LayerName, Node, Scene


@dataclass(frozen=True, slots=True)
class Placement:
    """Where a block lies on the face, in mm from the trim's top left corner.

    `rows` is how many rows a block of rows came to hold, `pitch` their real pitch, `size` the real size of
    lettering; 0 for other kinds. `short_by` is the height that the block lacks to be whole, 0 where it fits.
    """

    block: str
    box: Box
    rows: int = 0
    pitch: float = 0.0
    size: float = 0.0
    short_by: float = 0.0


@dataclass(frozen=True, slots=True)
class Room:
    """What a block is given: its box, and how far down from the box's top another block already covers it."""

    box: Box
    covered: float = 0.0


@dataclass(frozen=True, slots=True)
class Seat:
    """The room that lettering was given, and the margin that it keeps there: other words may take its place."""

    block: str
    room: Room
    margin: float


@dataclass(frozen=True, slots=True)
class Face:
    """A face: its scene, the placements of its blocks, head to foot, and the seats of lettering."""

    scene: Scene
    placements: tuple[Placement, ...]
    seats: tuple[Seat, ...] = ()

    def placement(self, block: str) -> Placement:
        """Where one block lies; KeyError for an id the face does not have."""
        for placement in self.placements:
            if placement.block == block:
                return placement
        raise KeyError(block)


@dataclass(frozen=True, slots=True)
class Drawn:
    """What a block came to: nodes, each with its layer, and placements and seats of it and what it holds."""

    nodes: tuple[tuple[LayerName, Node], ...] = ()
    placements: tuple[Placement, ...] = ()
    seats: tuple[Seat, ...] = ()

    def and_(self, other: "Drawn") -> "Drawn":
        """Both, this one at the back."""
        return Drawn(self.nodes + other.nodes, self.placements + other.placements, self.seats + other.seats)


class Stacking(Protocol):
    """How a block that holds others has them laid one under the other."""

    def need(self, blocks: tuple[Block, ...], width: float, margin: float) -> float:
        """The height that they need together."""

    def draw(self, blocks: tuple[Block, ...], room: Room, margin: float) -> Drawn:
        """All of them in a room."""
