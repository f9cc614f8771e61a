"""The cut plan: it frees every leaf, in the fewest strokes, and each distance is what a person measures then.

Numbers of cuts are those of check tables derived by hand (right across, the pile kept together); the order of cuts
is common practice, no published source.
"""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given, settings

from padspec.base.geometry import Box, Size
from padspec.sheet.arrangement import Grid
from padspec.sheet.cutting.carry_out import carry_out, parted
from padspec.sheet.cutting.compare import compare_gutters
from padspec.sheet.cutting.plan import Cut, CutPlan
from padspec.sheet.cutting.plan_cuts import plan_cuts
from padspec.sheet.cutting.wording import cut_lines
from padspec.sheet.fitting.strokes import strokes
from padspec.sheet.sheet import Sheet

from .cutting_kit import FACE, NESTED, STOCK, UNDER, laid, plan_of, sheets, with_cutter
from .designs import design, tiled

THREE_UP = Size(90.0, 190.0)


def rounded(boxes: tuple[Box, ...]) -> list[tuple[float, ...]]:
    return sorted(tuple(round(v, 5) + 0.0 for v in (box.x, box.y, box.width, box.height)) for box in boxes)


def under_the_blade(plan: CutPlan, sheet: Sheet) -> Iterator[tuple[Cut, list[Box]]]:
    """Each cut with the pieces that it parts. Paper without a leaf is thrown away as it comes off."""
    paper = [Box(0, 0, sheet.size.width, sheet.size.height)]
    for cut in plan.cuts:
        parts = [(piece, list(parted(piece, cut))) for piece in paper]
        yield cut, [piece for piece, halves in parts if len(halves) == 2]
        paper = [half for _, halves in parts for half in halves if leaves_on(half, sheet)]


def leaves_on(piece: Box, sheet: Sheet) -> bool:
    return any(piece.overlaps(slot.trim, 1e-6) for slot in sheet.slots)


def edge_of(piece: Box, edge: str) -> float:
    return {"left": piece.x, "head": piece.y, "right": piece.right, "foot": piece.bottom}[edge]


@pytest.mark.parametrize(
    ("rows", "columns", "butted", "guttered"),
    [(1, 1, 4, 4), (1, 2, 5, 6), (1, 3, 6, 8), (2, 2, 6, 8), (2, 3, 7, 10)],
)
def test_a_grid_takes_as_many_cuts_as_the_table_says(rows, columns, butted, guttered):
    grid = Grid(rows, columns, FACE, False)
    assert [len(plan_of(laid(grid, gutter)).cuts) for gutter in (0.0, 4.0)] == [butted, guttered]


@pytest.mark.parametrize("kind", ["guillotine", "lever", "knife"])
@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_the_plan_frees_every_leaf_and_nothing_is_left_on_it(kind, sheet):
    leaves = carry_out(plan_of(sheet, kind).cuts, sheet).leaves
    assert rounded(leaves) == rounded(tuple(slot.trim for slot in sheet.slots))


@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_the_plan_has_as_many_cuts_as_the_fit_counted(sheet):
    assert len(plan_of(sheet).cuts) == strokes(sheet.arrangement, sheet.gutter) == sheet.cuts


@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_every_cut_parts_something(sheet):
    for cut, pieces in under_the_blade(plan_of(sheet), sheet):
        assert pieces, f"cut {cut.number} parts nothing"


