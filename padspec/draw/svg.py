"""A face as SVG 1.1, for git, editors and the page: a scene goes in, the text of the file comes out.

Made for reading diffs: one path a line, one group for each layer and for each run of equal paint, and long
paths broken at their commands. The drawing covers the bleed, with the trim's top left corner at 0 0 and
one unit a millimetre.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, assert_never
from xml.etree import ElementTree

from svgwrite.drawing import Drawing

from padspec.base.geometry import Affine
from padspec.base.numbers import number_text
from padspec.draw.kept_text import KeptText
from padspec.draw.lengths import box_text, length_text, lengths_text, matrix_text
from padspec.draw.runs import Paint, Run, paint_runs
from padspec.scene.nodes import Group, Layer, Node, Picture, Raster, Scene, Shape, Vector
from padspec.scene.outline import Close, Curve, Line, Move, Outline

# svgwrite carries no types.
Element = Any

PictureHref = Callable[[Raster | Vector], str]

_LINE_LENGTH = 100


@dataclass(frozen=True, slots=True)
class _Canvas:
    """What every emitter function needs: the drawing to add to, and how a picture is linked."""

    drawing: Element
    picture_href: PictureHref


def face_svg(scene: Scene, title: str, picture_href: PictureHref) -> str:
    """The whole face, bleed included, as the text of an SVG file (UTF-8).

    `picture_href` gives the link to a picture: a relative path, percent-encoded, or a data URI.
    """
    box = scene.bleed_box
    drawing: Element = Drawing(  # type: ignore[no-untyped-call]
        size=(f"{length_text(box.width)}mm", f"{length_text(box.height)}mm"),
        viewBox=box_text(box),
        debug=False,
    )
    drawing.set_desc(title=title)
    canvas = _Canvas(drawing, picture_href)
    for layer in scene.layers:
        drawing.add(_layer(canvas, layer))
    return _file_text(drawing)


def _layer(canvas: _Canvas, layer: Layer) -> Element:
    element = canvas.drawing.g(id=layer.name)
    _nodes(canvas, element, layer.nodes)
    return element


def _nodes(canvas: _Canvas, parent: Element, nodes: tuple[Node, ...]) -> None:
    for item in paint_runs(nodes):
        match item:
            case Group():
                parent.add(_group(canvas, item))
            case Picture():
                parent.add(_picture(canvas, item))
            case (_, _):
                parent.add(_shapes(canvas, item))
            case _:
                assert_never(item)


def _group(canvas: _Canvas, group: Group) -> Element:
    element = canvas.drawing.g()
    if group.transform != Affine():
        element["transform"] = f"matrix({matrix_text(group.transform)})"
    if group.clip is not None:
        clips = canvas.drawing.defs
        name = f"clip-{len(clips.elements) + 1}"
        clip = clips.add(canvas.drawing.clipPath(id=name))
        clip.add(canvas.drawing.path(path_text(group.clip)))
        element["clip-path"] = f"url(#{name})"
    _nodes(canvas, element, group.children)
    return element


def _shapes(canvas: _Canvas, run: Run) -> Element:
    paint, members = run
    element = canvas.drawing.g(**_paint_attributes(paint))
    for shape in members:
        element.add(_shape(canvas, shape))
    return element


def _paint_attributes(paint: Paint) -> dict[str, str]:
    fill, stroke, opacity = paint
    attributes = {"fill": fill.hex if fill else "none"}
    if fill and opacity < 1:
        attributes["fill-opacity"] = number_text(opacity)
    if stroke:
        attributes |= {"stroke": stroke.colour.hex, "stroke-width": length_text(stroke.weight)}
        match stroke.cap:
            case "butt":
                pass
            case "round":
                attributes["stroke-linecap"] = "round"
            case _:
                assert_never(stroke.cap)
        if stroke.dash:
            attributes["stroke-dasharray"] = lengths_text(*stroke.dash)
    return attributes


def _shape(canvas: _Canvas, shape: Shape) -> Element:
    return canvas.drawing.path(_PATHS.of(shape.outline))


def _picture(canvas: _Canvas, picture: Picture) -> Element:
    box = picture.box
    element = canvas.drawing.image(
        canvas.picture_href(picture.image),
        insert=(length_text(box.x), length_text(box.y)),
        size=(length_text(box.width), length_text(box.height)),
    )
    element.stretch()
    return element


def path_text(outline: Outline) -> str:
    """The outline as path data in absolute commands, a new line for each part and after about 100 characters.

    >>> path_text((Move(0, 0), Line(4, 0), Line(4, 4.5), Close(), Move(9, 9), Line(8, 7)))
    'M0 0H4V4.5Z\\nM9 9L8 7'
    """
    lines = [""]
    for command in _commands(outline):
        if lines[-1] and (command[0] == "M" or len(lines[-1]) + len(command) > _LINE_LENGTH):
            lines.append("")
        lines[-1] += command
    return "\n".join(lines)


_PATHS = KeptText(path_text)


def _commands(outline: Outline) -> Iterator[str]:
    here = start = ("", "")
    for step in outline:
        match step:
            case Move(x, y):
                here = start = (length_text(x), length_text(y))
                yield "M" + " ".join(here)
            case Line(x, y):
                before, here = here, (length_text(x), length_text(y))
                yield _line_command(before, here)
            case Curve(x1, y1, x2, y2, x, y):
                here = (length_text(x), length_text(y))
                yield "C" + " ".join([lengths_text(x1, y1, x2, y2), *here])
            case Close():
                here = start
                yield "Z"
            case _:
                assert_never(step)


def _line_command(before: tuple[str, str], here: tuple[str, str]) -> str:
    if before[1] == here[1]:
        return f"H{here[0]}"
    if before[0] == here[0]:
        return f"V{here[1]}"
    return "L" + " ".join(here)


def _file_text(drawing: Element) -> str:
    root = drawing.get_xml()
    ElementTree.indent(root)
    body = ElementTree.tostring(root, encoding="unicode")
    # Line ends in path data are meant for the reader of the file; to XML they are the same as spaces.
    return f'<?xml version="1.0" encoding="utf-8"?>\n{body}\n'.replace("&#10;", "\n")
