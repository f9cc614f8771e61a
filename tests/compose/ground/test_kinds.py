"""Each kind of pattern against what its definition says: positions worked out by hand, and how much it covers.

Where nothing else is said the trim is 90 × 190 mm with a bleed of 3 mm, and the pattern's middle is at (45, 95).
Shares are measured on trims into which a pattern goes a whole number of times, so that closed forms are exact.
"""

from math import asin, cos, pi, radians, sin, sqrt

import numpy as np
import pytest

from padspec.base.colour import WHITE, Colour
from padspec.base.geometry import Box, Size
from padspec.scene.nodes import Group, Picture, pictures
from padspec.scene.outline import bounds

from .drawn import AREA, FINE, TRIM, coats, corners, covered, marks, parts, pattern, pixels, scene

PINK, PLUM = Colour(250, 220, 232), Colour(120, 30, 80)


def middles(some, trim=TRIM):
    return {tuple(round(part, 6) for part in bounds(mark).centre) for mark in marks(some, trim)}


# Positions, by hand.


def test_a_split_in_the_middle_colours_the_foot():
    (part,) = marks(pattern("split"))
    assert bounds(part) == Box(-3, 95, 96, 98)


def test_a_split_turned_to_the_right_colours_its_share_of_the_width():
    (part,) = marks(pattern("split", angle=0, mark=0.3))
    assert bounds(part) == Box(63, -3, 30, 196)


def test_a_slanted_split_runs_through_the_middle_of_the_trim_at_its_angle():
    (part,) = marks(pattern("split", angle=30))
    along = [(x, y) for x, y in corners(part) if abs((x - 45) * cos(pi / 6) + (y - 95) * sin(pi / 6)) < 1e-9]
    assert len(along) == 2


def test_a_gradient_has_a_band_for_each_level_of_the_channel_that_changes_most():
    """From 250 to 230 in red, from 220 to 215 in green: twenty steps, of which the ground itself is the first."""
    steps = [shape.fill for shape in _on(PINK, Colour(230, 215, 232))]
    assert len(steps) == 20
    assert steps[-1] == Colour(230, 215, 232)
    assert len({colour.red for colour in steps}) >= 19


def _on(behind, colour):
    (group,) = [
        node
        for node in scene(pattern("gradient", colour=colour), behind=behind).layers[0].nodes
        if isinstance(node, Group)
    ]
    return group.children


def test_every_band_of_a_gradient_reaches_to_the_far_end():
    boxes = [bounds(shape.outline) for shape in _on(PINK, PLUM)]
    assert all(box.bottom == 193 for box in boxes)
    # 190 levels of green: 191 colours share 190 mm.
    assert boxes[0].y == pytest.approx(190 / 191)
    assert np.diff([box.y for box in boxes]) == pytest.approx([190 / 191] * 189)


def test_a_gradient_goes_half_the_way_in_oklab():
    """Black to white: halfway is the grey of OKLab lightness 0.5, which is #636363 (from the definition)."""
    middle = pixels(pattern("gradient"), behind=WHITE)[int(98 * FINE), 480]
    assert np.abs(middle.astype(int) - 0x63).max() <= 1


def test_a_gradient_between_equal_colours_draws_nothing():
    assert [
        node for node in scene(pattern("gradient", colour=WHITE)).layers[0].nodes if isinstance(node, Group)
    ] == []


def test_stripes_stand_one_size_apart_around_the_middle():
    found = sorted(edge for mark in marks(pattern("stripes", size=10, mark=0.4)) for edge in _sides(mark))
    assert found == pytest.approx([edge for n in range(9) for edge in (n * 10 + 3, n * 10 + 7)])


def _sides(mark):
    return bounds(mark).x, bounds(mark).right


def test_dots_stand_in_rows_between_each_other():
    found = middles(pattern("dots", size=10))
    row = round(95 + 5 * sqrt(3), 6)
    assert {(45, 95), (55, 95), (50, row), (40, row)} <= found
    assert (45, row) not in found


def test_the_crossings_of_gingham_stand_on_the_middle_and_one_size_from_it():
    weave, crossings = coats(pattern("gingham", size=10))
    assert weave.fill != crossings.fill
    found = {tuple(round(c, 6) for c in bounds(part).centre) for part in parts(crossings.outline)}
    assert {(45, 95), (55, 95), (45, 105), (35, 85)} <= found
    assert (50, 95) not in found


def test_gingham_is_half_as_strong_where_only_one_stripe_runs():
    """Black on white: the tone halfway in OKLab is #636363."""
    image = pixels(pattern("gingham", size=10))
    spots = {"crossing": (98, 48), "down": (103, 48), "across": (98, 53), "bare": (103, 53)}
    seen = {name: image[int(y * FINE), int(x * FINE), 0] for name, (y, x) in spots.items()}
    assert seen == {"crossing": 0, "down": 0x63, "across": 0x63, "bare": 255}


