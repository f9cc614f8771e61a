"""The page-turn test: a page wider than high that says where its head is."""

from padspec.base.geometry import Affine, Box, Size
from padspec.base.numbers import mm_text
from padspec.resolve.studio import Turn
from padspec.scene.nodes import Group, Node
from padspec.scene.outline import Outline, mapped, polygon, rounded
from padspec.test_prints.cards import Blank, Card, air, heading, paragraph, printer_card, stacked, steps
from padspec.test_prints.scales import BAND, middle_cross
from padspec.test_prints.setting import HEADING, Nodes, Type, blank, drawn, upward, words

#: The edges' names stand this far from them.
_NAME_AT = 19.0
#: How wide the two pictures are with their words.
_ANSWERS = 54.0
#: The arrow upwards in a unit square, y down: its point, its shoulders and its shaft.
_ARROW = ((0.5, 0.0), (1.0, 0.5), (0.68, 0.5), (0.68, 1.0), (0.32, 1.0), (0.32, 0.5), (0.0, 0.5))


def turn_page(size: Size, face: Type, entered: Turn | None) -> Nodes:
    """The page. `entered` is the turn that the studio has, where the page is drawn to prove it."""
    third = (size.width - 2 * BAND) / 3
    middle = Box(size.width / 2 - third / 2, BAND + 8, third, size.height - 2 * BAND - 16)
    left = _question(third - 10, face) if entered is None else _proof(size, entered, third - 10, face)
    right = _answers(face)
    top = (size.height - right.height) / 2
    return (
        *_names(size, face),
        *(_arrow_and_word(middle, face) if entered is None else (*_faint_arrow(middle), *middle_cross(size))),
        Group(left.nodes, Affine.move(BAND + 6, top)),
        Group(right.nodes, Affine.move(size.width - BAND - 8 - _ANSWERS, top)),
    )


def _names(size: Size, face: Type) -> Nodes:
    """What each edge of the page is called."""
    width, height = size.width, size.height
    return (
        words("HEAD", width / 2, _NAME_AT, face.strong, HEADING, "centre"),
        words("FOOT", width / 2, height - _NAME_AT + HEADING * 0.71, face.strong, HEADING, "centre"),
        upward("LEFT", _NAME_AT, height / 2, face.strong, HEADING, "centre"),
        upward("RIGHT", width - _NAME_AT + HEADING * 0.71, height / 2, face.strong, HEADING, "centre"),
    )


def _arrow_and_word(room: Box, face: Type) -> Nodes:
    side = min(room.width * 0.62, room.height * 0.62)
    x, y = room.centre
    box = Box(x - side / 2, y - side / 2 - 4, side, side)
    word = words("head", x, box.bottom + 13, face.strong, 12.0, "centre")
    return (drawn(_arrow(box), 0.6), word)


def _faint_arrow(room: Box) -> Nodes:
    """A small arrow above the middle, so that the cross there stands free."""
    side = 14.0
    x, y = room.centre
    return (drawn(_arrow(Box(x - side / 2, y - 15 - side, side, side)), 0.3),)


def _arrow(box: Box, turn: Affine = Affine()) -> Outline:
    points = ((box.x + u * box.width, box.y + v * box.height) for u, v in _ARROW)
    return mapped(polygon(*points), turn)


def _question(width: float, face: Type) -> Card:
    told = (
        "Lay all sheets before you as they came from the printer, page 1 so that it reads upright.",
        "Do not turn this one by itself: look where its head lies.",
        "Tick the picture that shows it. Enter that line.",
    )
    return stacked((heading("6", "Page turn", width, face), steps(told, width, face)))


def _proof(size: Size, entered: Turn, width: float, face: Type) -> Card:
    x, y = mm_text(size.width / 2), mm_text(size.height / 2)
    told = (
        f"turn: {entered} is entered. The small cross must lie {x} from the left edge of this page and "
        f"{y} from its head."
        if entered != "unknown"
        else "turn: is not entered yet, so no offset is corrected on pages that are wider than high."
    )
    return stacked((heading("6", "Page turn", width, face), paragraph(told, width, face)))


def _answers(face: Type) -> Card:
    """The sheet as it was fed, with the head of this page on its left and on its right."""
    pictures = stacked((_answer("left", face), _answer("right", face)), 7.0)
    return stacked((pictures, air(4.0), printer_card((("turn: ", Blank(24.0)),), face)))


def _answer(side: str, face: Type) -> Card:
    sheet = Box(8.5, 0, 19.0, 26.9)
    x, y = sheet.centre
    quarter = Affine(0, -1, 1, 0, x, y) if side == "left" else Affine(0, 1, -1, 0, x, y)
    nodes: tuple[Node, ...] = (
        blank(Box(0, y - 2.8, 5.6, 5.6)),
        drawn(rounded(sheet, 0.6), 0.2),
        drawn(_arrow(Box(-4.6, -4.6, 9.2, 9.2), quarter), 0.3),
        words(f"head at the {side}:", sheet.right + 4, y - 0.6, face.text),
        words(f"turn: {side}", sheet.right + 4, y + 3.6, face.strong),
    )
    return Card(sheet.height, nodes)
