"""Gang plans against every plan there is, against rules that hold for all, and by hand."""

from dataclasses import replace
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.errors import PadspecError
from padspec.base.geometry import Size
from padspec.planning.gang import plan_gang
from padspec.planning.layouts import items_of
from padspec.planning.orders import Effort, GangPlan, Order, SheetRoom
from padspec.sheet.arrangement import extent

from .every_plan import least
from .rooms import A4, LIST, NOTE, TAG, orders, shown, strip

SMALL = [
    (2, (3, 2), 50, 0.0, 2),
    (2, (1, 1, 1), 50, 0.05, 2),
    (2, (4, 3, 1), 10, 0.0, 5),
    (3, (2, 1), 50, 0.0, 2),
    (3, (4, 2, 3), 50, 0.04, 2),
    (3, (5, 1, 1), 25, 0.05, 1),
    (3, (2, 2, 2, 2), 20, 0.0, 3),
    (4, (3, 2, 4), 50, 0.05, 2),
    (4, (1, 2, 3), 10, 0.0, 0),
]


@pytest.mark.parametrize(("slots", "pads", "leaves", "overs", "tests"), SMALL)
def test_a_small_plan_is_the_best_of_all_there_are(
    slots: int, pads: tuple[int, ...], leaves: int, overs: float, tests: int
) -> None:
    plan = plan_gang(orders(*pads, leaves=leaves), strip(slots), overs, tests)
    best = least(tuple((n, leaves, 0) for n in pads), ((slots,),), overs, tests)
    assert (plan.sheets, len(plan.pages)) == best


@pytest.mark.parametrize(("slots", "pads", "leaves", "overs", "tests"), SMALL)
def test_a_small_plan_is_proved(slots: int, pads: tuple[int, ...], leaves: int, overs: float, tests: int) -> None:
    plan = plan_gang(orders(*pads, leaves=leaves), strip(slots), overs, tests)
    assert (plan.proved, plan.fewest_pages, plan.gap) == (True, True, 0.0)


def test_pads_of_different_thickness_share_a_sheet_as_well_as_can_be() -> None:
    mixed = [Order("thin", 4, 20), Order("thick", 2, 50), Order("middling", 2, 30)]
    plan = plan_gang(mixed, strip(2), 0.0, 3)
    best = least(((4, 20, 0), (2, 50, 0), (2, 30, 0)), ((2,),), 0.0, 3)
    assert (plan.sheets, len(plan.pages)) == best


def test_two_trims_share_a_sheet_as_well_as_can_be() -> None:
    mixed = [Order("list", 3, 50, 0), Order("note", 2, 50, 1), Order("other note", 1, 50, 1)]
    plan = plan_gang(mixed, SheetRoom(A4, 4.0, (LIST, NOTE)), 0.0, 2)
    # All that straight cuts can part on this sheet: 3 lists; 2 and 2 notes; 1 and 3; 5 notes.
    best = least(((3, 50, 0), (2, 50, 1), (1, 50, 1)), ((3, 0), (2, 2), (1, 3), (0, 5)), 0.0, 2)
    assert (plan.sheets, len(plan.pages)) == best


def test_equal_orders_of_as_many_designs_as_slots_are_one_page() -> None:
    plan = plan_gang(orders(10, 10, 10), strip(3), 0.04, 2)
    assert [(page.sheets, page.test_sheets, page.designs, page.pads) for page in plan.pages] == [
        (520, 2, (0, 1, 2), (10, 10, 10))
    ]


def test_orders_in_proportion_get_slots_in_proportion() -> None:
    plan = plan_gang(orders(20, 10, 10), strip(4), 0.0, 2)
    assert [(page.sheets, page.designs) for page in plan.pages] == [(500, (0, 0, 1, 2))]


def test_a_joined_stack_saves_the_half_leaf_that_each_pad_of_a_shared_page_is_rounded_up_by() -> None:
    # 10 pads of 50 leaves with 5 %: alone ⌈10 × 52.5 ÷ 3⌉ + 2 = 177, three times 531; together 10 × 53 + 2 = 532.
    plan = plan_gang(orders(10, 10, 10), strip(3), 0.05, 2)
    assert (plan.sheets, len(plan.pages)) == (531, 3)


def test_one_slot_a_sheet_leaves_no_choice() -> None:
    plan = plan_gang(orders(7, 300, 12), strip(1), 0.05, 2)
    assert (plan.sheets, plan.proved) == (plan.solo_sheets, True)


def test_a_large_plan_beats_one_design_a_sheet_and_says_how_far_from_the_best_it_may_be() -> None:
    pads = [7 * n % 29 + 1 for n in range(1, 25)]
    plan = plan_gang(orders(*pads), strip(8), 0.0, 2, Effort(windows=6))
    assert plan.bound <= plan.sheets < plan.solo_sheets
    assert plan.gap < 0.02


