"""Chances of slivers and off-centre panels, against a Monte Carlo run of the full geometry and against scipy."""

from dataclasses import replace
from math import sqrt

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy import stats

from padspec.base.geometry import Box, Size
from padspec.sheet.chances.tolerance import (
    SIGMAS,
    Edges,
    Errors,
    bleed_for_chance,
    chance_of_sliver,
    chance_off_centre,
    over_leaves,
)

from .designs import A4, LEGAL, LETTER

RUNS = 400_000
#: Sheet, leaf, bleed, errors, the sliver that still passes.
CASES = [
    (A4, Box(10, 9.5, 190, 90), Edges.all(1.5), Errors(1, 0.5, 0.5), 0.0),
    (A4, Box(10, 197.5, 190, 90), Edges.all(1.0), Errors(1, 0.5, 0.5), 0.0),
    (A4, Box(110, 150, 90, 130), Edges(3, 0.5, 1, 2), Errors(0.3, 2, 0.8), 0.2),
    (A4, Box(10, 180, 90, 110), Edges.all(1.0), Errors(0.1, 3, 0.1), 0.0),
    (A4, Box(5, 5, 200, 287), Edges.all(0.0), Errors(0.5, 0.3, 0.8), 0.3),
    (LETTER, Box(20, 160, 88.9, 100), Edges(3, None, 2, 3), Errors(1.27, 2.54, 0.8), 0.0),
    (LETTER, Box(108, 10, 88.9, 215.9), Edges(None, 1, 1, 1), Errors(1, 0.8, 0.8), 0.25),
    (LEGAL, Box(60, 120, 90, 215), Edges.all(2.0), Errors(1, 0.5, 1.6), 0.0),
]


class Trials:
    """Sheets printed and cut by chance: the real corners turned about the middle of the leading edge and shifted,
    every cut off for itself.
    """

    def __init__(self, sheet: Size, leaf: Box, errors: Errors) -> None:
        draw = np.random.default_rng(20).normal(0, 1, (7, RUNS))
        self.pivot = sheet.width / 2
        self.shift = draw[:2] * errors.placement / SIGMAS
        angle = draw[2] * errors.skew / SIGMAS / sheet.height
        self.cos, self.sin = np.cos(angle), np.sin(angle)
        left, head, right, foot = draw[3:] * errors.cutter / SIGMAS
        self.left, self.right = leaf.x + left, leaf.right + right
        self.head, self.foot = leaf.y + head, leaf.bottom + foot
        self.leaf = leaf

    def lands(self, x: float, y: float) -> np.ndarray:
        across = x - self.pivot
        turned = (self.pivot + across * self.cos - y * self.sin, across * self.sin + y * self.cos)
        return np.array(turned) + self.shift

    def printed_corners(self, bleed: Edges) -> list[np.ndarray]:
        """Of the printed box, clockwise from the top left."""
        box = self.leaf
        x, y = box.x - (bleed.left or 0), box.y - (bleed.head or 0)
        right, bottom = box.right + (bleed.right or 0), box.bottom + (bleed.foot or 0)
        return [self.lands(*corner) for corner in ((x, y), (right, y), (right, bottom), (x, bottom))]

    def cut_corners(self) -> list[np.ndarray]:
        ends = ((self.left, self.head), (self.right, self.head), (self.right, self.foot), (self.left, self.foot))
        return [np.array(end) for end in ends]

    def slivers(self, bleed: Edges, limit: float) -> float:
        """How often white wider than the limit lies along an edge, measured across it at both of its ends."""
        northwest, northeast, southeast, southwest = self.printed_corners(bleed)
        white = np.zeros(RUNS, bool)
        for end in (self.head, self.foot):
            if bleed.left is not None:
                white |= _on_line(northwest, southwest, 1, end) - self.left > limit
            if bleed.right is not None:
                white |= self.right - _on_line(northeast, southeast, 1, end) > limit
        for end in (self.left, self.right):
            if bleed.head is not None:
                white |= _on_line(northwest, northeast, 0, end) - self.head > limit
            if bleed.foot is not None:
                white |= self.foot - _on_line(southwest, southeast, 0, end) > limit
        return float(white.mean())

    def uncovered(self, bleed: Edges) -> float:
        """How often a corner of the leaf lies outside the printed box: any white at all."""
        corners = self.printed_corners(bleed)
        bare = np.zeros(RUNS, bool)
        for one, other in zip(corners, [*corners[1:], corners[0]], strict=True):
            for corner in self.cut_corners():
                along, out = other - one, corner - one
                bare |= along[0] * out[1] - along[1] * out[0] < 0
        return float(bare.mean())

    def off_centre(self, limit: float) -> float:
        middle = self.lands(*self.leaf.centre)
        across = middle[0] - (self.left + self.right) / 2
        down = middle[1] - (self.head + self.foot) / 2
        return float(((np.abs(across) > limit) | (np.abs(down) > limit)).mean())


