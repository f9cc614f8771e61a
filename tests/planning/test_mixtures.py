"""Which trims go on a sheet together, against the exact cutting and against published counts."""

import pytest

from padspec.base.geometry import Size
from padspec.planning.layouts import find_layouts, items_of
from padspec.planning.mixtures import every_mixture
from padspec.planning.orders import SheetRoom
from padspec.sheet.fitting.guillotine import Piece, best_cutting

from .rooms import A4, LIST, NOTE, TAG

TRIMS = [(0, LIST), (1, NOTE), (2, TAG)]


def test_no_trim_is_missed_that_the_most_valuable_cutting_finds() -> None:
    mixtures = every_mixture(A4, TRIMS, 4.0, True)
    assert mixtures
    for worth in [(1, 1, 1), (5, 2, 1), (3.1, 1.9, 1.2), (9, 4, 3), (1, 2, 1.3), (4, 1.6, 1.1)]:
        cutting = best_cutting(A4, [Piece(size, worth[item], True, item) for item, size in TRIMS], 4.0)
        best = max(sum(n * each for n, each in zip(mixture, worth, strict=True)) for mixture in mixtures)
        assert best == pytest.approx(cutting.bound, abs=1e-5)


def test_every_arrangement_holds_what_its_mixture_says() -> None:
    for mixture, arrangement in (every_mixture(A4, TRIMS, 4.0, True) or {}).items():
        assert tuple(items_of(arrangement).count(item) for item, _ in TRIMS) == mixture


def test_a_mixture_that_is_worth_no_more_than_its_neighbours_is_found_too() -> None:
    # Whatever lists and notes are worth, either two of each or five notes are worth more than one and three.
    assert (1, 3) in (every_mixture(A4, TRIMS[:2], 4.0, True) or {})


def test_four_around_a_hole_cannot_be_parted_by_straight_cuts() -> None:
    # The pinwheel: 5 × 5 holds four of 3 × 2 but no cut right across parts them; three is the most.
    assert list(every_mixture(Size(5, 5), [(0, Size(3, 2))], 0.0, True) or {}) == [(3,)]


def test_the_classic_pallet_holds_forty_six_by_straight_cuts() -> None:
    # 40 × 25 of 7 × 3, a well-known pallet; 47 without the straight cuts, from memory.
    assert list(every_mixture(Size(40, 25), [(0, Size(7, 3))], 0.0, True) or {}) == [(46,)]


def test_too_many_to_list_are_not_listed() -> None:
    assert every_mixture(A4, TRIMS, 4.0, True, most_work=50) is None


def test_what_the_oracle_is_asked_rules_out_all_but_what_is_listed() -> None:
    listed = find_layouts(SheetRoom(A4, 4.0, (LIST, NOTE, TAG)), (0, 1, 2), 60)
    asked = find_layouts(SheetRoom(A4, 4.0, (LIST, NOTE, TAG), lister=None), (0, 1, 2), 60)
    for layout in listed.found:
        assert any(all(n <= m for n, m in zip(layout.mixture, held, strict=True)) for held in asked.possible)
