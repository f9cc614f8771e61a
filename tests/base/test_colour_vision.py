"""Colours as seen with a deficiency, against the filters of coloraide: another hand's work on the same model.

coloraide's "machado" filters follow Machado, Oliveira and Fernandes (2009) on linear sRGB, as ours do.
"""

import numpy as np
import pytest
from coloraide import Color
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.colour import BLACK, WHITE, Colour
from padspec.base.colour_vision import DEFICIENCIES, Deficiency, as_seen, colour_as_seen
from padspec.base.contrast import contrast_ratios

FILTERS = {"protanopia": "protan", "deuteranopia": "deutan", "tritanopia": "tritan"}
levels = st.integers(0, 255)
colours = st.builds(Colour, levels, levels, levels)


@pytest.mark.parametrize("deficiency", DEFICIENCIES)
@settings(deadline=None)
@given(colour=colours)
def test_a_colour_is_seen_as_coloraide_sees_it(deficiency: Deficiency, colour: Colour) -> None:
    theirs = Color(colour.hex).filter(FILTERS[deficiency], 1, method="machado", space="srgb-linear")
    wanted = np.clip(theirs.convert("srgb").coords(), 0, 1)
    assert as_seen(colour.unit, deficiency) == pytest.approx(wanted, abs=1e-6)


@pytest.mark.parametrize("deficiency", DEFICIENCIES)
@given(level=levels)
def test_a_grey_stays_as_it_is(deficiency: Deficiency, level: int) -> None:
    grey = Colour(level, level, level)
    assert colour_as_seen(grey, deficiency) == grey


@pytest.mark.parametrize("deficiency", DEFICIENCIES)
def test_paper_and_ink_stay_white_and_black(deficiency: Deficiency) -> None:
    assert (colour_as_seen(WHITE, deficiency), colour_as_seen(BLACK, deficiency)) == (WHITE, BLACK)


def test_a_whole_picture_is_seen_pixel_by_pixel() -> None:
    picture = np.random.default_rng(5).random((4, 6, 3))
    seen = as_seen(picture, "deuteranopia")
    assert seen.shape == (4, 6, 3)
    assert seen[2, 3] == pytest.approx(as_seen(picture[2, 3], "deuteranopia"), abs=1e-12)


def test_red_is_darker_without_the_cones_for_long_waves() -> None:
    """The best known sign of protanopia: a red light looks dim."""
    red = Colour(255, 0, 0)
    assert max(as_seen(red.unit, "protanopia")) < 0.5 < max(as_seen(red.unit, "deuteranopia"))


def test_red_and_green_are_told_apart_less_and_blue_and_yellow_no_less() -> None:
    def apart(one: str, other: str, deficiency: Deficiency) -> float:
        a, b = (as_seen(Colour.from_hex(text).unit, deficiency) for text in (one, other))
        return float(np.linalg.norm(a - b))

    for deficiency in ("protanopia", "deuteranopia"):
        assert apart("#c06040", "#609040", deficiency) < 0.5 * apart("#4060c0", "#c0b040", deficiency)


@pytest.mark.parametrize("deficiency", DEFICIENCIES)
@pytest.mark.parametrize(("asked", "left"), [(1.8, 1.5), (3.0, 2.5)])
def test_on_white_no_contrast_that_is_asked_for_loses_more_than_a_sixth(
    deficiency: Deficiency, asked: float, left: float
) -> None:
    """What the limits of the check rest on, over a grid of all of sRGB."""
    steps = np.linspace(0, 1, 33)
    colours = np.stack(np.meshgrid(steps, steps, steps), axis=-1).reshape(-1, 3)
    passing = colours[contrast_ratios(WHITE, colours) >= asked]
    assert contrast_ratios(WHITE, as_seen(passing, deficiency)).min() >= left
