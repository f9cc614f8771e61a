"""Colours and pictures written as inks: all four for a press, or one plate by itself to be measured.

Numbers of clauses and tables are those of ISO 32000-1.
"""

from collections.abc import Mapping
from functools import lru_cache

import numpy as np
from pikepdf import Array, Dictionary, Name, Object

from padspec.base.colour import WHITE, Colour
from padspec.base.geometry import Box, Size, bounded_ppi
from padspec.base.numbers import number_text
from padspec.draw.inking import Samples, opacity_state
from padspec.press.inks import INKS, STEPS, Ink
from padspec.press.separate import Separator
from padspec.scene.nodes import LayerName, Picture, Raster, Vector

#: Pictures kept as vectors hold colours of their own: a press gets their pixels, at one and a half times what a
#: screen of 150 lines an inch can show twice over.
VECTOR_PPI = 450
_MARKS = "/Registration"

_Overprints = tuple[bool, bool]
#: Graphics states by what overprints: fills, strokes.
_STATES: Mapping[_Overprints, str] = {
    (False, False): "/Knockout",
    (True, True): "/Overprint",
    (True, False): "/Overprint-fills",
    (False, True): "/Overprint-strokes",
}
#: Those of a single plate, by what is not drawn.
_HIDDEN: Mapping[_Overprints, str] = {
    (False, False): "/Seen",
    (True, True): "/Hidden",
    (True, False): "/Hidden-fills",
    (False, True): "/Hidden-strokes",
}


class PressInking:
    """Four inks by DeviceCMYK operators; black that leaves what is under it; marks in all separations.

    `darkest` is L* of the darkest plain colour that may lie under lines, as `Separator.overprints` takes it.
    """

    __slots__ = ("_darkest", "_separator")

    def __init__(self, separator: Separator, darkest: float) -> None:
        self._separator = separator
        self._darkest = darkest

    @property
    def space(self) -> Name:
        """Blended in the inks themselves."""
        return Name.DeviceCMYK

    def fill(self, colour: Colour, layer: LayerName) -> str:
        """Sets the inks of fills; marks go on every plate that there is (8.6.6.4)."""
        if layer == "marks":
            return f"{_MARKS} cs {_tint(colour)} scn"
        return f"{self._inks_text(colour, layer)} k"

    def stroke(self, colour: Colour, layer: LayerName) -> str:
        """Sets the inks of strokes."""
        if layer == "marks":
            return f"{_MARKS} CS {_tint(colour)} SCN"
        return f"{self._inks_text(colour, layer)} K"

    def state(self, fill: Colour | None, stroke: Colour | None, layer: LayerName, opacity: float) -> str:
        """Says whether the plates that a paint has no ink for are left alone (8.6.7), and how opaque fills are."""
        state = f"{_STATES[overprints(self._separator, self._darkest, fill, stroke, layer)]} gs"
        return f"{state} {opacity_state(opacity)}".rstrip()

    def picture_state(self) -> str:
        """A picture covers what is under it."""
        return f"{_STATES[False, False]} gs"

    def resources(self) -> dict[str, Object]:
        """The graphics states (table 58) and the colour space of marks."""
        states = {
            name: Dictionary(Type=Name.ExtGState, OP=strokes, op=fills, OPM=1)
            for (fills, strokes), name in _STATES.items()
        }
        tint = Dictionary(FunctionType=2, Domain=[0, 1], C0=[0, 0, 0, 0], C1=[1, 1, 1, 1], N=1)
        marks = Array([Name.Separation, Name("/All"), Name.DeviceCMYK, tint])
        return {"/ExtGState": Dictionary(states), "/ColorSpace": Dictionary({_MARKS: marks})}

    def image(self, picture: Picture) -> Raster | Vector:
        """Pixels, whatever the picture is kept as."""
        return as_pixels(picture)

    def samples(self, raster: Raster) -> Samples:
        """Four inks a pixel."""
        return Samples(Name.DeviceCMYK, len(INKS), self._separator.picture(raster))

    def _inks_text(self, colour: Colour, layer: LayerName) -> str:
        return " ".join(number_text(share) for share in self._separator.inks(colour, layer).shares)


