"""Time lines: never two things at once with one pair of hands, and against optima known by other means."""

import doctest
from itertools import pairwise, permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.schedule import timeline, wording
from padspec.schedule.task import Task
from padspec.schedule.timeline import Timeline, timeline_of


def task(key, minutes, busy=(), after=(), **more):
    return Task(key, "print", key, minutes, busy, after, ((0, 1),), **more)


def flow_shop(jobs):
    """Each job first on the printer, then by hand: Johnson's two machines."""
    for n, (first, second) in enumerate(jobs):
        yield task(f"print-{n}", first, ("printer",))
        yield task(f"cut-{n}", second, ("hands",), (f"print-{n}",))


def best_of_all_orders(jobs):
    """The least makespan of a two-machine flow shop over every order, by the plain recursion."""

    def makespan(order):
        first = second = 0.0
        for a, b in order:
            first += a
            second = max(first, second) + b
        return second

    return min(makespan(order) for order in permutations(jobs))


@pytest.mark.parametrize("module", [wording, timeline])
def test_doctests(module):
    assert doctest.testmod(module).failed == 0


def test_johnsons_example():
    """Five jobs on two machines take 24 at best (after S. M. Johnson, 1954; the example from memory, its optimum
    found again here over all orders)."""
    jobs = [(3, 6), (5, 2), (1, 2), (6, 6), (7, 5)]
    assert best_of_all_orders(jobs) == 24
    assert timeline_of(list(flow_shop(jobs)), 1).minutes == 24


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 30), st.integers(1, 30)), min_size=1, max_size=5))
def test_the_bound_is_never_above_the_best_of_all_orders_nor_the_time_line_below_it(jobs):
    best = best_of_all_orders(jobs)
    found = timeline_of(list(flow_shop(jobs)), 1)
    assert found.bound <= best + 1e-9
    assert best - 1e-9 <= found.minutes <= 1.2 * best


def load(n, minutes, head=0.0):
    """A load of the clamp: filled, coated, set, slit."""
    before = ()
    if head:
        yield task(f"count-{n}", head, ("hands",))
        before = (f"count-{n}",)
    yield task(f"fill-{n}", minutes[0], ("hands",), before, load=n, takes_clamp=True)
    yield task(f"coat-{n}", minutes[1], ("hands",), (f"fill-{n}",), load=n)
    yield task(f"set-{n}", minutes[2], (), (f"coat-{n}",), load=n, frees_clamp=True)
    yield task(f"slit-{n}", minutes[3], ("hands",), (f"set-{n}",), load=n)


_MINUTES = st.tuples(*[st.integers(1, 40)] * 4)


@settings(max_examples=80, deadline=None)
@given(
    st.lists(_MINUTES, min_size=1, max_size=4),
    st.integers(1, 3),
    st.lists(st.tuples(st.integers(1, 60), st.integers(1, 60)), max_size=3),
)
def test_hands_printer_and_clamps_are_never_asked_for_twice(loads, clamps, jobs):
    tasks = [*flow_shop(jobs), *(one for n, minutes in enumerate(loads, 1) for one in load(n, minutes, 5.0))]
    found = timeline_of(tasks, clamps)
    assert sorted(one.task.key for one in found.placed) == sorted(one.key for one in tasks)
    ends = {one.task.key: one.end for one in found.placed}
    for one in found.placed:
        assert one.end == pytest.approx(one.start + one.task.minutes)
        assert all(ends[key] <= one.start + 1e-6 for key in one.task.after)
    for resource in ("hands", "printer"):
        busy = sorted((one.start, one.end) for one in found.placed if resource in one.task.busy)
        assert all(before[1] <= after[0] + 1e-6 for before, after in pairwise(busy))
    assert _most_in_clamps(found) <= clamps
    assert found.bound <= found.minutes + 1e-6
    assert found.minutes <= sum(one.minutes for one in tasks) + 1e-6


def _most_in_clamps(found: Timeline) -> int:
    stays = []
    for n in {one.task.load for one in found.placed} - {0}:
        own = [one for one in found.placed if one.task.load == n]
        start = min(one.start for one in own if one.task.takes_clamp)
        stays.append((start, next(one.end for one in own if one.task.frees_clamp)))
    return max((sum(a <= start < b - 1e-9 for a, b in stays) for start, _ in stays), default=0)


def test_other_work_goes_on_while_adhesive_dries():
    """10 min to fill and coat, 60 to set, 5 to slit; meanwhile 40 of cutting: 75 in all, not 115."""
    tasks = [*load(1, (5, 5, 60, 5)), task("cut", 40, ("hands",))]
    found = timeline_of(tasks, 1)
    assert (found.minutes, found.bottleneck, found.shortest) == (75, "waiting", True)


def test_one_clamp_and_two_loads_are_a_bottleneck_and_a_second_clamp_is_none():
    """One after the other 2 × 70 and the last slitting; side by side the second load starts 10 later."""
    tasks = [*load(1, (5, 5, 60, 5)), *load(2, (5, 5, 60, 5))]
    one, two = timeline_of(tasks, 1), timeline_of(tasks, 2)
    assert (one.minutes, one.bottleneck) == (145, "clamp")
    assert two.minutes == 85


def test_hands_are_named_where_all_is_by_hand():
    found = timeline_of([task("a", 30, ("hands",)), task("b", 45, ("hands",))], 1)
    assert (found.minutes, found.bottleneck, found.hands) == (75, "hands", 75)


def test_nothing_to_do_takes_no_time():
    assert timeline_of([], 1).minutes == 0
