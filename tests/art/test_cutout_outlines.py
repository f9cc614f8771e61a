"""Outlines that enclose paper, with gaps of several widths, and drawings that are open on purpose.

The bounds are measured on these pictures (no published source).
"""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageDraw, ImageFilter
from scipy import ndimage

from padspec.art.cutting.chambers import behind_gaps, lost_share
from padspec.art.cutting.cutout import cut_out
from padspec.art.cutting.reach import depth, rounded, widened

from .made import opaque

SIZE = 1000
INK = (60, 60, 70)


def drawn(draw, blur=0.7):
    image = Image.new("RGB", (SIZE, SIZE), "white")
    draw(ImageDraw.Draw(image))
    return opaque(np.asarray(image.filter(ImageFilter.GaussianBlur(blur))))


def ring(gap, width=9, extra=True):
    """A ring of ink with an opening at its right, so many pixels wide."""

    def draw(pen):
        half = np.degrees(gap / 2 / 300)
        pen.arc([200, 200, 800, 800], half, 360 - half, fill=INK, width=width)
        if extra:  # legs, so that it is no mere ring
            pen.rectangle([450, 800, 550, 980], fill=(235, 150, 60))

    return drawn(draw)


class TestGaps:
    @pytest.mark.parametrize("gap", [0, 1, 3, 5])
    @pytest.mark.parametrize("width", [3, 9])
    def test_paper_behind_a_small_gap_stays(self, gap, width):
        alpha = cut_out(ring(gap, width), "auto").pixels.rgba[..., 3]
        y, x = np.mgrid[:SIZE, :SIZE] - SIZE / 2 + 0.5
        assert alpha[np.hypot(x, y) < 300 - width].min() == 255
        assert alpha[np.hypot(x, y - 90) > 420].max() == 0

    def test_the_outline_keeps_its_outer_edge(self):
        """The same as without a gap, but for the gap itself."""
        whole, open_ = (cut_out(ring(gap), "auto").pixels.rgba for gap in (0, 4))
        differs = np.argwhere((whole != open_).any(axis=2))
        assert np.abs(differs - [500, 800]).max() < 20

    def test_the_inner_side_of_a_thin_outline_is_no_edge(self):
        """A closed outline two pixels wide: paper right behind it is not thinned out."""
        alpha = cut_out(ring(0, width=2), "auto").pixels.rgba[..., 3]
        assert alpha[500, 204:796].min() == 255

    @pytest.mark.parametrize("gap", [14, 60, 200])
    def test_a_wide_gap_is_told(self, gap):
        cut = cut_out(ring(gap), "auto")
        assert (cut.method, cut.doubt.kind, cut.doubt.reach) == ("even", "leaked", 6)
        assert cut.doubt.share > 0.8
        assert cut.pixels.rgba[500, 500, 3] == 0

    def test_a_leak_that_leaves_next_to_nothing_is_left_alone(self):
        picture = ring(60, width=5, extra=False)
        cut = cut_out(picture, "auto")
        assert (cut.method, cut.doubt.kind) == ("none", "leaked")
        assert cut.pixels is picture

    def test_a_bust_open_at_the_foot_is_told(self):
        def draw(pen):
            pen.arc([250, 100, 750, 600], 106, 74, fill=INK, width=8)
            pen.line([(430, 585), (430, 999)], fill=INK, width=8)
            pen.line([(570, 585), (570, 999)], fill=INK, width=8)
            pen.ellipse([430, 280, 480, 330], fill=INK)
            pen.rectangle([500, 400, 700, 430], fill=(200, 60, 60))

        assert cut_out(drawn(draw), "auto").doubt.kind == "leaked"


class TestOpenOnPurpose:
    def test_a_crescent_is_no_leak(self):
        def draw(pen):
            pen.ellipse([150, 150, 850, 850], fill=(230, 190, 60))
            pen.ellipse([350, 100, 950, 700], fill="white")

        cut = cut_out(drawn(draw), "auto")
        assert cut.doubt is None
        assert cut.pixels.rgba[400, 650, 3] == 0

    def test_a_thick_hook_is_no_leak(self):
        cut = cut_out(ring(120, width=170), "auto")
        assert cut.doubt is None
        assert cut.pixels.rgba[500, 500, 3] == 0

    def test_ground_between_quills_goes_to_the_root(self):
        """Eighty quills, in pairs a few pixels apart: no fleck of ground is left."""

        def draw(pen):
            pen.ellipse([350, 350, 650, 650], fill=INK)
            for k in range(40):
                near = 9 * k + (3 if k % 2 else -3)
                for angle in np.radians([9 * k, near]):
                    tip = (500 + 330 * np.cos(angle), 500 + 330 * np.sin(angle))
                    pen.line([(500, 500), tip], fill=INK, width=3)

        picture = drawn(draw)
        found = cut_out(picture, "auto").pixels.rgba
        opaque_and_pale = (found[..., 3] > 60) & (found[..., :3].min(axis=2) > 200)
        assert opaque_and_pale.sum() == 0

    def test_leaves_on_a_stalk_enclose_nothing(self):
        def draw(pen):
            pen.line([(500, 80), (500, 950)], fill=INK, width=8)
            for y in range(120, 900, 24):
                for side in (-1, 1):
                    pen.line([(500, y + 40), (500 + side * 300, y)], fill=INK, width=7)

        cut = cut_out(drawn(draw), "auto")
        assert cut.doubt is None
        assert cut.pixels.rgba[430, 300:480, 3].min() == 0


class TestMasks:
    @settings(max_examples=40, deadline=None)
    @given(st.integers(1, 30), st.integers(1, 30), st.integers(0, 12), st.integers(0, 2**32 - 1))
    def test_widened_is_dilation_by_a_square(self, height, width, reach, seed):
        mask = np.random.default_rng(seed).random((height, width)) < 0.05
        wanted = ndimage.binary_dilation(mask, np.ones((2 * reach + 1, 2 * reach + 1), bool))
        np.testing.assert_array_equal(widened(mask, reach), wanted)

    @settings(max_examples=40, deadline=None)
    @given(st.integers(2, 30), st.integers(2, 30), st.integers(1, 12), st.integers(0, 2**32 - 1))
    def test_depth_is_the_distance_of_another_transform(self, height, width, most, seed):
        mask = np.random.default_rng(seed).random((height, width)) < 0.9
        mask[0, 0] = False
        wanted = np.minimum(ndimage.distance_transform_edt(mask), most)
        np.testing.assert_allclose(depth(mask, most), wanted, atol=1e-5)

    def test_rounded_grows_nearly_as_a_disc(self):
        mask = np.zeros((61, 61), bool)
        mask[30, 30] = True
        grown = rounded(mask, 20)
        y, x = np.mgrid[:61, :61] - 30
        assert grown[np.hypot(x, y) <= 19].all()
        assert not grown[np.hypot(x, y) > 22.5].any()

    def test_open_ground_has_nothing_behind_gaps(self):
        assert not behind_gaps(np.ones((50, 50), bool)).any()

    def test_what_is_lost_is_measured_by_area(self):
        """A square of 60 within walls of 1 whose side has an opening of 10: 3600 lost, some 230 left."""
        ground = np.ones((100, 100), bool)
        ground[20:82, [20, 81]] = False
        ground[[20, 81], 20:82] = False
        ground[45:55, 81] = True
        left = (~ground).sum()
        assert lost_share(ground) == pytest.approx(3600 / (3600 + left), abs=0.01)
