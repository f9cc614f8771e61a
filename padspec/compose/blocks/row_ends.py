"""What stands at the two ends of a row: squares, numbers or words at the front, a quantity or priority after."""

from __future__ import annotations

from typing import TYPE_CHECKING

from padspec.base.geometry import Affine, Box
from padspec.compose.lettering.shaping import ShapedLine, cap_height, shape_line
from padspec.resolve.blocks.rows import Labels, Rows, Squares
from padspec.scene.nodes import Cause, LayerName, Node, Shape, Stroke
from padspec.scene.outline import Outline, circle, line, mapped, rounded

if TYPE_CHECKING:
    from padspec.compose.blocks.rows import Ruling

#: The circles of a priority: their size as a share of the pitch, the most in mm, and their distance in sizes.
_PRIORITY_SHARE, _MOST_PRIORITY, _PRIORITY_GAP = 0.34, 2.8, 0.35
#: The em of a number or word is at most this share of the real pitch.
_MOST_OF_PITCH = 0.75
#: From one line of a double square to the other, in weights and at least so many mm.
_DOUBLE, _LEAST_DOUBLE = 2.5, 0.55

Placed = tuple[LayerName, Node]


def front_width(block: Rows, count: int) -> float:
    """How far what stands at the front keeps the rule from the left, the gap included."""
    labels = _label_width(block, count) + block.gap if block.labels else 0.0
    squares = _squares_width(block.squares) + block.gap if block.squares else 0.0
    return labels + squares


def tail_width(block: Rows) -> float:
    """How far what stands at the end keeps the rule from the right, the gap included."""
    quantity = block.tail.quantity + block.gap if block.tail.quantity else 0.0
    priority = _priority_width(block) + block.gap if block.tail.priority else 0.0
    return quantity + priority


def squares_of(block: Rows, box: Box, y: float, ruling: Ruling) -> list[Placed]:
    """The squares or circles of one row, their outer size the size asked for: lines lie wholly inside."""
    squares = block.squares
    if squares is None:
        return []
    left = box.x + (_label_width(block, ruling.count) + block.gap if block.labels else 0.0)
    foot = y + block.weight / 2 if squares.seat == "rule" else y - ruling.pitch / 2 + squares.size / 2
    found: list[Placed] = []
    for n in range(squares.count):
        outer = Box(left + n * (squares.size + squares.between), foot - squares.size, squares.size, squares.size)
        found += [("rules", _square(block, squares, outer, inset)) for inset in _insets(block, squares)]
    return found


def labels_of(block: Rows, box: Box, y: float, ruling: Ruling, n: int) -> list[Placed]:
    """The number or word of one row: numbers end and words begin on one line; they stand on the rule."""
    labels, shaped = block.labels, _label(block, n)
    if labels is None or shaped is None:
        return []
    size = label_size(labels, ruling.pitch)
    spare = _label_width(block, ruling.count) - shaped.ink.width * size
    x = box.x - shaped.ink.x * size + (spare if _is_numeric(labels) else 0.0)
    baseline = y - _lift(block, labels, ruling.pitch)
    outline = mapped(shaped.outline, Affine.scale(size).then(Affine.move(x, baseline)))
    return [("lettering", Shape(outline, Cause(block.id, "lettering"), fill=labels.colour))]


def label_reach(block: Rows, pitch: float, n: int) -> tuple[float, float]:
    """How far the number or word of the n-th row reaches above the middle of its rule, and how far below it."""
    labels, shaped = block.labels, _label(block, n)
    if labels is None or shaped is None:
        return 0.0, 0.0
    size, lift = label_size(labels, pitch), _lift(block, labels, pitch)
    return max(lift - shaped.ink.y * size, 0.0), max(shaped.ink.bottom * size - lift, 0.0)


