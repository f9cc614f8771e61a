"""Row styles: what stands at both ends of a row, how its rule is drawn, and that all of it keeps to its room."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON
from padspec.compose.blocks.row_ends import tail_width
from padspec.compose.blocks.rows import draw, rule_length
from padspec.compose.face import Drawn, Room
from padspec.compose.lettering.shaping import cap_height
from padspec.draw.lengths import length_text
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.resolve.blocks.rows import Tail
from padspec.scene.nodes import Cause, Layer, Scene, Shape
from padspec.scene.outline import Curve, Line, Move, bounds

from .blocks import INK, font, ink_boxes, labels, of_part, rows, squares

ROOM = Box(11, 40, 68, 100)

#: Every style of row: squares, labels, tail, line, ends and heavier rules, in any mixture.
styles = st.fixed_dictionaries(
    {
        "squares": st.one_of(
            st.none(),
            st.builds(
                squares,
                size=st.floats(1.5, 3.2),
                count=st.integers(1, 3),
                corner=st.floats(0, 2),
                double=st.booleans(),
                seat=st.sampled_from(["rule", "centre"]),
            ),
        ),
        "labels": st.one_of(
            st.none(),
            st.builds(
                labels,
                first=st.integers(0, 99),
                every=st.integers(1, 3),
                size=st.floats(1, 20),
                width=st.one_of(st.none(), st.floats(0, 15)),
            ),
            st.builds(lambda size: labels("jay", "Ålgap", "x", size=size), st.floats(1, 9)),
        ),
        "tail": st.builds(Tail, st.sampled_from([0.0, 9.0]), st.integers(0, 4)),
        "line": st.sampled_from(["solid", "dashed", "dotted", "none"]),
        "ends": st.sampled_from(["butt", "round"]),
        "heavy_every": st.sampled_from([0, 2, 5]),
        "pitch": st.floats(4, 14),
        "weight": st.floats(0.1, 0.5),
    }
)


def drawn(box: Box = ROOM, **changes: object) -> Drawn:
    return draw(rows(**changes), Room(box), 0.0)


def all_shapes(some: Drawn) -> list[Shape]:
    return [node for _, node in some.nodes if isinstance(node, Shape)]


def ink(some: Drawn, part: str) -> list[Box]:
    return list(ink_boxes(of_part(some, part)))


@settings(deadline=None, max_examples=150)
@given(styles, st.floats(60, 150), st.floats(30, 220))
def test_nothing_of_any_row_leaves_its_box(style: dict[str, object], width: float, height: float) -> None:
    box = Box(11, 40, width, height)
    some = drawn(box, **style)
    if rule_length(rows(**style), box, some.placements[0].rows) <= 0:
        return  # no length left to write on, which the checks tell of
    for one in ink_boxes(all_shapes(some)):
        assert one.x >= box.x - 1e-6
        assert one.right <= box.right + 1e-6
        assert one.y >= box.y - 1e-6
        assert one.bottom <= box.bottom + 1e-6


@settings(deadline=None, max_examples=60)
@given(styles)
def test_no_two_parts_of_a_row_touch(style: dict[str, object]) -> None:
    """What stands beside each other in a row keeps apart: label, squares, rule, quantity, priority."""
    some = drawn(Box(11, 40, 150, 14), **style, count=1, gap=2.5)
    if rule_length(rows(**style), Box(11, 40, 150, 14), 1) <= 0:
        return
    spans = sorted((box.x, box.right) for box in ink_boxes(all_shapes(some)))
    ends = [spans[0][1]] if spans else []
    for left, right in spans[1:]:
        assert left >= ends[-1] - 1e-6 or right <= ends[-1] + 1e-6  # apart, or the inner line of a double square
        ends.append(max(ends[-1], right))


@settings(deadline=None, max_examples=60)
@given(styles)
def test_all_rules_of_a_block_begin_and_end_alike(style: dict[str, object]) -> None:
    """By their ink, round ends counted: heavier rules are no longer than the others."""
    style = {**style, "tail": Tail(0.0, 2)}
    found = of_part(drawn(**style), "rule")
    for shape in found:
        half = shape.stroke.weight / 2 if shape.stroke and shape.stroke.cap == "round" else 0.0
        box = bounds(shape.outline)
        first = found[0]
        first_half = first.stroke.weight / 2 if first.stroke and first.stroke.cap == "round" else 0.0
        assert box.x - half == pytest.approx(bounds(first.outline).x - first_half, abs=1e-9)
        assert box.right + half == pytest.approx(bounds(first.outline).right + first_half, abs=1e-9)


# Squares and circles


def test_several_squares_stand_beside_each_other_at_their_distance() -> None:
    found = ink(drawn(count=1, squares=squares(size=4.0, count=3, between=1.2)), "checkbox")
    assert [box.x for box in found] == pytest.approx([11, 16.2, 21.4])
    assert [box.width for box in found] == pytest.approx([4, 4, 4])


def test_the_rule_begins_after_the_last_of_several_squares_and_the_gap() -> None:
    (rule, *_) = ink(drawn(squares=squares(size=4.0, count=3, between=1.2), gap=2.5), "rule")
    assert rule.x == pytest.approx(11 + 3 * 4 + 2 * 1.2 + 2.5)


def test_a_double_square_has_a_second_line_inside_with_air_between() -> None:
    outer, inner = ink(drawn(count=1, squares=squares(size=4.0, double=True), weight=0.3), "checkbox")
    assert outer.width == pytest.approx(4.0)
    assert inner.centre == pytest.approx(outer.centre)
    air = inner.x - outer.x - 0.3
    assert air >= 0.25
    assert inner.width > 2


def test_the_corners_of_a_double_square_run_parallel() -> None:
    outer, inner = of_part(drawn(count=1, squares=squares(size=5.0, corner=1.5, double=True)), "checkbox")
    radii = [radius_of(shape) for shape in (outer, inner)]
    assert radii[0] - radii[1] == pytest.approx((bounds(outer.outline).width - bounds(inner.outline).width) / 2)


def test_a_square_too_small_for_a_second_line_has_one() -> None:
    assert len(ink(drawn(count=1, squares=squares(size=1.5, double=True), weight=0.3), "checkbox")) == 1


def test_a_square_with_half_its_size_as_corner_is_a_circle() -> None:
    (shape,) = of_part(drawn(count=1, squares=squares(size=4.0, corner=2.0), weight=0.3), "checkbox")
    assert radius_of(shape) == pytest.approx(1.85)
    assert not any(isinstance(step, Line) and moved(before, step) for before, step in steps(shape))


def radius_of(shape: Shape) -> float:
    curve = next(step for step in shape.outline if isinstance(step, Curve))
    before = next(before for before, step in steps(shape) if step is curve)
    return abs(curve.x - before[0])


def steps(shape: Shape) -> list[tuple[tuple[float, float], Move | Line | Curve]]:
    found, at = [], (0.0, 0.0)
    for step in shape.outline:
        if isinstance(step, Move | Line | Curve):
            found.append((at, step))
            at = (step.x, step.y)
    return found


def moved(before: tuple[float, float], step: Line) -> bool:
    return abs(before[0] - step.x) + abs(before[1] - step.y) > 1e-6


# Rules


def test_every_nth_rule_is_heavier_and_no_other() -> None:
    found = of_part(drawn(heavy_every=3, weight=0.3, heavy_weight=0.7), "rule")
    weights = [shape.stroke.weight for shape in found if shape.stroke]
    assert weights == [0.7 if n % 3 == 0 else 0.3 for n in range(1, len(found) + 1)]


def test_rows_without_a_line_keep_their_squares() -> None:
    some = drawn(line="none")
    assert of_part(some, "rule") == []
    assert len(of_part(some, "checkbox")) == some.placements[0].rows


@settings(deadline=None)
@given(st.floats(8, 190), st.floats(0.1, 0.8), st.sampled_from(["butt", "round"]))
def test_a_dashed_rule_begins_and_ends_with_a_whole_dash(width: float, weight: float, ends: str) -> None:
    """As drawn, to the thousandth of a millimetre: dashes and gaps add up to the rule, one dash more than gaps."""
    length, dash, gap = pattern(width, weight, ends=ends, line="dashed")
    count = (length + gap) / (dash + gap)
    assert abs(count - round(count)) * (dash + gap) < 0.001 * (round(count) + 1)
    assert 0.5 <= dash / 1.6 <= 2


@settings(deadline=None)
@given(st.floats(8, 190), st.floats(0.1, 0.8))
def test_a_dotted_rule_begins_and_ends_with_a_dot(width: float, weight: float) -> None:
    """As drawn, to the thousandth of a millimetre: were the distance rounded up, the last dot would lie past the
    end of the rule and be left out."""
    length, dash, gap = pattern(width, weight, line="dotted")
    apart = dash + gap
    count = int((length + 1e-9) / apart)  # dots after the first
    assert dash <= 0.001  # as round ends make a dot of it
    assert 2 <= apart / weight <= 5
    assert dash <= length - count * apart <= 0.001 * (count + 4)


def pattern(width: float, weight: float, **style: object) -> tuple[float, float, float]:
    """The length of a rule, its dash and gap, as the files have them."""
    (shape,) = of_part(drawn(Box(11, 40, width, 9), count=1, squares=None, weight=weight, **style), "rule")
    assert shape.stroke is not None
    assert shape.stroke.dash is not None
    start, end = (float(length_text(step.x)) for step in shape.outline)
    return end - start, *(float(length_text(part)) for part in shape.stroke.dash)


@pytest.mark.parametrize("line", ["dashed", "dotted"])
@pytest.mark.parametrize("width", [47.13, 61.377, 118.9])
def test_a_renderer_sees_ink_at_both_ends_of_a_broken_rule(line: str, width: float) -> None:
    """By pdfium at 600 ppi: the first and the last ink lie where the rule begins and ends."""
    box = Box(5, 4, width, 9)
    some = drawn(box, count=1, squares=None, weight=0.4, line=line)
    scene = Scene(Size(130, 17), 0, (Layer("rules", tuple(node for _, node in some.nodes)),))
    dark = (rasterise(face_pdf(scene), 600).min(axis=2) < 160).any(axis=0).nonzero()[0] / 600 * 25.4
    assert dark[0] == pytest.approx(box.x, abs=0.1)
    assert dark[-1] == pytest.approx(box.right, abs=0.2)


# Numbers and words


def test_numbers_end_on_one_line_whatever_their_digits() -> None:
    found = ink(drawn(labels=labels(first=8), squares=None, pitch=8.0), "lettering")
    assert len(found) == 12
    assert [box.right for box in found] == pytest.approx([found[0].right] * 12, abs=1e-6)


def test_words_begin_at_the_left_edge_by_their_ink() -> None:
    found = ink(drawn(labels=labels("Jay", "Ten", "Mow", "Ab")), "lettering")
    assert [box.x for box in found] == pytest.approx([ROOM.x] * 4, abs=1e-6)


def test_a_label_stands_on_the_foot_of_its_rule() -> None:
    some = drawn(labels=labels("H", "E"), squares=None, count=2, weight=0.4)
    for rule, letter in zip(ink(some, "rule"), ink(some, "lettering"), strict=True):
        assert letter.bottom == pytest.approx(rule.bottom, abs=0.04)  # the foot of an H is a little round


def test_a_label_stands_in_the_middle_of_the_row_where_squares_do() -> None:
    some = drawn(labels=labels("H", "E"), squares=squares(seat="centre"), count=2)
    for square, letter in zip(ink(some, "checkbox"), ink(some, "lettering"), strict=True):
        assert letter.centre[1] == pytest.approx(square.centre[1], abs=0.04)


def test_a_label_on_every_other_row_counts_on_from_one_to_the_next() -> None:
    """Rows 1, 3 and 5 of six bear 7, 8 and 9: as many labels as half the rows."""
    some = drawn(Box(0, 0, 68, 48), labels=labels(first=7, every=2), squares=None, pitch=8.0)
    rules, letters = ink(some, "rule"), ink(some, "lettering")
    assert (len(rules), len(letters)) == (6, 3)
    assert [letter.bottom for letter in letters] == pytest.approx([rules[n].bottom for n in (0, 2, 4)], abs=0.1)


def test_the_column_of_labels_is_as_wide_as_the_widest() -> None:
    some = drawn(labels=labels("I", "Wednesday"), squares=None, gap=2.5)
    widest = max(box.right for box in ink(some, "lettering"))
    assert all(rule.x == pytest.approx(widest + 2.5) for rule in ink(some, "rule"))


def test_a_width_for_labels_that_is_written_is_kept() -> None:
    some = drawn(labels=labels("Mon", width=14.0), squares=None, gap=2.5)
    assert all(rule.x == pytest.approx(ROOM.x + 14 + 2.5) for rule in ink(some, "rule"))


def test_words_wider_than_the_width_that_was_written_still_keep_off_the_rule() -> None:
    some = drawn(labels=labels("Wednesday", width=5.0), squares=None, gap=2.5)
    (word,) = ink(some, "lettering")
    assert all(rule.x >= word.right + 2.5 - 1e-6 for rule in ink(some, "rule"))


def test_labels_shrink_where_rows_are_close() -> None:
    some = drawn(Box(0, 0, 68, 20), labels=labels(size=6.0), squares=None, count=10)
    assert some.placements[0].size == pytest.approx(0.75 * 2.0)
    tall = max(box.height for box in ink(some, "lettering"))
    assert tall <= cap_height(font("Nunito", 700)) * 1.5 * 1.05


def test_the_last_word_keeps_its_descender_in_the_room() -> None:
    some = drawn(Box(0, 0, 68, 24), labels=labels("a", "b", "gypsum", size=6.0), squares=None, pitch=8.0)
    assert max(box.bottom for box in ink(some, "lettering")) <= 24 + 1e-6


# Quantity and priority


def test_the_rule_of_a_quantity_ends_the_row_and_has_its_length() -> None:
    rule, quantity = ink(drawn(count=1, tail=Tail(12.0, 0), gap=2.5), "rule")
    assert (quantity.x, quantity.right) == pytest.approx((79 - 12, 79))
    assert rule.right == pytest.approx(79 - 12 - 2.5)
    assert rule.bottom == pytest.approx(quantity.bottom)


@settings(deadline=None)
@given(st.integers(1, 5), st.floats(4, 14))
def test_the_circles_of_a_priority_are_as_many_as_asked_for_alike_and_even(count: int, pitch: float) -> None:
    found = sorted(ink(drawn(Box(11, 40, 68, pitch), squares=None, pitch=pitch, tail=Tail(0, count)), "checkbox"),
                   key=lambda box: box.x)  # fmt: skip
    assert len(found) == count
    assert found[-1].right == pytest.approx(79)
    steps = {round(b.x - a.x, 6) for a, b in pairwise(found)}
    assert len(steps) <= 1
    assert all(box.width == pytest.approx(box.height) == pytest.approx(found[0].width) for box in found)
    assert not steps or min(steps) > found[0].width


@pytest.mark.parametrize("seat", ["rule", "centre"])
def test_the_circles_of_a_priority_stand_as_high_as_the_squares(seat: str) -> None:
    square, *circles = ink(drawn(count=1, squares=squares(seat=seat), tail=Tail(0, 3)), "checkbox")
    assert len(circles) == 3
    assert [box.centre[1] for box in circles] == pytest.approx([square.centre[1]] * 3)


def test_a_priority_stands_after_the_quantity() -> None:
    some = drawn(count=1, squares=None, tail=Tail(12.0, 2), gap=2.5)
    circles, (_, quantity) = ink(some, "checkbox"), ink(some, "rule")
    assert quantity.right == pytest.approx(min(box.x for box in circles) - 2.5)


def test_the_room_for_writing_is_what_both_ends_leave() -> None:
    block = rows(tail=Tail(12.0, 2), labels=labels("Mon"), line="solid")
    (rule, *_) = ink(draw(block, Room(ROOM), 0.0), "rule")
    assert rule_length(block, ROOM, 12) == pytest.approx(rule.width, abs=1e-6)
    assert tail_width(block) > 12 + 2.5 + EPSILON


def test_a_row_of_every_style_has_its_colours() -> None:
    """Squares in their own colour, all else in that of the rules or letters."""
    from padspec.base.colour import Colour

    green = Colour(40, 120, 60)
    some = drawn(count=1, squares=squares(colour=green), labels=labels("Mon"), tail=Tail(9.0, 0))
    assert {shape.stroke.colour for shape in of_part(some, "checkbox") if shape.stroke} == {green}
    assert {shape.stroke.colour for shape in of_part(some, "rule") if shape.stroke} == {INK}
    assert {shape.cause for shape in of_part(some, "lettering")} == {Cause("rows", "lettering")}
