"""One-dimensional instances with published optima, through the core that plans gang sheets."""

import pytest

from padspec.planning.cutting_stock import CuttingPlan, cutting_stock

from .knapsack import cuts_of_a_roll

#: Orders for rolls of paper 5600 wide, as the encyclopedic article "Cutting stock problem" gives them.
WIDE = {
    1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20,
    2000: 10, 2050: 12, 2100: 14, 2140: 16, 2150: 18, 2200: 20,
}  # fmt: skip
#: Chvátal, Linear Programming, 1983, chapter 13 (chapter from memory); the data stand in a public model library.
NARROW = {45: 97, 36: 610, 31: 395, 14: 211}


def plan(roll: int, wanted: dict[int, int]) -> CuttingPlan:
    widths = list(wanted)
    return cutting_stock(list(wanted.values()), cuts_of_a_roll(roll, widths))


@pytest.mark.parametrize(("roll", "wanted", "rolls"), [(5600, WIDE, 73), (100, NARROW, 453)])
def test_a_classic_order_takes_the_published_number_of_rolls(
    roll: int, wanted: dict[int, int], rolls: int
) -> None:
    assert plan(roll, wanted).stock == rolls


def test_the_relaxation_of_the_narrow_rolls_is_the_published_one() -> None:
    assert plan(100, NARROW).relaxed == pytest.approx(452.25, abs=1e-6)


@pytest.mark.parametrize(("roll", "wanted"), [(5600, WIDE), (100, NARROW)])
def test_both_are_proved(roll: int, wanted: dict[int, int]) -> None:
    found = plan(roll, wanted)
    assert found.bound == found.stock


@pytest.mark.parametrize(("roll", "wanted"), [(5600, WIDE), (100, NARROW)])
def test_every_pattern_fits_its_roll(roll: int, wanted: dict[int, int]) -> None:
    for pattern in plan(roll, wanted).patterns:
        assert sum(n * width for n, width in zip(pattern, wanted, strict=True)) <= roll


@pytest.mark.parametrize(("roll", "wanted"), [(5600, WIDE), (100, NARROW)])
def test_every_width_is_cut_as_often_as_ordered(roll: int, wanted: dict[int, int]) -> None:
    found = plan(roll, wanted)
    for item, number in enumerate(wanted.values()):
        assert sum(n * pattern[item] for pattern, n in zip(found.patterns, found.times, strict=True)) >= number
