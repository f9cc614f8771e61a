"""The cut diagram: every cut where it is, every number legible and apart, everything inside the drawing."""

import io
import re
from itertools import pairwise
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kit import pad
from PIL import Image
from sheet.cutting_kit import FACE, NESTED, UNDER, laid, plan_of, sheets

from padspec.base.colour import Colour
from padspec.base.geometry import Affine, Box, Size, mapped_box
from padspec.draw.cuts.callouts import callouts, spread
from padspec.draw.cuts.diagram import cut_diagram, cut_diagram_svg
from padspec.draw.cuts.hatching import dashed, hatched
from padspec.resolve.studio import Offcut
from padspec.scene.nodes import Group, Node, Scene, Shape
from padspec.scene.outline import bounds, points
from padspec.sheet.arrangement import Grid
from padspec.sheet.sheet import Sheet

RED, GREEN = Colour.from_hex("#a2242f"), Colour.from_hex("#3f7263")
BLADE, LAY_EDGE = 0.32, 0.6
FONT = pad().design.small_print
SWATCH = Offcut("swatch", Size(40.0, 40.0))
GRID = Grid(2, 3, FACE, False)


def drawn(sheet: Sheet, things: tuple[Offcut, ...] = (), width: float = 120.0) -> Scene:
    return cut_diagram(sheet, plan_of(sheet, things=things), FONT, width)


def shapes(scene: Scene) -> list[Shape]:
    return [shape for layer in scene.layers for shape in opened(layer.nodes, Affine())]


def opened(nodes: tuple[Node, ...], to_drawing: Affine) -> list[Shape]:
    found = []
    for node in nodes:
        if isinstance(node, Group):
            found += opened(node.children, node.transform.then(to_drawing))
        else:
            found.append(node)
    return found


def paper_of(scene: Scene) -> Box:
    return bounds(scene.layers[0].nodes[1].outline)  # under it the white of the whole drawing


def to_drawing(sheet: Sheet, scene: Scene) -> Affine:
    paper = paper_of(scene)
    return Affine.scale(paper.width / sheet.size.width).then(Affine.move(paper.x, paper.y))


@settings(max_examples=30, deadline=None)
@given(sheet=sheets)
def test_a_line_is_drawn_for_every_cut_exactly_where_it_runs(sheet):
    scene, cuts = drawn(sheet), plan_of(sheet).cuts
    place = to_drawing(sheet, scene)
    lines = [
        bounds(s.outline) for s in shapes(scene) if s.stroke and (s.stroke.colour, s.stroke.weight) == (RED, BLADE)
    ]
    assert len(lines) == len(cuts)
    for cut, found in zip(cuts, lines, strict=True):
        length = cut.end - cut.start
        wish = Box(cut.at, cut.start, 0, length) if cut.upright else Box(cut.start, cut.at, length, 0)
        box = mapped_box(wish, place)
        assert (found.x, found.y, found.right, found.bottom) == pytest.approx(
            (box.x, box.y, box.right, box.bottom)
        )


@settings(max_examples=60, deadline=None)
@given(sheet=sheets)
def test_no_two_badges_overlap(sheet):
    scene = drawn(sheet)
    found = callouts(plan_of(sheet).cuts, sheet, to_drawing(sheet, scene))
    for place, one in enumerate(found):
        for other in found[place + 1 :]:
            apart = np.hypot(one.centre[0] - other.centre[0], one.centre[1] - other.centre[1])
            assert apart >= one.radius + other.radius


@settings(max_examples=30, deadline=None)
@given(sheet=sheets)
def test_every_cut_has_its_badge_inside_the_drawing(sheet):
    scene = drawn(sheet)
    found = callouts(plan_of(sheet).cuts, sheet, to_drawing(sheet, scene))
    assert [badge.number for badge in found] == [cut.number for cut in plan_of(sheet).cuts]
    for badge in found:
        circle = Box(badge.centre[0], badge.centre[1], 0, 0).inset(-badge.radius)
        assert Box(0, 0, scene.size.width, scene.size.height).covers(circle)


