import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from skimage import data
from skimage.transform import resize

from padspec.art.errors import ArtError
from padspec.art.pixels import Pixels
from padspec.art.resample import as_raster, bring_down
from padspec.art.trim import trim_empty

from .made import opaque


def framed(height, width, top, left, alpha=255):
    rgba = np.zeros((height, width, 4), np.uint8)
    rgba[top, left] = (10, 20, 30, alpha)
    return rgba


class TestTrim:
    @given(st.integers(0, 8), st.integers(0, 5), st.integers(0, 8), st.integers(0, 5))
    def test_crop_is_the_tightest_box(self, top, left, below, right):
        rgba = np.zeros((top + 3 + below, left + 4 + right, 4), np.uint8)
        rgba[top, left] = rgba[top + 2, left + 3] = 255
        trimmed = trim_empty(Pixels(rgba.copy()))
        np.testing.assert_array_equal(trimmed.rgba, rgba[top : top + 3, left : left + 4])

    def test_fainter_than_the_limit_is_empty(self):
        rgba = framed(5, 5, 2, 2)
        rgba[0, 0] = (0, 0, 0, 7)
        assert trim_empty(Pixels(rgba)).width == 1

    def test_at_the_limit_is_visible(self):
        assert trim_empty(Pixels(framed(5, 5, 0, 0, alpha=8))).height == 1

    def test_wholly_transparent_is_refused(self):
        with pytest.raises(ArtError, match="none of its 6 × 4 pixels"):
            trim_empty(Pixels(np.zeros((4, 6, 4), np.uint8)))


class TestBringDown:
    def test_size_is_as_asked(self):
        small = bring_down(opaque(data.astronaut()), 301, 87)
        assert (small.width, small.height) == (301, 87)

    def test_never_up(self):
        pixels = opaque(data.astronaut())
        assert bring_down(pixels, 900, 900) is pixels

    def test_close_to_another_resampler(self):
        """Against scikit-image's anti-aliased cubic: another filter, so close in the mean, not the same."""
        picture = data.astronaut()
        found = bring_down(opaque(picture), 128, 128).rgba[..., :3]
        wanted = resize(picture, (128, 128), order=3, anti_aliasing=True) * 255
        assert np.abs(found - wanted).mean() < 3

    def test_bands_leave_no_seam(self, monkeypatch):
        pixels = opaque(data.coffee())
        whole = bring_down(pixels, 211, 173).rgba.astype(int)
        monkeypatch.setattr("padspec.art.resample._BAND_PIXELS", 20_000)
        assert np.abs(bring_down(pixels, 211, 173).rgba - whole).max() <= 1

    def test_hidden_colour_makes_no_fringe(self):
        """A pale disc whose transparent surround is black: no edge pixel may darken."""
        y, x = np.mgrid[:200, :200]
        inside = np.hypot(y - 100, x - 100) < 70
        rgba = np.where(inside[..., None], np.uint8(240), np.uint8(0)).repeat(4, axis=2)
        rgba[..., 3] = np.where(inside, 255, 0)
        small = bring_down(Pixels(rgba), 61, 61).rgba
        assert small[small[..., 3] > 16][:, :3].min() >= 225


class TestRaster:
    def test_opaque_picture_has_no_mask(self):
        raster = as_raster(opaque(data.coffee()), "cup")
        assert raster.alpha is None
        assert raster.rgb == data.coffee().tobytes()

    def test_mask_is_the_alpha(self):
        rgba = np.dstack([data.coffee(), data.coffee()[..., :1]])
        assert as_raster(Pixels(rgba), "cup").alpha == rgba[..., 3].tobytes()

    def test_visible_colours_stay(self):
        rgba = np.dstack([data.coffee(), np.where(data.coffee()[..., 0] > 120, 255, 0)]).astype(np.uint8)
        rgb = np.frombuffer(as_raster(Pixels(rgba), "cup").rgb, np.uint8).reshape(400, 600, 3)
        np.testing.assert_array_equal(rgb[rgba[..., 3] > 0], rgba[rgba[..., 3] > 0][:, :3])

    def test_hidden_colours_come_from_the_nearest_visible_ones(self):
        rgba = np.zeros((64, 64, 4), np.uint8)
        rgba[:, :20] = (200, 40, 90, 255)
        rgb = np.frombuffer(as_raster(Pixels(rgba), "moth").rgb, np.uint8).reshape(64, 64, 3)
        # Within the rounding of premultiplied means.
        np.testing.assert_allclose(rgb, np.full((64, 64, 3), (200, 40, 90)), atol=3)

    def test_nothing_visible_is_white(self):
        assert as_raster(Pixels(np.zeros((3, 5, 4), np.uint8)), "moth").rgb == b"\xff" * 45

    @settings(max_examples=25, deadline=None)
    @given(st.integers(1, 17), st.integers(1, 17), st.integers(0, 2**32 - 1))
    def test_any_size_and_alpha(self, width, height, seed):
        rgba = np.random.default_rng(seed).integers(0, 256, (height, width, 4), dtype=np.uint8)
        rgba[..., 3] *= rgba[..., 3] > 128
        raster = as_raster(Pixels(rgba), "moth")
        rgb = np.frombuffer(raster.rgb, np.uint8).reshape(height, width, 3)
        np.testing.assert_array_equal(rgb[rgba[..., 3] > 0], rgba[rgba[..., 3] > 0][:, :3])

    def test_digest_tells_pictures_apart_and_knows_them_again(self):
        one, other = data.coffee(), data.coffee().copy()
        other[0, 0, 0] ^= 1
        digests = [as_raster(opaque(picture), "cup").digest for picture in (one, other, one)]
        assert digests[0] == digests[2] != digests[1]

    def test_digest_depends_on_the_shape(self):
        flat = np.full((6, 4, 3), 9, np.uint8)
        assert as_raster(opaque(flat), "a").digest != as_raster(opaque(flat.reshape(4, 6, 3)), "a").digest

    def test_digest_has_eight_hex_digits(self):
        assert len(bytes.fromhex(as_raster(opaque(data.coffee()), "cup").digest)) == 4
