"""Creatures whose alpha is known are put on grounds, cut out again and laid on others.

The bounds are measured on these pictures (no published source); errors are in steps of 255.
"""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import ndimage
from skimage import data

from padspec.art.cutting.backdrop import EVEN_LIMIT
from padspec.art.cutting.cutout import cut_out
from padspec.art.cutting.regions import regions
from padspec.art.pixels import Pixels

from .made import creature, opaque, over, shot

PLUM, INK, OCHRE = (122, 59, 88), (30, 30, 34), (230, 180, 60)
WHITE, CREAM, NIGHT, GREY, GREEN = (255, 255, 255), (246, 240, 228), (20, 24, 40), (128, 128, 128), (0, 200, 90)
ON_GROUNDS = [(plum, ground) for plum in (PLUM, OCHRE) for ground in (WHITE, CREAM, NIGHT, GREY, GREEN)]
NEW_GROUNDS = [(0, 0, 0), (255, 255, 255), (0, 153, 51)]


def recomposed_errors(alpha, colour, cut):
    """The largest channel error of each pixel, on the worst of the new grounds."""
    found = cut.pixels.rgba / 255
    errors = [
        np.abs(over(alpha, colour, ground) - over(found[..., 3], found[..., :3], ground)).max(axis=2)
        for ground in NEW_GROUNDS
    ]
    return np.max(errors, axis=0)


def areas(alpha):
    """The pixels at the edge, and those that are wholly outside."""
    return (alpha > 0) & (alpha < 1), alpha == 0


class TestEdges:
    @pytest.mark.parametrize(("fill", "ground"), ON_GROUNDS)
    @pytest.mark.parametrize("blur", [0.5, 2])
    def test_alpha_of_a_clean_picture_is_recovered(self, fill, ground, blur):
        alpha, colour = creature(300, fill, blur)
        cut = cut_out(shot(alpha, colour, ground), "auto")
        edge, outside = areas(alpha)
        off = np.abs(cut.pixels.rgba[..., 3] / 255 - alpha)
        assert cut.method == "even"
        assert off[edge].mean() < 0.025
        assert off[outside].max() == 0

    @pytest.mark.parametrize(("fill", "ground"), ON_GROUNDS)
    def test_no_halo_on_any_new_ground(self, fill, ground):
        """A ground left in the edges would show as the difference of old and new ground, up to 255."""
        alpha, colour = creature(300, fill, 0.5)
        errors = recomposed_errors(alpha, colour, cut_out(shot(alpha, colour, ground), "auto"))
        edge, outside = areas(alpha)
        assert errors[edge].mean() < 4
        assert np.quantile(errors[edge], 0.99) < 24
        assert errors[outside].max() == 0

    @pytest.mark.parametrize(("fill", "ground"), ON_GROUNDS)
    def test_grain_leaves_little_behind(self, fill, ground):
        alpha, colour = creature(300, fill, 1)
        errors = recomposed_errors(alpha, colour, cut_out(shot(alpha, colour, ground, noise=3), "auto"))
        edge, outside = areas(alpha)
        assert errors[edge].mean() < 14
        assert errors[outside].mean() < 0.05

    @pytest.mark.parametrize(("fill", "ground"), ON_GROUNDS)
    def test_jpeg_leaves_little_behind(self, fill, ground):
        """Colour at half the resolution blurs the edge itself, so the bounds are wider than for grain."""
        alpha, colour = creature(300, fill, 1)
        errors = recomposed_errors(alpha, colour, cut_out(shot(alpha, colour, ground, jpeg=85), "auto"))
        edge, outside = areas(alpha)
        assert errors[edge].mean() < 30
        assert errors[outside].mean() < 0.6
        assert (errors[outside] > 100).mean() < 1e-3

    @pytest.mark.parametrize(("fill", "ground"), ON_GROUNDS)
    def test_far_better_than_a_hard_cut(self, fill, ground):
        """Against keeping whole whatever is not all ground, which leaves the old ground in the edge."""
        alpha, colour = creature(300, fill, 1)
        picture = shot(alpha, colour, ground, jpeg=85)
        cut = cut_out(picture, "auto")
        kept = Pixels(np.dstack([picture.rgba[..., :3], np.where(alpha > 0, 255, 0)]).astype(np.uint8))
        edge, _ = areas(alpha)
        ours, hard = (recomposed_errors(alpha, colour, c)[edge] for c in (cut, replace(cut, pixels=kept)))
        assert ours.mean() < hard.mean() / 2.5

    def test_laid_back_on_its_own_ground_it_looks_as_before(self):
        alpha, colour = creature(300, PLUM, 1)
        before = shot(alpha, colour, CREAM)
        found = cut_out(before, "auto").pixels.rgba / 255
        assert np.abs(over(found[..., 3], found[..., :3], CREAM) - before.rgba[..., :3]).max() <= 3

    def test_inside_is_untouched(self):
        alpha, colour = creature(300, PLUM, 1)
        before = shot(alpha, colour, WHITE)
        after = cut_out(before, "auto").pixels.rgba
        deep = ndimage.binary_erosion(alpha == 1, iterations=8)
        np.testing.assert_array_equal(after[deep], before.rgba[deep])


