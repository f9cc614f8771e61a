"""Lighten, darken, and staying inside sRGB: hue and lightness are kept, chroma gives way.

Tolerances are those of 8 bits a channel: above an OKLab lightness of 0.3 one step of a channel moves lightness
by under 0.004 and a or b by under 0.006.
"""

from itertools import pairwise
from math import cos, radians, sin

import pytest
from coloraide import Color
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from padspec.base.colour import BLACK, WHITE, Colour, oklab_from_srgb
from padspec.base.mixing import darken, from_lch, lch, lighten

levels = st.integers(0, 255)
colours = st.builds(Colour, levels, levels, levels)
hues = st.floats(0, 360, exclude_max=True)
shares = st.floats(0, 1)
LIGHTNESS_STEP, CHROMA_STEP = 0.004, 0.006


@settings(deadline=None)
@given(colours)
def test_nothing_of_the_way_leaves_a_colour_and_all_of_it_reaches_the_end(colour: Colour) -> None:
    assert lighten(colour, 0) == darken(colour, 0) == colour
    assert lighten(colour, 1) == WHITE
    assert darken(colour, 1) == BLACK


@settings(deadline=None)
@given(colours)
def test_lighten_and_darken_move_lightness_one_way_only(colour: Colour) -> None:
    lighter = [lch(lighten(colour, n / 20))[0] for n in range(21)]
    darker = [lch(darken(colour, n / 20))[0] for n in range(21)]
    assert all(after >= before - 1e-9 for before, after in pairwise(lighter))
    assert all(after <= before + 1e-9 for before, after in pairwise(darker))


@settings(deadline=None)
@given(colours, shares)
def test_lighten_goes_its_share_of_the_way_in_lightness_and_chroma(colour: Colour, share: float) -> None:
    lightness, chroma, _ = lch(colour)
    assume(lightness > 0.3)
    now, left, _ = lch(lighten(colour, share))
    assert now == pytest.approx(lightness + (1 - lightness) * share, abs=LIGHTNESS_STEP)
    assert left <= chroma * (1 - share) + CHROMA_STEP


@settings(deadline=None)
@given(colours, shares)
def test_darken_goes_its_share_of_the_way_to_black(colour: Colour, share: float) -> None:
    lightness, chroma, _ = lch(colour)
    assume(lightness * (1 - share) > 0.3)
    now, left, _ = lch(darken(colour, share))
    assert now == pytest.approx(lightness * (1 - share), abs=LIGHTNESS_STEP)
    assert left <= chroma * (1 - share) + CHROMA_STEP


@settings(deadline=None)
@given(st.floats(0.3, 1), st.floats(0, 0.5), hues)
def test_reduction_into_srgb_keeps_lightness_and_hue(lightness: float, chroma: float, hue: float) -> None:
    got, a, b = oklab_from_srgb(from_lch(lightness, chroma, hue).unit)
    across = -a * sin(radians(hue)) + b * cos(radians(hue))
    along = a * cos(radians(hue)) + b * sin(radians(hue))
    assert got == pytest.approx(lightness, abs=LIGHTNESS_STEP)
    assert abs(across) < CHROMA_STEP
    assert -CHROMA_STEP < along < chroma + CHROMA_STEP


@settings(deadline=None)
@given(st.floats(0.3, 0.97), st.floats(0, 0.5), hues)
def test_no_more_chroma_is_given_up_than_srgb_asks(lightness: float, chroma: float, hue: float) -> None:
    kept = lch(from_lch(lightness, chroma, hue))[1]
    assume(kept < chroma - 2 * CHROMA_STEP)
    # coloraide judges: a little more chroma at this lightness and hue is outside sRGB.
    assert not Color("oklch", [lightness, kept + 2 * CHROMA_STEP, hue]).in_gamut("srgb", tolerance=0)


@settings(deadline=None)
@given(colours)
def test_a_colour_taken_apart_and_put_together_is_the_same(colour: Colour) -> None:
    assert from_lch(*lch(colour)) == colour


@settings(deadline=None)
@given(levels)
def test_a_grey_stays_grey(level: int) -> None:
    for share in (0.1, 0.5, 0.9):
        assert lighten(Colour(level, level, level), share).is_neutral
        assert darken(Colour(level, level, level), share).is_neutral


@pytest.mark.parametrize(("lightness", "end"), [(1.4, WHITE), (-0.3, BLACK)])
def test_lightness_past_the_end_of_the_scale_is_its_end(lightness: float, end: Colour) -> None:
    assert from_lch(lightness, 0.2, 40) == end
