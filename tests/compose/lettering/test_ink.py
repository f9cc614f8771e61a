"""Measures of ink against the pens of fontTools."""

import pytest

from padspec.compose.lettering.ink import area, hanging, true_bounds
from padspec.compose.lettering.shaping import shape_line
from padspec.scene.outline import Curve, Move, circle

from .. import replay
from .fonts import shelved


@pytest.mark.parametrize("name", ["Fredoka", "Lora", "Caveat", "Rubik"])
def test_bounds_and_area_are_those_that_fonttools_finds(name: str) -> None:
    outline = shape_line(shelved(name), "Sag & 258 gj").outline
    box = true_bounds(outline)
    assert (box.x, box.y, box.right, box.bottom) == pytest.approx(replay.true_bounds(outline), abs=1e-9)
    letter = shape_line(shelved(name), "g").outline
    assert area(letter) == pytest.approx(replay.true_area(letter), abs=1e-9)


def test_a_curve_reaches_to_its_extreme_and_not_to_its_handles() -> None:
    """B(½) of (0, 0) (0, -4) (4, -4) (4, 0) is (2, -3)."""
    box = true_bounds((Move(0, 0), Curve(0, -4, 4, -4, 4, 0)))
    assert (box.x, box.y, box.width, box.height) == pytest.approx((0, -3, 4, 3), abs=1e-9)


@pytest.mark.parametrize(("mark", "share"), [("\u201c", 0.7), (".", 0.7), ("-", 0.5), ("a", 0.0)])
def test_a_mark_hangs_by_its_share(mark: str, share: float) -> None:
    assert hanging(mark, circle(0, 0, 1)) == pytest.approx(2 * share)