class TestFlood:
    def test_enclosed_ground_stays(self):
        alpha, colour = creature(300, PLUM, 1)
        rgb = np.array(shot(alpha, colour, WHITE).rgba[..., :3])
        rgb[130:160, 140:170] = 255
        assert (cut_out(opaque(rgb), "auto").pixels.rgba[135:155, 145:165, 3] == 255).all()

    def test_a_thin_outline_holds_the_flood_back(self):
        rgb = np.full((100, 100, 3), 255, np.uint8)
        for step in range(30):  # a rhombus one pixel wide, joined over corners only
            for y, x in (
                (20 + step, 50 + step),
                (20 + step, 50 - step),
                (80 - step, 50 + step),
                (80 - step, 50 - step),
            ):
                rgb[y, x] = 0
        rgb[50, [20, 80]] = 0
        assert cut_out(opaque(rgb), "auto").pixels.rgba[50, 50, 3] == 255

    def test_light_from_one_side_is_followed(self):
        """Paper that darkens by 50 steps from left to right, far beyond what one tolerance would span."""
        alpha, colour = creature(300, INK, 1)
        paper = np.array(CREAM) - 50 * np.linspace(0, 1, 300)[None, :, None]
        rgb = np.round(over(alpha, colour, paper)).astype(np.uint8)
        cut = cut_out(opaque(rgb), "auto")
        assert cut.method == "even"
        assert cut.pixels.rgba[..., 3][alpha == 0].max() == 0

    def test_a_creature_may_touch_a_side(self):
        rgb = np.full((200, 200, 3), 250, np.uint8)
        rgb[80:, 60:150] = PLUM
        cut = cut_out(opaque(rgb), "auto")
        assert cut.method == "even"
        assert cut.pixels.rgba[199, 100, 3] == 255

    def test_removed_is_the_share_of_the_area(self):
        alpha, colour = creature(300, PLUM, 0.5)
        assert cut_out(shot(alpha, colour, WHITE), "auto").removed == pytest.approx(1 - alpha.mean(), abs=0.002)

    def test_large_pictures_are_cut_as_finely(self, monkeypatch):
        """With the flood made to work on a third of the size."""
        alpha, colour = creature(600, PLUM, 1)
        monkeypatch.setattr("padspec.art.cutting.ground._MOST_FLOODED", 50_000)
        errors = recomposed_errors(alpha, colour, cut_out(shot(alpha, colour, CREAM), "auto"))
        assert errors[areas(alpha)[0]].mean() < 4
        assert errors[areas(alpha)[1]].max() == 0

    @settings(max_examples=60, deadline=None)
    @given(st.integers(1, 30), st.integers(1, 30), st.floats(0.1, 0.9), st.integers(0, 2**32 - 1))
    def test_regions_are_those_of_another_labeller(self, height, width, fill, seed):
        mask = np.random.default_rng(seed).random((height, width)) < fill
        found = regions(mask)
        labels, _ = ndimage.label(mask)
        sides = np.unique(np.concatenate([labels[0], labels[-1], labels[:, 0], labels[:, -1]]))
        wanted = np.isin(labels, sides[sides > 0])
        np.testing.assert_array_equal(found.painted(found.touching_border()), wanted)

    def test_areas_and_peaks_of_regions(self):
        mask = np.array([[1, 0, 1], [1, 0, 0], [1, 1, 0]], bool)
        found = regions(mask)
        values = np.arange(9, dtype=np.uint8).reshape(3, 3)
        assert sorted(zip(found.areas().tolist(), found.peaks(values).tolist(), strict=True)) == [
            (1, 2),
            (4, 7),
            (4, 7),
            (4, 7),
        ]


