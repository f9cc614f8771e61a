"""The scales of the calibration page: one at each edge, counting inwards, and the cross that is measured."""

from dataclasses import dataclass

from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.base.numbers import mm_text
from padspec.scene.nodes import Group
from padspec.scene.outline import Outline, line
from padspec.test_prints.setting import SMALL, Nodes, Type, drawn, ruled, upward, words

#: How far an edge scale reaches inwards; desktop printers leave 3 mm to 13 mm (common practice).
REACH = 15
#: What else is on the page keeps this far from its edges, and this far from the bars of the cross.
BAND, BESIDE = 18.5, 6.0
#: The cross keeps clear of what a common printer cannot reach, at the sides and at head and foot.
_CLEAR_ACROSS, _CLEAR_DOWN = 4.5, 20.0
#: A ruler of 300 mm takes it.
_LONGEST = 280.0
_FINE, _BASE = 0.1, 0.25


@dataclass(frozen=True, slots=True)
class Cross:
    """Two bars through the middle of a sheet: what they measure, and the middle, in mm."""

    across: float
    down: float
    middle: tuple[float, float]


def cross_of(size: Size, margins: Sides) -> Cross:
    """The longest bars of whole tens that the margins leave and a ruler takes.

    >>> cross_of(Size(210, 297), Sides.all(4.2))
    Cross(across=200.0, down=250.0, middle=(105.0, 148.5))
    """
    across = size.width - 2 * max(_CLEAR_ACROSS, margins.left, margins.right)
    down = size.height - 2 * max(_CLEAR_DOWN, margins.top, margins.bottom)
    return Cross(_whole_tens(across), _whole_tens(down), (size.width / 2, size.height / 2))


def _whole_tens(length: float) -> float:
    return max(min(length, _LONGEST) // 10 * 10, 10.0)


def edge_scales(size: Size, face: Type) -> Nodes:
    """Two scales at each edge, at its quarters, so that a print that lies askew is seen as well."""
    across, down = (size.width / 4, size.width * 3 / 4), (size.height / 4, size.height * 3 / 4)
    return (
        *(_scale("left", Affine.move(0, y), face) for y in down),
        *(_scale("right", Affine(-1, 0, 0, 1, size.width, y), face) for y in down),
        *(_scale("top", Affine(0, 1, 1, 0, x, 0), face) for x in across),
        *(_scale("bottom", Affine(0, -1, 1, 0, x, size.height), face) for x in across),
    )


def _scale(side: str, place: Affine, face: Type) -> Group:
    """A scale that runs along its own x from 0 at the paper's edge; only its lines are turned, its words stand."""
    base = drawn(line(0, 0, REACH, 0), _BASE, part="scale-bar")
    ticks = drawn(tuple(step for n in range(REACH + 1) for step in _tick(n)), _FINE, part="scale-bar")
    level = side in ("left", "right")
    numbers = []
    for n in range(5, REACH + 1, 5):
        x, y = place.of(n, 0)
        at = (x, y - 2.9) if level else (x + 2.9, y + SMALL * 0.35)
        numbers.append(words(str(n), *at, face.text, SMALL, "centre" if level else "left"))
    x, y = place.of(REACH / 2 + 2.5, 0)
    name = (
        words(side, x, y + 4.4, face.strong, SMALL, "centre")
        if level
        else words(side, x - 2.9, y + SMALL * 0.35, face.strong, SMALL, "right")
    )
    return Group((Group((base, ticks), place), *numbers, name))


def _tick(n: int) -> Outline:
    half = 2.2 if n % 5 == 0 else 1.2
    return line(n, -half, n, half)


def draw_cross(cross: Cross, face: Type) -> Nodes:
    """The bars with fine ticks each 10 mm and long ones at the ends, and what each measures."""
    x, y = cross.middle
    level = Group((drawn(_bar(cross.across), _FINE, part="scale-bar"),), Affine.move(x, y))
    upright = Group((drawn(_bar(cross.down), _FINE, part="scale-bar"),), Affine(0, 1, 1, 0, x, y))
    left, right = x - cross.across / 4, x + cross.across / 4
    above, below = y - cross.down / 4, y + cross.down / 4
    return (
        level,
        upright,
        words(f"{mm_text(cross.across)} from end to end", right, y - 1.9, face.text, SMALL, "centre"),
        words(f"{mm_text(y)} to the top edge of the paper", left, y - 1.9, face.text, SMALL, "centre"),
        upward(f"{mm_text(cross.down)} from end to end", x - 1.9, below, face.text, SMALL, "centre"),
        upward(f"{mm_text(x)} to the left edge of the paper", x - 1.9, above, face.text, SMALL, "centre"),
    )


def _bar(length: float) -> Outline:
    """A bar about 0 along x, in one outline."""
    half, n = length / 2, round(length / 10)
    steps = [line(-half, 0, half, 0)]
    for i in range(n + 1):
        at = -half + i * 10
        reach = 2.4 if i in (0, n) else 0.7
        steps.append(line(at, -reach, at, reach))
    return tuple(step for outline in steps for step in outline)


def quadrants(size: Size) -> tuple[Box, ...]:
    """The four cells that the cross and the edge scales leave, row by row."""
    width, height = size.width / 2 - BAND - BESIDE, size.height / 2 - BAND - BESIDE
    xs, ys = (BAND, size.width / 2 + BESIDE), (BAND, size.height / 2 + BESIDE)
    return tuple(Box(x, y, width, height) for y in ys for x in xs)


def middle_cross(size: Size) -> Nodes:
    """A small cross at the middle of a page."""
    x, y = size.width / 2, size.height / 2
    return (
        ruled(x - 8, y, x + 8, y, _FINE, "scale-bar"),
        ruled(x, y - 8, x, y + 8, _FINE, "scale-bar"),
    )