def _on_line(one: np.ndarray, other: np.ndarray, along: int, at: np.ndarray) -> np.ndarray:
    """Where the line through two points is across, at a place along it."""
    share = (at - one[along]) / (other[along] - one[along])
    return one[1 - along] + share * (other[1 - along] - one[1 - along])


def four_standard_errors(chance: float) -> float:
    return 4 * sqrt(chance * (1 - chance) / RUNS)


@pytest.mark.parametrize(("sheet", "leaf", "bleed", "errors", "limit"), CASES)
def test_slivers_are_as_frequent_as_in_a_monte_carlo_run(
    sheet: Size, leaf: Box, bleed: Edges, errors: Errors, limit: float
) -> None:
    told = chance_of_sliver(leaf, sheet, bleed, errors, limit)
    assert Trials(sheet, leaf, errors).slivers(bleed, limit) == pytest.approx(told, abs=four_standard_errors(told))


@pytest.mark.parametrize(("sheet", "leaf", "bleed", "errors", "limit"), [CASES[at] for at in (0, 1, 3, 7)])
def test_any_white_at_all_is_a_corner_of_the_leaf_outside_the_print(
    sheet: Size, leaf: Box, bleed: Edges, errors: Errors, limit: float
) -> None:
    assert limit == 0
    told = chance_of_sliver(leaf, sheet, bleed, errors)
    assert Trials(sheet, leaf, errors).uncovered(bleed) == pytest.approx(told, abs=four_standard_errors(told))


@pytest.mark.parametrize("limit", [0.4, 1.0])
@pytest.mark.parametrize(("sheet", "leaf", "errors"), [(case[0], case[1], case[3]) for case in CASES])
def test_panels_are_off_centre_as_often_as_in_a_monte_carlo_run(
    sheet: Size, leaf: Box, errors: Errors, limit: float
) -> None:
    told = chance_off_centre(leaf, sheet, errors, limit)
    assert Trials(sheet, leaf, errors).off_centre(limit) == pytest.approx(told, abs=four_standard_errors(told))


LEAF = Box(10, 10, 90, 120)


def test_one_edge_without_skew_is_the_tail_of_a_normal() -> None:
    """scipy.stats.norm as the reference, far into the tail as well."""
    for bleed in (0.0, 1.0, 2.5):
        told = chance_of_sliver(LEAF, A4, Edges(bleed, None, None, None), Errors(1, 0, 0.5))
        assert told == pytest.approx(stats.norm.sf(bleed, scale=sqrt(1 + 0.25) / SIGMAS), rel=1e-12)


@pytest.mark.parametrize("cutter", [0.1, 0.5, 2.0])
def test_edges_across_from_each_other_are_scipys_bivariate_normal(cutter: float) -> None:
    placement, own = 1 / SIGMAS, cutter / SIGMAS
    cov = [[placement**2 + own**2, -(placement**2)], [-(placement**2), placement**2 + own**2]]
    clear = stats.multivariate_normal([0, 0], cov).cdf([0.9, 0.7])
    told = chance_of_sliver(LEAF, A4, Edges(0.9, None, 0.7, None), Errors(1, 0, cutter))
    assert told == pytest.approx(1 - clear, abs=1e-9)