class TestChoice:
    def test_transparency_is_left_alone(self):
        alpha, colour = creature(100, PLUM, 1)
        rgba = np.dstack([np.round(colour * 255), np.round(alpha * 255)]).astype(np.uint8)
        pixels = Pixels(rgba)
        cut = cut_out(pixels, "auto")
        assert cut.method == "transparency"
        assert cut.pixels is pixels

    def test_a_few_transparent_pixels_are_no_cutout(self):
        alpha, colour = creature(100, PLUM, 1)
        rgba = np.array(shot(alpha, colour, WHITE).rgba)
        rgba[0, :10, 3] = 0
        assert cut_out(Pixels(rgba), "auto").method == "even"

    def test_even_cuts_a_partly_transparent_picture(self):
        alpha, colour = creature(100, PLUM, 1)
        rgba = np.array(shot(alpha, colour, WHITE).rgba)
        rgba[45:55, 45:55, 3] = 100
        cut = cut_out(Pixels(rgba), "even")
        assert cut.method == "even"
        assert (cut.pixels.rgba[47:53, 47:53, 3] == 100).all()

    def test_none_measures_and_leaves(self):
        alpha, colour = creature(100, PLUM, 1)
        pixels = shot(alpha, colour, CREAM)
        cut = cut_out(pixels, "none")
        assert (cut.method, cut.border_colour.hex, cut.border_spread, cut.removed) == ("none", "#f6f0e4", 0, 0)
        assert cut.pixels is pixels

    @pytest.mark.parametrize("name", ["astronaut", "coffee", "chelsea", "rocket", "camera"])
    @pytest.mark.parametrize("mode", ["auto", "even"])
    def test_a_photograph_is_uneven(self, name, mode):
        picture = getattr(data, name)()
        picture = picture if picture.ndim == 3 else picture[..., None].repeat(3, axis=2)
        cut = cut_out(opaque(picture), mode)
        assert cut.method == "none"
        assert cut.border_spread > EVEN_LIMIT

    def test_a_white_frame_around_a_photograph_goes(self):
        framed = np.pad(data.astronaut(), ((20, 20), (20, 20), (0, 0)), constant_values=255)
        cut = cut_out(opaque(framed), "auto")
        assert cut.method == "even"
        assert (cut.pixels.rgba[:19, :, 3] == 0).all()

    def test_a_blank_picture_is_not_removed(self):
        assert cut_out(opaque(np.full((50, 50, 3), 240)), "even").method == "none"

    def test_a_picture_of_one_pixel(self):
        assert cut_out(opaque(np.full((1, 1, 3), 240)), "auto").method == "none"

    def test_same_result_twice(self):
        alpha, colour = creature(200, PLUM, 1)
        one, other = (cut_out(shot(alpha, colour, CREAM, noise=3), "auto") for _ in range(2))
        np.testing.assert_array_equal(one.pixels.rgba, other.pixels.rgba)
