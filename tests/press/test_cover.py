"""Coverage of made separations, counted by hand."""

import numpy as np
import pytest

from padspec.press.cover import measure_cover

#: Ten pixels a millimetre.
PPI = 254


def plates(width: float = 20, height: float = 30) -> np.ndarray:
    return np.zeros((round(height * 10), round(width * 10), 4), np.uint8)


def test_bare_paper_has_no_cover():
    cover = measure_cover(plates(), PPI)
    assert (cover.most, cover.mean, cover.means) == (0, 0, (0, 0, 0, 0))


def test_four_solid_inks_are_400_per_cent():
    assert measure_cover(plates() + np.uint8(255), PPI).most == 4


def test_total_cover_is_the_sum_of_the_inks():
    """By hand: 51 + 102 + 153 + 204 of 255 are 20 + 40 + 60 + 80 %."""
    found = measure_cover(plates() + np.array([51, 102, 153, 204], np.uint8), PPI)
    assert found.most == pytest.approx(2.0)
    assert found.means == pytest.approx((0.2, 0.4, 0.6, 0.8))


def test_the_heaviest_millimetre_is_found_in_its_place():
    made = plates()
    made[120:130, 50:60] = 255  # 5 to 6 mm across, 12 to 13 mm down
    found = measure_cover(made, PPI, (-3, -3))
    assert found.most == 4
    assert found.at == pytest.approx((2.5, 9.5))


def test_a_single_pixel_does_not_alarm():
    made = plates()
    made[120, 50] = 255
    assert measure_cover(made, PPI).most == pytest.approx(4 / 100)


def test_half_a_square_of_solid_ink_is_half_of_its_cover():
    made = plates()
    made[120:125, 50:60, 0] = 255
    assert measure_cover(made, PPI).most == pytest.approx(0.5)


def test_means_are_over_the_whole_area():
    """By hand: a solid square of 10 × 10 mm on 20 × 30 mm is a sixth."""
    made = plates()
    made[:100, :100, 3] = 255
    found = measure_cover(made, PPI)
    assert found.means == pytest.approx((0, 0, 0, 1 / 6))
    assert found.area == pytest.approx(600)


def test_an_area_smaller_than_a_square_is_measured_whole():
    made = plates(0.5, 0.5)
    made[:] = 255
    assert measure_cover(made, PPI).most == 4
