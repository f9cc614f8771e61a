"""Blocks for the tests of compose, each key at its default until a test sets it, and rooms to draw them in."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

from padspec.base.colour import Colour
from padspec.base.geometry import Box
from padspec.compose.face import Drawn
from padspec.fonts import family_file
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.columns import Columns
from padspec.resolve.blocks.grid import Grid
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.marks import Marks
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Labels, Rows, Squares, Tail
from padspec.resolve.blocks.stack import Stack
from padspec.resolve.font import Font
from padspec.resolve.pictures import CutoutRecord
from padspec.scene.nodes import Picture, Raster, Shape
from padspec.scene.outline import Line, Move, bounds, line

INK, PAPER = Colour(122, 59, 88), Colour(255, 255, 255)


@cache
def font(name: str = "Fredoka One", weight: int = 400) -> Font:
    data = family_file(name)
    assert data is not None
    return Font(name, name, data, weight)


def squares(**changes: Any) -> Squares:
    plain = Squares(size=4.0, count=1, between=1.2, corner=0.8, double=False, seat="rule", colour=INK)
    return replace(plain, **changes)


def rows(**changes: Any) -> Rows:
    plain = Rows(
        id="rows",
        grow=1,
        pitch=8.0,
        count=None,
        squares=squares(),
        labels=None,
        tail=Tail(0.0, 0),
        gap=2.5,
        colour=INK,
        weight=0.3,
        heavy_every=0,
        heavy_weight=0.6,
        line="solid",
        ends="butt",
    )
    return replace(plain, **changes)


def labels(*texts: str, **changes: Any) -> Labels:
    """Words at the front of rows; numbers where there are none."""
    plain = Labels(texts, first=1, every=1, font=font("Nunito", 700), size=3.2, colour=INK, width=None)
    return replace(plain, **changes)


def grid(**changes: Any) -> Grid:
    plain = Grid("grid", 1, pitch=5.0, mark="lines", weight=0.27, dot=0.7, colour=INK, heavy_every=0)
    return replace(plain, **changes)


def marks(**changes: Any) -> Marks:
    plain = Marks(
        id="marks",
        grow=1,
        count=31,
        across=0,
        size=5.0,
        gap=1.0,
        shape="circle",
        numbered=True,
        numeral=0.48,
        font=font("Nunito", 700),
        colour=INK,
        numeral_colour=INK,
        weight=0.3,
    )
    return replace(plain, **changes)


def columns(*holds: Block, **changes: Any) -> Columns:
    shares = tuple(1.0 for _ in holds)
    plain = Columns(id="columns", grow=1, holds=holds, shares=shares, gap=5.0, inset=0.0, seat="head")
    return replace(plain, **changes)


def pile(*holds: Block, **changes: Any) -> Stack:
    return replace(Stack(id="pile", grow=1, holds=holds, gap=0.0, inset=0.0), **changes)


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
    plain = Panel(id="panel", grow=1, colour=PAPER, opacity=1.0, corner=6.0, inset=6.0, pad=5.0, holds=holds)
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
        fills="block",
    )
    return replace(plain, **changes)


def of_part(drawn: Drawn, part: str) -> list[Shape]:
    return [node for _, node in drawn.nodes if isinstance(node, Shape) and node.cause.part == part]


def of_pictures(drawn: Drawn) -> list[Box]:
    return [node.box for _, node in drawn.nodes if isinstance(node, Picture)]


def lines_of(shape: Shape) -> list[tuple[float, float, float, float]]:
    """The straight lines of an outline, each as x and y of both ends."""
    found, at = [], (0.0, 0.0)
    for step in shape.outline:
        if isinstance(step, Line):
            found.append((*at, step.x, step.y))
        if isinstance(step, Move | Line):
            at = (step.x, step.y)
    return found


def ink_boxes(shapes: list[Shape]) -> Iterator[Box]:
    """Each shape with its stroke, as the box of what it inks; butt ends of a single line add nothing to it."""
    for shape in shapes:
        if len(lines_of(shape)) > 1 and all(isinstance(step, Move | Line) for step in shape.outline):
            lines = (replace(shape, outline=line(*ends)) for ends in lines_of(shape))
            yield from ink_boxes(list(lines))
            continue
        box, half = bounds(shape.outline), shape.stroke.weight / 2 if shape.stroke else 0.0
        across = along = half
        if shape.stroke and shape.stroke.cap == "butt":
            across = 0.0 if box.height == 0 else half
            along = 0.0 if box.width == 0 else half
        yield Box(box.x - across, box.y - along, box.width + 2 * across, box.height + 2 * along)
