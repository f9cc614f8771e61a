"""Neighbouring shapes that share a paint, so that both emitters state each paint once."""

from collections.abc import Iterator
from itertools import groupby
from typing import NamedTuple

from padspec.base.colour import Colour
from padspec.scene.nodes import Group, Node, Picture, Shape, Stroke


class Paint(NamedTuple):
    """How a shape is painted: the colour of its fill, its line, and the opacity of the fill."""

    fill: Colour | None
    stroke: Stroke | None
    opacity: float


#: One paint and the shapes, back to front, that it draws.
Run = tuple[Paint, tuple[Shape, ...]]


def paint_runs(nodes: tuple[Node, ...]) -> Iterator[Run | Group | Picture]:
    """The nodes back to front, shapes of equal paint that follow each other gathered into a run.

    A shape that draws nothing, such as the outline of a space, is left out.
    """
    seen = (node for node in nodes if not isinstance(node, Shape) or _draws(node))
    for paint, members in groupby(seen, _paint):
        if paint is None:
            yield from (node for node in members if not isinstance(node, Shape))
        else:
            yield paint, tuple(node for node in members if isinstance(node, Shape))


def _draws(shape: Shape) -> bool:
    return bool(shape.outline and (shape.fill or shape.stroke))


def _paint(node: Node) -> Paint | None:
    return Paint(node.fill, node.stroke, node.opacity) if isinstance(node, Shape) else None
