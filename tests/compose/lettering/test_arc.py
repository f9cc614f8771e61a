"""Lettering on an arc: the geometry of the circle worked out by hand."""

from math import atan2, cos, degrees, hypot, pi, radians, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Affine, Box
from padspec.compose.lettering.arc import LEAST_RADIUS, bent, radius_of, seat
from padspec.compose.lettering.shaping import Letter, ShapedLine, shape_line
from padspec.scene.outline import Curve, Move, mapped, rectangle

from ..replay import true_area, true_bounds
from .fonts import shelved

angles = st.floats(-180, 180).filter(lambda angle: abs(angle) > 0.5)
texts = st.text("abcdefgHIJKLMNO &27", min_size=1, max_size=24).filter(str.strip)


@settings(deadline=None)
@given(texts, angles)
def test_the_middle_of_every_letter_lies_on_the_circle_and_stands_upright_to_it(text: str, angle: float) -> None:
    line = shape_line(shelved(), text)
    radius = radius_of(line, angle)
    for letter in line.letters:
        at = seat(line, letter, angle)
        assert hypot(at.x, at.y - radius) == pytest.approx(abs(radius), abs=1e-6)
        outwards = 1 if radius > 0 else -1
        assert atan2(outwards * at.x, outwards * (radius - at.y)) == pytest.approx(at.turn, abs=1e-6)


@settings(deadline=None, max_examples=30)
@given(texts, angles)
def test_the_letters_drawn_are_the_letters_of_the_line_turned_whole(text: str, angle: float) -> None:
    line = shape_line(shelved(), text)
    for letter, turned in zip(line.letters, bent(line, angle).letters, strict=True):
        if not letter.outline:
            continue
        at = seat(line, letter, angle)
        c, s = cos(-at.turn), sin(-at.turn)
        middle = letter.x + letter.advance / 2
        back = Affine.move(-at.x, -at.y).then(Affine(a=c, b=s, c=-s, d=c, e=middle))
        assert true_bounds(mapped(turned.outline, back)) == pytest.approx(true_bounds(letter.outline), abs=1e-6)


def test_a_bar_six_ems_long_spans_the_angle_it_is_given() -> None:
    """By hand: 6 / (90° = π/2) = 3.8197 at half the x-height (0.25), so the baseline has a radius of 3.5697."""
    line = bar(0.0, 6.0)
    assert radius_of(line, 90) == pytest.approx(6 / (pi / 2) - 0.25, abs=1e-9)
    assert radius_of(line, -90) == pytest.approx(-(6 / (pi / 2)) - 0.25, abs=1e-9)
    left, _, right, _ = true_bounds(bent(line, 90).outline)
    outer = 6 / (pi / 2) - 0.25 + 0.6  # its upper edge is 0.6 above the baseline
    assert (left, right) == pytest.approx((-outer * sin(radians(45)), outer * sin(radians(45))), abs=1e-4)


@pytest.mark.parametrize("angle", [120, -120, 20])
def test_a_bar_of_a_joined_script_is_bent_to_a_ring_and_keeps_its_thickness(angle: float) -> None:
    line = bar(0.0, 6.0)
    radius = radius_of(line, angle)
    found = [abs(hypot(x, y - radius) - abs(radius)) for x, y in along(bent(line, angle))]
    assert min(found) == pytest.approx(0.5, abs=1e-4)
    assert max(found) == pytest.approx(0.6, abs=1e-4)


def test_a_bent_bar_has_the_area_of_its_ring() -> None:
    """(R + 0.6)² - (R + 0.5)² times half the angle."""
    line = bar(0.0, 6.0)
    radius, turn = radius_of(line, 120), radians(120)
    assert true_area(bent(line, 120).outline) == pytest.approx(
        ((radius + 0.6) ** 2 - (radius + 0.5) ** 2) * turn / 2, abs=1e-4
    )


def test_an_arch_is_highest_in_the_middle_and_a_bowl_lowest() -> None:
    line = shape_line(shelved(), "HHHHHHHHH")
    for angle, sign in ((70, 1), (-70, -1)):
        ys = [seat(line, letter, angle).y * sign for letter in line.letters]
        assert ys.index(min(ys)) == 4
        assert ys[0] == pytest.approx(ys[-1], abs=1e-3)  # an H has more air on one side


def test_the_first_and_the_last_letter_lean_outwards_on_an_arch() -> None:
    line = shape_line(shelved(), "HHHHHHHHH")
    turns = [degrees(seat(line, letter, 80).turn) for letter in line.letters]
    assert turns[0] < -30
    assert turns[-1] > 30


def test_a_short_word_bends_no_tighter_than_the_least_circle() -> None:
    line = shape_line(shelved(), "I")
    assert radius_of(line, 180) == LEAST_RADIUS
    assert radius_of(line, -180) == -LEAST_RADIUS


def test_no_arc_is_the_line_itself() -> None:
    line = shape_line(shelved(), "Before dark")
    assert bent(line, 0) is line


@settings(deadline=None, max_examples=40)
@given(texts, angles)
def test_the_ink_told_is_the_ink_drawn(text: str, angle: float) -> None:
    line = bent(shape_line(shelved(), text), angle)
    box = line.ink
    assert (box.x, box.y, box.right, box.bottom) == pytest.approx(true_bounds(line.outline), abs=1e-9)


def bar(left: float, right: float) -> ShapedLine:
    """A line of one letter of a joined script: a bar 0.1 em thick, 0.5 em above the baseline."""
    box = Box(left, -0.6, right - left, 0.1)
    outline = rectangle(box)
    return ShapedLine(outline, right, box, (Letter("\u0915", outline, left, right - left, True),), True)


def along(line: ShapedLine) -> list[tuple[float, float]]:
    """Points on every curve of a line, at eighths of its parameter (Bernstein's polynomials)."""
    found, at = [], (0.0, 0.0)
    for step in line.outline:
        if isinstance(step, Curve):
            for n in range(9):
                t, u = n / 8, 1 - n / 8
                shares = (u**3, 3 * u * u * t, 3 * u * t * t, t**3)
                xs, ys = (at[0], step.x1, step.x2, step.x), (at[1], step.y1, step.y2, step.y)
                found.append((sum(map(product, shares, xs)), sum(map(product, shares, ys))))
            at = (step.x, step.y)
        elif isinstance(step, Move):
            at = (step.x, step.y)
    return found


def product(a: float, b: float) -> float:
    return a * b
