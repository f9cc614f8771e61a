"""The picture as data: shape, picture and group, in named layers. All that an emitter has to draw.

Every node remembers the block and the part that caused it, so that a finding about a drawn line can
point at the line of YAML that set it.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from padspec.base.colour import Colour
from padspec.base.geometry import Affine, Box, Size
from padspec.scene.outline import Outline

LayerName = Literal["ground", "panel", "rules", "art", "lettering", "marks"]
#: Layers are drawn in this order, the first at the back.
LAYERS: tuple[LayerName, ...] = ("ground", "panel", "rules", "art", "lettering", "marks")

Part = Literal[
    "ground",
    "pattern",
    "panel",
    "rule",
    "checkbox",
    "art",
    "lettering",
    "outline",
    "crop-mark",
    "slug",
    "scale-bar",
]


@dataclass(frozen=True, slots=True)
class Cause:
    """Why a node is there: the block of the layout (by id) and which part of it this is."""

    block: str
    part: Part


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line: colour, weight in mm, butt or round ends; `dash` is the length of a dash and of a gap, or None.

    Every part of an outline begins with a dash. With round ends, dashes of no length are dots.
    """

    colour: Colour
    weight: float
    cap: Literal["butt", "round"] = "butt"
    dash: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class Shape:
    """An outline, filled (non-zero winding) or stroked or both; the stroke lies over the fill.

    `opacity`, from 0 to 1, is that of the fill: how much of what lies under it is hidden.
    """

    outline: Outline
    cause: Cause
    fill: Colour | None = None
    stroke: Stroke | None = None
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Raster:
    """The pixels that really print: sRGB rows from the top, 3 bytes a pixel, and a soft mask or none.

    `name` is the stem of the maker's file, `digest` the first 8 hex digits of a hash over the pixels;
    both make the file name that SVG faces link.
    """

    name: str
    digest: str
    width: int
    height: int
    rgb: bytes
    alpha: bytes | None


@dataclass(frozen=True, slots=True)
class Vector:
    """A picture kept as vectors: the same drawing as a one-page PDF (for paper) and as SVG (for the face)."""

    name: str
    digest: str
    pdf: bytes
    svg: bytes


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture stretched over a box."""

    image: Raster | Vector
    box: Box
    cause: Cause


@dataclass(frozen=True, slots=True)
class Group:
    """Nodes drawn through a transform and, where there is one, inside a clip (in the group's own space)."""

    children: "tuple[Node, ...]"
    transform: Affine = Affine()
    clip: Outline | None = None


Node = Shape | Picture | Group


@dataclass(frozen=True, slots=True)
class Layer:
    """The nodes of one layer, back to front."""

    name: LayerName
    nodes: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class Scene:
    """A face or the marks of a sheet: its trim size, how far the ground runs past it, and its layers."""

    size: Size
    bleed: float
    layers: tuple[Layer, ...]

    @property
    def bleed_box(self) -> Box:
        """The trim box, which starts at the origin, grown by the bleed."""
        return Box(0, 0, self.size.width, self.size.height).inset(-self.bleed)


def without(scene: Scene, *names: LayerName) -> Scene:
    """The scene less some layers; checks look at what lies under them."""
    return Scene(scene.size, scene.bleed, tuple(layer for layer in scene.layers if layer.name not in names))


def shapes(scene: Scene) -> tuple[Shape, ...]:
    """Every shape of a scene, groups opened, for walks that only look (group transforms are not applied)."""
    return tuple(node for node in _leaves(scene) if isinstance(node, Shape))


def pictures(scene: Scene) -> tuple[Picture, ...]:
    """Every picture of a scene, groups opened."""
    return tuple(node for node in _leaves(scene) if isinstance(node, Picture))


def _leaves(scene: Scene) -> Iterator[Shape | Picture]:
    for layer in scene.layers:
        yield from _opened(layer.nodes)


def _opened(nodes: tuple[Node, ...]) -> Iterator[Shape | Picture]:
    for node in nodes:
        if isinstance(node, Group):
            yield from _opened(node.children)
        else:
            yield node
