"""What colours are printed with: black alone, few inks, or as the profile has it."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.colour import BLACK, WHITE, Colour
from padspec.base.difference import ciede2000
from padspec.base.geometry import Affine, Box
from padspec.press.conversion import wanted_lab
from padspec.press.few_inks import fewest_inks
from padspec.press.inks import NO_INK, SOLID_BLACK, Inks
from padspec.press.profile import INTENTS
from padspec.press.under import darkest_under_lines
from padspec.scene.nodes import Cause, Group, Picture, Raster, Shape
from padspec.scene.outline import rectangle

from .made import model, scene_of, separator

GREYS = [Colour(level, level, level) for level in (1, 40, 51, 90, 128, 200, 254)]
PLUM, TEAL, SAND = Colour(0x7A, 0x3B, 0x58), Colour(0x20, 0x80, 0x80), Colour(0xD8, 0xC4, 0x9A)
COLOURS = st.builds(Colour, *[st.integers(0, 255)] * 3)


def printed(inks: Inks) -> np.ndarray:
    return separator().conversion.lab(np.array(inks.steps, np.uint8))


def panel(colour: Colour) -> Shape:
    return Shape(rectangle(Box(0, 0, 9, 9)), Cause("list", "panel"), fill=colour)


@pytest.mark.parametrize("intent", INTENTS)
@pytest.mark.parametrize("outside", [False, True])
def test_pure_black_lines_are_solid_black_ink(intent, outside):
    assert separator(intent, outside=outside).line(BLACK) == SOLID_BLACK


@pytest.mark.parametrize("layer", ["ground", "panel", "rules", "art", "lettering"])
@pytest.mark.parametrize("intent", INTENTS)
def test_white_takes_no_ink_in_any_layer(layer, intent):
    assert separator(intent).inks(WHITE, layer) == NO_INK


@pytest.mark.parametrize("grey", GREYS, ids=lambda grey: grey.hex)
@pytest.mark.parametrize("outside", [False, True])
def test_grey_lines_take_no_coloured_ink(grey, outside):
    cyan, magenta, yellow, _ = separator(outside=outside).line(grey).steps
    assert cyan == magenta == yellow == 0


@pytest.mark.parametrize("grey", GREYS, ids=lambda grey: grey.hex)
def test_a_grey_line_prints_as_light_as_it_is_wanted(grey):
    """By the press model, to less than two steps of black; what is darker than solid black is solid black."""
    prints = model().printed_lab(np.array(separator().line(grey).shares))[0]
    darkest = model().printed_lab(np.array([0, 0, 0, 1]))[0]
    assert prints == pytest.approx(max(wanted_lab(grey.unit)[0], darkest), abs=0.6)


@pytest.mark.parametrize("grey", GREYS[2:], ids=lambda grey: grey.hex)
def test_no_other_step_of_black_prints_nearer_to_a_grey(grey):
    wanted = wanted_lab(grey.unit)[0]
    black = separator().line(grey).black
    off = [abs(printed(Inks(0, 0, 0, step))[0] - wanted) for step in (black - 1, black, black + 1)]
    assert min(off) == off[1]


def test_a_grey_area_is_as_the_profile_has_it():
    assert separator().area(GREYS[4]).count == 4


def test_a_line_that_one_ink_prints_takes_one():
    """Wanted is what 60 % of magenta prints, by the press model."""
    target = model().printed_lab(np.array([0, 0.6, 0, 0]))
    found = fewest_inks(target, separator().conversion.lab, 3.0)
    assert found is not None
    assert (found.count, abs(found.magenta - 153) <= 2) == (1, True)


def test_a_line_that_two_inks_print_takes_two():
    target = model().printed_lab(np.array([0.9, 0, 0.7, 0]))
    found = fewest_inks(target, separator().conversion.lab, 1.0)
    assert found is not None
    assert found.steps == pytest.approx((230, 0, 179, 0), abs=4)


def test_a_line_that_three_inks_print_takes_three():
    target = model().printed_lab(np.array([0.3, 0.8, 0.6, 0]))
    found = fewest_inks(target, separator().conversion.lab, 0.7)
    assert found is not None
    assert found.count == 3


def test_no_three_inks_are_near_enough_to_a_colour_that_no_press_prints():
    assert fewest_inks(np.array([60.0, 120.0, -120.0]), separator().conversion.lab, 3.0) is None


@settings(max_examples=25, deadline=None)
@given(COLOURS)
def test_a_coloured_line_prints_within_the_tolerance_of_its_full_separation(colour):
    """But for what is darker than black ink alone, which counts as that dark."""
    wanted = printed(separator().area(colour))
    wanted[0] = max(wanted[0], printed(SOLID_BLACK)[0])
    found = separator().line(colour)
    if not colour.is_neutral and found != separator().area(colour):
        assert ciede2000(wanted, printed(found)) <= 3.0 + 1e-6


@settings(max_examples=25, deadline=None)
@given(COLOURS)
def test_a_line_takes_no_more_inks_than_an_area(colour):
    assert separator().line(colour).count <= max(separator().area(colour).count, colour != WHITE)


@settings(max_examples=20, deadline=None)
@given(COLOURS)
def test_fewer_inks_would_be_farther_off_than_the_tolerance(colour):
    """Brute force over all amounts of one ink and a tight grid of two."""
    found = separator().line(colour)
    if colour.is_neutral or found.count < 2:
        return
    tries = np.zeros((4 * 255, 4), np.uint8)
    for ink in range(4):
        tries[ink * 255 : (ink + 1) * 255, ink] = np.arange(1, 256)
    wanted = printed(separator().area(colour))
    wanted[0] = max(wanted[0], printed(SOLID_BLACK)[0])
    assert ciede2000(wanted, separator().conversion.lab(tries)).min() > 3.0


@pytest.mark.parametrize("intent", INTENTS)
@pytest.mark.parametrize("pale", [Colour(255, 254, 250), Colour(254, 254, 254)], ids=lambda pale: pale.hex)
def test_a_line_never_vanishes(intent, pale):
    """The palest cream and grey still take some ink, even where the paper itself is darker."""
    assert separator(intent).line(pale).cover > 0


@pytest.mark.parametrize("outside", [False, True])
def test_a_letter_a_shade_off_black_is_no_heavier_than_a_black_one(outside):
    """The plain sum of complements jumps from 100 % to 299.6 % between these two; ink must not."""
    near = separator(outside=outside).line(Colour(0, 0, 1))
    assert near.is_black_only
    assert near.black >= 250


@pytest.mark.parametrize("outside", [False, True])
def test_a_ground_a_shade_off_black_takes_the_ink_of_a_black_one(outside):
    covers = [separator(outside=outside).area(colour).cover for colour in (BLACK, Colour(0, 0, 1))]
    assert covers[1] == pytest.approx(covers[0], abs=0.05)


def test_black_overprints():
    assert separator().overprints(SOLID_BLACK, "lettering", 100.0)
    assert separator().overprints(SOLID_BLACK, "rules", 0.0)


@pytest.mark.parametrize(
    ("inks", "layer"),
    [
        (SOLID_BLACK, "ground"),
        (SOLID_BLACK, "panel"),
        (Inks(0, 0, 90, 0), "lettering"),
        (Inks(1, 0, 0, 255), "lettering"),
        (NO_INK, "lettering"),
    ],
)
def test_areas_colours_and_white_knock_out(inks, layer):
    """White most of all: with no ink on any plate it would leave everything that is under it."""
    assert not separator().overprints(inks, layer, 100.0)


def test_a_grey_overprints_where_all_under_it_is_paler():
    darkest = darkest_under_lines(scene_of(ground=(panel(SAND),), panel=(panel(WHITE),)), separator())
    assert separator().overprints(separator().line(GREYS[4]), "rules", darkest)


def test_a_grey_knocks_out_of_a_darker_ground_in_which_it_would_vanish():
    darkest = darkest_under_lines(scene_of(ground=(panel(TEAL),), panel=(panel(WHITE),)), separator())
    assert not separator().overprints(separator().line(GREYS[5]), "lettering", darkest)


def test_lines_do_not_lie_under_themselves():
    rules = scene_of(panel=(panel(SAND),), rules=(panel(BLACK),))
    assert darkest_under_lines(rules, separator()) == pytest.approx(printed(separator().area(SAND))[0])


@pytest.mark.parametrize(("place", "on_it"), [(0, True), (8, True), (9.5, False)])
def test_a_line_that_lies_on_a_picture_may_lie_on_its_darkest_part(place, on_it):
    raster = Raster("one", "00000001", 1, 1, bytes(3), None)
    art = Group((Picture(raster, Box(0, 0, 5, 5), Cause("header", "art")),), Affine.move(place, 0))
    scene = scene_of(ground=(panel(SAND),), art=(art,), lettering=(panel(BLACK),))
    assert (darkest_under_lines(scene, separator()) == 0) == on_it


def test_under_nothing_lies_the_paper():
    assert darkest_under_lines(scene_of(rules=(panel(BLACK),)), separator()) == pytest.approx(100)


def test_a_picture_asked_for_again_is_the_same_after_others():
    rasters = [Raster(str(n), str(n), 1, 1, bytes([n, 90, 200]), None) for n in range(4)]
    first = [separator().picture(raster) for raster in rasters]
    assert [separator().picture(raster) for raster in rasters] == first


def test_a_picture_goes_as_its_pixels_do():
    rgb = np.array([[[255, 255, 255], [0, 0, 0]], [[122, 59, 88], [32, 128, 128]]], np.uint8)
    raster = Raster("four", "00000000", 2, 2, rgb.tobytes(), None)
    found = np.frombuffer(separator().picture(raster), np.uint8).reshape(4, 4)
    wanted = [separator().area(colour).steps for colour in (WHITE, BLACK, PLUM, TEAL)]
    assert found.tolist() == [list(steps) for steps in wanted]


def test_the_amounts_of_a_press_run_twice_are_the_same():
    from padspec.press.separate import Separator

    again = Separator(separator().press)
    assert [again.line(c) for c in (PLUM, TEAL, SAND)] == [separator().line(c) for c in (PLUM, TEAL, SAND)]
