"""What is strewn never touches, is even, and the same on every run. Distances are those of the real outlines."""

from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.colour import WHITE, Colour
from padspec.base.geometry import Box, Size
from padspec.checks.under import flattened
from padspec.compose.ground.coat import Coat
from padspec.compose.ground.scatter import round_the_tile, scatter
from padspec.compose.ground.sprinkle import sprinkle
from padspec.resolve.ground import Pattern
from padspec.scene.outline import Outline

from .drawn import BLACK, TRIM, pattern

sides = st.floats(60, 140)


def strewn(some: Pattern, trim: Size = TRIM) -> tuple[Coat, ...]:
    """The coats of a sprinkle, one outline a mark."""
    return sprinkle(some, Box(0, 0, trim.width, trim.height).inset(-3), trim)


def marks(some: Pattern, trim: Size = TRIM) -> list[Outline]:
    return [outline for coat in strewn(some, trim) for outline in coat.outlines]


def edge(outline: Outline) -> np.ndarray:
    """Points along the outline, a fifth of a millimetre apart."""
    return flattened(outline, 0.2)


def least_distance(one: np.ndarray, other: np.ndarray) -> float:
    return float(np.hypot(*(one[:, None] - other[None, :]).transpose(2, 0, 1)).min())


@settings(max_examples=8, deadline=None)
@given(
    sides,
    sides,
    st.floats(7, 20),
    st.floats(0.1, 0.95),
    st.integers(0, 999),
    st.sampled_from(["centred", "run-on"]),
)
def test_no_two_marks_touch(width: float, height: float, size: float, mark: float, seed: int, phase: str) -> None:
    """Marks keep at least the share of a size that none of them takes up."""
    some = pattern("sprinkle", size=size, mark=mark, seed=seed, phase=phase, colours=(WHITE, Colour(9, 9, 9)))
    edges = [edge(part) for part in marks(some, Size(width, height))]
    middles = [(points.min(0) + points.max(0)) / 2 for points in edges]
    pairs = [
        (a, b) for a, b in combinations(range(len(edges)), 2) if np.hypot(*(middles[a] - middles[b])) < 1.3 * size
    ]
    nearest = min((least_distance(edges[a], edges[b]) for a, b in pairs), default=size)
    assert nearest > min(size, width, height) * (1 - mark) - 1e-6


@settings(max_examples=30, deadline=None)
@given(sides, sides, st.floats(3, 30), st.integers(0, 9999))
def test_points_keep_their_distance_also_across_the_edges_of_the_tile(
    width: float, height: float, apart: float, seed: int
) -> None:
    tile = Size(width, height)
    found = scatter(tile, apart, seed).points
    assert all(0 <= x <= width and 0 <= y <= height for x, y in found)
    assert all(round_the_tile(a, b, tile) >= apart for a, b in combinations(found[:400], 2))


def test_points_are_as_even_as_blue_noise():
    """The nearest neighbour is hardly further than the least distance, and few gaps have room for one more."""
    tile = Size(120, 120)
    found = np.array(scatter(tile, 6.0, 3).points)
    off = np.abs(found[:, None] - found[None, :])
    distances = np.hypot(*np.minimum(off, 120 - off).transpose(2, 0, 1))
    np.fill_diagonal(distances, np.inf)
    nearest = distances.min(axis=1)
    assert nearest.mean() < 6.0 * 1.1
    grid = np.stack(np.meshgrid(np.arange(0, 120, 1.0), np.arange(0, 120, 1.0)), -1).reshape(-1, 2)
    away = np.abs(grid[:, None] - found[None, :])
    gap = np.hypot(*np.minimum(away, 120 - away).transpose(2, 0, 1)).min(axis=1)
    assert gap.max() < 6.0 * 1.25
    assert (gap > 6.0).mean() < 0.02


def test_every_part_of_a_large_face_has_about_as_many_marks():
    some = pattern("sprinkle", size=6, colours=())
    middles = np.array([(p.min(0) + p.max(0)) / 2 for p in map(edge, marks(some, Size(180, 180)))])
    counts, _, _ = np.histogram2d(*middles.T, bins=3, range=[[0, 180], [0, 180]])
    assert counts.min() > 0.85 * counts.max()


def test_colours_are_shared_out_evenly_and_neighbours_mostly_differ():
    three = (BLACK, Colour(200, 0, 0), Colour(0, 0, 200))
    some = pattern("sprinkle", colours=three[1:])
    by_colour = [[(p.min(0) + p.max(0)) / 2 for p in map(edge, coat.outlines)] for coat in strewn(some)]
    counts = [len(found) for found in by_colour]
    assert [coat.colour for coat in strewn(some)] == list(three)
    assert max(counts) < 1.15 * min(counts)
    spots = np.array([spot for found in by_colour for spot in found])
    colours = np.repeat(np.arange(3), counts)
    distances = np.hypot(*(spots[:, None] - spots[None, :]).transpose(2, 0, 1))
    np.fill_diagonal(distances, np.inf)
    # By chance a third would be like their nearest neighbour.
    assert (colours[distances.argmin(1)] == colours).mean() < 0.12


def _outlines(some: Pattern) -> list[Outline]:
    return marks(some)


def test_the_same_seed_strews_the_same_and_another_one_otherwise():
    scatter.cache_clear()
    first = _outlines(pattern("sprinkle", seed=5))
    scatter.cache_clear()
    assert _outlines(pattern("sprinkle", seed=5)) == first
    assert _outlines(pattern("sprinkle", seed=6)) != first


def test_bars_dots_and_rings_are_all_there():
    """Of seven four are bars of 7 steps, two dots of 6 and one a ring of twice that."""
    steps = [len(mark) for mark in marks(pattern("sprinkle"))]
    bars, dots, rings = (steps.count(n) for n in (7, 6, 12))
    assert bars + dots + rings == len(steps)
    assert bars / len(steps) == pytest.approx(4 / 7, abs=0.05)
    assert dots / len(steps) == pytest.approx(2 / 7, abs=0.05)
