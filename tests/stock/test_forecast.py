"""The forecast by hand, and its quantile against scipy.stats.nbinom (an outside judge)."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import nbinom

from padspec.stock.events import Event
from padspec.stock.forecast import forecast, histories, pooled_mean, quantile, spread
from padspec.stock.selling_days import selling_days


@settings(deadline=None)
@given(st.floats(0.05, 500), st.floats(0.01, 0.99), st.floats(0.5, 0.999))
def test_the_quantile_is_that_of_scipy(shape: float, p: float, chance: float) -> None:
    found = quantile(chance, shape, p)
    judge = int(nbinom.ppf(chance, shape, p))
    # Where the sum comes to the chance itself within what either can tell, both answers are right.
    near = abs(nbinom.cdf(min(found, judge), shape, p) - chance) < 1e-8
    assert found == judge or (near and abs(found - judge) == 1)


@pytest.mark.parametrize(("shape", "p"), [(1.0, 0.5), (20.25, 5 / 6), (2.25, 0.5), (10_000.0, 0.2)])
@pytest.mark.parametrize("chance", [0.5, 0.8, 0.9, 0.99, 0.999])
def test_the_quantile_of_usual_numbers(shape: float, p: float, chance: float) -> None:
    assert quantile(chance, shape, p) == int(nbinom.ppf(chance, shape, p))


def test_a_geometric_by_hand() -> None:
    # r = 1, p = ½: P(Y ≤ k) = 1 − ½^(k+1); 0.875 at k = 2, 0.9375 at k = 3.
    assert (quantile(0.875, 1.0, 0.5), quantile(0.9, 1.0, 0.5)) == (2, 3)


def day(date: str, place: str = "fair", **sold: int) -> list[Event]:
    return [Event(date, "sold", sku, pads, None, place) for sku, pads in sold.items()]


def made(**pads: int) -> list[Event]:
    return [Event("2026-05-01", "made", sku, number) for sku, number in pads.items()]


def told(events: list[Event], skus: str) -> list[tuple[int, int, int]]:
    return [(one.days, one.sold, one.sold_out) for one in histories(selling_days(events), skus)]


def test_days_without_a_sale_count_while_the_pad_was_on_hand() -> None:
    events = [*made(A=9, B=9), *day("2026-05-02", A=1), *day("2026-05-09", A=2, B=1), *day("2026-05-16", B=1)]
    assert told(events, "AB") == [(3, 3, 0), (3, 2, 0)]


def test_days_after_it_sold_out_do_not_count_and_the_day_itself_is_marked() -> None:
    events = [*made(A=3, B=9), *day("2026-05-02", A=3, B=1), *day("2026-05-09", B=1), *day("2026-05-16", B=1)]
    assert told(events, "ABC") == [(1, 3, 1), (3, 3, 0), (0, 0, 0)]


def test_two_places_on_one_date_are_two_days_and_one_place_can_be_asked_for() -> None:
    events = [*made(A=9), *day("2026-05-02", "fair", A=1), *day("2026-05-02", "hall", A=2)]
    assert [one.place for one in selling_days(events)] == ["fair", "hall"]
    assert [one.pads[0].sold for one in selling_days(events, "Hall")] == [2]


def test_a_pad_made_between_the_sales_of_a_day_counts_if_it_was_sold() -> None:
    events = [*made(A=9), *day("2026-05-02", A=1), *made(B=2), *day("2026-05-02", B=2)]
    assert told(events, "AB") == [(1, 1, 0), (1, 2, 1)]


def test_a_forecast_by_hand() -> None:
    # Four days, A sold 18 and B none: mean (18 + 0) ÷ 8 = 2.25 a day, worth one day.
    events = [*made(A=50, B=50)]
    for date, pads in zip(("02", "09", "16", "23"), (4, 5, 3, 6), strict=True):
        events += day(f"2026-05-{date}", A=pads)
    days = selling_days(events)
    mean = pooled_mean(days)
    assert mean == 2.25
    first, second = (forecast(history, mean, 1) for history in histories(days, "AB"))
    # A: r = 2.25 + 18, p = (1 + 4) ÷ (1 + 4 + 1); on average 20.25 ÷ 5 = 4.05.
    assert (first.shape, first.p, first.mean) == (20.25, pytest.approx(5 / 6), pytest.approx(4.05))
    # B: r = 2.25, p = 5 ÷ 6: P(0) = (5/6)^2.25 = 0.6635, P(1) = 2.25 ÷ 6 × P(0) = 0.2488, together 0.912.
    assert second.enough(0.9) == 1
    assert second.enough(0.92) == 2
    assert forecast(first.history, mean, 2).mean == pytest.approx(8.1)


def test_the_chance_is_held_where_the_model_holds() -> None:
    """Rates drawn from the prior, days from those rates, as the model has it: what is wanted lasts 9 times in 10.

    The mean of the prior is given, so that nothing but the quantile is tried; ± 4 standard errors.
    """
    import numpy as np

    random, runs, lasted = np.random.default_rng(11), 4000, 0
    from padspec.stock.forecast import History

    for _ in range(runs):
        rate = random.gamma(3.0, 1.0)
        sold = int(random.poisson(rate, 3).sum())
        enough = forecast(History("A", 3, sold, 0), 3.0, 1).enough(0.9)
        lasted += random.poisson(rate) <= enough
    assert 0.9 - 4 * (0.09 / runs) ** 0.5 <= lasted / runs <= 0.97


def test_the_spread_is_one_for_chance_and_more_for_wild_days() -> None:
    wild = [*made(A=500)]
    for number, pads in enumerate((1, 20, 1, 20, 1, 20, 1), start=1):
        wild += day(f"2026-05-{number:02}", A=pads)
    # Mean 64 ÷ 7; χ² = (4 × (1 − m)² + 3 × (20 − m)²) ÷ m over 6.
    mean = 64 / 7
    assert spread(selling_days(wild)) == pytest.approx((4 * (1 - mean) ** 2 + 3 * (20 - mean) ** 2) / mean / 6)
    assert spread(selling_days(wild[:4])) is None
