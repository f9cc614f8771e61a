"""Ink against worked sums: the naive inks of known colours, pages of the stated yield, money."""

import tracemalloc
from decimal import Decimal, localcontext

import numpy as np
import pytest
from colormath.color_conversions import convert_color
from colormath.color_objects import CMYKColor, sRGBColor
from hypothesis import given
from hypothesis import strategies as st

from padspec.making.ink import Coverage, InkUse, coverage, ink_use, saved
from padspec.resolve.studio import Cartridge, Ink

FACE = 3.5 * 8.5 * 25.4**2
A4 = 210.0 * 297.0
NO_INK = Ink(None, None, None, None, 0.0)


def solid(*rgb: int) -> np.ndarray:
    return np.full((3, 5, 3), rgb, np.uint8)


def inks(cyan: str | None = None, black: str | None = None, allowance: float = 0.0) -> Ink:
    """Cartridges at these prices for 300 and 400 pages."""
    return Ink(
        cyan and Cartridge(Decimal(cyan), 300), None, None, black and Cartridge(Decimal(black), 400), allowance
    )


@pytest.mark.parametrize(
    ("colour", "wanted"),
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
def test_naive_inks_of_known_colours(colour: tuple[int, int, int], wanted: tuple[float, ...]) -> None:
    assert coverage(solid(*colour)).inks == pytest.approx(wanted, abs=5e-5)


@pytest.mark.parametrize(
    ("colour", "total"),
    [((0xFF, 0, 0), 2.0), ((0x33, 0x66, 0x99), 1.4), ((0xF5, 0xE6, 0xD3), 0.239)],
)
def test_the_sum_of_all_inks_of_known_colours(colour: tuple[int, int, int], total: float) -> None:
    """By the same definition: 200 %, 140 %, 23.9 %."""
    assert coverage(solid(*colour)).sum == pytest.approx(total, abs=5e-4)


def test_the_naive_sum_jumps_at_black_and_so_is_no_measure_of_the_most_ink() -> None:
    """#000000 is 100 %, #000001 is 299.6 % (derived)."""
    assert coverage(solid(0, 0, 0)).sum == pytest.approx(1.0)
    assert coverage(solid(0, 0, 1)).sum == pytest.approx(2.996, abs=5e-4)


@given(st.tuples(*[st.integers(0, 255)] * 3))
def test_colormath_has_the_same_inks(colour: tuple[int, int, int]) -> None:
    """colormath's own sRGB → CMY → CMYK, a second implementation of the definition."""
    other = convert_color(sRGBColor(*colour, is_upscaled=True), CMYKColor)
    wanted = (other.cmyk_c, other.cmyk_m, other.cmyk_y, other.cmyk_k)
    assert coverage(solid(*colour)).inks == pytest.approx(wanted, abs=1e-9)


def test_coverage_is_the_mean_over_every_pixel_in_every_band() -> None:
    """Against the formula pixel by pixel; 700 × 900 pixels are more than two bands."""
    pixels = np.random.default_rng(4).integers(0, 256, (700, 900, 3), np.uint8)
    unit = pixels / 255
    light = unit.max(axis=2, keepdims=True)
    tints = np.where(light > 0, (light - unit) / np.where(light > 0, light, 1), 0).mean(axis=(0, 1))
    assert coverage(pixels).inks == pytest.approx((*tints, 1 - light.mean()), abs=2e-9)


def test_coverage_of_a_slice_of_a_picture_is_that_of_the_slice() -> None:
    face = np.full((1000, 10, 3), 255, np.uint8)
    face[:300] = (0, 255, 255)
    assert coverage(face[100:500, 2:8]).inks == pytest.approx((0.5, 0, 0, 0))


def test_a_large_picture_takes_little_memory() -> None:
    pixels = np.zeros((4000, 4000, 3), np.uint8)
    tracemalloc.start()
    coverage(pixels)
    most = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert most < 12_000_000


@pytest.mark.parametrize("shape", [(0, 4, 3), (4, 4, 4), (4, 4)])
def test_what_is_no_picture_has_no_coverage(shape: tuple[int, ...]) -> None:
    with pytest.raises(ValueError, match="height × width × 3"):
        coverage(np.zeros(shape, np.uint8))


@pytest.mark.parametrize(
    ("cover", "area", "pages"),
    [
        # Derived: 191.935 cm² × 30 % ÷ (623.7 cm² × 5 %) = 1.84642; solid 6.15474; a solid A4 is 20 pages of 5 %.
        (0.30, FACE, 1.84642),
        (1.0, FACE, 6.1547),
        (1.0, A4, 20),
    ],
)
def test_pages_of_the_stated_yield(cover: float, area: float, pages: float) -> None:
    use = ink_use(Coverage(0, cover, 0, 0), area, NO_INK)
    assert [float(one) for one in use.pages] == pytest.approx([0, pages, 0, 0], abs=5e-5)


def test_what_a_face_costs_by_hand() -> None:
    # 10 % cyan and 20 % black of A4: 2 and 4 pages; 15.00 ÷ 300 = 0.05 and 20.00 ÷ 400 = 0.05 a page: 0.30.
    assert ink_use(Coverage(0.1, 0, 0, 0.2), A4, inks("15.00", "20.00")).cost == Decimal("0.30")


def test_the_allowance_comes_on_top() -> None:
    # As above, and a quarter more for cleaning.
    use = ink_use(Coverage(0.1, 0, 0, 0.2), A4, inks("15.00", "20.00", 0.25))
    assert (use.pages[0], use.cost) == (Decimal("2.5"), Decimal("0.375"))


def test_no_cost_is_claimed_where_the_price_of_an_ink_that_is_used_is_missing() -> None:
    assert ink_use(Coverage(0.1, 0.1, 0, 0), 100, inks("15")).cost is None
    assert ink_use(Coverage(0.1, 0, 0, 0), 100, inks("15")).cost is not None


def test_the_callers_decimal_context_changes_nothing() -> None:
    wanted = ink_use(Coverage(0.1, 0, 0, 0.2), FACE, inks("15", "20"))
    with localcontext() as context:
        context.prec = 3
        assert ink_use(Coverage(0.1, 0, 0, 0.2), FACE, inks("15", "20")) == wanted


@pytest.mark.parametrize(("by_profile", "says"), [(False, "factor of two"), (True, "press profile")])
def test_every_use_is_labelled_as_an_estimate_of_its_kind(by_profile: bool, says: str) -> None:
    text = ink_use(Coverage(0.1, 0, 0, 0, by_profile), 100, NO_INK).text
    assert text.startswith("Estimate: ")
    assert says in text


def face_of(magenta: float) -> InkUse:
    return ink_use(Coverage(0, magenta, 0, 0), A4, Ink(None, Cartridge(Decimal("10"), 100), None, None, 0.0))


def test_what_a_white_panel_saves() -> None:
    # A ground of 20 % magenta all over, half of which a white panel takes away, on A4: 4 pages against 2.
    assert saved(face_of(0.2), face_of(0.1)).pages == (0, 2, 0, 0)
    assert saved(face_of(0.2), face_of(0.1)).cost == Decimal("0.2")


def test_a_panel_that_takes_more_ink_than_its_ground_saves_less_than_nothing() -> None:
    assert saved(face_of(0.1), face_of(0.2)).cost == Decimal("-0.2")


def test_no_saving_in_money_is_claimed_without_a_price() -> None:
    unpriced = ink_use(Coverage(0, 0.1, 0, 0), A4, NO_INK)
    assert saved(unpriced, unpriced).cost is None
