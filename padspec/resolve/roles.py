"""The colours a face needs, from the leading hue of its picture: recipes, not themes.

A recipe states each role as an OKLab lightness and chroma, so that equal numbers look equal from hue to hue and
one recipe serves every picture. Where a number alone would miss a contrast that the checks ask for, lightness is
moved until there is room to spare. The recipes are the ready colourways of a picture.

`hue` is in degrees; None means a picture without colour, which gets the warm grey of uncoated paper.
"""

from dataclasses import dataclass
from math import cos, radians

from padspec.base.colour import Colour
from padspec.base.contrast import contrast, luminance
from padspec.base.mixing import from_lch
from padspec.resolve.role_names import ROLE_NAMES

PAPER_HUE = 75.0
NEUTRAL_SHARE = 0.3
#: The checks warn below these, for squares and for small lettering.
RULE_LIMIT, LETTERING_LIMIT = 3.0, 4.5
#: What a recipe asks for, to leave room to spare.
RULE_CONTRAST, LETTERING_CONTRAST = 3.3, 5.5

#: The hue that is lightest at its most colourful: it turns muddy where a blue turns rich (sRGB yellow is 110°).
_SUNNY_HUE = 100.0


@dataclass(frozen=True, slots=True)
class Tone:
    """One role of a recipe: OKLab lightness (0 to 1) and chroma, in the leading hue or the one opposite.

    `sunny` is how much lighter (or, below 0, darker) the tone is in yellow than in the hue across from it, half
    of it up and half down: the same lightness everywhere would make a rich ground mud in yellow or chalk in blue.
    """

    lightness: float
    chroma: float
    opposite: bool = False
    sunny: float = 0.0


@dataclass(frozen=True, slots=True)
class Recipe:
    """One colourway: the tones of the five roles. Rules and lettering may end darker or lighter than their tone.

    `lettering_on_ground` is the tone of a heading that stands on the ground itself where no colour reads on both
    the paper and this ground, so that the lettering is made for the paper alone; None where one colour does both.
    """

    name: str
    paper: Tone
    ground: Tone
    pattern: Tone
    rule: Tone
    lettering: Tone
    lettering_on_ground: Tone | None = None


WHITE_PAPER = Tone(1.0, 0.0)

NATURAL = Recipe(
    "natural",
    paper=WHITE_PAPER,
    ground=Tone(0.925, 0.046),
    pattern=Tone(0.885, 0.064),
    rule=Tone(0.62, 0.10),
    lettering=Tone(0.44, 0.11),
)

RECIPES: tuple[Recipe, ...] = (
    NATURAL,
    Recipe(
        "lighter",
        paper=WHITE_PAPER,
        ground=Tone(0.968, 0.020),
        pattern=Tone(0.928, 0.044),
        rule=Tone(0.64, 0.085),
        lettering=Tone(0.50, 0.11),
    ),
    Recipe(
        "deeper",
        paper=WHITE_PAPER,
        ground=Tone(0.405, 0.090, sunny=0.08),
        pattern=Tone(0.535, 0.098, sunny=0.04),
        rule=Tone(0.60, 0.10),
        lettering=Tone(0.40, 0.11),
        lettering_on_ground=Tone(0.97, 0.018),
    ),
    Recipe(
        "muted",
        paper=WHITE_PAPER,
        ground=Tone(0.860, 0.030),
        pattern=Tone(0.912, 0.020),
        rule=Tone(0.60, 0.040),
        lettering=Tone(0.41, 0.048),
    ),
    Recipe(
        "complementary",
        paper=WHITE_PAPER,
        ground=Tone(0.900, 0.056, opposite=True, sunny=0.04),
        pattern=Tone(0.952, 0.030, opposite=True, sunny=0.03),
        rule=Tone(0.62, 0.115),
        lettering=Tone(0.44, 0.125),
    ),
    Recipe(
        "single-hue",
        paper=Tone(0.982, 0.012),
        ground=Tone(0.815, 0.086, sunny=0.06),
        pattern=Tone(0.875, 0.064, sunny=0.05),
        rule=Tone(0.60, 0.115),
        lettering=Tone(0.38, 0.10),
    ),
)

#: The names of the ready colourways; the first is what a design has that names none.
COLOURWAYS: tuple[str, ...] = tuple(recipe.name for recipe in RECIPES)


