"""WCAG 2 contrast against its definition worked to six digits, and compared without rounding.

Relative luminance and contrast ratio: WCAG 2.2, definitions; 4.54 for #767676 on white is published in
Understanding SC 1.4.3, and that 2.999 fails 3 in Understanding SC 1.4.11.
"""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.colour import BLACK, WHITE, Colour
from padspec.base.contrast import contrast, contrast_ratios, luminance

channels = st.integers(0, 255)
colours = st.builds(Colour, channels, channels, channels)


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000", "#fff", 21.000000),
        ("#333", "#fff", 12.634654),
        ("#595959", "#fff", 7.004729),
        ("#5a5a5a", "#fff", 6.896926),
        ("#666", "#fff", 5.741836),
        ("#757575", "#fff", 4.607518),
        ("#767676", "#fff", 4.542225),
        ("#777", "#fff", 4.478089),
        ("#949494", "#fff", 3.033470),
        ("#959595", "#fff", 2.995346),
        ("#999", "#fff", 2.849028),
        ("#aaa", "#fff", 2.323123),
        ("#bbb", "#fff", 1.919796),
        ("#ccc", "#fff", 1.605929),
        ("#ddd", "#fff", 1.358247),
        ("#eee", "#fff", 1.160230),
        ("#0f0", "#fff", 1.372190),
        ("#00f", "#fff", 8.592471),
        ("#ff0", "#fff", 1.073839),
        ("#f00", "#fff", 3.998477),
        ("#0000ee", "#fff", 9.397616),
        ("#808080", "#000", 5.317210),
        ("#4a4a4a", "#fdf5e6", 8.178775),
        ("#888", "#fff", 3.544886),
    ],
)
def test_a_pair_has_its_published_ratio(one: str, other: str, ratio: float) -> None:
    assert contrast(Colour.from_hex(one), Colour.from_hex(other)) == pytest.approx(ratio, abs=1e-6)


@pytest.mark.parametrize(
    ("least", "grey"),
    [
        (7.0, "#595959"),
        (4.5, "#767676"),
        (3.0, "#949494"),
        (2.0, "#b7b7b7"),
        (1.5, "#d2d2d2"),
        (1.3, "#e1e1e1"),
        (1.2, "#eaeaea"),
    ],
)
def test_the_lightest_grey_that_reaches_a_limit_on_white(least: float, grey: str) -> None:
    reaching = [level for level in range(256) if contrast(Colour(level, level, level), WHITE) >= least]
    assert Colour(*[max(reaching)] * 3).hex == grey


@pytest.mark.parametrize(("grey", "limit"), [("#777777", 4.5), ("#959595", 3.0), ("#5a5a5a", 7.0)])
def test_a_ratio_that_would_round_up_to_its_limit_still_fails(grey: str, limit: float) -> None:
    ratio = contrast(Colour.from_hex(grey), WHITE)
    assert ratio < limit
    assert round(ratio, 1) >= limit - 0.1


@settings(deadline=None)
@given(colours, colours)
def test_contrast_is_the_same_both_ways_and_between_1_and_21(one: Colour, other: Colour) -> None:
    ratio = contrast(one, other)
    assert ratio == contrast(other, one)
    assert 1 <= ratio <= 21 + 1e-12


@settings(deadline=None)
@given(colours)
def test_a_colour_has_no_contrast_with_itself(colour: Colour) -> None:
    assert contrast(colour, colour) == 1


@settings(deadline=None)
@given(colours, st.lists(colours, min_size=1, max_size=8))
def test_many_at_once_are_each_the_ratio_of_their_pair(colour: Colour, under: list[Colour]) -> None:
    together = contrast_ratios(colour, np.array([other.unit for other in under]))
    assert together == pytest.approx([contrast(colour, other) for other in under], abs=1e-12)


def test_luminance_weighs_with_the_four_digits_that_wcag_prints() -> None:
    assert luminance(np.eye(3)) == pytest.approx([0.2126, 0.7152, 0.0722], abs=1e-15)
    assert (luminance(BLACK.unit), luminance(WHITE.unit)) == pytest.approx((0, 1), abs=1e-15)


def test_the_old_and_the_new_threshold_of_the_curve_never_differ_in_8_bits() -> None:
    # WCAG's text had 0.03928 until 2021 and has 0.04045 since: no code value lies between them.
    assert not [level for level in range(256) if 0.03928 < level / 255 <= 0.04045]