def test_checks_stand_corner_to_corner():
    found = middles(pattern("checks", size=10))
    assert {(45, 95), (50, 100), (55, 95), (45, 105)} <= found
    assert not {(50, 95), (45, 100)} & found
    square = next(m for m in marks(pattern("checks", size=10)) if bounds(m).covers(Box(45, 95, 0, 0)))
    assert bounds(square) == Box(42.5, 92.5, 5, 5)


def test_the_lines_of_scales_hang_half_a_size_deep_from_their_row():
    """Around (45, 95) a half circle of radius 5 that hangs down, and beside it its neighbours one size away."""
    boxes = [bounds(mark) for mark in marks(pattern("scallop", size=10, mark=0.06))]
    wide = {(round(b.x, 6), round(b.y, 6), round(b.bottom, 6)) for b in boxes if round(b.width, 6) == 10}
    assert {(40, 95, 100), (50, 95, 100), (45, 100, 105), (35, 90, 95)} <= wide


def test_the_line_of_a_scale_ends_where_that_of_the_next_row_begins():
    """At (50, 95), between two scales, there hangs the lowest point of the scale above, (50, 90)."""
    image = pixels(pattern("scallop", size=10, mark=0.06))
    column = image[:, int((50 + 3) * FINE), 0] < 128
    assert column[int(97.8 * FINE)]
    assert column[int(98.2 * FINE)]


def test_waves_swing_evenly_to_both_sides_and_are_as_thick_everywhere():
    """A crest above (45, 95), a trough half a length on; measured across the line at both and where it crosses."""
    some = pattern("wave", size=20, mark=0.2, angle=0)
    image = pixels(some)[..., 0] < 128
    length = 20 * 2.6
    radius = length / 4 / sin(0.72)
    rise = radius * (1 - cos(0.72))
    for x, y in ((45, 95 - rise), (45 + length / 2, 95 + rise), (45 - length / 2, 95 + rise)):
        column = np.flatnonzero(image[:, int((x + 3) * FINE)]) / FINE - 3
        near = column[np.abs(column - y) < 5]
        assert near.min() == pytest.approx(y - 2, abs=0.15)
        assert near.max() == pytest.approx(y + 2, abs=0.15)
    upright = np.flatnonzero(image[:, int((45 + length / 4 + 3) * FINE)]) / FINE - 3
    crossing = upright[np.abs(upright - 95) < 4]
    assert np.ptp(crossing) * cos(0.72) == pytest.approx(4, abs=0.3)


def test_lines_of_a_lattice_cross_in_lozenges_of_one_size_by_root_three():
    knots = {
        tuple(round(part, 6) for part in bounds(mark).centre)
        for mark in marks(pattern("lattice", size=10))
        if bounds(mark).width < 5
    }
    half = round(95 + 5 * sqrt(3), 6)
    assert {(45, 95), (55, 95), (50, half), (40, half), (45, round(95 + 10 * sqrt(3), 6))} <= knots


def test_motifs_drop_by_half_from_column_to_column():
    group = scene(pattern("motif", size=20)).layers[0].nodes[1]
    found = {(round(c.transform.e, 6), round(c.transform.f, 6)) for c in group.children}
    column = round(45 + 10 * sqrt(3), 6)
    assert {(45, 95), (45, 115), (column, 105), (column, 85)} <= found
    assert (column, 95) not in found


def test_all_copies_of_a_motif_share_one_picture_as_large_as_its_mark():
    found = pictures(scene(pattern("motif", size=20, mark=0.5, turn=30, jitter=0.5)))
    assert len(found) > 40
    assert len({id(picture.image) for picture in found}) == 1
    assert {(p.box.width, p.box.height) for p in found} == {(10, 10)}


def test_copies_of_a_motif_turn_no_further_than_wished_and_stray_no_further_than_there_is_room():
    straight = scene(pattern("motif", size=20, mark=0.5)).layers[0].nodes[1].children
    turned = scene(pattern("motif", size=20, mark=0.5, turn=30, jitter=0.8)).layers[0].nodes[1].children
    spots = np.array([(c.transform.e, c.transform.f) for c in straight])
    degrees = [np.degrees(np.arctan2(c.transform.b, c.transform.a)) for c in turned]
    assert max(np.abs(degrees)) <= 30
    assert min(degrees) < -15
    assert max(degrees) > 15
    strays = [np.hypot(*(spots - (c.transform.e, c.transform.f)).T).min() for c in turned]
    # Free between two copies are 20 - 10 mm: each may use half of that, to eight tenths.
    assert 3 < max(strays) <= 4


