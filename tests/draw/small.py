"""A small face with something of every node kind, its sheet, and its PDF: what the tests here draw.

The face measures 2 × 3 inches with its bleed, so that whole numbers of pixels cover it at every resolution
that the tests use, and no renderer has to round its size.
"""

from functools import cache

import numpy as np

from padspec.base.colour import BLACK, WHITE, Colour
from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.draw.pdf import face_pdf
from padspec.scene.nodes import Cause, Group, Layer, Node, Picture, Raster, Scene, Shape, Stroke
from padspec.scene.outline import Curve, Line, Move, Outline, circle, line, polygon, rectangle, rounded
from padspec.sheet.arrangement import Grid
from padspec.sheet.sheet import Sheet, Slot

BLEED = 2.54
TRIM = Size(50.8 - 2 * BLEED, 76.2 - 2 * BLEED)
GROUND, DOT, PLUM = Colour(0xE8, 0xDD, 0xE4), Colour(0xA0, 0x78, 0x94), Colour(0x7A, 0x3B, 0x58)
TILES = ((214, 120, 128, 255), (128, 170, 214, 255), (240, 200, 90, 128), (120, 164, 132, 255))
PICTURE_BOX = Box(12.72, 5.1, 20.28, 15.2)
CHECKBOXES = (Box(8.15, 38.15, 3.7, 3.7), Box(8.15, 46.15, 3.7, 3.7))
RULES = ((8.0, 42.0, 37.72, 42.0), (8.0, 50.0, 37.72, 50.0))


def small_scene(pixels_a_tile: int = 1, checkbox_shift: float = 0.0) -> Scene:
    """Ground with dots, panel, two rows, lettering, and a picture of four tiles, one half transparent."""
    return Scene(
        TRIM,
        BLEED,
        (
            Layer("ground", _ground()),
            Layer("panel", (Shape(rounded(Box(5, 18, TRIM.width - 10, 46), 4), Cause("list", "panel"), WHITE),)),
            Layer("rules", _rows(checkbox_shift)),
            Layer("art", (Picture(tiles(pixels_a_tile), PICTURE_BOX, Cause("header", "art")),)),
            Layer("lettering", _lettering()),
        ),
    )


def _ground() -> tuple[Node, ...]:
    box = Box(0, 0, TRIM.width, TRIM.height)
    plain = Shape(rectangle(box.inset(-BLEED)), Cause("ground", "ground"), GROUND)
    places = [(x, y) for y in (2.0, 70.0) for x in (4.0, 10.0, 16.0)]
    dots: Outline = tuple(step for x, y in places for step in circle(x, y, 1.2))
    clip = rectangle(Box(0, 0, 16, TRIM.height))
    return plain, Group((Shape(dots, Cause("ground", "pattern"), DOT),), Affine.move(1.5, 0), clip)


def _rows(shift: float) -> tuple[Node, ...]:
    pen = Stroke(PLUM, 0.3)
    rules = tuple(Shape(line(*ends), Cause("rows", "rule"), stroke=pen) for ends in RULES)
    first, second = CHECKBOXES
    boxes = (
        Shape(rectangle(first.moved(shift, 0)), Cause("rows", "checkbox"), stroke=pen),
        Shape(rounded(second, 0.8), Cause("rows", "checkbox"), stroke=pen),
    )
    return rules + boxes


def _lettering() -> tuple[Node, ...]:
    """A letter of straight strokes and a round one with a counter, whose inside runs the other way."""
    letter = polygon((10, 26), (11, 26), (11, 29), (14, 29), (14, 26), (15, 26), (15, 34), (14, 34), (14, 30),
                     (11, 30), (11, 34), (10, 34))  # fmt: skip
    counter = tuple(reversed_circle(21, 30, 2.6))
    ring = circle(21, 30, 4) + counter
    tick = (Move(29, 30), Line(31, 33), Curve(32, 30, 33, 28, 35, 26))
    cause = Cause("heading", "lettering")
    return (
        Shape(letter, cause, PLUM),
        Shape(ring, cause, PLUM),
        Shape(tick, cause, stroke=Stroke(BLACK, 0.8, "round")),
        Shape(circle(32, 57, 3), cause, DOT, Stroke(PLUM, 0.6)),
    )


def reversed_circle(x: float, y: float, radius: float) -> Outline:
    """A circle that runs the other way round, as the counters of letters do."""
    return tuple(
        type(step)(*(2 * x - value if place % 2 == 0 else value for place, value in enumerate(step)))
        for step in circle(x, y, radius)
    )


def tiles(pixels_a_tile: int = 1) -> Raster:
    """Four flat tiles, two by two."""
    square = np.array(TILES, np.uint8).reshape(2, 2, 4)
    pixels = square.repeat(pixels_a_tile, axis=0).repeat(pixels_a_tile, axis=1)
    side = 2 * pixels_a_tile
    return Raster("tiles", "0a1b2c3d", side, side, pixels[..., :3].tobytes(), pixels[..., 3].tobytes())


def sheet_of(scene: Scene, n_up: int = 3, gutter: float = 4.0, margin: float = 12.0) -> Sheet:
    """A row of slots with a gutter, each a quarter turn clockwise, and one crop mark at the head."""
    face = scene.size.turned()
    size = Size(297, 210)
    slots = []
    for place in range(n_up):
        trim = Box(margin + place * (face.width + gutter), 30, face.width, face.height)
        turn = Affine.quarter_turn(scene.size.height).then(Affine.move(trim.x, trim.y))
        bleed = min(scene.bleed, gutter / 2)
        slots.append(Slot(trim, (trim.inset(-bleed),), Sides.all(bleed), (), turn, turned=True))
    mark = Shape(line(margin, 20, margin, 25), Cause("sheet", "crop-mark"), stroke=Stroke(BLACK, 0.1))
    return Sheet(
        size=size,
        size_name="A4",
        title="Lint & Ömkel <small>",
        arrangement=Grid(1, n_up, face, turned=True),
        cuts=2 * (1 + n_up),
        gutter=gutter,
        slots=tuple(slots),
        printable=Box(0, 0, size.width, size.height).inset(4.2),
        marks=(mark,),
        left_out=(),
        copies=17,
    )


@cache
def small_face_pdf(pixels_a_tile: int = 1) -> bytes:
    """The small face as PDF, drawn once for all tests."""
    return face_pdf(small_scene(pixels_a_tile))
