"""Washes, glows and smudges of known alpha that fade into their ground, cut out and laid on others.

The bounds are measured on these pictures (no published source); errors are in steps of 255.
"""

import numpy as np
import pytest
from scipy import ndimage

from padspec.art.cutting.cells import brought_up, greatest, in_cells, smoothed
from padspec.art.cutting.cutout import cut_out

from .made import creature, opaque, over, shot

PLUM, OCHRE, ROSE, NIGHT, CREAM, WHITE = (
    (122, 59, 88),
    (230, 180, 60),
    (226, 90, 120),
    (20, 24, 40),
    (246, 240, 228),
    (255, 255, 255),
)
PAIRS = [(PLUM, CREAM), (ROSE, CREAM), (OCHRE, WHITE), (OCHRE, NIGHT), (PLUM, (128, 128, 128))]
NEW_GROUNDS = [(0, 0, 0), (255, 255, 255), (0, 153, 51)]


def wash(size, fill, fade):
    """A disc of one colour whose alpha falls evenly to nothing over so many pixels."""
    y, x = (np.mgrid[:size, :size] + 0.5) / size - 0.5
    alpha = np.clip((0.38 - np.hypot(y, x)) * size / fade, 0, 1)
    return alpha, np.broadcast_to(np.array(fill) / 255, (size, size, 3))


def greatest_errors(alpha, colour, cut):
    found = cut.pixels.rgba / 255
    return np.max(
        [np.abs(over(alpha, colour, g) - over(found[..., 3], found[..., :3], g)).max(axis=2) for g in NEW_GROUNDS],
        axis=0,
    )


def roughness(values):
    """How far values jump from what lies around them, at the worst."""
    return np.abs(values - ndimage.uniform_filter(values, 5)).max()


class TestWash:
    @pytest.mark.parametrize(("fill", "ground"), PAIRS)
    @pytest.mark.parametrize("fade", [60, 120])
    def test_alpha_is_recovered_along_the_fade(self, fill, ground, fade):
        alpha, colour = wash(500, fill, fade)
        cut = cut_out(shot(alpha, colour, ground, noise=1.5), "auto")
        off = np.abs(cut.pixels.rgba[..., 3] / 255 - alpha)
        assert cut.method == "even"
        assert off[(alpha > 0) & (alpha < 1)].mean() < 0.06
        assert np.quantile(off, 0.999) < 0.2

    @pytest.mark.parametrize(("fill", "ground"), PAIRS)
    def test_no_halo_on_a_new_ground(self, fill, ground):
        alpha, colour = wash(500, fill, 100)
        errors = greatest_errors(alpha, colour, cut_out(shot(alpha, colour, ground, noise=1.5), "auto"))
        assert errors[(alpha > 0) & (alpha < 1)].mean() < 14
        assert errors[alpha == 0].mean() < 1

    @pytest.mark.parametrize(("fill", "ground"), PAIRS)
    def test_alpha_has_no_ragged_edge(self, fill, ground):
        """A flood that stops along the grain leaves jumps of an eighth and more."""
        alpha, colour = wash(500, fill, 100)
        cut = cut_out(shot(alpha, colour, ground, noise=2), "auto")
        assert roughness(cut.pixels.rgba[..., 3] / 255) < 0.05

    @pytest.mark.parametrize("quality", [75, 90])
    def test_nor_in_a_jpeg(self, quality):
        alpha, colour = wash(600, ROSE, 120)
        cut = cut_out(shot(alpha, colour, CREAM, noise=2, jpeg=quality), "auto")
        assert roughness(cut.pixels.rgba[..., 3] / 255) < 0.05

    def test_laid_back_on_its_own_ground_it_looks_as_before(self):
        alpha, colour = wash(500, ROSE, 100)
        before = shot(alpha, colour, CREAM)
        found = cut_out(before, "auto").pixels.rgba / 255
        off = np.abs(over(found[..., 3], found[..., :3], CREAM) - before.rgba[..., :3])
        assert off.max() <= 6
        assert off.mean() < 0.6

    def test_the_core_stays_opaque(self):
        alpha, colour = wash(500, ROSE, 60)
        cut = cut_out(shot(alpha, colour, CREAM, noise=1.5), "auto")
        deep = ndimage.binary_erosion(alpha == 1, iterations=20)
        assert cut.pixels.rgba[..., 3][deep].min() >= 250

    def test_a_pale_place_in_the_middle_is_filled(self):
        """A highlight as pale as the fade lies within the picture, so that nothing shows through it."""
        alpha, colour = wash(500, ROSE, 60)
        y, x = np.mgrid[:500, :500] - 250
        light = np.exp(-((np.hypot(y, x) / 40) ** 2))[..., None]
        rgb = over(alpha, colour * (1 - 0.9 * light) + 0.9 * light, CREAM)
        cut = cut_out(opaque(np.round(rgb)), "auto")
        assert cut.pixels.rgba[245:255, 245:255, 3].min() >= 230

    def test_ink_on_a_wash_stays_whole_and_clean(self):
        alpha, colour = wash(600, (150, 180, 220), 120)
        rgb = over(alpha, colour, CREAM)
        rgb[297:303, 60:540] = 30
        cut = cut_out(opaque(np.round(rgb)), "auto")
        assert cut.pixels.rgba[298:302, 200:400, 3].min() >= 240
        assert cut.pixels.rgba[:40, :, 3].max() == 0

    def test_same_result_twice(self):
        alpha, colour = wash(400, ROSE, 80)
        one, other = (cut_out(shot(alpha, colour, CREAM, noise=3), "auto") for _ in range(2))
        np.testing.assert_array_equal(one.pixels.rgba, other.pixels.rgba)

    def test_large_pictures_fade_as_well(self, monkeypatch):
        """With the flood made to work on a third of the size."""
        alpha, colour = wash(900, ROSE, 200)
        monkeypatch.setattr("padspec.art.cutting.ground._MOST_FLOODED", 90_000)
        cut = cut_out(shot(alpha, colour, CREAM, noise=1), "auto")
        off = np.abs(cut.pixels.rgba[..., 3] / 255 - alpha)
        assert off[(alpha > 0) & (alpha < 1)].mean() < 0.06


