"""Readers that did not write the drawings: what they find in a PDF or an SVG, in millimetres."""

import io
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
import pdfplumber
import resvg_py
from numpy.typing import NDArray
from PIL import Image

from padspec.base.geometry import Affine
from padspec.scene.nodes import Group, Node, Picture, Scene, Shape
from padspec.scene.outline import Close, Curve, Line, Move, Outline, mapped

POINTS = 72 / 25.4


class Part(NamedTuple):
    """One part of a drawn outline: commands, their points in mm, colours of 8 bits, and line weight in mm."""

    commands: str
    points: NDArray[np.float64]
    fill: tuple[int, ...] | None
    stroke: tuple[int, ...] | None
    weight: float


def parts_in_pdf(pdf: bytes) -> list[Part]:
    """Every part that pdfplumber finds on the first page, from the page's top left corner."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        page = document.pages[0]
        return [_read_part(found) for found in page.rects + page.lines + page.curves]


def _read_part(found: dict) -> Part:
    commands = "".join(step[0] for step in found["path"])
    points = np.array([point for step in found["path"] for point in step[1:]]) / POINTS
    return Part(
        commands,
        points,
        _channels(found["non_stroking_color"]) if found["fill"] else None,
        _channels(found["stroking_color"]) if found["stroke"] else None,
        found["linewidth"] / POINTS if found["stroke"] else 0.0,
    )


def _channels(colour: tuple[float, ...]) -> tuple[int, ...]:
    return tuple(round(channel * 255) for channel in colour)


def parts_of_scene(scene: Scene, affine: Affine) -> list[Part]:
    """The parts that a reader should find, with every point sent through `affine`."""
    return parts_of_nodes(tuple(node for layer in scene.layers for node in layer.nodes), affine)


def parts_of_nodes(nodes: tuple[Node, ...], affine: Affine) -> list[Part]:
    found: list[Part] = []
    for node in nodes:
        match node:
            case Shape():
                found += _scene_parts(node, affine)
            case Group():
                found += parts_of_nodes(node.children, node.transform.then(affine))
            case Picture():
                pass
    return found


def _scene_parts(shape: Shape, affine: Affine) -> Iterator[Part]:
    fill = (shape.fill.red, shape.fill.green, shape.fill.blue) if shape.fill else None
    pen = shape.stroke
    stroke = (pen.colour.red, pen.colour.green, pen.colour.blue) if pen else None
    for part in _split(mapped(shape.outline, affine)):
        commands = "".join({Move: "m", Line: "l", Curve: "c", Close: "h"}[type(step)] for step in part)
        points = np.array([value for step in part for value in step]).reshape(-1, 2)
        yield Part(commands, points, fill, stroke, pen.weight if pen else 0.0)


def _split(outline: Outline) -> list[Outline]:
    starts = [place for place, step in enumerate(outline) if isinstance(step, Move)]
    return [outline[start:end] for start, end in zip(starts, [*starts[1:], len(outline)], strict=True)]


def farthest(wanted: list[Part], found: list[Part]) -> float:
    """The greatest distance of a wanted part to the nearest found one that is the same but for place."""
    return max(min(_distance(part, other) for other in found) for part in wanted)


def _distance(one: Part, other: Part) -> float:
    same = one[0] == other[0] and one[2:4] == other[2:4] and abs(one.weight - other.weight) < 0.001
    return float(np.abs(one.points - other.points).max()) if same else float("inf")


def svg_pixels(svg: str, ppi: float) -> NDArray[np.uint8]:
    """An SVG over white by resvg."""
    return png_pixels(bytes(resvg_py.svg_to_bytes(svg_string=svg, dpi=ppi, background="#ffffff")))


def png_pixels(png: bytes) -> NDArray[np.uint8]:
    """An image file as RGB."""
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB"))


def box_reduced(pixels: NDArray[np.uint8], factor: int) -> NDArray[np.float64]:
    """Means of squares of pixels."""
    height, width, channels = pixels.shape
    squares = pixels.reshape(height // factor, factor, width // factor, factor, channels)
    return squares.mean(axis=(1, 3))


def largest_difference(one: NDArray[np.uint8], other: NDArray[np.uint8]) -> float:
    """Two pages of 600 ppi, brought down to 100 ppi: the largest difference of a channel, of 255."""
    return float(np.abs(box_reduced(one, 6) - box_reduced(other, 6)).max())
