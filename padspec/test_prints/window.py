"""Which part of a face a patch shows: the one with most of what is varied, at real size."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from padspec.base.geometry import Affine, Box, Size
from padspec.base.numbers import EPSILON
from padspec.compose.face import Face
from padspec.scene.nodes import Group, Layer, Node, Scene, Shape
from padspec.scene.outline import Move, Outline, bounds

#: How much ground is wished for beside the corner of a panel.
_GROUND = 9.0
#: What seeing one part of a face is worth; a picture hides what is varied.
_WORTH = {"panel": 2.0, "rule": 3.0, "checkbox": 2.0, "art": -3.0}
#: The same for a corner of a panel, for words that are seen whole, and for ground, up to this share of the window.
_CORNER, _WORDS, _ALL_GROUND, _ENOUGH = 1.0, 1.0, 6.0, 0.4


#: Lines reach past their outlines by half their weight.
_STROKE = 5.0


@dataclass(frozen=True, slots=True)
class _Seen:
    """One drawn thing of a face: which part it is, and its box."""

    part: str
    box: Box


def best_window(face: Face, size: Size) -> Box:
    """A box of this size, or as much of it as the face has, inside the face and its bleed.

    Tried at the corners of all panels and rows; the one that shows most kinds of things wins, then the one with
    most rules, then the lower and the left one.
    """
    bleed = face.scene.bleed_box
    width, height = min(size.width, bleed.width), min(size.height, bleed.height)
    seen = tuple(_seen(face.scene))
    found = [_held(Box(x, y, width, height), bleed) for x, y in _corners(face, seen, width, height)]
    found.append(_held(Box(bleed.x, bleed.bottom - height, width, height), bleed))
    return min(found, key=lambda box: (*_worth(box, seen), -round(box.y, 6), round(box.x, 6)))


def _seen(scene: Scene) -> Iterator[_Seen]:
    for layer in scene.layers:
        for node in layer.nodes:
            yield from _opened(node)


def _opened(node: Node) -> Iterator[_Seen]:
    match node:
        case Group(children):
            for child in children:
                yield from _opened(child)
        case Shape():
            yield _Seen(node.cause.part, bounds(node.outline))
        case _:
            yield _Seen("art", node.box)


def _corners(face: Face, seen: tuple[_Seen, ...], width: float, height: float) -> Iterator[tuple[float, float]]:
    panels = [thing.box for thing in seen if thing.part == "panel"]
    for box in (*panels, *(placed.box for placed in face.placements if placed.rows)):
        for x in (box.x - _GROUND, box.right + _GROUND - width):
            for y in (box.y - _GROUND, box.bottom + _GROUND - height):
                yield x, y


def _held(box: Box, inside: Box) -> Box:
    x = min(max(box.x, inside.x), inside.right - box.width)
    y = min(max(box.y, inside.y), inside.bottom - box.height)
    return Box(x, y, box.width, box.height)


def _worth(window: Box, seen: tuple[_Seen, ...]) -> tuple[float, int]:
    """What a window shows, less is better: its worth, then rules."""
    inside = [thing for thing in seen if _reaches(window, thing.box)]
    parts = [thing.part for thing in inside]
    panels = [thing.box for thing in inside if thing.part == "panel"]
    whole_words = any(thing.part == "lettering" and _shows_height(window, thing.box) for thing in inside)
    ground = max(1 - sum(_shared(window, box) for box in panels) / (window.width * window.height), 0.0)
    worth = (
        sum(_WORTH.get(part, 0.0) for part in dict.fromkeys(parts))
        + _CORNER * any(_shows_corner(window, box) for box in panels)
        + _WORDS * whole_words
        - _WORDS * ("lettering" in parts and not whole_words)
        + _ALL_GROUND * min(ground, _ENOUGH)
    )
    return round(-worth, 6), -parts.count("rule")


def _shows_height(window: Box, box: Box) -> bool:
    return window.y <= box.y + EPSILON and box.bottom <= window.bottom + EPSILON


def _shows_corner(window: Box, box: Box) -> bool:
    return any(window.covers(Box(x, y, 0, 0)) for x in (box.x, box.right) for y in (box.y, box.bottom))


def _shared(one: Box, other: Box) -> float:
    """The area that two boxes share."""
    across = min(one.right, other.right) - max(one.x, other.x)
    upright = min(one.bottom, other.bottom) - max(one.y, other.y)
    return max(across, 0.0) * max(upright, 0.0)


def _reaches(window: Box, box: Box) -> bool:
    """Whether a box, or a line, reaches into the window."""
    return (
        min(window.right, box.right) - max(window.x, box.x) >= -EPSILON
        and min(window.bottom, box.bottom) - max(window.y, box.y) >= -EPSILON
    )


def cropped(scene: Scene, window: Box) -> Scene:
    """The scene less what does not reach into a window: pictures and patterns elsewhere would swell the file."""
    wide = window.inset(-_STROKE)
    layers = (Layer(layer.name, _cropped(layer.nodes, wide)) for layer in scene.layers)
    return replace(scene, layers=tuple(layer for layer in layers if layer.nodes))


def _cropped(nodes: tuple[Node, ...], window: Box) -> tuple[Node, ...]:
    found: list[Node] = []
    for node in nodes:
        match node:
            case Group(children, transform) if transform == Affine():
                inner = _cropped(children, window)
                found += [replace(node, children=inner)] if inner else []
            case Group():
                found.append(node)
            case Shape():
                parts = tuple(
                    step for part in _parts(node.outline) if _reaches(window, bounds(part)) for step in part
                )
                found += [replace(node, outline=parts)] if parts else []
            case _:
                found += [node] if _reaches(window, node.box) else []
    return tuple(found)


def _parts(outline: Outline) -> Iterator[Outline]:
    """The parts of an outline, each from its move on; one that has holes stays whole."""
    starts = [n for n, step in enumerate(outline) if isinstance(step, Move)]
    for start, end in zip(starts, [*starts[1:], len(outline)], strict=True):
        yield outline[start:end]
