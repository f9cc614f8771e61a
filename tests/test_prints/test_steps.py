"""Percentages, weights and tints that the calibration page prints."""

import pytest
from kit import folder

from padspec.base.units import parse_length, parse_share
from padspec.test_prints.steps import THINNED, TINTS, WEIGHTS, stretches, tint
from padspec.test_prints.workshop import read_workshop


@pytest.mark.parametrize("nominal", [100.0, 200.0, 230.0, 250.0, 280.0])
def test_the_table_holds_every_half_millimetre_within_one_per_cent_and_no_more(nominal):
    """measured ÷ nominal, corrected while it is no more than 1 % off (common practice, no published source)."""
    measured = [float(row.measured) for row in stretches(nominal)]
    every = [nominal + n / 2 for n in range(-20, 21) if abs(n / 2) <= nominal / 100 + 1e-9]
    assert measured == every


@pytest.mark.parametrize("nominal", [200.0, 250.0])
def test_a_percentage_gives_the_measured_length_back_to_a_hundredth_of_a_millimetre(nominal):
    for row in stretches(nominal):
        assert float(row.percentage) / 100 * nominal == pytest.approx(float(row.measured), abs=0.015)


def test_one_row_is_the_true_one():
    assert [row.measured for row in stretches(250.0) if row.is_true] == ["250"]


@pytest.mark.parametrize("nominal", [200.0, 250.0, 280.0])
def test_every_percentage_of_the_table_may_stand_in_a_studio(nominal):
    for row in stretches(nominal):
        scale = read_workshop(folder(studio=f"printer: {{scale: {{x: {row.percentage} %}}}}")).studio.printer.scale
        assert scale[0] == pytest.approx(parse_share(f"{row.percentage} %"))


def test_weights_grow_from_a_twentieth_to_half_a_millimetre_and_hold_the_limits_of_the_checks():
    lengths = [parse_length(weight) for weight in WEIGHTS]
    assert lengths == sorted(lengths)
    assert (lengths[0], lengths[-1]) == (0.05, 0.5)
    printer = read_workshop(folder()).studio.printer
    assert {printer.least_line, printer.least_screened_line} <= set(lengths)


def test_tints_darken_step_by_step_to_the_solid():
    for _, colour in THINNED:
        row = [tint(colour, percent) for percent in TINTS]
        sums = [sum((t.red, t.green, t.blue)) for t in row]
        assert sums == sorted(sums, reverse=True)
        assert len(set(row)) == len(row)
        assert row[-1] == colour
