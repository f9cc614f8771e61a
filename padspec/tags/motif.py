"""A small window onto the pad's own face: its ground, brought to the window's size, and its picture, whole."""

from dataclasses import dataclass, replace

import numpy as np

from padspec.art.pixels import Pixels
from padspec.art.resample import as_raster, bring_down
from padspec.base.geometry import Affine, Box, Size
from padspec.compose.face import Face
from padspec.compose.ground.ground import draw_ground
from padspec.resolve.blocks.art import Art
from padspec.resolve.design import Design, blocks
from padspec.resolve.ground import Ground
from padspec.scene.nodes import Group, Node, Picture, Raster
from padspec.scene.outline import rounded

#: What a picture keeps on a tag, in pixels an inch, and how much of the window it leaves free around itself.
_PPI, _AIR = 400.0, 0.07
#: A whole face's picture is no motif on a ground: it fills the window.
_COVERS = 0.9


@dataclass(frozen=True, slots=True)
class Motif:
    """The ground of a face and its picture; `art` is the picture's box there, None where there is none."""

    size: Size
    ground: Ground
    picture: tuple[Node, ...]
    art: Box | None


def motif_of(design: Design, face: Face) -> Motif:
    """The motif of a composed face."""
    art = next(
        (face.placement(b.id).box for b in blocks(design) if isinstance(b, Art) and _is_placed(b, face)), None
    )
    found = (node for layer in face.scene.layers for node in layer.nodes if _is_art(node))
    picture = tuple(found) if art is not None else ()
    return Motif(design.trim, design.ground, picture, art if picture else None)


def _is_art(node: Node) -> bool:
    """Whether a node is of a picture, its frame included."""
    if isinstance(node, Group):
        return any(_is_art(child) for child in node.children)
    return node.cause.part == "art"


def _is_placed(block: Art, face: Face) -> bool:
    return any(placement.block == block.id for placement in face.placements)


def window(motif: Motif, box: Box, corner: float) -> tuple[Node, ...]:
    """The motif in a rounded box."""
    inside: list[Node] = [_ground(motif, box)]
    if motif.art is not None:
        placed, scale = _seat(motif, motif.art, box)
        inside.append(Group(tuple(_reduced(node, scale) for node in motif.picture), placed))
    return (Group(tuple(inside), clip=rounded(box, corner)),)


def _ground(motif: Motif, box: Box) -> Group:
    """The ground of the face at the scale that brings the face's shorter side to the window's."""
    scale = max(box.width / motif.size.width, box.height / motif.size.height)
    seen = Size(box.width / scale, box.height / scale)
    nodes = tuple(_reduced(node, scale) for _, node in draw_ground(motif.ground, seen, 0.0).nodes)
    return Group(nodes, Affine.scale(scale).then(Affine.move(box.x, box.y)))


def _seat(motif: Motif, art: Box, box: Box) -> tuple[Affine, float]:
    """The picture in the middle of the box, whole; one that covers its face covers the box as well."""
    if art.width >= motif.size.width * _COVERS and art.height >= motif.size.height * _COVERS:
        scale = max(box.width / art.width, box.height / art.height)
    else:
        air = 1 - 2 * _AIR
        scale = min(box.width * air / art.width, box.height * air / art.height)
    x, y = art.centre
    to_x, to_y = box.centre
    return Affine.move(-x, -y).then(Affine.scale(scale)).then(Affine.move(to_x, to_y)), scale


def _reduced(node: Node, scale: float) -> Node:
    """The same with no more pixels in its pictures than they show at this scale."""
    if isinstance(node, Group):
        return replace(node, children=tuple(_reduced(child, scale) for child in node.children))
    if isinstance(node, Picture) and isinstance(node.image, Raster):
        width, height = (max(1, round(side * scale / 25.4 * _PPI)) for side in (node.box.width, node.box.height))
        return replace(node, image=_small(node.image, width, height))
    return node


def _small(raster: Raster, width: int, height: int) -> Raster:
    rgba = np.full((raster.height, raster.width, 4), 255, np.uint8)
    rgba[..., :3] = np.frombuffer(raster.rgb, np.uint8).reshape(raster.height, raster.width, 3)
    if raster.alpha is not None:
        rgba[..., 3] = np.frombuffer(raster.alpha, np.uint8).reshape(raster.height, raster.width)
    return as_raster(bring_down(Pixels(rgba), width, height), raster.name)
