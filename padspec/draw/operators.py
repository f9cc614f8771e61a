"""The operators of a PDF content stream: nodes go in, lines of text come out. Nothing here knows a file.

The functions stand in the order of those in `svg`, one for each node kind; how colours are written, an
`Inking` says. Lengths are millimetres with y growing downwards, as in the scene: whoever uses the lines puts
`page_matrix` before them, once. Operators are those of ISO 32000-1, annex A.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from padspec.base.geometry import Affine, Box
from padspec.draw.inking import SCREEN, Inking
from padspec.draw.kept_text import KeptText
from padspec.draw.lengths import box_text, length_text, lengths_text, matrix_text
from padspec.draw.runs import Paint, Run, paint_runs
from padspec.scene.nodes import Group, Layer, LayerName, Node, Picture, Raster, Shape, Vector
from padspec.scene.outline import Close, Curve, Line, Move, Outline

#: Default user space units of PDF, 1/72 inch, in a millimetre (ISO 32000-1, 8.3.2.3).
POINTS = 72 / 25.4
#: Joins are mitred up to this ratio, SVG's own default, so that both emitters draw the same corner.
_MITRE_LIMIT = 4


def page_matrix(height: float) -> Affine:
    """From millimetres with y down to points with y up, for a page or form of this height in mm."""
    return Affine(POINTS, 0, 0, -POINTS, 0, height * POINTS)


def opening_operator() -> str:
    """What must stand before the layers of a face: the limit of its mitred joins."""
    return f"{_MITRE_LIMIT} M"


def layer_operators(layer: Layer, inking: Inking = SCREEN) -> Iterator[str]:
    """The nodes of a layer, back to front; the graphics state is afterwards that of the last paint."""
    yield from _nodes(layer.nodes, _Inks(inking, layer.name))


@dataclass(frozen=True, slots=True)
class _Inks:
    """What every function here hands on: how colours are written, and in which layer they stand."""

    inking: Inking
    layer: LayerName


def _nodes(nodes: tuple[Node, ...], inks: _Inks) -> Iterator[str]:
    for item in paint_runs(nodes):
        match item:
            case Group():
                yield from _group(item, inks)
            case Picture():
                yield from _picture(item, inks)
            case (_, _):
                yield from _shapes(item, inks)
            case _:
                assert_never(item)


def _group(group: Group, inks: _Inks) -> Iterator[str]:
    yield "q"
    if group.transform != Affine():
        yield matrix_operator(group.transform)
    if group.clip is not None:
        yield from outline_operators(group.clip)
        yield "W n"
    yield from _nodes(group.children, inks)
    yield "Q"


def _shapes(run: Run, inks: _Inks) -> Iterator[str]:
    paint, members = run
    # Dashes and opacity end with their run; all other paint is stated anew by the next one.
    passing = paint.opacity < 1 or (paint.stroke is not None and paint.stroke.dash is not None)
    if passing:
        yield "q"
    yield from _paint_operators(paint, inks)
    painting = _painting_operator(paint)
    for shape in members:
        yield from _shape(shape, painting)
    if passing:
        yield "Q"


def _paint_operators(paint: Paint, inks: _Inks) -> Iterator[str]:
    fill, stroke, opacity = paint
    state = inks.inking.state(fill, stroke.colour if stroke else None, inks.layer, opacity)
    if state:
        yield state
    if fill:
        yield inks.inking.fill(fill, inks.layer)
    if stroke:
        yield f"{inks.inking.stroke(stroke.colour, inks.layer)} {length_text(stroke.weight)} w"
        match stroke.cap:
            case "butt":
                yield "0 J"
            case "round":
                yield "1 J"
            case _:
                assert_never(stroke.cap)
        if stroke.dash:
            yield f"[{lengths_text(*stroke.dash)}] 0 d"


def _painting_operator(paint: Paint) -> str:
    fill, stroke, _ = paint
    if fill and stroke:
        return "B"
    return "f" if fill else "S"


def _shape(shape: Shape, painting: str) -> Iterator[str]:
    if shape.outline:
        yield _PATHS.of(shape.outline)
    yield painting


def _picture(picture: Picture, inks: _Inks) -> Iterator[str]:
    box = picture.box
    # A picture fills the unit square with its head at y = 1 (ISO 32000-1, 8.9.5.2).
    yield "q"
    state = inks.inking.picture_state()
    if state:
        yield state
    yield matrix_operator(Affine(box.width, 0, 0, -box.height, box.x, box.bottom))
    yield f"/{picture_name(picture.image)} Do"
    yield "Q"


def outline_operators(outline: Outline) -> Iterator[str]:
    """The path of an outline, not painted yet."""
    for step in outline:
        match step:
            case Move(x, y):
                yield f"{lengths_text(x, y)} m"
            case Line(x, y):
                yield f"{lengths_text(x, y)} l"
            case Curve():
                yield f"{lengths_text(*step)} c"
            case Close():
                yield "h"
            case _:
                assert_never(step)


_PATHS = KeptText(lambda outline: "\n".join(outline_operators(outline)))


def picture_name(image: Raster | Vector) -> str:
    """The name of a picture in the resources of a form, the same wherever the picture is used."""
    match image:
        case Raster():
            return f"Raster-{image.digest}"
        case Vector():
            return f"Vector-{image.digest}"
        case _:
            assert_never(image)


def clip_operator(*boxes: Box) -> str:
    """Nothing outside the boxes is drawn any more."""
    return " ".join(f"{box_text(box)} re" for box in boxes) + " W n"


def matrix_operator(matrix: Affine) -> str:
    """Puts a map before all that follows."""
    return f"{matrix_text(matrix)} cm"
