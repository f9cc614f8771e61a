"""Colours and pictures of a face become amounts of ink.

Areas go as the profile has it. Lines and lettering that are grey take black alone; coloured ones as few inks as
print the same within a tolerance, none darker than black alone. White is the bare paper.
"""

from functools import cached_property

import numpy as np

from padspec.base.colour import WHITE, Colour, Floats
from padspec.press.conversion import Conversion, Steps, wanted_lab
from padspec.press.few_inks import fewest_inks
from padspec.press.inks import NO_INK, SOLID_BLACK, STEPS, Inks
from padspec.press.profile import Press
from padspec.scene.nodes import LayerName, Raster

#: Layers of thin strokes: black alone where grey, few inks where coloured. The others are areas.
LINE_LAYERS: tuple[LayerName, ...] = ("rules", "lettering")
#: A face holds one or two pictures; they are asked for again for every plate.
_KEPT_PICTURES = 2


class Separator:
    """Separates for one press; each colour is worked out once."""

    def __init__(self, press: Press) -> None:
        self.press = press
        self.conversion = Conversion(press)
        self._areas: dict[Colour, Inks] = {}
        self._lines: dict[Colour, Inks] = {}
        self._pictures: dict[Raster, bytes] = {}

    def inks(self, colour: Colour, layer: LayerName) -> Inks:
        """What a colour is printed with in a layer."""
        return self.line(colour) if layer in LINE_LAYERS else self.area(colour)

    def area(self, colour: Colour) -> Inks:
        """A ground or panel: as the profile converts it."""
        if colour not in self._areas:
            self._areas[colour] = _inks(self.conversion.inks(_steps(colour)))
        return self._areas[colour]

    def line(self, colour: Colour) -> Inks:
        """A rule, square or letter: black alone where the colour is grey, else with the fewest inks."""
        if colour not in self._lines:
            self._lines[colour] = self._black(colour) if colour.is_neutral else self._few(colour)
        return self._lines[colour]

    def picture(self, raster: Raster) -> bytes:
        """The rows of a picture in ink, 4 bytes a pixel; its soft mask stays what it is."""
        if raster not in self._pictures:
            while len(self._pictures) >= _KEPT_PICTURES:
                del self._pictures[next(iter(self._pictures))]
            rgb = np.frombuffer(raster.rgb, np.uint8).reshape(raster.height, raster.width, 3)
            self._pictures[raster] = self.conversion.inks(rgb).tobytes()
        return self._pictures[raster]

    def overprints(self, inks: Inks, layer: LayerName, darkest: float) -> bool:
        """Whether a paint leaves the inks under it: black alone in a line layer, and dark enough to.

        Solid black always does. A grey does where it prints no lighter than the `darkest` colour that may lie
        under it (L*), since ink on ink never gets lighter: a pale letter would vanish in a dark ground.
        """
        if layer not in LINE_LAYERS or not inks.is_black_only:
            return False
        return inks == SOLID_BLACK or self.lightness(inks) <= darkest + 1e-6

    def lightness(self, inks: Inks) -> float:
        """L* that some inks print."""
        return float(self.conversion.lab(np.array(inks.steps, np.uint8))[0])

    def _black(self, colour: Colour) -> Inks:
        """The amount of black, never none, that prints nearest to the wanted lightness; of equals the least."""
        if colour == WHITE:
            return NO_INK
        wanted = wanted_lab(colour.unit)[0]
        nearest = int(np.abs(np.round(self._black_scale - wanted, 6)).argmin())
        return Inks(0, 0, 0, max(1, nearest))

    @cached_property
    def _black_scale(self) -> Floats:
        """L* of black alone, from none to solid in 255 steps."""
        scale = np.zeros((STEPS + 1, 4), np.uint8)
        scale[:, 3] = np.arange(STEPS + 1)
        return self.conversion.lab(scale)[:, 0]

    def _few(self, colour: Colour) -> Inks:
        full = self.area(colour)
        if full.count == 1:
            return full
        target = self.conversion.lab(np.array(full.steps, np.uint8))
        # A line need be no darker than black ink alone: else a letter a shade off black would take four inks.
        target[0] = max(target[0], self._black_scale[-1])
        return fewest_inks(target, self.conversion.lab, self.press.line_tolerance) or full


def _steps(colour: Colour) -> Steps:
    return np.array([colour.red, colour.green, colour.blue], np.uint8)


def _inks(steps: Steps) -> Inks:
    return Inks(*(int(amount) for amount in steps))
