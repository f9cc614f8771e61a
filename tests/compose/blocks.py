"""Blocks for the tests of compose, each key at its default until a test sets it, and rooms to draw them in."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

from padspec.base.colour import Colour
from padspec.base.geometry import Box
from padspec.compose.face import Drawn
from padspec.fonts import family_file
from padspec.resolve.design import Art, Block, CutoutRecord, Font, Heading, Panel, Rows
from padspec.scene.nodes import Picture, Raster, Shape
from padspec.scene.outline import bounds

INK, PAPER = Colour(122, 59, 88), Colour(255, 255, 255)


@cache
def font(name: str = "Fredoka One", weight: int = 400) -> Font:
    data = family_file(name)
    assert data is not None
    return Font(name, name, data, weight)


def rows(**changes: Any) -> Rows:
    plain = Rows(
        id="rows",
        grow=1,
        pitch=8.0,
        count=None,
        checkbox=4.0,
        checkbox_corner=0.8,
        checkbox_seat="rule",
        checkbox_gap=2.5,
        checkbox_colour=INK,
        colour=INK,
        weight=0.3,
        ends="butt",
    )
    return replace(plain, **changes)


def heading(text: str = "Before dark", **changes: Any) -> Heading:
    plain = Heading(
        id="heading",
        grow=0,
        text=text,
        font=font(),
        size=7.5,
        least_size=4.5,
        lines=2,
        colour=INK,
        align="centre",
        space=3.0,
    )
    return replace(plain, **changes)


def panel(*holds: Block, **changes: Any) -> Panel:
    plain = Panel(id="panel", grow=1, colour=PAPER, corner=6.0, inset=6.0, pad=5.0, holds=holds)
    return replace(plain, **changes)


def art(width: float, height: float, **changes: Any) -> Art:
    """A picture placed at this size, in mm."""
    plain = Art(
        id="art",
        grow=0,
        file="art.png",
        image=Raster("art", "00000000", 1, 1, b"\0\0\0", None),
        width=width,
        height=height,
        overlap=5.0,
        inset=6.0,
        align="centre",
        source=(1, 1),
        frame=0.0,
        frame_colour=PAPER,
        corner=0.0,
        cutout=CutoutRecord("auto", "transparency", 0.0, 1.0, 0.0),
    )
    return replace(plain, **changes)


def of_part(drawn: Drawn, part: str) -> list[Shape]:
    return [node for _, node in drawn.nodes if isinstance(node, Shape) and node.cause.part == part]


def of_pictures(drawn: Drawn) -> list[Box]:
    return [node.box for _, node in drawn.nodes if isinstance(node, Picture)]


def ink_boxes(shapes: list[Shape]) -> Iterator[Box]:
    """Each shape with its stroke, as the box of what it inks."""
    for shape in shapes:
        box, half = bounds(shape.outline), shape.stroke.weight / 2 if shape.stroke else 0.0
        if box.height == 0 and shape.stroke and shape.stroke.cap == "butt":  # a level line with butt ends
            yield Box(box.x, box.y - half, box.width, 2 * half)
        else:
            yield box.inset(-half)