@pytest.mark.parametrize("kind", ["stripes", "dots", "gingham", "checks", "scallop", "wave", "lattice", "motif"])
def test_a_positive_angle_turns_a_pattern_clockwise_about_the_middle_of_the_trim(kind):
    """Turned back by 90°, the pixels around the middle are those of the pattern that was never turned."""
    square = Size(120, 120)
    upright, turned = pixels(pattern(kind, angle=0), square), pixels(pattern(kind, angle=90), square)
    # Copies of a motif stand upright, whatever the angle; a disc is the same either way.
    assert np.abs(np.rot90(turned).astype(int) - upright).mean() < 3


# How much is covered.


def test_stripes_cover_their_mark():
    assert covered(pattern("stripes", size=6, mark=0.4), Size(90, 60)) == pytest.approx(0.4, abs=0.002)


@pytest.mark.parametrize("mark", [0.2, 0.4, 0.7])
def test_dots_cover_pi_by_two_root_three_of_their_mark_squared(mark):
    trim = Size(60, 12 * sqrt(3) * 3)
    share = pi / (2 * sqrt(3)) * mark**2
    assert covered(pattern("dots", size=6, mark=mark, phase="run-on"), trim) == pytest.approx(share, abs=0.003)


@pytest.mark.parametrize("mark", [0.3, 0.5])
def test_gingham_covers_mark_squared_in_full_and_the_rest_of_its_stripes_in_half(mark):
    image = pixels(pattern("gingham", size=10, mark=mark), Size(100, 100), 0.0)[..., 0]
    assert (image < 20).mean() == pytest.approx(mark**2, abs=0.003)
    assert (np.abs(image.astype(int) - 0x63) < 20).mean() == pytest.approx(2 * mark * (1 - mark), abs=0.006)


@pytest.mark.parametrize("angle", [0, 45, 20])
def test_checks_cover_half(angle):
    some = pattern("checks", size=10, angle=angle, phase="run-on")
    assert covered(some, Size(100, 140)) == pytest.approx(0.5, abs=0.003)


def test_scales_cover_a_half_ring_and_what_shows_of_a_smaller_one():
    """A scale has a field of 2 r × r; the smaller ring goes past the half on either side up to the row above."""
    r, line = 10.0, 1.2
    inner = 0.62 * r
    past = pi / 4 - np.arccos((inner**2 + r**2) / (2 * sqrt(2) * r * inner))
    shown = pi / 2 * (r**2 - (r - line) ** 2) + (pi / 2 + past) * (inner**2 - (inner - line) ** 2)
    some = pattern("scallop", size=2 * r, mark=line / (2 * r))
    assert covered(some, Size(100, 100)) == pytest.approx(shown / (2 * r * r), rel=0.02)


def test_waves_cover_their_mark_stretched_by_their_arcs():
    """An arc is longer than its chord by angle ÷ sine of half its opening."""
    some = pattern("wave", size=10, mark=0.3)
    assert covered(some, Size(104, 100)) == pytest.approx(0.3 * 0.72 / sin(0.72), abs=0.003)


def test_a_lattice_covers_two_sets_of_lines_and_its_knots():
    """Of a disc the two lines that cross in it leave bare what is neither line: knots add that."""
    size, mark = 20.0, 0.1
    high = size * sqrt(3) / 2
    h, r = high * mark / 2, 2.6 * high * mark / 2
    line_in_disc = 2 * (h * sqrt(r**2 - h**2) + r**2 * asin(h / r))
    both = 4 * h**2 / sin(radians(60))
    added = pi * r**2 - (2 * line_in_disc - both)
    share = 1 - (1 - mark) ** 2 + added / (size * high)
    some = pattern("lattice", size=size, mark=mark, phase="run-on")
    assert covered(some, Size(100, size * sqrt(3) * 4)) == pytest.approx(share, abs=0.003)


# The clip.


@pytest.mark.parametrize("kind", ["dots", "wave", "motif", "sprinkle", "scallop"])
def test_a_pattern_is_clipped_to_the_bleed(kind):
    node = scene(pattern(kind)).layers[0].nodes[1]
    assert isinstance(node, Group)
    assert bounds(node.clip) == AREA


def test_motifs_hold_nothing_but_pictures():
    group = scene(pattern("motif")).layers[0].nodes[1]
    assert all(isinstance(c, Group) and all(isinstance(p, Picture) for p in c.children) for c in group.children)


@pytest.mark.parametrize("kind", ["sprinkle", "motif", "dots", "gradient", "split"])
def test_another_bleed_moves_no_mark(kind):
    little, much = (pixels(pattern(kind), Size(60, 60), bleed) for bleed in (1.0, 4.0))
    assert np.abs(much[30:-30, 30:-30].astype(int) - little).mean() < 2
