"""The artwork as files: a PDF in black alone, an SVG, and a proof."""

import pikepdf
from pikepdf import Name, Object

from padspec.base.colour import BLACK, Colour
from padspec.base.geometry import Box
from padspec.draw.faces import FaceForms
from padspec.draw.inking import Samples, opacity_state
from padspec.draw.metadata import describe
from padspec.draw.operators import matrix_operator, page_matrix
from padspec.draw.pages import add_page, saved
from padspec.draw.svg import face_svg
from padspec.scene.nodes import LayerName, Picture, Raster, Scene, Vector
from padspec.stamp.artwork import Artwork


class BlackInking:
    """Black alone: `0 g` is the key plate of a press and nothing of any other (ISO 32000-1, 8.6.4.2)."""

    __slots__ = ()

    @property
    def space(self) -> Name:
        """One channel."""
        return Name.DeviceGray

    def fill(self, colour: Colour, layer: LayerName) -> str:  # noqa: ARG002 - the same in every layer
        """Black; ValueError for any other colour, which no artwork has."""
        return f"{_black(colour)} g"

    def stroke(self, colour: Colour, layer: LayerName) -> str:  # noqa: ARG002
        """Black."""
        return f"{_black(colour)} G"

    def state(
        self,
        fill: Colour | None,  # noqa: ARG002 - black is laid over nothing
        stroke: Colour | None,  # noqa: ARG002
        layer: LayerName,  # noqa: ARG002
        opacity: float,
    ) -> str:
        """Opacity, where it is not whole."""
        return opacity_state(opacity)

    def picture_state(self) -> str:
        """Nothing."""
        return ""

    def resources(self) -> dict[str, Object]:
        """None."""
        return {}

    def image(self, picture: Picture) -> Raster | Vector:
        """An artwork holds no pictures."""
        raise ValueError(picture.image.name)

    def samples(self, raster: Raster) -> Samples:
        """An artwork holds no pictures."""
        raise ValueError(raster.name)


def _black(colour: Colour) -> int:
    if colour != BLACK:
        raise ValueError(colour.hex)
    return 0


def stamp_pdf(scene: Scene, title: str) -> bytes:
    """One page of the artwork's own size, vectors in black alone, to be printed without scaling."""
    page = Box(0, 0, scene.size.width, scene.size.height)
    inking = BlackInking()
    with pikepdf.new() as pdf:
        forms = {"/Stamp": FaceForms(pdf, inking=inking).form(scene)}
        lines = [matrix_operator(page_matrix(page.height)), "/Stamp Do"]
        add_page(pdf, page.size, {"TrimBox": page, "BleedBox": page}, lines, forms, inking)
        describe(pdf, title, 1, None)
        return saved(pdf)


def stamp_svg(made: Artwork, title: str) -> bytes:
    """The same as SVG, one unit a millimetre."""

    def no_picture(image: Raster | Vector) -> str:
        raise ValueError(image.name)

    return face_svg(made.scene, title, no_picture).encode("utf-8")
