"""Ink against worked sums: pages of the stated yield, money, and the naive inks of known colours."""

from decimal import Decimal

import numpy as np
import pytest
from colormath.color_conversions import convert_color
from colormath.color_objects import CMYKColor, sRGBColor
from hypothesis import given
from hypothesis import strategies as st

from padspec.making.ink import Coverage, coverage, ink_use, inks_of, saved
from padspec.resolve.studio import Cartridge, Ink

FACE = 3.5 * 8.5 * 25.4**2
NO_INK = Ink(None, None, None, None, 0.0)


def solid(*rgb: int) -> np.ndarray:
    return np.full((3, 5, 3), rgb, np.uint8)


@pytest.mark.parametrize(
    ("colour", "inks"),
    [
        # Worked by the definition K = 1 − max(R, G, B), C = (1 − R − K) ÷ (1 − K).
        ((0xFF, 0x00, 0x00), (0, 1, 1, 0)),
        ((0x33, 0x66, 0x99), (0.6667, 0.3333, 0, 0.4)),
        ((0x80, 0x80, 0x80), (0, 0, 0, 0.498)),
        ((0xF5, 0xE6, 0xD3), (0, 0.0612, 0.1388, 0.0392)),
        ((0, 0, 0), (0, 0, 0, 1)),
        ((255, 255, 255), (0, 0, 0, 0)),
    ],
)
def test_naive_inks_of_known_colours(colour: tuple[int, int, int], inks: tuple[float, ...]) -> None:
    assert coverage(solid(*colour)).inks == pytest.approx(inks, abs=5e-5)


def test_the_naive_sum_jumps_at_black_and_so_is_no_measure_of_the_most_ink() -> None:
    assert coverage(solid(0, 0, 0)).sum == pytest.approx(1.0)
    assert coverage(solid(0, 0, 1)).sum == pytest.approx(2.996, abs=5e-4)


@given(st.tuples(*[st.integers(0, 255)] * 3))
def test_colormath_has_the_same_inks(colour: tuple[int, int, int]) -> None:
    """colormath's own sRGB → CMY → CMYK, a second implementation of the definition."""
    other = convert_color(sRGBColor(*colour, is_upscaled=True), CMYKColor)
    wanted = (other.cmyk_c, other.cmyk_m, other.cmyk_y, other.cmyk_k)
    assert inks_of(np.array(colour, np.uint8)).tolist() == pytest.approx(wanted, abs=1e-9)


def test_coverage_is_the_mean_over_the_face() -> None:
    face = np.full((1000, 10, 3), 255, np.uint8)
    face[:300] = (0, 255, 255)
    assert coverage(face).inks == pytest.approx((0.3, 0, 0, 0))


@pytest.mark.parametrize(
    ("cover", "area", "pages"),
    [
        # 191.935 cm² × 30 % ÷ (623.7 cm² × 5 %) = 1.84642; solid 6.15474; a solid A4 is 20 pages of 5 %.
        (0.30, FACE, 1.84642),
        (1.0, FACE, 6.1547),
        (1.0, 210 * 297, 20),
    ],
)
def test_pages_of_the_stated_yield(cover: float, area: float, pages: float) -> None:
    use = ink_use(Coverage(cover, 0, 0, 0), area, NO_INK)
    assert [float(one) for one in use.pages] == pytest.approx([pages, 0, 0, 0], abs=5e-5)


def test_what_a_face_costs_by_hand() -> None:
    # 10 % cyan and 20 % black of A4: 2 and 4 pages; 15.00 ÷ 300 = 0.05 and 20.00 ÷ 400 = 0.05 a page: 0.30.
    ink = Ink(Cartridge(Decimal("15.00"), 300), None, None, Cartridge(Decimal("20.00"), 400), 0.0)
    assert ink_use(Coverage(0.1, 0, 0, 0.2), 210 * 297, ink).cost == Decimal("0.30")
    more = Ink(ink.cyan, None, None, ink.black, 0.25)
    assert ink_use(Coverage(0.1, 0, 0, 0.2), 210 * 297, more).cost == Decimal("0.375")


def test_no_cost_is_claimed_where_a_price_is_missing() -> None:
    ink = Ink(Cartridge(Decimal("15"), 300), None, None, None, 0.0)
    assert ink_use(Coverage(0.1, 0.1, 0, 0), 100, ink).cost is None
    assert ink_use(Coverage(0.1, 0, 0, 0), 100, ink).cost is not None


def test_what_a_white_panel_saves() -> None:
    # A ground of 20 % magenta all over, half of which a white panel takes away, on A4: 4 pages against 2.
    ink = Ink(None, Cartridge(Decimal("10"), 100), None, None, 0.0)
    whole, half = (ink_use(Coverage(0, m, 0, 0), 210 * 297, ink) for m in (0.2, 0.1))
    assert saved(whole, half).pages[1] == 2
    assert saved(whole, half).cost == Decimal("0.2")
