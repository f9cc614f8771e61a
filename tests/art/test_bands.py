import numpy as np
import pytest
from PIL import Image

from padspec.art.bands import in_bands
from padspec.art.errors import ArtError
from padspec.art.pixels import Pixels
from padspec.art.raster import once
from padspec.art.resample import bring_down, reduced

from .made import saved


def noise(height, width):
    return np.random.default_rng(3).integers(0, 256, (height, width, 4), dtype=np.uint8)


@pytest.mark.parametrize("rows", [1, 7, 40, 41, 100])
def test_bands_come_back_in_order(rows):
    rgba = noise(41, 13)
    np.testing.assert_array_equal(np.asarray(in_bands(rgba, rows, lambda band: band)), rgba)


def test_bands_of_a_view_are_its_own_rows():
    rgba = noise(30, 20)
    np.testing.assert_array_equal(np.asarray(in_bands(rgba[4:25, 3:9], 5, lambda band: band)), rgba[4:25, 3:9])


def test_a_fault_in_a_band_comes_out():
    with pytest.raises(ZeroDivisionError):
        in_bands(noise(9, 9), 2, lambda band: band.reduce(1 // (band.height - 1)))


@pytest.mark.parametrize("alpha", [False, True])
def test_bringing_down_in_bands_is_that_of_the_whole(alpha, monkeypatch):
    """Against Pillow on the whole picture at once: not one pixel differs."""
    rgba = noise(97, 83)
    rgba[..., 3] = rgba[..., 3] if alpha else 255
    monkeypatch.setattr("padspec.art.resample._BAND_PIXELS", 500)
    wanted = Image.fromarray(rgba).resize((31, 40), Image.Resampling.LANCZOS)
    np.testing.assert_array_equal(bring_down(Pixels(rgba.copy()), 31, 40).rgba, np.asarray(wanted))


def test_reducing_in_bands_is_that_of_the_whole(monkeypatch):
    """Against Pillow on the whole picture at once, with a last row of squares that is cut off."""
    rgba = noise(95, 83)
    monkeypatch.setattr("padspec.art.resample._BAND_PIXELS", 900)
    np.testing.assert_array_equal(np.asarray(reduced(rgba, 4)), np.asarray(Image.fromarray(rgba).reduce(4)))


class TestDecodedOnce:
    @pytest.fixture
    def decodings(self, monkeypatch):
        seen = []
        real = once.decode

        def counted(data, name):
            seen.append(name)
            return real(data, name)

        monkeypatch.setattr(once, "_kept", once.lru_cache(maxsize=1)(counted))
        return seen

    def test_kept_until_it_is_asked_for_in_its_turn(self, decodings):
        data = saved(Image.fromarray(noise(5, 6)), "PNG")
        assert once.decoded(data, "moth.png", keep=True) is once.decoded(data, "moth.png")
        once.decoded(data, "moth.png")
        assert len(decodings) == 2

    def test_a_fault_is_told_every_time(self, decodings):
        for keep in (True, False):
            with pytest.raises(ArtError, match=r"moth\.png"):
                once.decoded(b"\x89PNG\r\n\x1a\nbroken", "moth.png", keep)
        assert len(decodings) == 2