def test_skew_at_one_edge_is_scipys_bivariate_normal_for_each_sign_of_the_turn() -> None:
    """Turned clockwise the left edge tells at its head, counter-clockwise at its foot: two orthant
    probabilities of scipy.stats.multivariate_normal, without any quadrature over the turn.
    """
    errors, bleed = Errors(1, 2, 0.5), 0.8
    turn, own = errors.skew / SIGMAS / A4.height, (1 + 0.25) / SIGMAS**2
    wanted = 0.0
    for sign, end in ((1, LEAF.y), (-1, LEAF.bottom)):
        # The edge is off by its own error − θ × end; both it and sign × θ are to be above a limit.
        both = -sign * end * turn
        cov = [[own + (end * turn) ** 2, both], [both, 1.0]]
        wanted += stats.multivariate_normal([0, 0], cov).cdf([-bleed, 0])
    assert chance_of_sliver(LEAF, A4, Edges(bleed, None, None, None), errors) == pytest.approx(wanted, abs=1e-9)


def test_skew_at_all_edges_of_a_leaf_without_extent_is_scipys_normal_of_four() -> None:
    """Where an edge has no length the turn is one more normal error, shared by all with weights of their own."""
    leaf, errors, bleed = Box(170, 240, 0, 0), Errors(1, 2, 0.5), 1.1
    turn = errors.skew / SIGMAS / A4.height
    # In shift across, shift down, turn, and the four cuts: left, right, head, foot.
    down, across = leaf.y * turn, (leaf.x - A4.width / 2) * turn
    place, own = errors.placement / SIGMAS, errors.cutter / SIGMAS
    rows = [
        [place, 0, -down, own, 0, 0, 0],
        [-place, 0, down, 0, own, 0, 0],
        [0, place, across, 0, 0, own, 0],
        [0, -place, -across, 0, 0, 0, own],
    ]
    normal = stats.multivariate_normal(np.zeros(4), np.array(rows) @ np.array(rows).T, seed=5)
    clear = normal.cdf([bleed] * 4)
    assert chance_of_sliver(leaf, A4, Edges.all(bleed), errors) == pytest.approx(1 - clear, abs=5e-5)


def test_off_centre_without_skew_is_two_tails_each_way() -> None:
    """scipy.stats.norm: the middle of a leaf is the mean of two cuts, σ² = placement² + cutter² ÷ 2."""
    out = 2 * stats.norm.sf(0.8, scale=sqrt(1 + 0.25 / 2) / SIGMAS)
    assert chance_off_centre(LEAF, A4, Errors(1, 0, 0.5), 0.8) == pytest.approx(1 - (1 - out) ** 2, rel=1e-12)


def test_a_limit_is_held_95_times_in_100() -> None:
    """± limit is 1.96 σ: placement alone leaves a bleed of that size in 2.5 % each way."""
    told = chance_of_sliver(LEAF, A4, Edges(0.8, None, 0.8, None), Errors(0.8, 0, 0))
    assert told == pytest.approx(0.05, abs=5e-6)
    assert told == pytest.approx(2 * stats.norm.sf(1.96), rel=1e-12)


def test_the_published_error_stack_is_exceeded_once_in_forty_at_an_edge() -> None:
    """Print 1.0, cut 0.8, paper 0.8 mm stack to √2.28 = 1.51 mm. Derived; the paper acts as placement does."""
    errors = Errors(sqrt(1.0**2 + 0.8**2), 0, 0.8)
    told = chance_of_sliver(LEAF, A4, Edges(1.51, None, None, None), errors)
    assert told == pytest.approx(0.025, abs=1e-4)


def test_3_mm_of_bleed_cover_the_published_error_stack() -> None:
    """The same stack, at worst 2.6 mm."""
    errors = Errors(sqrt(1.0**2 + 0.8**2), 0, 0.8)
    assert chance_of_sliver(LEAF, A4, Edges.all(3.0), errors) < 0.0005
    assert bleed_for_chance(LEAF, A4, Edges.all(0), errors) < 2.6