@settings(max_examples=30, deadline=None)
@given(sheet=sheets)
def test_a_badge_stands_clear_of_the_paper_unless_its_cut_ends_among_the_leaves(sheet):
    scene = drawn(sheet)
    for badge in callouts(plan_of(sheet).cuts, sheet, to_drawing(sheet, scene)):
        circle = Box(badge.centre[0], badge.centre[1], 0, 0).inset(-badge.radius)
        assert circle.overlaps(paper_of(scene)) == (badge.side is None)


def test_a_leader_begins_where_its_cut_ends_and_leads_to_the_badge():
    sheet = laid(GRID)
    scene = drawn(sheet)
    place = to_drawing(sheet, scene)
    first = callouts(plan_of(sheet).cuts, sheet, place)[0]
    cut = plan_of(sheet).cuts[0]
    assert first.leader[0] == place.of(cut.at, cut.end)
    assert first.leader[-1] == first.centre


def test_a_cut_between_leaves_only_carries_its_number_on_itself():
    # The trim of piece C ends at C's own head and foot, with a leaf above it and an offcut below.
    sheet = laid(NESTED)
    scene = drawn(sheet)
    place = to_drawing(sheet, scene)
    cut, badge = plan_of(sheet).cuts[-1], callouts(plan_of(sheet).cuts, sheet, place)[-1]
    assert (cut.piece, badge.side) == ("piece C", None)
    assert badge.centre[0] == pytest.approx(place.of(cut.at, 0)[0])
    assert place.of(0, cut.start)[1] < badge.centre[1] < place.of(0, cut.end)[1]


def test_the_lay_edges_are_thick_and_lie_left_and_at_the_head():
    scene = drawn(laid(GRID))
    paper = paper_of(scene)
    (edge,) = [shape for shape in shapes(scene) if shape.stroke and shape.stroke.weight == LAY_EDGE]
    box = bounds(edge.outline)
    assert (box.x + LAY_EDGE / 2, box.y + LAY_EDGE / 2) == pytest.approx((paper.x, paper.y))
    assert (box.right, box.bottom) == pytest.approx((paper.right, paper.bottom))


@pytest.mark.parametrize(("turned", "head"), [(False, "above"), (True, "right")])
def test_the_arrow_points_to_the_head_of_the_face(turned, head):
    scene = drawn(laid(Grid(1, 1, FACE.turned() if turned else FACE, turned)))
    leaf = next(bounds(s.outline) for s in shapes(scene) if s.cause.part == "panel")
    number, arrow = scene.layers[3].nodes[:2]
    x, y = bounds(arrow.outline).centre
    assert bounds(number.outline).inset(-1).covers(Box(*leaf.centre, 0, 0))
    towards = (x - leaf.centre[0], y - leaf.centre[1])
    assert towards == pytest.approx((0, -np.hypot(*towards)) if head == "above" else (np.hypot(*towards), 0))


def test_the_arrow_is_sharp_at_the_end_that_is_away_from_the_number():
    scene = drawn(laid(Grid(1, 1, FACE, False)))
    tip = min(points(scene.layers[3].nodes[1].outline), key=lambda point: point[1])
    same_height = [point for point in points(scene.layers[3].nodes[1].outline) if point[1] == tip[1]]
    assert same_height == [tip]


def test_pieces_of_a_mixed_sheet_carry_their_letters_and_a_plain_grid_none():
    def count(sheet: Sheet) -> int:
        return sum(s.stroke is not None for s in drawn(sheet).layers[3].nodes)

    assert (count(laid(GRID)), count(laid(UNDER)), count(laid(NESTED))) == (0, 2, 3)


def test_an_offcut_is_hatched_inside_its_own_edge():
    sheet = laid(NESTED)
    scene = drawn(sheet, (SWATCH,))
    (found,) = plan_of(sheet, things=(SWATCH,)).offcuts
    area = mapped_box(found.box, to_drawing(sheet, scene))
    lines = [s for s in shapes(scene) if s.cause.part == "pattern" and s.stroke]
    assert len(lines) == 2
    assert all(area.covers(bounds(s.outline), 1e-6) and s.stroke.colour == GREEN for s in lines)


