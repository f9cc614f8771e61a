"""The heading fits its width whatever its words, centred by its ink, broken where a line may break."""

from itertools import combinations
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box
from padspec.compose.blocks.heading import SHRINK_FIRST, draw, fit, need
from padspec.compose.face import Drawn, Room
from padspec.compose.lettering.breaking import broken
from padspec.compose.lettering.shaping import cap_height, shape_line
from padspec.resolve.blocks.heading import Edge, Heading
from padspec.scene.nodes import Stroke

from .blocks import INK, PAPER, font, heading, of_part
from .lettering.fonts import shelved
from .replay import true_bounds

words = st.text("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789'!-", min_size=1, max_size=14)
phrases = st.lists(words, min_size=1, max_size=8).map(" ".join)
odd = st.text(st.characters(codec="utf-8", exclude_categories=("Cs", "Cc")), max_size=40).map(
    lambda text: " ".join(text.split())
)
texts = st.one_of(phrases, odd)
widths = st.floats(20, 180)
ROOM = Room(Box(11, 14, 68, 150))


def ink(drawn: Drawn) -> list[tuple[float, float, float, float]]:
    return [true_bounds(shape.outline) for shape in of_part(drawn, "lettering")]


@settings(max_examples=80, deadline=None)
@example(text="A", width=68.0)
@example(text="Everything that has to be done before the lamps go out", width=68.0)
@example(text="Donaudampfschifffahrtsgesellschaft", width=40.0)
@given(text=texts, width=widths)
def test_every_line_fits_its_width_or_the_heading_says_by_how_much_it_does_not(text: str, width: float) -> None:
    block = heading(text)
    drawn = draw(block, Room(Box(0, 0, width, 100)), 0.0)
    if not text:
        return
    widest = max((right - left for left, _, right, _ in ink(drawn)), default=0.0)
    placed = drawn.placements[0]
    assert widest <= width + placed.short_by + 1e-6
    if placed.short_by > 0:
        assert placed.size == block.least_size


@settings(max_examples=80, deadline=None)
@given(texts, widths, st.integers(1, 4))
def test_lettering_is_never_larger_than_wished_nor_smaller_than_allowed(
    text: str, width: float, lines: int
) -> None:
    block = heading(text, lines=lines)
    fitted = fit(block, width)
    assert block.least_size <= fitted.size <= block.size
    assert 1 <= len(fitted.lines) <= lines


@pytest.mark.parametrize("text", ["A", "To do", "Owls"])
def test_a_short_heading_keeps_the_size_it_was_given(text: str) -> None:
    assert fit(heading(text), 68).size == 7.5


def test_one_line_shrinks_a_little_before_a_second_is_begun() -> None:
    natural = shape_line(font(), "Before dark").ink.width * 7.5
    slightly = fit(heading("Before dark"), natural * (SHRINK_FIRST + 0.02))
    assert len(slightly.lines) == 1
    assert slightly.size == pytest.approx(7.5 * (SHRINK_FIRST + 0.02), abs=1e-6)
    assert len(fit(heading("Before dark"), natural * (SHRINK_FIRST - 0.02)).lines) == 2


@settings(max_examples=60, deadline=None)
@given(phrases)
def test_each_line_is_centred_by_its_ink(text: str) -> None:
    for left, _, right, _ in ink(draw(heading(text), ROOM, 0.0)):
        assert (left + right) / 2 == pytest.approx(ROOM.box.centre[0], abs=0.02)


@pytest.mark.parametrize(("align", "edge"), [("left", 0), ("right", 2)])
def test_aligned_lettering_stands_with_its_ink_at_the_edge(align: str, edge: int) -> None:
    wanted = ROOM.box.x if edge == 0 else ROOM.box.right
    for part in ink(draw(heading("Who needs what and when", align=align), ROOM, 0.0)):
        assert part[edge] == pytest.approx(wanted, abs=0.05)


def test_a_quote_at_the_left_hangs_past_the_edge_by_its_share() -> None:
    """Seven tenths of the mark lie outside (common practice of hanging punctuation, no published source)."""
    ((left, *_),) = ink(draw(heading("\u201cNow\u201d", align="left"), ROOM, 0.0))
    mark = shape_line(font(), "\u201c").ink.width * 7.5
    assert left == pytest.approx(ROOM.box.x - 0.7 * mark, abs=1e-6)