NONE = Errors(0, 0, 0)


@pytest.mark.parametrize(
    ("bleed", "limit", "chance"), [(0.0, 0.0, 0.0), (3.0, 0.0, 0.0), (-0.3, 0.3, 0.0), (-0.4, 0.3, 1.0)]
)
def test_without_errors_white_shows_never_or_always(bleed: float, limit: float, chance: float) -> None:
    """A negative bleed is print that stops short of the trim."""
    assert chance_of_sliver(LEAF, A4, Edges.all(bleed), NONE, limit) == chance


def test_without_errors_a_panel_is_never_off_centre_and_no_bleed_is_needed() -> None:
    assert chance_off_centre(LEAF, A4, NONE, 0.0) == 0
    assert bleed_for_chance(LEAF, A4, Edges.all(0.0), NONE) == 0


def test_skew_alone_bares_an_edge_past_one_angle_each_way() -> None:
    """Closed form: at the foot, 250 mm down, 0.5 mm of bleed are used up by 0.002 rad; at the head by 0.05."""
    turn = 1.5 / SIGMAS / A4.height
    told = chance_of_sliver(Box(10, 10, 90, 240), A4, Edges(0.5, None, None, None), Errors(0, 1.5, 0))
    # Only a turn to one side takes the foot of the left edge away from it.
    assert told == pytest.approx(stats.norm.sf(0.002 / turn), rel=1e-12)


def test_skew_alone_may_cover_an_edge_that_stops_short() -> None:
    """Print 0.5 mm short of the left edge covers it from head to foot past 0.05 rad clockwise, 10 mm down."""
    errors = Errors(0, 40, 0)
    told = chance_of_sliver(LEAF, A4, Edges(-0.5, None, None, None), errors)
    assert told == pytest.approx(1 - stats.norm.sf(0.05 / (40 / SIGMAS / A4.height)), rel=1e-12)


@pytest.mark.parametrize("errors", [Errors(0, 3, 0), Errors(0, 0.5, 0), Errors(1, 0.5, 0), Errors(0, 0.5, 1)])
def test_an_error_of_a_hair_is_as_good_as_none(errors: Errors) -> None:
    """The closed forms for errors of 0 and the quadrature meet, however sharply an edge fails."""
    hair = Errors(*(error or 1e-7 for error in (errors.placement, errors.skew, errors.cutter)))
    leaf, bleed = Box(10, 180, 90, 110), Edges(0.6, 0.3, 0.4, 0.5)
    told = chance_of_sliver(leaf, A4, bleed, errors)
    assert chance_of_sliver(leaf, A4, bleed, hair) == pytest.approx(told, abs=1e-6)


def test_a_leaf_whose_edges_are_all_shared_shows_no_white() -> None:
    assert chance_of_sliver(LEAF, A4, Edges(None, None, None, None), Errors(1, 1, 1)) == 0


def test_the_mirror_image_of_a_leaf_fares_alike() -> None:
    errors = Errors(0.4, 2, 0.3)
    here = chance_of_sliver(Box(20, 40, 60, 200), A4, Edges(0.5, 1, 2, 3), errors)
    there = chance_of_sliver(Box(130, 40, 60, 200), A4, Edges(2, 1, 0.5, 3), errors)
    assert there == pytest.approx(here, rel=1e-12)


def test_leaves_of_a_sheet_come_to_the_worst_and_the_mean() -> None:
    errors = Errors(1, 2, 0.5)
    chances = [chance_of_sliver(Box(60, y, 90, 90), A4, Edges.all(1.5), errors) for y in (10, 103, 196)]
    found = over_leaves(chances)
    assert (found.worst_leaf, found.worst) == (2, chances[2])
    assert found.mean == pytest.approx(sum(chances) / 3)


