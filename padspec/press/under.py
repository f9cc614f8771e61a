"""What may lie under the lines of a face, for deciding whether a grey line can overprint."""

from collections.abc import Iterator

from padspec.base.geometry import Affine, Box, mapped_box
from padspec.press.inks import NO_INK
from padspec.press.separate import LINE_LAYERS, Separator
from padspec.scene.nodes import Group, LayerName, Node, Picture, Scene, Shape, shapes
from padspec.scene.outline import bounds

_AREAS: tuple[LayerName, ...] = ("ground", "panel")


def darkest_under_lines(scene: Scene, separator: Separator) -> float:
    """L* of the darkest colour that lines may lie on: of ground and panel, and 0 where one lies on a picture.

    That of the paper where there is nothing.
    """
    if _is_line_on_picture(scene):
        return 0.0
    areas = Scene(scene.size, scene.bleed, tuple(layer for layer in scene.layers if layer.name in _AREAS))
    fills = {shape.fill for shape in shapes(areas) if shape.fill}
    return min((separator.lightness(separator.area(fill)) for fill in fills), default=separator.lightness(NO_INK))


def _is_line_on_picture(scene: Scene) -> bool:
    drawn = [(layer.name, node, box) for layer in scene.layers for node, box in _boxes(layer.nodes, Affine())]
    pictures = [box for _, node, box in drawn if isinstance(node, Picture)]
    lines = [box for name, node, box in drawn if name in LINE_LAYERS and isinstance(node, Shape)]
    return any(picture.overlaps(box) for picture in pictures for box in lines)


def _boxes(nodes: tuple[Node, ...], to_face: Affine) -> Iterator[tuple[Shape | Picture, Box]]:
    """Every shape and picture with its box on the face."""
    for node in nodes:
        match node:
            case Group():
                yield from _boxes(node.children, node.transform.then(to_face))
            case Picture():
                yield node, mapped_box(node.box, to_face)
            case Shape() if node.outline:
                weight = node.stroke.weight / 2 if node.stroke else 0.0
                yield node, mapped_box(bounds(node.outline).inset(-weight), to_face)
            case _:
                pass
