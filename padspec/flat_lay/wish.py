"""What a flat-lay picture is made of and how it is wished for."""

from dataclasses import dataclass
from typing import Literal

from padspec.base.colour import Colour
from padspec.base.geometry import Size
from padspec.draw.deflate import Pixels

Arrange = Literal["single", "stack", "fan"]
Shape = Literal["square", "portrait", "landscape"]

ARRANGEMENTS: tuple[Arrange, ...] = ("single", "stack", "fan")
SHAPES: tuple[Shape, ...] = ("square", "portrait", "landscape")

#: The longer side of the picture, in pixels. Common practice of shops, no published source.
USUAL_SIZE, LEAST_SIZE, MOST_SIZE = 2000, 200, 4000
#: A turn beyond this reads as a mistake, in degrees.
MOST_TURN = 45.0
LEAST_IN_FAN, MOST_IN_FAN = 2, 9

#: Boards of the trade, as they look by daylight; 1 mm is a common back for a pad (no published source).
KRAFT, GREY = Colour(188, 146, 102), Colour(150, 148, 143)
BOARD = 1.0

#: Across to down of a picture that is not square: what shops crop to most.
_SHORT_SIDE = 0.8
#: How far each arrangement is turned where nothing is said, in degrees clockwise.
_TURNS: dict[Arrange, float] = {"single": -7.0, "stack": -6.0, "fan": 0.0}


@dataclass(frozen=True, slots=True)
class PadLook:
    """One finished pad: its face, shape (height, width, 3), sRGB, exactly the trim and nothing past it.

    `leaves` of `caliper` mm each lie on a back of `board` mm.
    """

    face: Pixels
    trim: Size
    leaves: int
    caliper: float
    board_colour: Colour = KRAFT
    board: float = BOARD

    @property
    def block(self) -> float:
        """The thickness of the leaves alone."""
        return self.leaves * self.caliper

    @property
    def thickness(self) -> float:
        """Leaves and board."""
        return self.block + self.board


@dataclass(frozen=True, slots=True)
class Wish:
    """How the picture is to be: `size` is its longer side in pixels, `turn` clockwise in degrees."""

    backdrop: Colour
    arrange: Arrange = "single"
    size: int = USUAL_SIZE
    shape: Shape = "square"
    turn: float = _TURNS["single"]

    @property
    def frame(self) -> tuple[int, int]:
        """Width and height in pixels."""
        short = round(self.size * _SHORT_SIDE)
        match self.shape:
            case "portrait":
                return short, self.size
            case "landscape":
                return self.size, short
            case "square":
                return self.size, self.size


def usual_turn(arrange: Arrange) -> float:
    """How far an arrangement is turned where the maker says nothing."""
    return _TURNS[arrange]
