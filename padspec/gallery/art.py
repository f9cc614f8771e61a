"""The pictures that the pattern book borrows from the folder's designs, and how large they stay in it."""

from dataclasses import dataclass, replace
from pathlib import PurePosixPath
from typing import Any

import numpy as np

from padspec.art.pixels import Pixels
from padspec.art.resample import as_raster, bring_down
from padspec.reading.gather import read_file
from padspec.reading.tree import Mapping
from padspec.scene.nodes import Group, Layer, Node, Picture, Raster, Scene
from padspec.workspace import Workspace, joined

#: A motif is a small picture: files over so many bytes are not taken for one.
_MOST_MOTIF = 200_000
_PICTURES = (".svg", ".png", ".webp", ".jpg", ".jpeg")


@dataclass(frozen=True, slots=True)
class BorrowedArt:
    """A picture as a design names it, its path from the project folder; `layout` is the design's, or empty."""

    file: str
    cutout: str | None
    layout: str = ""

    @property
    def data(self) -> dict[str, Any]:
        """The art as a design states it."""
        return {"file": self.file} | ({"cutout": self.cutout} if self.cutout else {})


def borrowed_art(designs: tuple[str, ...], workspace: Workspace) -> tuple[BorrowedArt, ...]:
    """The pictures that designs name, in their order. Raises ProblemsError for a design that cannot be read."""
    found: list[BorrowedArt] = []
    for path in designs:
        root = read_file(path, "design", workspace).root
        art = root.get("art")
        file, cutout = (art.text(key) if isinstance(art, Mapping) else "" for key in ("file", "cutout"))
        try:
            name = joined(path, file)
        except ValueError:  # it leads out of the project: building that design says so
            continue
        if file and workspace.is_file(name):
            found.append(BorrowedArt(name, cutout or None, root.text("layout")))
    return tuple(found)


def art_for(layout: str, place: int, art: tuple[BorrowedArt, ...]) -> BorrowedArt | None:
    """The picture for the layout at a place in the book: one that a design has on it, else they take turns."""
    own = next((one for one in art if one.layout == layout), None)
    return own or (art[place % len(art)] if art else None)


def motif_file(art: tuple[BorrowedArt, ...], workspace: Workspace) -> str | None:
    """The smallest picture in the folders of the art, or None where all are large or there are none."""
    folders = sorted({str(PurePosixPath(one.file).parent) for one in art})
    files = (path for folder in folders for ending in _PICTURES for path in workspace.neighbours(folder, ending))
    sizes = sorted((len(workspace.read(path)), path) for path in files)
    return sizes[0][1] if sizes and sizes[0][0] <= _MOST_MOTIF else None


class Reducer:
    """Brings pictures down to a resolution, each once: what is placed small need not be sharp at full size."""

    __slots__ = ("_made", "_ppi")

    def __init__(self, ppi: float) -> None:
        self._ppi = ppi
        self._made: dict[tuple[str, int, int], Raster] = {}

    def scene(self, scene: Scene) -> Scene:
        """The scene with its pictures brought down."""
        layers = tuple(Layer(layer.name, self._nodes(layer.nodes)) for layer in scene.layers)
        return replace(scene, layers=layers)

    def _nodes(self, nodes: tuple[Node, ...]) -> tuple[Node, ...]:
        return tuple(self._node(node) for node in nodes)

    def _node(self, node: Node) -> Node:
        if isinstance(node, Group):
            return replace(node, children=self._nodes(node.children))
        if isinstance(node, Picture) and isinstance(node.image, Raster):
            width, height = (max(1, round(side / 25.4 * self._ppi)) for side in (node.box.width, node.box.height))
            return replace(node, image=self._raster(node.image, width, height))
        return node

    def _raster(self, raster: Raster, width: int, height: int) -> Raster:
        key = (raster.digest, width, height)
        if key not in self._made:
            self._made[key] = as_raster(bring_down(_pixels(raster), width, height), raster.name)
        return self._made[key]


def _pixels(raster: Raster) -> Pixels:
    rgba = np.full((raster.height, raster.width, 4), 255, np.uint8)
    rgba[..., :3] = np.frombuffer(raster.rgb, np.uint8).reshape(raster.height, raster.width, 3)
    if raster.alpha is not None:
        rgba[..., 3] = np.frombuffer(raster.alpha, np.uint8).reshape(raster.height, raster.width)
    return Pixels(rgba)
