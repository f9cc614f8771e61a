"""Leaves of the layouts that padspec has, on any trim, and what lies where on them."""

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import yaml
from kit import disc, pad

from padspec.base.findings import Finding, Severity
from padspec.base.geometry import Box
from padspec.base.units import parse_length
from padspec.compose.face import Face
from padspec.pipeline import Pad
from padspec.resolve.blocks.block import Block, Holder
from padspec.resolve.blocks.panel import Panel
from padspec.scene.nodes import Group, Node, Shape
from padspec.scene.outline import bounds

FOLDER = Path(__file__).parents[2] / "layouts"
NAMES = sorted(file.stem for file in FOLDER.glob("*.yaml"))
#: A small picture, which is quickly made; that it has too few pixels for print is no matter of the layout.
PICTURE = disc(300, 240)
NOT_OF_LAYOUTS = "art-resolution"
SHORT, LONG = "To do", "Everything that we must not forget before the long journey"
#: Ink of two blocks may come as near as this, in mm, before it is told: outlines are rounded to a thousandth.
TOUCH = 0.02


@cache
def written(name: str) -> dict[str, object]:
    """A layout as its file has it."""
    found: dict[str, object] = yaml.safe_load((FOLDER / f"{name}.yaml").read_text("utf-8"))
    return found


def trims(name: str) -> list[tuple[float, float]]:
    """The trims that a layout says it is made for, in mm."""
    stated = written(name)["trims"]
    assert isinstance(stated, list)
    return [(parse_length(trim["width"]), parse_length(trim["height"])) for trim in stated]


@cache
def leaf(name: str, width: float, height: float, picture: bool, heading: str = "") -> Pad:
    """A leaf of a layout, on paper so large that no trim is too large for it."""
    text = f"pad: A leaf\nlayout: {name}\ntrim: {{width: {width} mm, height: {height} mm}}\nsheet: {{size: A3}}\n"
    text += "art: {file: a.png}\n" if picture else ""
    text += f'heading: {{text: "{heading}"}}\n' if heading else ""
    return pad(text, files={"a.png": PICTURE})


def told(some: Pad, least: Severity) -> list[Finding]:
    return [finding for finding in some.findings if finding.severity >= least and finding.check != NOT_OF_LAYOUTS]


def inks(nodes: tuple[Node, ...]) -> Iterator[tuple[str, Box]]:
    """What each node inks, as a box, with the block that it belongs to."""
    for node in nodes:
        if isinstance(node, Group):
            yield from inks(node.children)
        elif not isinstance(node, Shape):
            yield node.cause.block, node.box
        elif node.outline and (node.fill or node.stroke):
            yield node.cause.block, bounds(node.outline).inset(-(node.stroke.weight / 2 if node.stroke else 0.0))


def ink_of_blocks(face: Face) -> dict[str, Box]:
    """One box round all that a block inks: rules, letters, pictures in their place; not grounds and panels."""
    found: dict[str, Box] = {}
    for layer in face.scene.layers:
        if layer.name not in ("rules", "art", "lettering"):
            continue
        for block, box in inks(layer.nodes):
            one = found.get(block, box)
            x, y = min(one.x, box.x), min(one.y, box.y)
            found[block] = Box(x, y, max(one.right, box.right) - x, max(one.bottom, box.bottom) - y)
    return found


def collisions(face: Face) -> list[tuple[str, str]]:
    """Pairs of blocks whose ink overlaps."""
    found = list(ink_of_blocks(face).items())
    return [
        (one, other)
        for n, (one, a) in enumerate(found)
        for other, b in found[n + 1 :]
        if min(a.right, b.right) - max(a.x, b.x) > TOUCH and min(a.bottom, b.bottom) - max(a.y, b.y) > TOUCH
    ]


def outside_their_panel(some: Pad) -> list[tuple[str, str]]:
    """Blocks whose ink leaves the panel that holds them, with that panel."""
    ink = ink_of_blocks(some.face)
    found = []
    for panel, block in held_by_panels(some.design.face):
        edge, box = some.face.placement(panel).box, ink.get(block)
        if box and not (
            box.x >= edge.x - TOUCH
            and box.y >= edge.y - TOUCH
            and box.right <= edge.right + TOUCH
            and box.bottom <= edge.bottom + TOUCH
        ):
            found.append((panel, block))
    return found


def held_by_panels(blocks: tuple[Block, ...], panel: str = "") -> Iterator[tuple[str, str]]:
    for block in blocks:
        if panel:
            yield panel, block.id
        if isinstance(block, Holder):
            yield from held_by_panels(block.holds, block.id if isinstance(block, Panel) else panel)
