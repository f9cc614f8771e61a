"""Chances of slivers and off-centre panels, against a Monte Carlo run of the full geometry and against scipy."""

from dataclasses import replace
from math import sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from padspec.base.geometry import Box, Size
from padspec.sheet.tolerance import SIGMAS, Edges, Errors, bleed_for_chance, chance_of_sliver, chance_off_centre

A4 = Size(210, 297)
RUNS = 400_000
CASES = [
    (Box(10, 9.5, 190, 90), Errors(1, 0.5, 0.5), 1.5),
    (Box(10, 197.5, 190, 90), Errors(1, 0.5, 0.5), 1.0),
    (Box(110, 150, 90, 130), Errors(0.3, 2, 0.8), 1.2),
    (Box(10, 20, 90, 120), Errors(1, 0, 0.05), 0.8),
    (Box(10, 20, 90, 120), Errors(0, 0.4, 1), 0.8),
]


def carried_out(leaf: Box, bleed: float, errors: Errors, off_centre: float) -> tuple[float, float]:
    """The same by chance: every print shifted and turned about the middle of the leading edge, every cut off."""
    random = np.random.default_rng(20)
    shift = random.normal(0, errors.placement / SIGMAS, (2, RUNS))
    angle = random.normal(0, errors.skew / SIGMAS / A4.height, RUNS)
    left, right, head, foot = random.normal(0, errors.cutter / SIGMAS, (4, RUNS))

    def lands(x: float, y: float) -> np.ndarray:
        dx = x - A4.width / 2
        turned = (A4.width / 2 + dx * np.cos(angle) - y * np.sin(angle), dx * np.sin(angle) + y * np.cos(angle))
        return np.array(turned) + shift

    box = leaf.inset(-bleed)
    corners = [lands(x, y) for x in (box.x, box.right) for y in (leaf.y, leaf.bottom)]
    ends = [lands(x, y) for x in (leaf.x, leaf.right) for y in (box.y, box.bottom)]
    white = (
        (np.maximum(corners[0][0], corners[1][0]) > leaf.x + left)
        | (np.minimum(corners[2][0], corners[3][0]) < leaf.right + right)
        | (np.maximum(ends[0][1], ends[2][1]) > leaf.y + head)
        | (np.minimum(ends[1][1], ends[3][1]) < leaf.bottom + foot)
    )
    x, y = lands(*leaf.centre)
    cut_x, cut_y = leaf.centre[0] + (left + right) / 2, leaf.centre[1] + (head + foot) / 2
    off = (np.abs(x - cut_x) > off_centre) | (np.abs(y - cut_y) > off_centre)
    return float(white.mean()), float(off.mean())


@pytest.mark.parametrize(("leaf", "errors", "bleed"), CASES)
def test_a_monte_carlo_run_of_the_whole_geometry_agrees(leaf: Box, errors: Errors, bleed: float) -> None:
    white, off = carried_out(leaf, bleed, errors, 1.0)
    for by_chance, told in (
        (white, chance_of_sliver(leaf, A4, Edges.all(bleed), errors)),
        (off, chance_off_centre(leaf, A4, errors, 1.0)),
    ):
        assert abs(by_chance - told) <= 4 * sqrt(max(told, 1e-6) / RUNS)


def test_one_edge_without_skew_is_the_tail_of_a_normal() -> None:
    """scipy.stats.norm as the reference: σ = √(1² + 0.5²) ÷ 1.96, and 1 mm of bleed."""
    edges = Edges(1.0, None, None, None)
    sigma = sqrt(1 + 0.25) / SIGMAS
    told = chance_of_sliver(Box(10, 10, 90, 120), A4, edges, Errors(1, 0, 0.5))
    assert told == pytest.approx(stats.norm.sf(1 / sigma), abs=1e-8)


