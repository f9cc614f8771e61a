"""On hand is worked out, line by line: made + returned − sold + what counts corrected."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from padspec.stock.events import Event
from padspec.stock.on_hand import late_counts, on_hand, shortfalls, tallies


def line(number: int, kind: str, pads: int, sku: str = "A", day: int = 6, each: str | None = None) -> Event:
    return Event(f"2026-06-{day:02}", kind, sku, pads, Decimal(each) if each else None, "", number)  # type: ignore[arg-type]


moves = st.lists(
    st.tuples(st.sampled_from(["made", "sold", "returned"]), st.integers(1, 50), st.sampled_from("AB")),
    max_size=30,
)


@given(moves, st.randoms())
def test_on_hand_is_made_and_returned_less_sold_in_any_order(some, random) -> None:  # type: ignore[no-untyped-def]
    events = [line(0, kind, pads, sku) for kind, pads, sku in some]
    shuffled = list(events)
    random.shuffle(shuffled)
    for tally in tallies(events):
        assert tally.on_hand == tally.made + tally.returned - tally.sold
    assert on_hand(events) == on_hand(shuffled)


@given(
    st.lists(st.tuples(st.sampled_from(["made", "sold", "returned", "counted"]), st.integers(0, 50)), max_size=30)
)
def test_the_columns_that_are_shown_add_up(some) -> None:  # type: ignore[no-untyped-def]
    for tally in tallies([line(0, kind, pads) for kind, pads in some]):
        assert tally.on_hand == tally.made + tally.returned - tally.sold + tally.corrected


def test_a_day_at_the_stall_by_hand() -> None:
    events = [
        line(2, "made", 12),
        line(3, "sold", 3, each="6.50"),
        line(4, "sold", 2),
        line(5, "returned", 1, each="6.50"),
        line(6, "counted", 7),
    ]
    (tally,) = tallies(events)
    # 12 − 3 − 2 + 1 = 8, and 7 were found; 3 × 6.50 − 6.50 = 13.00.
    assert (tally.on_hand, tally.corrected, tally.unpriced, tally.takings) == (7, -1, 2, Decimal("13.00"))


@given(st.lists(st.integers(1, 10**8), min_size=1, max_size=20))
def test_takings_are_exact(cents: list[int]) -> None:
    (tally,) = tallies([line(0, "sold", 3, each=str(Decimal(c).scaleb(-2))) for c in cents])
    assert tally.takings == Decimal(3 * sum(cents)).scaleb(-2)


def test_each_line_that_sells_what_is_not_there_is_told() -> None:
    events = [line(2, "made", 2), line(3, "sold", 3), line(4, "made", 5), line(5, "sold", 1), line(6, "sold", 9)]
    told = list(shortfalls(events))
    assert [problem.place.line for problem in told] == [3, 6]
    assert "2 on hand before this line, 3 sold, which leaves -1" in told[0].message
    assert "2026-06-06,counted,A,3,," in told[0].mend


def test_a_count_below_a_later_day_is_told() -> None:
    events = [
        line(2, "made", 9),
        line(3, "sold", 2, day=13),
        line(4, "counted", 9, day=7),
        line(5, "counted", 7, day=14),
    ]
    (told,) = late_counts(events)
    assert (told.place.line, "line 3" in told.mend) == (4, True)