sizes = st.floats(0, 3)
errors_of = st.builds(Errors, sizes, sizes, sizes)
leaves = st.builds(Box, st.floats(5, 60), st.floats(5, 100), st.floats(30, 140), st.floats(30, 180))
edges_of = st.builds(Edges, *[st.none() | st.floats(0, 4)] * 4)
NOISE = 1e-9


@settings(max_examples=60, deadline=None)
@given(leaves, errors_of, edges_of, st.floats(0, 2))
def test_more_bleed_never_hurts(leaf: Box, errors: Errors, bleed: Edges, more: float) -> None:
    depths = (bleed.left, bleed.head, bleed.right, bleed.foot)
    wider = Edges(*(None if depth is None else depth + more for depth in depths))
    here = chance_of_sliver(leaf, A4, bleed, errors)
    assert chance_of_sliver(leaf, A4, wider, errors) <= here + NOISE


@settings(max_examples=60, deadline=None)
@given(leaves, errors_of, st.floats(0, 2), st.floats(0, 2))
def test_a_larger_limit_never_hurts(leaf: Box, errors: Errors, limit: float, more: float) -> None:
    bleed = Edges(0.5, 1, 1.5, 2)
    here = chance_of_sliver(leaf, A4, bleed, errors, limit)
    assert chance_of_sliver(leaf, A4, bleed, errors, limit + more) <= here + NOISE
    assert chance_off_centre(leaf, A4, errors, limit + more) <= chance_off_centre(leaf, A4, errors, limit) + NOISE


@settings(max_examples=120, deadline=None)
@given(leaves, errors_of, edges_of, st.floats(0, 2), st.sampled_from(["placement", "skew", "cutter"]))
def test_a_larger_error_never_helps_where_less_than_half_fail(
    leaf: Box, errors: Errors, bleed: Edges, more: float, which: str
) -> None:
    here = chance_of_sliver(leaf, A4, bleed, errors)
    assume(here <= 0.5)
    worse = replace(errors, **{which: getattr(errors, which) + more})
    assert chance_of_sliver(leaf, A4, bleed, worse) >= here - NOISE


@settings(max_examples=60, deadline=None)
@given(leaves, errors_of, st.floats(0, 2), st.floats(0, 2), st.sampled_from(["placement", "skew", "cutter"]))
def test_a_larger_error_never_brings_a_panel_nearer_its_middle(
    leaf: Box, errors: Errors, limit: float, more: float, which: str
) -> None:
    worse = replace(errors, **{which: getattr(errors, which) + more})
    here = chance_off_centre(leaf, A4, errors, limit)
    assert chance_off_centre(leaf, A4, worse, limit) >= here - NOISE


@settings(max_examples=60, deadline=None)
@given(leaves, errors_of, edges_of)
def test_a_chance_is_a_share_of_one(leaf: Box, errors: Errors, bleed: Edges) -> None:
    assert -NOISE <= chance_of_sliver(leaf, A4, bleed, errors) <= 1 + NOISE
    assert -NOISE <= chance_off_centre(leaf, A4, errors, 0.5) <= 1 + NOISE


@settings(max_examples=40, deadline=None)
@given(leaves, errors_of, st.floats(0, 0.5), st.sampled_from([0.001, 0.01, 0.2]))
def test_the_bleed_named_is_the_least_tenth_that_keeps_the_chance(
    leaf: Box, errors: Errors, limit: float, chance: float
) -> None:
    free = Edges(0, None, 0, 0)
    bleed = bleed_for_chance(leaf, A4, free, errors, limit, chance)
    assert chance_of_sliver(leaf, A4, free.with_bleed(bleed), errors, limit) <= chance * (1 + NOISE)
    if bleed > 0:
        assert chance_of_sliver(leaf, A4, free.with_bleed(round(bleed - 0.1, 1)), errors, limit) > chance


def test_no_bleed_makes_a_sliver_impossible() -> None:
    with pytest.raises(ValueError, match="down to 0"):
        bleed_for_chance(LEAF, A4, Edges.all(0), Errors(1, 1, 1), chance=0)
