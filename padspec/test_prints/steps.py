"""The steps that the calibration page prints: lengths with their percentages, line weights, tints."""

from dataclasses import dataclass
from math import ceil, floor

from padspec.base.colour import Colour
from padspec.base.numbers import EPSILON, number_text
from padspec.base.units import parse_length

#: A stretch beyond this is no inaccuracy of the printer's: the dialogue scales to fit (common practice).
MOST_STRETCH = 0.01
#: What an eye and a steel ruler tell apart, in mm.
MEASURED = 0.5

#: Round weights in mm, and among them the round ones in points: 0.25 pt is what crop marks have.
WEIGHTS = ("0.05 mm", "0.25 pt", "0.1 mm", "0.15 mm", "0.5 pt", "0.2 mm", "0.75 pt", "0.3 mm", "0.4 mm", "0.5 mm")
#: Two colours that no printer has as an ink of its own, so that it makes them of dots.
SCREENED = (Colour(128, 128, 128), Colour(122, 59, 88))

TINTS = (2, 3, 4, 5, 7, 10, 15, 20, 30, 50, 70, 100)
#: The colours that are thinned: black, and three hues that grounds are made of.
THINNED = (
    ("grey", Colour(0, 0, 0)),
    ("rose", Colour(178, 60, 110)),
    ("ochre", Colour(196, 140, 30)),
    ("teal", Colour(20, 120, 130)),
)


@dataclass(frozen=True, slots=True)
class Stretch:
    """A length as it may be measured, and what it says about the scale, both as they are written."""

    measured: str
    percentage: str
    is_true: bool


def stretches(nominal: float) -> tuple[Stretch, ...]:
    """Every half millimetre that a bar may measure, within 1 % of what it should, with the percentage to enter.

    >>> [(s.measured, s.percentage) for s in stretches(100)]
    [('99', '99'), ('99.5', '99.5'), ('100', '100'), ('100.5', '100.5'), ('101', '101')]
    """
    reach = nominal * MOST_STRETCH / MEASURED
    steps = range(ceil(-reach - EPSILON), floor(reach + EPSILON) + 1)
    lengths = [(nominal + n * MEASURED, n) for n in steps]
    return tuple(
        Stretch(number_text(length, 1), number_text(length / nominal * 100, 2), n == 0) for length, n in lengths
    )


def written_weight(weight: float) -> str:
    """A weight as a maker would write it, so that reading it gives the very same number.

    >>> written_weight(0.3), written_weight(25.4 / 72 / 4), written_weight(0.1 + 0.2)
    ('0.3 mm', '0.25 pt', '0.3 mm')
    """
    in_points = f"{number_text(weight * 72 / 25.4)} pt"
    if abs(round(weight, 3) - weight) > EPSILON and abs(parse_length(in_points) - weight) < EPSILON:
        return in_points
    return f"{number_text(weight, 9)} mm"


def weight_in_points(weight: str) -> str:
    """A weight in points, and one that is written in points in millimetres.

    >>> weight_in_points("0.1 mm"), weight_in_points("0.25 pt")
    ('0.28 pt', '0.09 mm')
    """
    length = parse_length(weight)
    return f"{length:.2f} mm" if weight.endswith("pt") else f"{length * 72 / 25.4:.2f} pt"


def tint(colour: Colour, percent: int) -> Colour:
    """White moved so far towards a colour, channel by channel, as a screen of so many per cent would be asked for.

    >>> tint(Colour(0, 0, 0), 2).hex
    '#fafafa'
    """
    channels = (colour.red, colour.green, colour.blue)
    red, green, blue = (floor(255 - (255 - channel) * percent / 100 + 0.5 + EPSILON) for channel in channels)
    return Colour(red, green, blue)
