"""Bleed around leaves of mixed grids: it prints wherever no neighbour lies, and never on a neighbour."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.sheet.arrangement import Arrangement, Grid, Split, extent, faces, placed, turned
from padspec.sheet.sheet import Slot
from padspec.sheet.slots import make_slots

FACE = Size(40, 60)
sizes = st.one_of(
    st.just(FACE),
    st.builds(Size, st.integers(250, 700), st.integers(250, 700)).map(lambda s: Size(s.width / 10, s.height / 10)),
)
grids = st.builds(
    lambda rows, columns, face, lies: Grid(rows, columns, face.turned() if lies else face, lies),
    st.integers(1, 3),
    st.integers(1, 3),
    sizes,
    st.booleans(),
)
arrangements = st.recursive(grids, lambda inner: st.builds(Split, st.booleans(), inner, inner), max_leaves=4)


def slots_of(
    arrangement: Arrangement, gutter: float, bleed: float = 3.0, around: float = 10.0
) -> tuple[Slot, ...]:
    size = extent(arrangement, gutter)
    paper = Box(0, 0, size.width + 2 * around, size.height + 2 * around)
    return make_slots(placed(arrangement, around, around, gutter), gutter, paper, bleed)


def printed_at(slots: tuple[Slot, ...], x: float, y: float) -> bool:
    return any(
        box.x - 1e-9 <= x <= box.right + 1e-9 and box.y - 1e-9 <= y <= box.bottom + 1e-9
        for slot in slots
        for box in slot.printed
    )


@settings(max_examples=80, deadline=None)
@given(arrangements, st.sampled_from([0.0, 0.0, 1.0, 4.0, 6.0, 10.0]))
def test_just_outside_every_leaf_something_is_printed(arrangement: Arrangement, gutter: float) -> None:
    """A cut that is a little off shows bleed, or the neighbour: never white."""
    slots = slots_of(arrangement, gutter)
    for slot in slots:
        box = slot.trim
        for n, out in product(range(1, 20), (0.4, 1.9)):
            x, y = box.x + box.width * n / 20, box.y + box.height * n / 20
            for place in ((box.x - out, y), (box.right + out, y), (x, box.y - out), (x, box.bottom + out)):
                assert printed_at(slots, *place), place


@settings(max_examples=80, deadline=None)
@given(arrangements, st.sampled_from([0.0, 0.0, 1.0, 2.0, 4.0, 10.0]))
def test_no_bleed_prints_on_another_leaf(arrangement: Arrangement, gutter: float) -> None:
    slots = slots_of(arrangement, gutter)
    for slot in slots:
        assert slot.printed[0].covers(slot.trim)
        for other in slots:
            assert other is slot or not any(box.overlaps(other.trim, slack=1e-6) for box in slot.printed)


@settings(max_examples=80, deadline=None)
@given(arrangements, st.sampled_from([0.0, 3.0]))
def test_an_edge_is_butted_where_a_neighbour_touches_it(arrangement: Arrangement, bleed: float) -> None:
    slots = slots_of(arrangement, 0.0, bleed)
    for slot in slots:
        # A strip thinner than faces of nearly one size leave between them.
        thin = 0.01
        grown = {
            "left": Box(slot.trim.x - thin, slot.trim.y, thin, slot.trim.height),
            "head": Box(slot.trim.x, slot.trim.y - thin, slot.trim.width, thin),
            "right": Box(slot.trim.right, slot.trim.y, thin, slot.trim.height),
            "foot": Box(slot.trim.x, slot.trim.bottom, slot.trim.width, thin),
        }
        touched = {edge for edge, box in grown.items() if any(box.overlaps(o.trim, 1e-6) for o in slots)}
        assert set(slot.butted) == touched


@settings(max_examples=60, deadline=None)
@given(arrangements, st.sampled_from([0.0, 4.0]))
def test_turning_the_paper_turns_every_leaf(arrangement: Arrangement, gutter: float) -> None:
    size, other = extent(arrangement, gutter), extent(turned(arrangement), gutter)
    assert (other.width, other.height) == pytest.approx((size.height, size.width))
    assert faces(turned(arrangement)) == faces(arrangement) == len(slots_of(arrangement, gutter))
    there = sorted((b.y, b.x, b.height, b.width) for b in (slot.trim for slot in slots_of(arrangement, gutter)))
    back = sorted((b.x, b.y, b.width, b.height) for b in (s.trim for s in slots_of(turned(arrangement), gutter)))
    assert back == [pytest.approx(box) for box in there]


def test_the_free_part_of_an_edge_that_a_neighbour_shares_in_part_has_a_strip_of_bleed() -> None:
    # One that lies, 60 wide, under three upright ones, 40 each: half of the second one's foot is free.
    arrangement = Split(False, Grid(1, 3, FACE, False), Grid(1, 1, FACE.turned(), True))
    first, second, third, lying = slots_of(arrangement, 0.0)
    assert first.bleed.bottom == 0
    assert len(first.printed) == 1
    # 40 to 60 mm is shared; the neighbour's own bleed prints to 63; from there to 80 the strip does.
    assert second.bleed.bottom == 0
    assert second.printed[1] == Box(10 + 63, 10 + 60, 17, 3)  # up to the third, whose own bleed goes on
    assert third.bleed.bottom == 3
    assert third.butted == ("left",)
    assert (lying.bleed.top, lying.bleed.right) == (0, 3)
