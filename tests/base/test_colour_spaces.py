"""Conversions against published values and two independent colour libraries, coloraide and colormath."""

import numpy as np
import pytest
from coloraide import Color
from colormath.color_conversions import convert_color
from colormath.color_objects import LabColor, sRGBColor
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.colour import (
    Colour,
    lab_from_srgb,
    linear_from_srgb,
    oklab_from_srgb,
    srgb_from_linear,
    srgb_from_oklab,
    xyz_from_srgb,
)

channels = st.floats(0, 1)
triples = st.tuples(channels, channels, channels)

#: 17 levels a channel, 4913 colours, the corners of the cube among them.
GRID = np.stack(np.meshgrid(*[np.linspace(0, 1, 17)] * 3, indexing="ij"), axis=-1).reshape(-1, 3)

# XYZ under D65, CIELAB under D65 and OKLab of well-known colours, as coloraide gives them; the primaries' XYZ
# and white are printed in IEC 61966-2-1 too, the OKLab of the primaries by CSS Color 4.
TABLE = {
    "#ffffff": ((0.9505, 1.0000, 1.0891), (100, 0, 0), (1, 0, 0)),
    "#808080": ((0.2052, 0.2159, 0.2351), (53.5850, 0, 0), (0.5999, 0, 0)),
    "#777777": ((0.1753, 0.1845, 0.2009), (50.0344, 0, 0), (0.5693, 0, 0)),
    "#c0c0c0": ((0.5010, 0.5271, 0.5741), (77.7044, 0, 0), (0.8078, 0, 0)),
    "#ff0000": ((0.4124, 0.2126, 0.0193), (53.2371, 80.0901, 67.2033), (0.6280, 0.2249, 0.1258)),
    "#00ff00": ((0.3576, 0.7152, 0.1192), (87.7355, -86.1816, 83.1866), (0.8664, -0.2339, 0.1795)),
    "#0000ff": ((0.1805, 0.0722, 0.9505), (32.3009, 79.1953, -107.8555), (0.4520, -0.0325, -0.3115)),
    "#ffff00": ((0.7700, 0.9278, 0.1385), (97.1386, -21.5600, 94.4838), (0.9680, -0.0714, 0.1986)),
    "#00ffff": ((0.5381, 0.7874, 1.0697), (91.1148, -48.0789, -14.1290), (0.9054, -0.1494, -0.0394)),
    "#ff00ff": ((0.5929, 0.2848, 0.9699), (60.3227, 98.2374, -60.8289), (0.7017, 0.2746, -0.1692)),
    "#f5e6d3": ((0.7771, 0.8071, 0.7312), (92.0024, 2.0069, 11.0858), (0.9319, 0.0084, 0.0289)),
}


@pytest.mark.parametrize("name", TABLE)
def test_a_colour_of_the_table_has_its_xyz_lab_and_oklab(name: str) -> None:
    xyz, lab, oklab = TABLE[name]
    unit = Colour.from_hex(name).unit
    assert xyz_from_srgb(unit) == pytest.approx(xyz, abs=6e-5)
    assert lab_from_srgb(unit) == pytest.approx(lab, abs=6e-5)
    assert oklab_from_srgb(unit) == pytest.approx(oklab, abs=6e-5)


@pytest.mark.parametrize(
    ("convert", "space", "off"),
    [(xyz_from_srgb, "xyz-d65", 1e-12), (lab_from_srgb, "lab-d65", 1e-9), (oklab_from_srgb, "oklab", 1e-9)],
)
def test_a_grid_of_colours_agrees_with_coloraide(convert, space: str, off: float) -> None:
    theirs = np.array([Color("srgb", list(rgb)).convert(space).coords(nans=False) for rgb in GRID])
    assert np.abs(convert(GRID) - theirs).max() < off


@settings(deadline=None)
@given(triples)
def test_any_colour_agrees_with_coloraide(rgb: tuple[float, float, float]) -> None:
    theirs = Color("srgb", list(rgb))
    mine = np.array(rgb)
    assert xyz_from_srgb(mine) == pytest.approx(theirs.convert("xyz-d65").coords(nans=False), abs=1e-12)
    assert lab_from_srgb(mine) == pytest.approx(theirs.convert("lab-d65").coords(nans=False), abs=1e-9)
    assert oklab_from_srgb(mine) == pytest.approx(theirs.convert("oklab").coords(nans=False), abs=1e-9)


def test_a_grid_of_colours_agrees_with_colormath_under_d65() -> None:
    # colormath's default illuminant for Lab is D50; its sRGB matrix has six digits and its white five, which
    # moves a* and b* by up to 0.02.
    theirs = np.array(
        [convert_color(sRGBColor(*rgb), LabColor, target_illuminant="d65").get_value_tuple() for rgb in GRID]
    )
    assert np.abs(lab_from_srgb(GRID) - theirs).max() < 0.02


@pytest.mark.parametrize(
    ("luminance", "lightness"),
    [(1, 100), (0.5, 76.0693), (0.1842, 50.0016), (0.1, 37.8424), (216 / 24389, 8), (0.001, 0.903296)],
)
def test_cie_lightness_follows_its_formula_on_both_sides_of_the_bend(luminance: float, lightness: float) -> None:
    # CIE 15: L* = 116 f(Y/Yn) - 16. A grey of that luminance has equal linear channels.
    grey = srgb_from_linear(np.full(3, luminance))
    assert lab_from_srgb(grey)[0] == pytest.approx(lightness, abs=1e-4)


@settings(deadline=None)
@given(triples)
def test_oklab_comes_back_to_the_same_colour(rgb: tuple[float, float, float]) -> None:
    assert srgb_from_oklab(oklab_from_srgb(np.array(rgb))) == pytest.approx(rgb, abs=1e-6)


@settings(deadline=None)
@given(channels)
def test_the_transfer_curve_comes_back_to_the_same_value(value: float) -> None:
    assert srgb_from_linear(linear_from_srgb(np.array(value))) == pytest.approx(value, abs=1e-7)


def test_a_whole_picture_converts_as_its_pixels_do() -> None:
    picture = GRID[:4900].reshape(70, 70, 3)
    for convert in (xyz_from_srgb, lab_from_srgb, oklab_from_srgb):
        assert convert(picture)[13, 41] == pytest.approx(convert(picture[13, 41]), abs=1e-12)


@settings(deadline=None)
@given(st.integers(0, 255), st.integers(0, 255), st.integers(0, 255))
def test_hex_text_and_unit_values_give_the_same_colour_back(red: int, green: int, blue: int) -> None:
    colour = Colour(red, green, blue)
    assert Colour.from_hex(colour.hex) == colour
    assert Colour.from_unit(colour.unit) == colour
    assert colour.is_neutral == (red == green == blue)


def test_a_short_hex_doubles_each_digit() -> None:
    assert Colour.from_hex("#a3c") == Colour.from_hex("#aa33cc")


@pytest.mark.parametrize("text", ["aabbcc", "#12", "#1234", "#12345g", "#1234567", "", "#"])
def test_what_is_no_hex_colour_is_refused(text: str) -> None:
    with pytest.raises(ValueError):  # noqa: PT011 (the caller words the message)
        Colour.from_hex(text)


def test_channels_outside_the_cube_are_clipped() -> None:
    assert Colour.from_unit(np.array([-0.2, 0.5, 1.7])) == Colour(0, 128, 255)
