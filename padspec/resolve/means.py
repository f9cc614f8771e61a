"""What the readers of blocks may draw on."""

from dataclasses import dataclass

from padspec.base.geometry import Size
from padspec.resolve.colours import Palette
from padspec.resolve.lettering_fonts import FontShelf
from padspec.resolve.pictures import PlacedPicture


@dataclass(frozen=True, slots=True)
class Means:
    """The trim, the palette, the fonts, and the pictures of the art blocks that have one, by block id.

    `studio_name` is the maker's own, for a brand line; empty where the studio has none.
    """

    trim: Size
    palette: Palette
    fonts: FontShelf
    pictures: dict[str, PlacedPicture]
    studio_name: str