def test_an_offcut_is_named_where_it_finds_room():
    labelled = [s for s in shapes(drawn(laid(NESTED), (SWATCH,))) if s.fill == GREEN]
    assert len(labelled) == 2  # what it makes, and its size


@pytest.mark.parametrize("width", [90.0, 120.0, 180.0])
def test_the_drawing_is_as_wide_as_asked_and_its_numbers_stay_of_one_size(width):
    sheet = laid(GRID)
    scene = drawn(sheet, width=width)
    badges = [s for s in scene.layers[4].nodes if s.fill == RED]
    assert scene.size.width == width
    assert {round(bounds(s.outline).width, 6) for s in badges} == {4.0}


def test_the_same_sheet_gives_the_same_bytes():
    sheet = laid(NESTED)
    first, second = (cut_diagram_svg(sheet, plan_of(sheet), FONT) for _ in range(2))
    assert first == second


def test_the_file_is_a_drawing_of_120_mm_with_a_title():
    sheet = laid(UNDER)
    root = ElementTree.fromstring(cut_diagram_svg(sheet, plan_of(sheet), FONT))
    assert root.get("width") == "120mm"
    assert root.findtext("{http://www.w3.org/2000/svg}title") == "Cuts of Sheet"


def test_lettering_is_outlines_only():
    sheet = laid(UNDER)
    assert not re.search(r"<text|font-", cut_diagram_svg(sheet, plan_of(sheet), FONT))


def test_another_program_sees_the_first_cut_red_in_the_margin():
    # Drawn by resvg at 600 dpi: the margin at the foot is white but for the cut that runs through it.
    import resvg_py

    sheet = laid(GRID)
    scene, plan = drawn(sheet), plan_of(sheet)
    drawing = cut_diagram_svg(sheet, plan, FONT)
    png = bytes(resvg_py.svg_to_bytes(svg_string=drawing, dpi=600, width=2835, background="white"))
    pixels = np.asarray(Image.open(io.BytesIO(png)).convert("RGB"))
    x, y = to_drawing(sheet, scene).of(plan.cuts[0].at, sheet.size.height - 1.5)
    per_mm = pixels.shape[1] / scene.size.width
    row = pixels[round(y * per_mm)].astype(int)
    near = row[round((x - 2) * per_mm) : round((x + 2) * per_mm)]
    is_red = np.abs(near - (RED.red, RED.green, RED.blue)).sum(axis=1) < 30
    middle = np.flatnonzero(is_red).mean() / per_mm - 2
    assert middle == pytest.approx(0, abs=0.05)
    assert is_red.sum() / per_mm == pytest.approx(BLADE, abs=0.06)


@settings(max_examples=200, deadline=None)
@given(st.lists(st.floats(0, 100), max_size=15))
def test_spread_places_keep_apart_in_order_and_in_bounds(wishes):
    places = spread(sorted(wishes), 4.5, 0.0, 100.0)
    assert all(later - earlier >= 4.5 - 1e-6 for earlier, later in pairwise(places))
    assert all(-1e-6 <= place <= 100 + 1e-6 for place in places)


def test_places_that_have_room_are_left_where_they_are():
    assert spread([10.0, 20.0, 90.0], 4.5, 0.0, 100.0) == [10.0, 20.0, 90.0]


def test_hatching_stays_in_its_box_at_even_distances():
    box = Box(3, 5, 20, 12)
    found = points(hatched(box, 1.5))
    assert box.covers(bounds(hatched(box, 1.5)))
    sums = sorted({round(x + y, 6) for x, y in found})
    assert np.diff(sums) == pytest.approx(1.5 * 2**0.5)


def test_dashes_reach_every_corner():
    box = Box(0, 0, 30, 17)
    assert {(0, 0), (30, 0), (30, 17), (0, 17)} <= {(round(x, 6), round(y, 6)) for x, y in points(dashed(box))}
