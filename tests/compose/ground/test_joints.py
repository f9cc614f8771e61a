"""In step and out of step with the edges: what two leaves that are butted show on both sides of their cut.

Leaves are looked at in pixels of a tenth of a millimetre. What a leaf prints past an edge and what its neighbour
prints there are the same where a pattern runs on; where it is out of step, both sides of the cut differ.
"""

from itertools import product

import numpy as np
import pytest

from padspec.base.colour import WHITE, Colour
from padspec.base.geometry import Affine, Box, Size
from padspec.compose.ground.repeat import repeat
from padspec.resolve.ground import KINDS

from .drawn import FINE, PERIODIC, cells, colour_difference, pattern, pixels

INK = Colour(48, 80, 112)
ODD = (Size(90, 190), Size(73.3, 101.7), Size(148, 105), Size(61, 60))
ANGLES = (0, 45, 20, 90, -77.5)
BLEED = 3
#: A leaf's own edge and that of its neighbour are compared in cells of this many pixels.
CELL = 3


def leaf(kind, trim, **settings):
    more = {} if kind == "motif" else {"colour": INK}
    if kind == "sprinkle":
        more["colours"] = (Colour(200, 40, 40),)
    return pixels(pattern(kind, **more, **settings), trim, BLEED, WHITE)


def joints(image, trim):
    """What is printed past the right edge and the foot, each with what the next leaf prints there."""
    n, w, h = BLEED * FINE, round(trim.width * FINE), round(trim.height * FINE)
    right, left = image[n : n + h, n + w :], image[n : n + h, n : 2 * n]
    foot, head = image[n + h :, n : n + w], image[n : 2 * n, n : n + w]
    return (right, left), (foot, head)


def differing(image, trim):
    """The share of the upright and of the level cut along which both sides differ, a hair inside each leaf: cells
    of 0.2 mm along the cut, 0.3 mm deep, told apart above 5 (CIEDE2000).
    """
    n, w, h = BLEED * FINE, round(trim.width * FINE), round(trim.height * FINE)
    left, right = image[n : n + h, n + 1 : n + 4], image[n : n + h, n + w - 4 : n + w - 1]
    head, foot = image[n + 1 : n + 4, n : n + w], image[n + h - 4 : n + h - 1, n : n + w]
    pairs = ((left.mean(1), right.mean(1)), (head.mean(0), foot.mean(0)))
    return tuple(float((colour_difference(_by_two(a), _by_two(b)) > 5).mean()) for a, b in pairs)