def test_a_trim_that_does_not_fit_is_refused_with_the_room_there_is() -> None:
    with pytest.raises(PadspecError, match=r"90 mm × 190 mm .* room for 80 mm × 180 mm"):
        plan_gang(orders(1), SheetRoom(Size(80, 180), 4.0, (LIST,)))


def test_an_order_of_no_pads_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one pad"):
        plan_gang(orders(3, 0), strip(2))


def test_nothing_ordered_is_nothing_to_print() -> None:
    assert plan_gang([], strip(2)).pages == ()


ROOMS = [strip(2), strip(3), strip(6), SheetRoom(A4, 4.0, (LIST, NOTE)), SheetRoom(A4, 4.0, (LIST, NOTE, TAG))]
QUICK = Effort(cells=150, nodes=500, windows=3)


@st.composite
def jobs(draw: st.DrawFn) -> tuple[list[Order], SheetRoom, float, int]:
    room = draw(st.sampled_from(ROOMS))
    kinds = st.integers(0, len(room.trims) - 1)
    wish = st.tuples(st.integers(1, 12), st.sampled_from([10, 25, 50]), kinds)
    wishes = draw(st.lists(wish, min_size=1, max_size=6))
    wanted = [Order(f"design {number}", *wish) for number, wish in enumerate(wishes)]
    return wanted, room, draw(st.sampled_from([0.0, 0.05, 0.1])), draw(st.integers(0, 3))


def _plan(job: tuple[list[Order], SheetRoom, float, int]) -> GangPlan:
    return plan_gang(*job, QUICK)


#: No deadline: the machine's haste is no part of the plan. Few examples, for each is a whole plan.
PLANS = settings(max_examples=20, deadline=None, derandomize=True)


@PLANS
@given(jobs())
def test_every_order_is_met_by_the_stacks_on_the_pages(job: tuple[list[Order], SheetRoom, float, int]) -> None:
    wanted, _, overs, _ = job
    made, plan = [0] * len(wanted), _plan(job)
    for page in plan.pages:
        for design in dict.fromkeys(page.designs):
            leaves = wanted[design].leaves * (1 + overs)
            slots = page.designs.count(design)
            # Joined stacks are counted off; a slot of a shared page holds whole pads only.
            stack = (
                (page.sheets + 1e-6) * slots / leaves if page.joined else slots * ((page.sheets + 1e-6) // leaves)
            )
            made[design] += int(stack)
    assert all(pads >= order.pads for pads, order in zip(made, wanted, strict=True))
    assert plan.spare == tuple(pads - order.pads for pads, order in zip(plan.pads, wanted, strict=True))


@PLANS
@given(jobs())
def test_a_plan_lies_between_its_bound_and_one_design_a_sheet(
    job: tuple[list[Order], SheetRoom, float, int],
) -> None:
    plan = _plan(job)
    assert plan.bound <= plan.sheets <= plan.solo_sheets


@PLANS
@given(jobs(), st.randoms(use_true_random=False))
def test_the_sequence_of_the_orders_changes_nothing(
    job: tuple[list[Order], SheetRoom, float, int], random: Random
) -> None:
    shuffled = list(job[0])
    random.shuffle(shuffled)
    one, other = _plan(job), _plan((shuffled, *job[1:]))
    assert shown(one, [order.name for order in job[0]]) == shown(other, [order.name for order in shuffled])


@PLANS
@given(jobs())
def test_planned_twice_is_planned_alike(job: tuple[list[Order], SheetRoom, float, int]) -> None:
    assert _plan(job) == _plan(job)


@PLANS
@given(jobs())
def test_every_slot_has_a_design_of_its_trim_and_the_page_its_room(
    job: tuple[list[Order], SheetRoom, float, int],
) -> None:
    wanted, room, _, _ = job
    for page in _plan(job).pages:
        assert tuple(wanted[design].item for design in page.designs) == items_of(page.arrangement)
        size = extent(page.arrangement, room.gutter)
        assert size.width <= room.area.width + 1e-6
        assert size.height <= room.area.height + 1e-6


def test_without_a_list_of_mixtures_the_oracle_is_asked() -> None:
    wanted = [Order("list", 6, 50, 0), Order("note", 9, 50, 1)]
    room = SheetRoom(A4, 4.0, (LIST, NOTE))
    listed, asked = plan_gang(wanted, room, 0.0, 2), plan_gang(wanted, replace(room, lister=None), 0.0, 2)
    assert asked.bound <= listed.sheets <= asked.sheets


def test_a_plan_to_start_from_does_not_end_the_search() -> None:
    # A case in which the solver, given a start, took its cost for less than half of what it was, and stopped.
    wanted = [Order("a", 3, 2), Order("b", 1, 25), Order("c", 1, 10), Order("d", 2, 2)]
    plan = plan_gang(wanted, strip(4), 0.0, 5)
    assert (plan.sheets, len(plan.pages)) == least(((3, 2, 0), (1, 25, 0), (1, 10, 0), (2, 2, 0)), ((4,),), 0.0, 5)