def tail_of(block: Rows, box: Box, y: float, pitch: float) -> list[Placed]:
    """The short rule for a quantity, and the circles for a priority."""
    found: list[Placed] = []
    right = box.right
    if block.tail.priority:
        size = _priority_size(block)
        middle = _priority_middle(block, y, pitch)
        for n in range(block.tail.priority):
            x = right - size / 2 - n * size * (1 + _PRIORITY_GAP)
            shape = circle(x, middle, (size - block.weight) / 2)
            found.append(("rules", _stroked(block, Cause(block.id, "checkbox"), shape)))
        right -= _priority_width(block) + block.gap
    if block.tail.quantity:
        shape = line(right - block.tail.quantity, y, right, y)
        found.append(("rules", Shape(shape, Cause(block.id, "rule"), stroke=Stroke(block.colour, block.weight))))
    return found


def label_size(labels: Labels, pitch: float) -> float:
    """The em of numbers or words: as wished, less where rows are so close that they would touch."""
    return min(labels.size, _MOST_OF_PITCH * pitch)


def _is_numeric(labels: Labels) -> bool:
    """Whether they end on one line: numbers do, hours too; words begin on one."""
    return all(not character.isalpha() for text in labels.texts for character in text)


def _label_width(block: Rows, count: int) -> float:
    """The column that numbers or words stand in: as wide as the widest of them, or wider as written."""
    labels = block.labels
    if labels is None:
        return 0.0
    rows = range(0, count, labels.every)
    shaped = [_shaped(labels, n // labels.every) for n in rows]
    return max([line.ink.width * labels.size for line in shaped if line] + [labels.width or 0.0])


def _lift(block: Rows, labels: Labels, pitch: float) -> float:
    """How far above the middle of its rule a label stands: on the rule, or with the squares in the middle."""
    if block.squares is not None and block.squares.seat == "centre":
        return (pitch - cap_height(labels.font) * label_size(labels, pitch)) / 2
    return -block.weight / 2


def _label(block: Rows, n: int) -> ShapedLine | None:
    """What stands at the front of the n-th row; None where nothing is to be seen."""
    labels = block.labels
    if labels is None or n % labels.every:
        return None
    shaped = _shaped(labels, n // labels.every)
    return shaped if shaped is not None and shaped.outline else None


def _shaped(labels: Labels, n: int) -> ShapedLine | None:
    """The word of the n-th labelled row, or its number; None past the last word."""
    if not labels.texts:
        return shape_line(labels.font, str(labels.first + n))
    return shape_line(labels.font, labels.texts[n]) if n < len(labels.texts) else None


def _squares_width(squares: Squares) -> float:
    return squares.count * squares.size + (squares.count - 1) * squares.between


def _insets(block: Rows, squares: Squares) -> tuple[float, ...]:
    """How far inside the outer size each line runs; the inner one is left out where it has no room."""
    outer = block.weight / 2
    inner = outer + max(_DOUBLE * block.weight, _LEAST_DOUBLE)
    return (outer, inner) if squares.double and inner < squares.size / 2 - block.weight else (outer,)


def _square(block: Rows, squares: Squares, outer: Box, inset: float) -> Shape:
    outline = rounded(outer.inset(inset), max(squares.corner - inset, 0.0))
    return Shape(outline, Cause(block.id, "checkbox"), stroke=Stroke(squares.colour, block.weight))


def _stroked(block: Rows, cause: Cause, outline: Outline) -> Shape:
    colour = block.squares.colour if block.squares else block.colour
    return Shape(outline, cause, stroke=Stroke(colour, block.weight))


def _priority_size(block: Rows) -> float:
    return min(_PRIORITY_SHARE * block.pitch, _MOST_PRIORITY)


def _priority_middle(block: Rows, y: float, pitch: float) -> float:
    """How high the circles of a priority stand: as the squares do, else a little below the middle of the row."""
    size = _priority_size(block)
    if block.squares is None:
        return y - pitch / 2 + (pitch - size) / 6
    if block.squares.seat == "centre":
        return y - pitch / 2
    return y + block.weight / 2 - max(block.squares.size, size) / 2


def _priority_width(block: Rows) -> float:
    size = _priority_size(block)
    return block.tail.priority * size + (block.tail.priority - 1) * size * _PRIORITY_GAP