def _by_two(line):
    return line[: len(line) // 2 * 2].reshape(-1, 2, 3).mean(axis=1)


@pytest.mark.parametrize("kind", [*PERIODIC, "sprinkle"])
@pytest.mark.parametrize("trim", ODD, ids=lambda trim: f"{trim.width:g}x{trim.height:g}")
def test_where_it_runs_on_a_leaf_prints_past_its_edge_what_its_neighbour_prints_there(kind, trim):
    for angle in ANGLES if kind in PERIODIC else (0,):
        for past, next_leaf in joints(leaf(kind, trim, angle=angle, phase="run-on"), trim):
            assert colour_difference(cells(past, CELL), cells(next_leaf, CELL)).max() < 3


@pytest.mark.parametrize("trim", ODD, ids=lambda trim: f"{trim.width:g}x{trim.height:g}")
def test_turned_and_jittered_copies_run_on_as_well(trim):
    """But for single pixels at their edges: one picture is sampled anew at each place."""
    image = leaf("motif", trim, phase="run-on", turn=90, jitter=0.7)
    for past, next_leaf in joints(image, trim):
        assert np.percentile(colour_difference(cells(past, CELL), cells(next_leaf, CELL)), 99) < 3


def test_a_centred_pattern_does_not_run_on_by_itself():
    found = joints(leaf("checks", Size(73.3, 101.7), angle=20), Size(73.3, 101.7))
    assert max(colour_difference(cells(a, CELL), cells(b, CELL)).max() for a, b in found) > 20


@pytest.mark.parametrize("kind", ["stripes", "dots", "gingham", "checks"])
@pytest.mark.parametrize(("trim", "angle"), [*product(ODD[:2], (0, 30)), (ODD[2], 20), (ODD[2], 45)])
def test_out_of_step_the_sides_differ_as_much_as_with_any_size_that_is_near(kind, trim, angle):
    """Any size up to a fifth larger or smaller; 0.07 is one mark more or less at the end of an edge."""
    stepped = differing(leaf(kind, trim, angle=angle, phase="out-of-step"), trim)
    for share in np.linspace(0.8, 1.2, 9):
        other = differing(leaf(kind, trim, angle=angle, size=KINDS[kind].size * share), trim)
        assert stepped[0] > other[0] - 0.07
        assert stepped[1] > other[1] - 0.07


@pytest.mark.parametrize("kind", ["checks", "gingham"])
def test_straight_squares_out_of_step_differ_along_the_whole_of_every_cut(kind):
    """Of checks the cells in which one square gives way to the next are left out."""
    for trim in ODD:
        assert min(differing(leaf(kind, trim, phase="out-of-step"), trim)) > 0.97


@pytest.mark.parametrize("kind", [*PERIODIC])
def test_a_pattern_in_step_is_bent_so_little_that_nobody_sees_it(kind):
    """Ten sizes or more across the leaf: no part is stretched by more than a tenth, or leans more than 3°."""
    trim = Size(131, 173)
    for phase, angle in product(("run-on", "out-of-step"), (0, 10, 45, -60, 90)):
        some = pattern(kind, angle=angle, phase=phase, size=9)
        free = repeat(pattern(kind, angle=angle), trim, (9, 0), (0, 9)).place
        bent = _undone(free, repeat(some, trim, (9, 0), (0, 9)).place)
        assert abs(bent.a - 1) < 0.1
        assert abs(bent.d - 1) < 0.1
        assert max(abs(bent.b), abs(bent.c)) < 0.05


def _undone(first: Affine, then: Affine) -> Affine:
    """The linear part of what leads from one map to another, the first being a turn."""
    back = Affine(first.a, first.c, first.b, first.d)
    return back.then(Affine(then.a, then.b, then.c, then.d))


@pytest.mark.parametrize("phase", ["run-on", "out-of-step"])
@pytest.mark.parametrize("angle", [0, 90])
def test_straight_rows_of_dots_stay_straight(phase, angle):
    place = repeat(pattern("dots", angle=angle, phase=phase), Size(91, 187), (6, 0), (3, 3 * 3**0.5)).place
    bent = _undone(repeat(pattern("dots", angle=angle), Size(91, 187), (6, 0), (3, 3 * 3**0.5)).place, place)
    assert max(abs(bent.b), abs(bent.c)) < 1e-9


def test_running_on_takes_the_whole_number_of_steps_that_is_nearest():
    """91 mm hold 15.2 steps of 6 mm, 187 mm hold 31.2: fifteen and thirty-one."""
    found = repeat(pattern("gingham", phase="run-on"), Size(91, 187), (6, 0), (0, 6))
    assert found.cell == ((15, 0), (0, 31))
    assert found.steps == (pytest.approx((91 / 15, 0)), pytest.approx((0, 187 / 31)))


def test_out_of_step_takes_half_a_step_more_or_less():
    """91 mm hold 15.2 steps of 6 mm: fifteen and a half is nearer than fourteen and a half."""
    found = repeat(pattern("gingham", phase="out-of-step"), Size(91, 187), (6, 0), (0, 6), ((0.5, 0),))
    assert found.steps[0] == pytest.approx((91 / 15.5, 0))


def test_every_mark_within_reach_is_found_once():
    some = pattern("dots", angle=25)
    lattice = repeat(some, Size(60, 80), (6, 0), (3, 5.2))
    area = Box(-3, -3, 66, 86)
    found = list(lattice.near(area, 2.0))
    assert len(found) == len(set(found))
    wide = [
        (i, j)
        for i in range(-60, 61)
        for j in range(-60, 61)
        if area.inset(-2).covers(Box(*lattice.at(i, j), 0, 0))
    ]
    assert sorted(found) == wide