@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_the_gauge_edge_of_all_that_is_cut_lies_at_the_distance(sheet):
    for cut, pieces in under_the_blade(plan_of(sheet), sheet):
        inwards = 1 if cut.gauge.edge in ("left", "head") else -1
        for piece in pieces:
            measured = (cut.at - edge_of(piece, cut.gauge.edge)) * inwards
            assert measured == pytest.approx(cut.distance, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_the_gauge_edge_was_made_by_the_cut_that_is_named(sheet):
    plan = plan_of(sheet)
    raw = {"left": 0.0, "head": 0.0, "right": sheet.size.width, "foot": sheet.size.height}
    for cut, pieces in under_the_blade(plan, sheet):
        made = raw[cut.gauge.edge] if cut.gauge.cut is None else plan.cuts[cut.gauge.cut - 1].at
        assert cut.gauge.cut is None or cut.gauge.cut < cut.number
        assert all(edge_of(piece, cut.gauge.edge) == pytest.approx(made, abs=1e-6) for piece in pieces)


@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_what_lies_against_the_gauge_is_never_a_strip_of_waste(sheet):
    for cut, pieces in under_the_blade(plan_of(sheet), sheet):
        for piece in pieces:
            near, far = parted(piece, cut)
            assert leaves_on(near if cut.gauge.edge in ("left", "head") else far, sheet)


@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_what_is_said_to_come_off_as_waste_holds_no_leaf_and_the_rest_does(sheet):
    for cut in plan_of(sheet).cuts:
        assert leaves_on(cut.off_box, sheet) != cut.takes_waste


@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_only_the_first_cut_of_either_direction_is_from_a_raw_edge(sheet):
    raw = [(cut.number, cut.gauge.edge) for cut in plan_of(sheet).cuts if cut.gauge.cut is None]
    assert raw == [(1, "left"), (3, "head")]


def test_the_outside_comes_first_and_every_later_cut_is_from_its_edges():
    cuts = plan_of(tiled(THREE_UP)).cuts
    assert [(cut.upright, round(cut.at, 3), cut.gauge.name, round(cut.distance, 3)) for cut in cuts] == [
        (True, 200, "the raw left edge", 200),
        (True, 10, "the edge of cut 1", 190),
        (False, 287.5, "the raw head edge", 287.5),
        (False, 9.5, "the edge of cut 3", 278),
        (False, 99.5, "the edge of cut 3", 188),
        (False, 103.5, "the edge of cut 3", 184),
        (False, 193.5, "the edge of cut 3", 94),
        (False, 197.5, "the edge of cut 3", 90),
    ]


def test_the_pile_is_jogged_whenever_another_edge_comes_to_the_gauge():
    assert [cut.jog for cut in plan_of(tiled(THREE_UP)).cuts] == [True] * 4 + [False] * 4


def test_a_side_where_the_leaf_ends_with_the_paper_is_not_cut():
    sheet = laid(Grid(1, 2, FACE, False), 0.0, margin=0.0)
    assert [(cut.at, cut.gauge.name) for cut in plan_of(sheet).cuts] == [(60.0, "the raw left edge")]


def test_a_cut_runs_right_across_the_piece_under_the_blade_and_no_further():
    cuts = plan_of(tiled(THREE_UP)).cuts
    assert [(cut.start, round(cut.end, 6)) for cut in cuts[:2]] == [(0, 297)] * 2
    assert [(round(cut.start, 6), round(cut.end, 6)) for cut in cuts[2:]] == [(10, 200)] * 6


def test_a_mixed_sheet_is_parted_and_its_pieces_follow_one_after_the_other():
    cuts = plan_of(laid(NESTED)).cuts
    pieces = list(dict.fromkeys(cut.piece for cut in cuts))
    assert pieces == ["the sheet", "piece A", "piece B–C", "piece B", "piece C"]


def test_the_shorter_of_two_pieces_is_brought_to_its_own_length_first():
    # Three rows of 90 stand beside 60 + 60 + 70, so that 80 mm come off below.
    cuts = [cut for cut in plan_of(laid(NESTED, 0.0)).cuts if cut.piece == "piece B–C"]
    assert (cuts[0].distance, cuts[0].off_box.height, cuts[0].takes_waste) == (190, 80, True)


def test_leaves_are_named_as_they_come_off():
    cuts = plan_of(laid(UNDER, 0.0)).cuts
    assert [cut.off for cut in cuts if cut.off] == [
        "piece A",
        "leaves 4, 5 and 6",
        "leaves 1 and 4",
        "leaves 2 and 5",
        "leaf 7",
    ]


def test_marks_guide_a_gauge_cut_only_while_they_are_on_the_paper():
    # The left strip takes the marks of all level cuts with it.
    assert [cut.marked for cut in plan_of(laid(Grid(2, 2, FACE, False))).cuts] == [True, True] + [False] * 6


def test_marks_guide_every_knife_cut_because_nothing_is_moved():
    assert all(cut.marked for cut in plan_of(laid(Grid(2, 2, FACE, False)), "knife").cuts)


def test_marks_at_one_end_guide_no_cut():
    # Between the three upright faces above there are marks at the head, at the foot none.
    inside = [cut for cut in plan_of(laid(UNDER), "knife").cuts if cut.piece == "piece A" and cut.upright]
    assert inside
    assert not any(cut.marked for cut in inside)


def test_a_sheet_without_marks_has_no_marked_cut():
    assert not any(cut.marked for cut in plan_of(laid(UNDER, marks=False), "knife").cuts)


@settings(max_examples=40, deadline=None)
@given(sheet=sheets)
def test_a_knife_measures_all_from_the_raw_left_edge_and_head(sheet):
    for cut in plan_of(sheet, "knife").cuts:
        assert cut.gauge.name == f"the raw {'left' if cut.upright else 'head'} edge"
        assert (cut.distance, cut.jog) == (cut.at, False)


def test_lifts_are_what_goes_under_the_clamp_shared_out_evenly():
    # 40 mm hold 333 sheets of 0.12 mm: 500 sheets are two lifts (worked by hand).
    plan = plan_cuts(tiled(THREE_UP), with_cutter("guillotine"), STOCK, 500)
    assert (plan.lifts, plan.sheets_a_lift, plan.strokes) == (2, 250, 16)


def test_a_pile_that_just_goes_under_the_clamp_is_one_lift():
    # 0.3 ÷ 0.1 is a hair under 3 in binary.
    thin = replace(STOCK, caliper=0.1)
    plan = plan_cuts(tiled(THREE_UP), with_cutter("guillotine", clamp_height=0.3), thin, 3)
    assert plan.lifts == 1


@pytest.mark.parametrize("kind", ["knife", "lever"])
def test_hand_tools_take_as_many_sheets_as_the_studio_says(kind):
    plan = plan_cuts(tiled(THREE_UP), with_cutter(kind, sheets_at_once=6), STOCK, 20)
    assert (plan.lifts, plan.sheets_a_lift) == (4, 5)


def test_time_is_strokes_by_the_time_of_one():
    # 8 cuts, 2 lifts, 45 s each: 12 minutes.
    plan = plan_cuts(tiled(THREE_UP), with_cutter("guillotine", stroke_seconds=45), STOCK, 500)
    assert plan.minutes == 12


def test_butted_and_guttered_are_compared_on_the_same_design():
    butted, guttered = compare_gutters(design(THREE_UP, gutter=4.0))
    assert [(row.gutter, row.n_up, row.cuts) for row in (butted, guttered)] == [(0, 3, 6), (4, 3, 8)]


def test_a_gutter_that_costs_a_face_is_seen():
    # 3 × 95 = 285 fits in 297 − 2 × 4.2 − 2 × 1.5 = 285.6; with any gutter but two.
    butted, guttered = compare_gutters(design(Size(95.0, 190.0), gutter=4.0))
    assert (butted.n_up, guttered.n_up) == (3, 2)


def test_a_butted_design_is_compared_with_twice_its_least_bleed():
    assert [row.gutter for row in compare_gutters(design(THREE_UP, gutter=0.0))] == [0, 3]


def test_a_gutter_with_which_nothing_fits_counts_nothing():
    butted, _ = compare_gutters(design(Size(300.0, 300.0)))
    assert (butted.n_up, butted.cuts, butted.strokes) == (0, 0, 0)


@pytest.mark.parametrize("kind", ["guillotine", "knife"])
def test_the_plan_in_words_is_the_golden_one(golden, kind):
    lines = cut_lines(plan_of(laid(UNDER), kind))
    golden(f"cuts-{kind}.txt", "\n".join(lines) + "\n")


def test_a_lever_trimmer_has_a_fence():
    text = "\n".join(cut_lines(plan_of(tiled(THREE_UP), "lever")))
    assert "the fence is set to the distance" in text
    assert "gauge" not in text


def test_the_words_end_with_what_to_mind():
    assert "guard closed" in cut_lines(plan_of(tiled(THREE_UP)))[-1]