class TestDoubt:
    def test_a_fade_that_hardly_differs_is_left_alone(self):
        pale = tuple(c - 14 for c in CREAM)
        alpha, colour = wash(500, pale, 120)
        picture = shot(alpha, colour, CREAM)
        cut = cut_out(picture, "auto")
        assert (cut.method, cut.doubt.kind) == ("none", "soft-edge")
        assert cut.doubt.share > 0.8
        assert cut.doubt.reach == 16
        assert cut.pixels is picture

    def test_asked_for_it_is_cut_all_the_same(self):
        alpha, colour = wash(500, tuple(c - 14 for c in CREAM), 120)
        cut = cut_out(shot(alpha, colour, CREAM), "even")
        assert (cut.method, cut.doubt.kind) == ("even", "soft-edge")

    @pytest.mark.parametrize("blur", [0.5, 1, 2])
    @pytest.mark.parametrize(("fill", "ground"), PAIRS)
    def test_an_edge_is_no_fade(self, fill, ground, blur):
        """Inside, the picture is as it was; a fade would have un-mixed it there."""
        alpha, colour = creature(300, fill, blur)
        before = shot(alpha, colour, ground)
        cut = cut_out(before, "auto")
        deep = ndimage.binary_erosion(alpha == 1, iterations=10)
        assert cut.doubt is None
        np.testing.assert_array_equal(cut.pixels.rgba[deep], before.rgba[deep])


class TestCells:
    def test_means_of_cells_cut_off_at_the_foot(self):
        values = np.arange(12, dtype=np.uint8).reshape(3, 4)
        np.testing.assert_allclose(in_cells(values, 2), [[2.5, 4.5], [8.5, 10.5]])

    def test_smoothing_is_a_mean_with_repeated_sides(self):
        values = np.random.default_rng(2).random((9, 7)).astype(np.float32)
        np.testing.assert_allclose(
            smoothed(values, 2), ndimage.uniform_filter(values, 5, mode="nearest"), atol=1e-6
        )

    def test_greatest_of_neighbours(self):
        values = np.random.default_rng(2).random((9, 7)).astype(np.float32)
        np.testing.assert_array_equal(greatest(values), ndimage.maximum_filter(values, 3, mode="nearest"))

    def test_bands_of_cells_meet_without_a_seam(self):
        cells = np.random.default_rng(2).random((10, 8)).astype(np.float32)
        whole = brought_up(cells, 4, slice(0, 40), 32)
        bands = np.concatenate([brought_up(cells, 4, slice(t, t + 10), 32) for t in range(0, 40, 10)])
        np.testing.assert_allclose(bands, whole, atol=1e-6)
