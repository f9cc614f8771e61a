"""Header art: the picture at the size it is placed."""

from dataclasses import dataclass
from typing import Literal, cast

from padspec.base.colour import Colour
from padspec.resolve.blocks.block import Align, Block
from padspec.resolve.drafts import Draft
from padspec.resolve.means import Means
from padspec.resolve.pictures import CORNER, CutoutRecord, PlacedPicture
from padspec.scene.nodes import Raster, Vector

#: On a leaf of the usual size, in mm.
_USUAL_OVERLAP = 5.0


@dataclass(frozen=True, slots=True)
class Art(Block):
    """The picture at the size it is placed, `frame` the width of the band around it (0 for none), `corner` the
    radius of the picture's own corners. `source` is its visible size in pixels before it was brought down (0 × 0
    for vectors); `inset` the distance of it all from the edges of the face. Where it `fills` the face, it lies
    under everything else, out to the bleed, and takes no height of its own.
    """

    file: str
    image: Raster | Vector
    width: float
    height: float
    overlap: float
    inset: float
    align: Align
    corner: float
    frame: float
    frame_colour: Colour
    source: tuple[int, int]
    cutout: CutoutRecord
    fills: Literal["block", "face"]

    @property
    def ppi(self) -> float | None:
        """Pixels an inch of the maker's picture at the placed size; None for vectors."""
        return self.source[0] * 25.4 / self.width if self.source[0] else None


def read_art(draft: Draft, means: Means) -> Art | None:
    """The picture of a block; None where it names none."""
    settings, picture = draft.settings, means.pictures.get(draft.id)
    if picture is None:
        return None
    return Art(
        id=draft.id,
        grow=draft.grow,
        file=settings.text("file"),
        image=picture.image,
        width=picture.width,
        height=picture.height,
        overlap=draft.scaled("overlap", _USUAL_OVERLAP),
        inset=draft.inset,
        align=cast(Align, settings.text("align")),
        corner=_corner(draft, picture),
        frame=picture.frame,
        frame_colour=means.palette.colour(settings, "frame-colour"),
        source=picture.source,
        cutout=picture.cutout,
        fills=cast(Literal["block", "face"], settings.text("fills")),
    )


def _corner(draft: Draft, picture: PlacedPicture) -> float:
    if draft.settings.text("corner") != "auto":
        return draft.settings.length("corner")
    return CORNER if picture.fills else 0.0
