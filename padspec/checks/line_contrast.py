"""Contrast of rules, squares and lettering against what lies under them, and the colour that would pass.

Three checks and their remedies share this measure; each states its own limits and source.
"""

from collections.abc import Callable
from dataclasses import dataclass

from padspec.base.colour import Colour, Floats
from padspec.base.contrast import delta_e
from padspec.base.mixing import from_lch, lch
from padspec.checks.check import Subject
from padspec.checks.under import least_contrast
from padspec.scene.nodes import Part, Shape, shapes


@dataclass(frozen=True, slots=True)
class Lines:
    """The lines of one part of one block that share a colour, with what lies under each of them."""

    block: str
    colour: Colour
    under: tuple[Floats, ...]

    def worst(self, colour: Colour) -> float:
        """The least contrast that any of the lines would have in this colour."""
        return min(least_contrast(colour, stretch) for stretch in self.under)

    def best(self, colour: Colour) -> float:
        """The greatest contrast of any of the lines in this colour."""
        return max(least_contrast(colour, stretch) for stretch in self.under)


def lines_of(subject: Subject, part: Part) -> tuple[Lines, ...]:
    """The lines of one part, one entry for each block and colour."""
    found: dict[tuple[str, Colour], list[Floats]] = {}
    for shape in shapes(subject.face.scene):
        if shape.cause.part == part:
            found.setdefault((shape.cause.block, _colour(shape)), []).append(subject.under.along(shape.outline))
    return tuple(Lines(block, colour, _told_apart(under)) for (block, colour), under in found.items())


def nearest_passing(colour: Colour, passes: Callable[[Colour], bool]) -> Colour | None:
    """The colour nearest by CIEDE2000 with the same hue that passes, or None where none does.

    Lightness is swept both ways; chroma stays unless sRGB cannot hold it at that lightness.
    """
    lightness, chroma, hue = lch(colour)
    found: list[Colour] = []
    for step in (-0.005, 0.005):
        level = lightness
        while 0 <= level <= 1:
            candidate = from_lch(level, chroma, hue)
            if passes(candidate):
                found.append(candidate)
                break
            level += step
    return min(found, key=lambda c: (round(delta_e(colour, c), 9), c), default=None)


def _told_apart(stretches: list[Floats]) -> tuple[Floats, ...]:
    """What can matter to a contrast: equal stretches count once, and one pixel stands for an even stretch.

    A remedy tries a hundred colours on every line; most rules of a pad lie on the same white.
    """
    short = (stretch[:1] if (stretch == stretch[:1]).all() else stretch for stretch in stretches)
    return tuple({stretch.tobytes(): stretch for stretch in short}.values())


def _colour(shape: Shape) -> Colour:
    if shape.stroke is not None:
        return shape.stroke.colour
    if shape.fill is None:
        raise ValueError("a shape without fill or stroke prints nothing and has no contrast")
    return shape.fill
