"""The small face with all that a press treats in its own way, and the press PDF of it."""

from functools import cache
from pathlib import Path

import cairosvg
from kit import pad
from press.made import separator

from padspec.base.colour import BLACK, WHITE, Colour
from padspec.base.geometry import Box
from padspec.draw.press.pdf import press_pdf
from padspec.resolve.font import Font
from padspec.scene.nodes import Cause, Layer, Picture, Scene, Shape, Stroke, Vector
from padspec.scene.outline import line, rectangle

from .press_reading import PressFile
from .small import small_scene

TITLE, DATE = "Lint & Ömkel <small>", "2031-04-05"
GREY = Colour(64, 64, 64)
SVG = b"""<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20" viewBox="0 0 40 20">
<rect width="40" height="20" fill="#c03040"/><circle cx="20" cy="10" r="6" fill="#2060a0"/></svg>"""


def with_everything() -> Scene:
    """The small face with a grey rule, white lettering and a picture of vectors besides."""
    scene = small_scene(20)
    flag = Vector("flag", "5eed5eed", cairosvg.svg2pdf(SVG), SVG)
    more = {
        "rules": (Shape(line(8, 68, 30, 68), Cause("rows", "rule"), stroke=Stroke(GREY, 0.3)),),
        "art": (Picture(flag, Box(6, 54, 20, 10), Cause("header", "art")),),
        "lettering": (
            Shape(rectangle(Box(30, 22, 3, 3)), Cause("heading", "lettering"), fill=BLACK),
            Shape(rectangle(Box(36, 22, 3, 3)), Cause("heading", "lettering"), fill=WHITE),
            Shape(rectangle(Box(30, 62, 3, 3)), Cause("heading", "lettering"), BLACK, Stroke(GREY, 0.4)),
            Shape(rectangle(Box(36, 62, 3, 3)), Cause("heading", "lettering"), WHITE, Stroke(BLACK, 0.4)),
        ),
    }
    layers = tuple(Layer(layer.name, layer.nodes + more.get(layer.name, ())) for layer in scene.layers)
    return Scene(scene.size, scene.bleed, layers)


def written(folder: Path, pages, title: str = TITLE) -> PressFile:
    path = folder / "press.pdf"
    path.write_bytes(press_pdf(pages, separator(), title, DATE))
    return PressFile(path)


@cache
def small_print() -> Font:
    """The font of slugs, as a design without wishes has it."""
    return pad().design.small_print