def test_a_full_stop_at_the_right_hangs_past_the_edge_by_its_share() -> None:
    ((*_, right, _),) = ink(draw(heading("Now.", align="right"), ROOM, 0.0))
    mark = shape_line(font(), ".").ink.width * 7.5
    assert right == pytest.approx(ROOM.box.right + 0.7 * mark, abs=1e-6)


def test_centred_lettering_is_centred_with_its_marks() -> None:
    ((left, _, right, _),) = ink(draw(heading("\u201cNow."), ROOM, 0.0))
    assert (left + right) / 2 == pytest.approx(ROOM.box.centre[0], abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(phrases, st.integers(1, 4))
def test_lines_hold_the_words_in_order_and_break_at_spaces_only(text: str, count: int) -> None:
    text = f"a {text}"  # a compound alone may break at its hyphen
    lines = broken(font(), text, count)
    assert len(lines) <= count
    assert " ".join(lines).split() == text.split()
    assert all(line == line.strip() for line in lines)


@settings(max_examples=60, deadline=None)
@given(st.lists(words, min_size=2, max_size=6), st.integers(2, 3))
def test_no_other_way_to_break_has_a_narrower_widest_line(parts: list[str], count: int) -> None:
    def widest(lines: list[str]) -> float:
        return max(shape_line(font(), line).ink.width for line in lines)

    ways = [
        [" ".join(parts[a:b]) for a, b in zip((0, *cuts), (*cuts, len(parts)), strict=True)]
        for cut_count in range(count)
        for cuts in combinations(range(1, len(parts)), cut_count)
    ]
    mine = widest(list(broken(font(), " ".join(parts), count)))
    # Pieces are measured one by one: kerning across the space between two may be off by a hair.
    assert mine == pytest.approx(min(widest(way) for way in ways), abs=0.01)


@pytest.mark.parametrize(
    ("text", "count", "lines"),
    [
        # Unicode Standard Annex 14: no break at a no-break space, one between ideographs, after a dash.
        ("für die Zwölf\u00a0Nächte", 3, ("für die", "Zwölf\u00a0Nächte")),
        ("夜の買い物", 2, None),
        ("één twee", 2, ("één", "twee")),
    ],
)
def test_lines_break_where_unicode_allows(text: str, count: int, lines: tuple[str, ...] | None) -> None:
    found = broken(font("Nunito"), text, count)
    if lines is not None:
        assert found == lines
    else:
        assert len(found) == count
        assert "".join(found) == text


def test_a_single_long_word_is_never_torn() -> None:
    assert broken(font(), "Dampfschifffahrtsgesellschaft", 4) == ("Dampfschifffahrtsgesellschaft",)


@settings(max_examples=40, deadline=None)
@given(phrases)
def test_the_capitals_of_the_first_line_stand_at_the_head_of_the_room(text: str) -> None:
    drawn = draw(heading("H " + text), ROOM, 0.0)
    size = drawn.placements[0].size
    first = of_part(drawn, "lettering")[0]
    baseline = ROOM.box.y + cap_height(font()) * size
    assert true_bounds(first.outline)[3] >= baseline - 0.05 * size


def test_the_height_asked_for_holds_every_line_and_the_air_below() -> None:
    block = heading("Everything that has to be done before the lamps go out", space=3.0)
    height = need(block, 68, 0.0)
    assert len(fit(block, 68).lines) == 2
    lowest = max(bottom for _, _, _, bottom in ink(draw(block, ROOM, 0.0)))
    assert lowest <= ROOM.box.y + height - block.space + 0.1


def test_no_text_takes_no_room() -> None:
    assert need(heading(""), 68, 6.0) == 0
    drawn = draw(heading(""), ROOM, 0.0)
    assert drawn.nodes == ()
    assert drawn.placements[0].box.height == 0


def test_a_thousand_words_are_broken_in_bounded_time() -> None:
    assert len(fit(heading("x " * 150), 68).lines) <= 2


def test_a_long_heading_is_broken_by_shaping_each_piece_once() -> None:
    """Not every stretch of the words: 150 of them have more than ten thousand."""
    shape_line.cache_clear()
    lines = broken(font(), " ".join("abcdefghij"[n % 10] for n in range(150)), 4)
    assert shape_line.cache_info().misses < 100
    assert max(map(len, lines)) - min(map(len, lines)) <= 4


@settings(max_examples=80, deadline=None)
@given(
    phrases,
    widths,
    st.floats(-0.1, 0.5),
    st.sampled_from([0.0, 40.0, -70.0, 180.0]),
    st.sampled_from([None, Edge(0.6, INK)]),
)
def test_lettering_fitted_to_a_width_never_exceeds_it(
    text: str, width: float, tracking: float, arc: float, edge: Edge | None
) -> None:
    block = filling(text, tracking=tracking, arc=arc, edge=edge, lines=1 if arc else 2)
    drawn = draw(block, Room(Box(0, 0, width, 100)), 0.0)
    placed = drawn.placements[0]
    reach = block.edge_width
    for left, _, right, _ in ink(drawn):
        assert right - left + 2 * reach <= width + placed.short_by + 1e-6
    assert block.least_size <= placed.size <= block.most_size


@pytest.mark.parametrize("width", [30.0, 45.0])
def test_a_short_heading_that_is_to_fill_the_width_does(width: float) -> None:
    ((left, _, right, _),) = ink(draw(filling("Owls", most_size=60.0), Room(Box(0, 0, width, 100)), 0.0))
    # Sizes come in steps of 0.05 mm, so a little less than the width is filled, and never more.
    assert width - 0.25 < right - left <= width + 1e-9


def test_a_heading_that_fills_the_width_grows_no_larger_than_the_most() -> None:
    assert fit(filling("A", most_size=15.0), 68).size == 15.0


def test_a_line_around_the_letters_lies_under_all_of_them_and_keeps_their_shape() -> None:
    plain = of_part(draw(heading("Owls\nand moths"), ROOM, 0.0), "lettering")
    edged = draw(heading("Owls\nand moths", edge=Edge(0.5, PAPER)), ROOM, 0.0)
    assert [node.cause.part for _, node in edged.nodes] == ["outline", "outline", "lettering", "lettering"]
    assert of_part(edged, "outline")[0].stroke == Stroke(PAPER, 1.0, cap="round")
    for before, after in zip(plain, of_part(edged, "lettering"), strict=True):
        (left, top, right, bottom), moved = true_bounds(before.outline), true_bounds(after.outline)
        assert moved == pytest.approx((left, top + 0.5, right, bottom + 0.5), abs=1e-6)


def test_a_heading_with_a_line_around_it_needs_that_much_more_height() -> None:
    assert need(heading(edge=Edge(0.5, PAPER)), 68, 0.0) == pytest.approx(need(heading(), 68, 0.0) + 1.0)


@pytest.mark.parametrize("arc", [60.0, -60.0, 150.0])
def test_an_arc_has_the_height_it_needs_and_keeps_inside_it(arc: float) -> None:
    block = heading("Round the garden", arc=arc, lines=1)
    height = need(block, 68, 0.0) - block.space
    ((left, top, right, bottom),) = ink(draw(block, ROOM, 0.0))
    assert top == pytest.approx(ROOM.box.y, abs=1e-6)
    assert bottom <= ROOM.box.y + height + 1e-6
    assert (left + right) / 2 == pytest.approx(ROOM.box.centre[0], abs=1e-6)


def test_in_the_middle_the_capitals_are_centred_and_not_the_descenders() -> None:
    for text in ("Hang", "HAND"):
        block = heading(text, seat="middle")
        baseline_below = cap_height(font()) * 7.5 / 2
        drawn = draw(block, ROOM, 0.0)
        h = shape_line(font(), text).letters[0]
        head = true_bounds(of_part(drawn, "lettering")[0].outline)[1]
        assert head == pytest.approx(ROOM.box.centre[1] - baseline_below, abs=0.05), h.character


def test_at_the_foot_the_lettering_ends_with_its_room() -> None:
    placed = draw(heading(seat="foot"), ROOM, 0.0).placements[0]
    assert placed.box.bottom == pytest.approx(ROOM.box.bottom)


def test_signs_above_and_below_the_letters_have_room() -> None:
    """Devanagari: vowel signs over the head line and hooks far below the baseline."""
    font_of_signs = shelved("Baloo 2")
    text = "\u0938\u0942\u091a\u0940 \u0915\u0943\u0924\u093f\n\u0938\u0942\u0930\u094d\u0915\u0943"
    block = heading(text, font=font_of_signs)
    height = need(block, 68, 0.0) - block.space
    first, second = ink(draw(block, ROOM, 0.0))
    assert first[1] >= ROOM.box.y - 1e-6
    assert second[1] > first[3]
    assert second[3] <= ROOM.box.y + height + 1e-6


def filling(text: str, **changes: Any) -> Heading:
    return heading(text, **{"fit": "width", "most_size": 15.0, **changes})