class PlateInking:
    """One ink alone as grey, solid ink black: what a plate of the page holds, for measuring."""

    __slots__ = ("_darkest", "_place", "_separator")

    def __init__(self, separator: Separator, ink: Ink, darkest: float) -> None:
        self._separator = separator
        self._place = INKS.index(ink)
        self._darkest = darkest

    @property
    def space(self) -> Name:
        """Greys blend as such in the screen's space."""
        return Name.DeviceRGB

    def fill(self, colour: Colour, layer: LayerName) -> str:
        """Sets the grey of fills."""
        return f"{self._grey(colour, layer)} g"

    def stroke(self, colour: Colour, layer: LayerName) -> str:
        """Sets the grey of strokes."""
        return f"{self._grey(colour, layer)} G"

    def state(self, fill: Colour | None, stroke: Colour | None, layer: LayerName, opacity: float) -> str:
        """Draws nothing of a paint that overprints and has none of this ink: overprinting, done by hand."""
        fills, strokes = overprints(self._separator, self._darkest, fill, stroke, layer)
        hidden = fills and self._is_without(fill, layer), strokes and self._is_without(stroke, layer)
        state = f"{_HIDDEN[hidden]} gs"
        return state if hidden[0] else f"{state} {opacity_state(opacity)}".rstrip()

    def picture_state(self) -> str:
        """Pictures are always drawn."""
        return f"{_HIDDEN[False, False]} gs"

    def resources(self) -> dict[str, Object]:
        """The graphics states (table 58): what is hidden is wholly transparent."""
        states = {
            name: Dictionary(Type=Name.ExtGState, ca=int(not fills), CA=int(not strokes))
            for (fills, strokes), name in _HIDDEN.items()
        }
        return {"/ExtGState": Dictionary(states)}

    def image(self, picture: Picture) -> Raster | Vector:
        """Pixels, as the press gets them."""
        return as_pixels(picture)

    def samples(self, raster: Raster) -> Samples:
        """One grey a pixel."""
        inks = np.frombuffer(self._separator.picture(raster), np.uint8)
        return Samples(Name.DeviceGray, 1, (STEPS - inks[self._place :: len(INKS)]).astype(np.uint8).tobytes())

    def _grey(self, colour: Colour, layer: LayerName) -> str:
        return number_text(1 - self._separator.inks(colour, layer).shares[self._place])

    def _is_without(self, colour: Colour | None, layer: LayerName) -> bool:
        return colour is None or self._separator.inks(colour, layer).steps[self._place] == 0


def overprints(
    separator: Separator, darkest: float, fill: Colour | None, stroke: Colour | None, layer: LayerName
) -> _Overprints:
    """Whether fill and stroke of a paint leave the inks under them; one that is not there follows the other."""
    found = [
        colour is not None and separator.overprints(separator.inks(colour, layer), layer, darkest)
        for colour in (fill or stroke, stroke or fill)
    ]
    return found[0], found[1]


def as_pixels(picture: Picture) -> Raster:
    """The pixels of a picture at its size on the face: its own, or those of its drawing at `VECTOR_PPI`.

    Raises ArtError where the drawing takes too long at that size.
    """
    image = picture.image
    if isinstance(image, Raster):
        return image
    return _drawn(image, *_pixels(picture.box))


# Drawn once for all plates of a face.
@lru_cache(maxsize=2)
def _drawn(image: Vector, width: int, height: int) -> Raster:
    from padspec.art.svg.drawing import draw_svg

    rgba = draw_svg(image.svg, image.name, width, height).rgba
    alpha = None if (rgba[..., 3] == 255).all() else rgba[..., 3].tobytes()
    return Raster(image.name, image.digest, width, height, rgba[..., :3].tobytes(), alpha)


def _pixels(box: Box) -> tuple[int, int]:
    ppi = bounded_ppi(Size(box.width, box.height), VECTOR_PPI)
    return max(1, round(box.width * ppi / 25.4)), max(1, round(box.height * ppi / 25.4))


def _tint(colour: Colour) -> str:
    """Marks are solid on every plate; white ones are on none."""
    return "0" if colour == WHITE else "1"
