"""Cards: what is told about one reading, set to a width, and cards laid into the cells of pages."""

from collections.abc import Sequence
from dataclasses import dataclass

from padspec.base.geometry import Affine, Box
from padspec.base.numbers import EPSILON
from padspec.scene.nodes import Group
from padspec.test_prints.setting import (
    CAPS,
    HEADING,
    LEADING,
    Nodes,
    Type,
    advance,
    blank,
    broken,
    ruled,
    words,
)

#: Between two cards of a cell.
BETWEEN = 6.5
#: A box to write in; a line of YAML that holds one is as high as it with some air.
BLANK_HEIGHT, BLANK_ROW = 5.6, 7.0
YAML_SIZE = 2.9


@dataclass(frozen=True, slots=True)
class Card:
    """Nodes from the card's own top left corner, and how high it is."""

    height: float
    nodes: Nodes


@dataclass(frozen=True, slots=True)
class Blank:
    """A box to write in, standing in a line of YAML."""

    width: float = 12.5


YamlLine = tuple[str | Blank, ...]


def stacked(parts: Sequence[Card], gap: float = 0.0) -> Card:
    """Parts under each other as one card."""
    nodes: list[Group] = []
    y = 0.0
    for part in parts:
        nodes.append(Group(part.nodes, Affine.move(0, y)))
        y += part.height + gap
    return Card(y - gap if parts else 0.0, tuple(nodes))


def air(height: float) -> Card:
    """Empty height."""
    return Card(height, ())


def heading(number: str, name: str, width: float, face: Type) -> Card:
    """The head of a card: a line across, its number and its name."""
    baseline = 1.9 + HEADING * CAPS
    name_at = advance("0", face.strong, HEADING) + 1.9 if number else 0.0
    numbered = (words(number, 0, baseline, face.text, HEADING),) if number else ()
    title = words(name, name_at, baseline, face.strong, HEADING)
    return Card(baseline + 1.6, (ruled(0, 0, width, 0), *numbered, title))


def paragraph(text: str, width: float, face: Type, strong: bool = False) -> Card:
    """Words set to the width, ragged right."""
    font = face.strong if strong else face.text
    lines = broken(text, width, font)
    shapes = tuple(words(part, 0, (n + 1) * LEADING - 0.9, font) for n, part in enumerate(lines))
    return Card(len(lines) * LEADING, shapes)


def steps(texts: Sequence[str], width: float, face: Type) -> Card:
    """Numbered paragraphs, the numbers hung to the left of them."""
    hang = 4.2
    cards = []
    for n, text in enumerate(texts, 1):
        told = paragraph(text, width - hang, face)
        number = words(str(n), 0, LEADING - 0.9, face.strong)
        cards.append(Card(told.height, (number, Group(told.nodes, Affine.move(hang, 0)))))
    return stacked(cards, 1.2)


def printer_card(lines: Sequence[YamlLine], face: Type) -> Card:
    """Lines of studio.yaml under `printer:`, with boxes where the numbers go."""
    head = words("printer:", 0, LEADING - 0.9, face.strong, YAML_SIZE)
    return stacked((air(1.4), Card(LEADING, (head,)), *(yaml_card(line, face, 3.4) for line in lines)))


def yaml_card(line: YamlLine, face: Type, x: float = 0.0) -> Card:
    """One line of YAML with boxes in it."""
    baseline = (BLANK_ROW + YAML_SIZE * CAPS) / 2
    nodes: list[Nodes] = []
    for part in line:
        if isinstance(part, Blank):
            nodes.append((blank(Box(x, (BLANK_ROW - BLANK_HEIGHT) / 2, part.width, BLANK_HEIGHT)),))
            x += part.width
        else:
            nodes.append((words(part, x, baseline, face.strong, YAML_SIZE),) if part.strip() else ())
            x += advance(part, face.strong, YAML_SIZE)
    return Card(BLANK_ROW, tuple(node for some in nodes for node in some))


def dealt(cards: Sequence[Card], cells: Sequence[Box]) -> tuple[Nodes, tuple[Card, ...]]:
    """Cards laid into cells, first to last, as many in each as fit; what is laid, and the cards left over."""
    laid: list[Group] = []
    left = list(cards)
    for cell in cells:
        y = cell.y
        while left and y + left[0].height <= cell.bottom + EPSILON:
            card = left.pop(0)
            laid.append(Group(card.nodes, Affine.move(cell.x, y)))
            y += card.height + BETWEEN
    return tuple(laid), tuple(left)
