"""How colours and pictures of a scene are written into a PDF: as screen colours here, as inks in `press_inking`.

The operators and the walk over the scene are the same for all; only what this protocol asks differs.
"""

from decimal import Decimal
from typing import NamedTuple, Protocol

from pikepdf import Dictionary, Name, Object

from padspec.base.colour import Colour
from padspec.base.numbers import number_text
from padspec.scene.nodes import LayerName, Picture, Raster, Scene, Vector, shapes


class Samples(NamedTuple):
    """The rows of a picture: the PDF name of their colour space, bytes a pixel, and the bytes."""

    space: Name
    channels: int
    data: bytes


class Inking(Protocol):
    """What drawing asks about colour. Operators are those of ISO 32000-1, table 74."""

    @property
    def space(self) -> Name:
        """The colour space that a page is blended in (ISO 32000-1, 11.6.6)."""

    def fill(self, colour: Colour, layer: LayerName) -> str:
        """Sets the colour of fills."""

    def stroke(self, colour: Colour, layer: LayerName) -> str:
        """Sets the colour of strokes."""

    def state(self, fill: Colour | None, stroke: Colour | None, layer: LayerName, opacity: float) -> str:
        """Sets what else a paint needs; empty for nothing."""

    def picture_state(self) -> str:
        """Sets what a picture needs; empty for nothing."""

    def resources(self) -> dict[str, Object]:
        """What the operators name, by kind of resource."""

    def image(self, picture: Picture) -> Raster | Vector:
        """The picture as it goes into the file."""

    def samples(self, raster: Raster) -> Samples:
        """The rows of a picture."""


class ScreenInking:
    """Colours as they are: sRGB for a home printer's driver, which converts them itself."""

    __slots__ = ()

    @property
    def space(self) -> Name:
        """Blended as they are shown."""
        return Name.DeviceRGB

    def fill(self, colour: Colour, layer: LayerName) -> str:  # noqa: ARG002 - the same in every layer
        """Sets red, green and blue of fills."""
        return f"{_colour_text(colour)} rg"

    def stroke(self, colour: Colour, layer: LayerName) -> str:  # noqa: ARG002
        """Sets red, green and blue of strokes."""
        return f"{_colour_text(colour)} RG"

    def state(self, fill: Colour | None, stroke: Colour | None, layer: LayerName, opacity: float) -> str:  # noqa: ARG002
        """Opacity, where it is not whole."""
        return opacity_state(opacity)

    def picture_state(self) -> str:
        """Nothing."""
        return ""

    def resources(self) -> dict[str, Object]:
        """None."""
        return {}

    def image(self, picture: Picture) -> Raster | Vector:
        """The picture itself, vectors kept."""
        return picture.image

    def samples(self, raster: Raster) -> Samples:
        """The pixels as they are."""
        return Samples(Name.DeviceRGB, 3, raster.rgb)


SCREEN = ScreenInking()


def opacity_state(opacity: float) -> str:
    """The operator that sets the opacity of fills; empty for a whole one."""
    return f"{_opacity_name(opacity)} gs" if opacity < 1 else ""


def opacity_states(scene: Scene) -> dict[str, Object]:
    """The graphics states that the opacities of a scene name (ISO 32000-1, table 58)."""
    found = sorted({shape.opacity for shape in shapes(scene) if shape.opacity < 1})
    return {
        _opacity_name(opacity): Dictionary(Type=Name.ExtGState, ca=Decimal(number_text(opacity)))
        for opacity in found
    }


def _opacity_name(opacity: float) -> str:
    return f"/Opacity-{number_text(opacity * 100, 2)}"


def _colour_text(colour: Colour) -> str:
    # Four digits are enough to land on the same 8-bit value again.
    return " ".join(number_text(channel / 255) for channel in (colour.red, colour.green, colour.blue))
