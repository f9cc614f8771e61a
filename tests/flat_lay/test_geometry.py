"""Where things are seen, against positions worked out by hand."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.base.geometry import Affine, Box
from padspec.flat_lay.geometry import (
    LEAN,
    Slab,
    View,
    Window,
    corners,
    coverage,
    inverse,
    is_seen,
    own_coordinates,
    seen_box,
    side_map,
    top_map,
    window,
)

FLAT = Slab(0, 60, 90, 5, (100, 200))
VIEW = View(2.0, (10, 20))


def test_a_slab_that_is_not_turned_begins_half_its_size_before_its_middle():
    assert FLAT.plan(0, 0) == pytest.approx((70, 155))
    assert FLAT.plan(60, 90) == pytest.approx((130, 245))


def test_a_quarter_turn_clockwise_brings_the_head_to_the_right():
    """The head's middle is 45 mm above the middle; clockwise by 90° that is 45 mm to the right of it."""
    assert Slab(0, 60, 90, 5, (0, 0), 90).plan(30, 0) == pytest.approx((45, 0))


def test_a_view_scales_and_moves():
    """2 px a mm: 10 + 2 × 7 and 20 + 2 × 3."""
    assert VIEW.seen(7, 3, 0) == pytest.approx((24, 26))


def test_what_stands_higher_is_seen_further_up_and_left():
    x, y = VIEW.seen(7, 3, 5)
    assert (24 - x, 26 - y) == pytest.approx((2 * 5 * LEAN[0], 2 * 5 * LEAN[1]))
    assert min(LEAN) > 0


def test_the_face_keeps_its_shape():
    """Whatever is parallel to the table is seen as a similar figure: turned by 30°, its sides as 60 to 90."""
    by = top_map(Slab(0, 60, 90, 5, (3, 4), 30), VIEW)
    assert np.hypot(by.a, by.b) == pytest.approx(2)
    assert np.hypot(by.c, by.d) == pytest.approx(2)
    assert by.a * by.c + by.b * by.d == pytest.approx(0)


def test_the_top_lies_a_thickness_over_the_table():
    """Head left at (70, 155), 5 mm up: 10 + 2 × (70 − 5 × 0.24), 20 + 2 × (155 − 5 × 0.44)."""
    assert top_map(FLAT, VIEW).of(0, 0) == pytest.approx(
        (10 + 2 * (70 - 5 * LEAN[0]), 20 + 2 * (155 - 5 * LEAN[1]))
    )


def test_a_side_begins_where_the_face_ends():
    foot = side_map(FLAT, "foot", VIEW)
    assert foot.of(0, 0) == pytest.approx(top_map(FLAT, VIEW).of(0, 90))
    assert foot.of(60, 0) == pytest.approx(top_map(FLAT, VIEW).of(60, 90))


def test_a_side_is_as_high_as_thickness_times_scale_times_lean():
    foot = side_map(FLAT, "foot", VIEW)
    (x, y), (to_x, to_y) = foot.of(0, 0), foot.of(0, FLAT.thickness)
    assert (to_x - x, to_y - y) == pytest.approx((5 * 2 * LEAN[0], 5 * 2 * LEAN[1]))


def test_foot_and_right_side_are_seen_and_no_others():
    assert [side for side in ("head", "left", "right", "foot") if is_seen(FLAT, side)] == ["right", "foot"]


def test_turned_far_enough_to_the_left_the_right_side_hides():
    """Its outward normal (cos t, sin t) meets LEAN at 0 where tan t = −0.24 / 0.44, at −28.6°."""
    assert is_seen(Slab(0, 60, 90, 5, (0, 0), -28), "right")
    assert not is_seen(Slab(0, 60, 90, 5, (0, 0), -29), "right")


def test_a_leaning_slab_is_higher_on_its_left():
    leaning = Slab(0, 60, 90, 5, (0, 0), 0, left=12, right=0)
    assert leaning.underside(15) == pytest.approx(9)
    assert leaning.height_at(-15, 20) == pytest.approx(9 + 5)


def test_the_box_that_is_seen_holds_top_and_underside():
    """From the top's head left, moved by the lean of 5 mm, to the underside's foot right, which is not moved."""
    box = seen_box(FLAT, View(1.0))
    assert box == Box(
        pytest.approx(70 - 5 * LEAN[0]),
        pytest.approx(155 - 5 * LEAN[1]),
        pytest.approx(60 + 5 * LEAN[0]),
        pytest.approx(90 + 5 * LEAN[1]),
    )


def test_coverage_of_whole_and_half_pixels():
    """A rectangle from 1 to 3.5 across and 1 to 2 down: two whole pixels and a half one."""
    covered = coverage(((1, 1), (3.5, 1), (3.5, 2), (1, 2)), Window(0, 0, 5, 3))
    assert covered[1].tolist() == pytest.approx([0, 1, 1, 0.5, 0])
    assert covered[0].max() == covered[2].max() == 0


def test_coverage_does_not_hang_on_the_order_of_corners():
    square = ((1.2, 1.3), (6.1, 2.0), (5.5, 6.4), (0.8, 5.9))
    part = Window(0, 0, 8, 8)
    assert np.array_equal(coverage(square, part) > 0.5, coverage(square[::-1], part) > 0.5)


@given(st.floats(-45, 45), st.floats(8, 40), st.floats(8, 40))
def test_coverage_adds_up_to_the_area(turn, width, height):
    """Within 2 %: corners are the one place where a product of edges is not exact."""
    slab = Slab(0, width, height, 0, (40.3, 40.7), turn)
    outline = corners(top_map(slab, View(1.0)), width, height)
    assert coverage(outline, Window(0, 0, 81, 81)).sum() == pytest.approx(width * height, rel=0.02)


@given(st.floats(-45, 45), st.floats(0.1, 9), st.floats(-50, 50), st.floats(-50, 50))
def test_a_map_and_its_inverse_lead_back(turn, scale, x, y):
    by = top_map(Slab(0, 60, 90, 5, (x, y), turn, left=3), View(scale))
    assert inverse(by).of(*by.of(12, 34)) == pytest.approx((12, 34), abs=1e-6)


def test_a_map_without_area_has_no_inverse():
    with pytest.raises(ValueError, match="no area"):
        inverse(Affine(1, 2, 2, 4))


def test_own_coordinates_are_those_of_the_middles_of_pixels():
    """At 2 px a mm and with no offset, the middle of pixel (4, 6) is at 2.25 and 3.25 mm."""
    u, v = own_coordinates(Affine(2, 0, 0, 2), Window(4, 6, 5, 7))
    assert (float(u[0, 0]), float(v[0, 0])) == pytest.approx((2.25, 3.25))


def test_a_window_stays_inside_the_picture():
    assert window([(-5, 3), (40, 8)], (20, 10), margin=1) == Window(0, 2, 20, 9)


def test_a_window_outside_the_picture_is_empty():
    assert 0 in window([(-50, 3), (-40, 8)], (20, 10)).size
