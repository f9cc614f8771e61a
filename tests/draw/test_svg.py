"""The SVG of a face: what stands in it, and that it says what the scene says."""

import re
from xml.etree import ElementTree

import pytest
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from hypothesis import given
from hypothesis import strategies as st

from padspec.base.colour import BLACK, WHITE
from padspec.base.geometry import Affine, Box, Size
from padspec.draw.svg import face_svg, path_text
from padspec.scene.nodes import Cause, Group, Layer, Scene, Shape, Stroke, Vector
from padspec.scene.outline import Close, Curve, Line, Move, Outline, circle, line, rectangle

from .small import small_scene, tiles

NS = {"svg": "http://www.w3.org/2000/svg"}
CAUSE = Cause("a", "rule")


def href(_image: object) -> str:
    return "../art/tiles-0a1b2c3d.png"


def svg_of(*nodes: Shape | Group) -> ElementTree.Element:
    scene = Scene(Size(90, 190), 3, (Layer("rules", nodes),))
    return ElementTree.fromstring(face_svg(scene, "A face", href))


def test_the_small_face_is_the_golden_one(golden):
    golden("small.svg", face_svg(small_scene(), "Lint & <Ömkel>", href))


def test_the_drawing_covers_the_bleed_in_millimetres():
    root = svg_of()
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("96mm", "196mm", "-3 -3 96 196")


def test_the_title_is_what_was_given():
    scene = small_scene()
    root = ElementTree.fromstring(face_svg(scene, "Cats & <dogs> ☂", href))
    assert root.findtext("svg:title", namespaces=NS) == "Cats & <dogs> ☂"


def test_each_layer_is_a_group_in_the_order_of_drawing():
    root = ElementTree.fromstring(face_svg(small_scene(), "A face", href))
    assert [group.get("id") for group in root.findall("svg:g", NS)] == [
        "ground", "panel", "rules", "art", "lettering"
    ]  # fmt: skip


def test_neighbours_of_one_paint_share_a_group_and_others_do_not():
    a, b, c = (Shape(line(0, y, 9, y), CAUSE, stroke=Stroke(BLACK, 0.3)) for y in (1, 2, 3))
    other = Shape(line(0, 4, 9, 4), CAUSE, stroke=Stroke(BLACK, 0.5))
    groups = svg_of(a, b, other, c).findall("svg:g/svg:g", NS)
    assert [(group.get("stroke-width"), len(group)) for group in groups] == [
        ("0.3", 2),
        ("0.5", 1),
        ("0.3", 1),
    ]


def test_round_ends_are_said():
    group = svg_of(Shape(line(0, 0, 9, 9), CAUSE, stroke=Stroke(BLACK, 1, "round"))).find("svg:g/svg:g", NS)
    assert group.get("stroke-linecap") == "round"


@pytest.mark.parametrize("shape", [Shape(line(0, 0, 9, 9), CAUSE), Shape((), CAUSE, fill=WHITE)])
def test_what_draws_nothing_is_left_out(shape):
    assert len(svg_of(shape).find("svg:g", NS)) == 0


def test_every_clip_has_a_name_of_its_own():
    dot = Shape(circle(5, 5, 2), CAUSE, fill=BLACK)
    inner = Group((dot,), Affine.move(1, 1), rectangle(Box(0, 0, 4, 4)))
    root = svg_of(Group((inner, inner), clip=rectangle(Box(0, 0, 5, 5))))
    names = [clip.get("id") for clip in root.findall("svg:defs/svg:clipPath", NS)]
    used = re.findall(r"url\(#([^)]+)\)", ElementTree.tostring(root, encoding="unicode"))
    assert len(set(names)) == 3
    assert sorted(used) == sorted(names)


def test_a_vector_picture_is_linked_like_any_other():
    asked: list[object] = []
    vector = Vector("owl", "00ff00ff", b"", b"")
    scene = small_scene()
    art = scene.layers[3].nodes[0]
    node = type(art)(vector, art.box, art.cause)
    face_svg(Scene(scene.size, scene.bleed, (Layer("art", (node,)),)), "A face", asked.append)
    assert asked == [vector]


def test_no_line_of_a_long_path_is_long():
    dots: Outline = tuple(step for place in range(900) for step in circle(place * 0.1, 5, 0.8))
    scene = Scene(Size(90, 190), 3, (Layer("ground", (Shape(dots, CAUSE, fill=BLACK),)),))
    lines = face_svg(scene, "A face", href).splitlines()
    assert max(len(text) for text in lines[2:]) < 130


def test_a_picture_is_asked_for_by_its_image():
    asked: list[object] = []
    face_svg(small_scene(), "A face", asked.append)
    assert asked == [tiles()]


lengths = st.floats(-500, 500).map(lambda value: round(value, 5))
points = st.tuples(lengths, lengths)
steps = st.one_of(
    points.map(lambda p: Line(*p)),
    st.tuples(points, points, points).map(lambda p: Curve(*p[0], *p[1], *p[2])),
)
outlines = st.lists(
    st.tuples(points, st.lists(steps, min_size=1, max_size=6), st.booleans()), min_size=1, max_size=4
).map(
    lambda parts: tuple(
        step for start, body, closed in parts for step in (Move(*start), *body, *([Close()] if closed else []))
    )
)


def closed_by_lines(outline: Outline) -> list[Line | Move | Curve | Close]:
    """As fontTools reads a path: before each close, a line to the start of the part unless it is there."""
    steps: list[Line | Move | Curve | Close] = []
    for step in outline:
        if isinstance(step, Move):
            start = step
        if isinstance(step, Close) and [round(v, 3) for v in steps[-1][-2:]] != [round(v, 3) for v in start]:
            steps.append(Line(*start))
        steps.append(step)
    return steps


@given(outlines)
def test_path_data_read_by_another_library_is_the_outline(outline):
    """Judge: the path parser of fontTools."""
    pen = RecordingPen()
    parse_path(path_text(outline), pen)
    read = [(name, values) for name, values in pen.value if name != "endPath"]
    wanted = closed_by_lines(outline)
    names = {Move: "moveTo", Line: "lineTo", Curve: "curveTo", Close: "closePath"}
    assert [name for name, _ in read] == [names[type(step)] for step in wanted]
    for (_, values), step in zip(read, wanted, strict=True):
        flat = [value for point in values for value in point]
        assert flat == pytest.approx(list(step), abs=0.00051)


def test_a_line_after_a_closed_part_starts_where_the_part_began():
    pen = RecordingPen()
    parse_path(path_text((Move(1, 2), Line(5, 6), Close(), Line(5, 8))), pen)
    assert pen.value[-2] == ("lineTo", ((5.0, 8.0),))
