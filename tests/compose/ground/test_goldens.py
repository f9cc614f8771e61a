"""A small piece of each kind as SVG: whatever changes in one shows in the diff.

`python -m pytest tests/compose/ground --renew-goldens` writes them anew, and the run that does so fails.
"""

from collections.abc import Callable

import pytest

from padspec.base.colour import Colour
from padspec.base.geometry import Size
from padspec.draw.svg import face_svg
from padspec.resolve.ground import KINDS

from .drawn import pattern, scene

ROSE, CREAM, PLUM = Colour(226, 204, 216), Colour(240, 228, 234), Colour(122, 59, 88)
#: What makes a piece of 24 × 18 mm hold a handful of marks.
SIZES = {"wave": 9, "sprinkle": 6, "scallop": 12, "dots": 8, "lattice": 8, "motif": 12, "gingham": 8, "checks": 8}


@pytest.mark.parametrize("kind", list(KINDS))
def test_a_small_piece_is_drawn_as_it_was(kind: str, golden: Callable[[str, str], None]) -> None:
    colour = Colour(234, 220, 226) if kind == "gradient" else ROSE
    settings = {"size": SIZES[kind]} if kind in SIZES else {}
    if kind == "sprinkle":
        settings["colours"] = (PLUM,)
    if kind == "motif":
        settings |= {"turn": 30, "jitter": 0.5}
    drawn = scene(pattern(kind, colour=colour, **settings), Size(24, 18), 1.0, CREAM)
    golden(f"{kind}.svg", face_svg(drawn, kind, lambda picture: f"{picture.name}.png"))
