"""Stretches over the proof of a sheet: 10 pixels a millimetre, so that every pixel can be counted."""

import numpy as np

from padspec.base.geometry import Affine
from padspec.draw.stretches import CutStretches, with_stretches

RED, AMBER = (214, 28, 36), (255, 166, 0)
PPI = 254.0
GREY = np.full((300, 400, 3), 128, np.uint8)


def where(pixels: np.ndarray, colour: tuple[int, int, int]) -> tuple[set[int], set[int]]:
    """The rows and columns in which a colour stands."""
    rows, columns = np.nonzero((pixels == colour).all(axis=-1))
    return set(rows.tolist()), set(columns.tolist())


def test_a_blind_stretch_is_dashed_on_the_cut() -> None:
    drawn = with_stretches(GREY, PPI, [CutStretches("blind", False, 15.0, 5.0, ((2.0, 12.0),))])
    rows, columns = where(drawn, RED)
    assert rows == set(range(147, 153))
    assert columns == {*range(70, 95), *range(110, 135), *range(150, 170)}


def test_an_upright_cut_runs_down() -> None:
    drawn = with_stretches(GREY, PPI, [CutStretches("blind", True, 20.0, 5.0, ((0.0, 2.0),))])
    assert where(drawn, RED) == (set(range(50, 70)), set(range(197, 203)))


def test_a_telling_stretch_lies_beside_the_cut_on_the_side_that_would_show() -> None:
    before = with_stretches(GREY, PPI, [CutStretches("telling-before", True, 20.0, 0.0, ((1.0, 2.0),))])
    after = with_stretches(GREY, PPI, [CutStretches("telling-after", True, 20.0, 0.0, ((1.0, 2.0),))])
    assert where(before, AMBER) == (set(range(10, 20)), set(range(187, 193)))
    assert where(after, AMBER) == (set(range(10, 20)), set(range(207, 213)))


def test_what_a_printer_shifts_is_shifted_with_the_sheet() -> None:
    overlay = CutStretches("telling-after", True, 20.0, 0.0, ((1.0, 2.0),))
    drawn = with_stretches(GREY, PPI, [overlay], Affine.move(3.0, 5.0))
    assert where(drawn, AMBER) == (set(range(60, 70)), set(range(237, 243)))


def test_the_proof_itself_is_left_alone() -> None:
    with_stretches(GREY, PPI, [CutStretches("blind", True, 20.0, 5.0, ((0.0, 2.0),))])
    assert (GREY == 128).all()


def test_without_stretches_the_proof_is_the_same() -> None:
    assert with_stretches(GREY, PPI, ()) is GREY


def test_the_shortest_stretch_can_still_be_seen() -> None:
    drawn = with_stretches(GREY[:30, :40], 25.4, [CutStretches("blind", True, 20.0, 5.0, ((0.0, 0.1),))])
    assert where(drawn, RED)[0]