def recipe_named(name: str) -> Recipe:
    """The recipe of a ready colourway; raises KeyError for a name that is not in `COLOURWAYS`."""
    for recipe in RECIPES:
        if recipe.name == name:
            return recipe
    raise KeyError(name)


def ready_set(hue: float | None, recipe: Recipe = NATURAL) -> tuple[tuple[str, Colour], ...]:
    """The five roles by name, as they are for a design that sets none of them itself."""
    sheet, behind = paper(hue, recipe), ground(hue, recipe)
    found = (
        sheet,
        behind,
        pattern(hue, recipe),
        rule(hue, sheet, recipe),
        lettering(hue, sheet, behind, recipe),
    )
    return tuple(zip(ROLE_NAMES, found, strict=True))


def paper(hue: float | None, recipe: Recipe = NATURAL) -> Colour:
    """What is written on: white, or a whisper of the hue."""
    return _toned(recipe.paper, hue)


def ground(hue: float | None, recipe: Recipe = NATURAL) -> Colour:
    """The background; pale in most recipes, so that the picture and the paper lead."""
    return _toned(recipe.ground, hue)


def pattern(hue: float | None, recipe: Recipe = NATURAL) -> Colour:
    """What is drawn on the ground: a step away from it, quiet, never competing."""
    return _toned(recipe.pattern, hue)


def rule(hue: float | None, paper: Colour, recipe: Recipe = NATURAL) -> Colour:
    """Rules and squares on the paper."""
    return _readable(recipe.rule, hue, (paper,), RULE_CONTRAST)


def lettering(hue: float | None, paper: Colour, behind: Colour, recipe: Recipe = NATURAL) -> Colour:
    """The heading, legible on the paper, and on the ground behind it unless the recipe has a tone for that."""
    under = (paper, behind) if recipe.lettering_on_ground is None else (paper,)
    return _readable(recipe.lettering, hue, under, LETTERING_CONTRAST)


def lettering_on_ground(
    hue: float | None, under: tuple[Colour, ...], own: Colour, recipe: Recipe = NATURAL
) -> Colour:
    """A heading that stands on the ground itself: the lettering `own`, where that can be read there.

    `under` is what it may lie on: the ground and its pattern.
    """
    if min(contrast(own, other) for other in under) >= LETTERING_LIMIT:
        return own
    return _readable(recipe.lettering_on_ground or recipe.lettering, hue, under, LETTERING_LIMIT)


def rule_on_ground(hue: float | None, under: tuple[Colour, ...], own: Colour, recipe: Recipe = NATURAL) -> Colour:
    """Rules and squares that stand on the ground itself, without a panel: the rule `own`, where that shows."""
    if min(contrast(own, other) for other in under) >= RULE_LIMIT:
        return own
    return _readable(recipe.rule, hue, under, RULE_CONTRAST)


def _toned(tone: Tone, hue: float | None) -> Colour:
    """A tone in the leading hue; a picture without colour has it in the hue of paper, or the cool one opposite."""
    turned = (PAPER_HUE if hue is None else hue) + (180.0 if tone.opposite else 0.0)
    level = tone.lightness
    if hue is not None and tone.sunny:
        level += tone.sunny / 2 * cos(radians(turned - _SUNNY_HUE))
    return from_lch(level, tone.chroma * (NEUTRAL_SHARE if hue is None else 1.0), turned)


def _readable(tone: Tone, hue: float | None, under: tuple[Colour, ...], least: float) -> Colour:
    """The colour nearest to the wish in lightness that keeps the least contrast on all that lies under it.

    On dark paper it is sought upwards, on light paper downwards; where even the end of the scale would miss
    the limit, that end is returned and the check will say so.
    """
    dark = max(float(luminance(colour.unit)) for colour in under) < 0.18
    start, step = (max(tone.lightness, 1 - tone.lightness / 2), 0.01) if dark else (tone.lightness, -0.01)
    for n in range(101):
        level = start + n * step
        if not 0 <= level <= 1:
            break
        colour = _toned(Tone(level, tone.chroma, tone.opposite), hue)
        if min(contrast(colour, other) for other in under) >= least:
            return colour
    return _toned(Tone(1.0 if dark else 0.0, 0.0), hue)