@pytest.mark.parametrize("cutter", [0.1, 0.5, 2.0])
def test_edges_across_from_each_other_are_scipys_bivariate_normal(cutter: float) -> None:
    placement, bleed = 1 / SIGMAS, 0.9
    own = cutter / SIGMAS
    cov = [[placement**2 + own**2, -(placement**2)], [-(placement**2), placement**2 + own**2]]
    clear = stats.multivariate_normal([0, 0], cov).cdf([bleed, 0.7])
    told = chance_of_sliver(Box(10, 10, 90, 120), A4, Edges(bleed, None, 0.7, None), Errors(1, 0, cutter))
    assert told == pytest.approx(1 - clear, abs=2e-5)


def test_a_limit_is_held_95_times_in_100() -> None:
    """What ± limit means: a print that is off by placement alone leaves a bleed of that size in 2.5 % each way."""
    told = chance_of_sliver(Box(10, 10, 90, 120), A4, Edges(0.8, None, 0.8, None), Errors(0.8, 0, 0))
    assert told == pytest.approx(0.05, abs=1e-8)


def test_published_error_stacks_are_covered_by_3_mm() -> None:
    """Print 1.0, cut 0.8, paper 0.8 mm stack to √2.28 = 1.51 mm, at worst 2.6 mm; 3 mm of bleed covers both.

    Derived. The paper's own error acts on the print as placement does.
    """
    assert sqrt(1.0**2 + 0.8**2 + 0.8**2) == pytest.approx(1.51, abs=0.005)
    errors = Errors(sqrt(1.0**2 + 0.8**2), 0, 0.8)
    leaf = Box(10, 10, 90, 190)
    one_edge = chance_of_sliver(leaf, A4, Edges(1.51, None, None, None), errors)
    assert one_edge == pytest.approx(0.025, abs=2e-4)
    assert chance_of_sliver(leaf, A4, Edges.all(3.0), errors) < 1e-3


def test_without_errors_nothing_is_left_to_chance() -> None:
    leaf, none = Box(10, 10, 90, 120), Errors(0, 0, 0)
    assert chance_of_sliver(leaf, A4, Edges.all(0.0), none) == 0
    assert chance_off_centre(leaf, A4, none, 0.0) == 0
    assert bleed_for_chance(leaf, A4, Edges.all(0.0), none, 0.0, 0.01) == 0


def test_a_butted_edge_shows_no_white() -> None:
    leaf = Box(10, 10, 90, 120)
    assert chance_of_sliver(leaf, A4, Edges(None, None, None, None), Errors(1, 1, 1)) == 0


errors_of = st.builds(Errors, st.floats(0, 3), st.floats(0, 3), st.floats(0, 3))
leaves = st.builds(Box, st.floats(5, 60), st.floats(5, 100), st.floats(30, 140), st.floats(30, 180))


@settings(max_examples=60, deadline=None)
@given(leaves, errors_of, st.floats(0, 4), st.floats(0, 2))
def test_more_bleed_never_hurts(leaf: Box, errors: Errors, bleed: float, more: float) -> None:
    less = chance_of_sliver(leaf, A4, Edges.all(bleed), errors)
    assert chance_of_sliver(leaf, A4, Edges.all(bleed + more), errors) <= less + 1e-6


@settings(max_examples=60, deadline=None)
@given(leaves, errors_of, st.floats(0.2, 3), st.floats(0, 2), st.sampled_from(["placement", "skew", "cutter"]))
def test_a_larger_error_never_helps(leaf: Box, errors: Errors, bleed: float, more: float, which: str) -> None:
    worse = replace(errors, **{which: getattr(errors, which) + more})
    here = chance_of_sliver(leaf, A4, Edges.all(bleed), errors)
    assert chance_of_sliver(leaf, A4, Edges.all(bleed), worse) >= here - 1e-6


@settings(max_examples=40, deadline=None)
@given(leaves, errors_of, st.floats(0, 0.5))
def test_the_bleed_named_is_the_least_that_keeps_the_chance(leaf: Box, errors: Errors, limit: float) -> None:
    bleed = bleed_for_chance(leaf, A4, Edges.all(0.0), errors, limit, 0.01)
    assert chance_of_sliver(leaf, A4, Edges.all(bleed), errors, limit) <= 0.01
    if bleed > 0:
        assert chance_of_sliver(leaf, A4, Edges.all(round(bleed - 0.1, 1)), errors, limit) > 0.01
