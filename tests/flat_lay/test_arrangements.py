"""How pads lie: the numbers of them, the order, what leans on what, and that all is in the picture."""

from math import hypot, radians

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.flat_lay.arrangements import arranged, fitted
from padspec.flat_lay.geometry import seen_box

from .looks import plain_look, wish

PAD = plain_look()
#: 50 leaves of 0.12 mm on a board of 1 mm.
THICK = 7.0


def test_one_pad_lies_flat_on_the_table_and_is_turned_as_wished():
    (slab,) = arranged([PAD], wish(turn=-7))
    assert (slab.turn, slab.left, slab.right, slab.thickness) == (-7, 0, 0, pytest.approx(THICK))


def test_the_pads_of_a_pile_lie_each_on_the_one_below():
    _, *pile = arranged([PAD], wish("stack"))
    assert [slab.left for slab in pile] == pytest.approx([0, THICK, 2 * THICK])
    assert all(slab.left == slab.right for slab in pile)


def test_the_pads_of_a_pile_lie_askew():
    _, *pile = arranged([PAD], wish("stack"))
    assert len({slab.turn for slab in pile}) == len(pile)


def test_the_leaf_beside_a_pile_is_one_leaf_thick_and_lies_under_all():
    leaf, *pile = arranged([PAD], wish("stack"))
    assert (leaf.leaf, leaf.thickness) == (True, 0.12)
    assert not any(slab.leaf for slab in pile)


@pytest.mark.parametrize(("trim", "axis"), [(Size(60, 90), 0), (Size(90, 60), 1)])
def test_the_leaf_lies_beside_an_upright_pad_and_below_a_wide_one(trim, axis):
    leaf, *pile = arranged([plain_look(trim=trim)], wish("stack"))
    away = [leaf.centre[n] - pile[-1].centre[n] for n in (0, 1)]
    assert away[axis] > abs(away[1 - axis])


def test_a_fan_opens_evenly_to_both_sides():
    """Thirteen degrees from pad to pad, the middle one upright."""
    assert [slab.turn for slab in arranged([PAD] * 3, wish("fan"))] == pytest.approx([-13, 0, 13])


def test_a_fan_of_many_opens_no_further_than_sixty_degrees():
    slabs = arranged([PAD] * 9, wish("fan"))
    assert slabs[-1].turn - slabs[0].turn == pytest.approx(60)


def test_each_pad_of_a_fan_leans_on_the_one_before():
    first, second, third = arranged([PAD] * 3, wish("fan"))
    assert (first.left, first.right) == (0, 0)
    assert second.left == third.left > THICK
    assert second.right == third.right == 0


def test_the_heads_of_unlike_pads_in_a_fan_lie_on_one_circle():
    pads = [plain_look(trim=Size(60, height)) for height in (90, 60, 120)]
    heads = [slab.plan(30, 0) for slab in arranged(pads, wish("fan"))]
    radii = [(x * x + y * y) ** 0.5 for x, y in heads]
    assert radii == pytest.approx([radii[0]] * 3)


@pytest.mark.parametrize(
    ("arrange", "count"), [("single", 0), ("single", 2), ("stack", 2), ("fan", 1), ("fan", 10)]
)
def test_another_number_of_pads_is_refused(arrange, count):
    with pytest.raises(ValueError, match=rf"{arrange} takes \d to \d pads, not {count}"):
        arranged([PAD] * count, wish(arrange))


@settings(max_examples=60)
@given(
    st.sampled_from(["single", "stack", "fan"]),
    st.sampled_from(["square", "portrait", "landscape"]),
    st.floats(60, 210),
    st.floats(60, 297),
    st.floats(-45, 45),
)
def test_all_that_lies_there_is_in_the_picture(arrange, shape, width, height, turn):
    asked = wish(arrange, 400, turn, shape)
    slabs = arranged([plain_look(trim=Size(width, height))] * (3 if arrange == "fan" else 1), asked)
    view = fitted(slabs, asked)
    frame = Box(0, 0, *asked.frame).inset(8)
    assert all(frame.covers(seen_box(slab, view)) for slab in slabs)


def test_portrait_and_landscape_are_four_to_five():
    assert wish(size=400, shape="portrait").frame == (320, 400)
    assert wish(size=400, shape="landscape").frame == (400, 320)
    assert wish(size=400).frame == (400, 400)


def test_a_wide_pad_of_a_fan_does_not_hide_the_narrow_one_before_it():
    """Along the circle of the middles: 58 % of 120 mm, as the wide pad too is to show so much of itself."""
    narrow, wide = arranged([plain_look(trim=Size(60, 90)), plain_look(trim=Size(120, 90))], wish("fan"))
    apart = radians(wide.turn - narrow.turn) * hypot(*narrow.centre)
    assert apart == pytest.approx(0.58 * 120)
    assert apart - (wide.width - narrow.width) / 2 > 0.5 * narrow.width
