"""Sheet and cut plan in, the cut diagram out: a workshop drawing of the sheet, every cut with its number.

Drawn at its printed size, so that pens and lettering are true millimetres: the sheet is what is scaled. It shows
the paper and what the printer reaches of it, the lay edges, the leaves with their numbers and an arrow to the head
of each, the cuts in order, and offcuts worth keeping.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from xml.sax.saxutils import escape

from padspec.base.colour import WHITE, Colour
from padspec.base.geometry import Affine, Box, Size, mapped_box
from padspec.base.numbers import mm_text, number_text
from padspec.compose.lettering.shaping import cap_height, shape_line
from padspec.draw.cuts.callouts import RADIUS, REACH, Callout, callouts, side_of
from padspec.draw.cuts.hatching import dashed, hatched
from padspec.draw.svg import face_svg
from padspec.resolve.font import Font
from padspec.scene.nodes import Cause, Group, Layer, Node, Part, Raster, Scene, Shape, Stroke, Vector
from padspec.scene.outline import Line, Move, Outline, circle, line, mapped, polygon, rectangle, rounded
from padspec.sheet.cutting.plan import CutPlan, OffcutFound
from padspec.sheet.cutting.series import lettered
from padspec.sheet.sheet import Sheet, Slot

#: Width of the drawing in mm: what a job ticket gives it.
WIDTH = 120.0
_INK, _QUIET, _FAINT = Colour.from_hex("#2b2a29"), Colour.from_hex("#7d7972"), Colour.from_hex("#b9b4ab")
_LEAF, _BLEED = Colour.from_hex("#efeade"), Colour.from_hex("#f8f5ee")
_CUT, _OFFCUT = Colour.from_hex("#a2242f"), Colour.from_hex("#3f7263")
_BLADE, _LEADER, _HAIR, _LAY = 0.32, 0.14, 0.1, 0.6
_TEXT, _NUMERAL, _LEAF_NUMERAL = 2.4, 2.5, 5.0
#: Beside the paper: for badges, for the words at a lay edge, and for nothing.
_BADGE_BAND, _WORD_BAND, _EDGE = REACH + RADIUS + 0.6, 4.6, 0.6
_CAPTION, _TAG = 4.6, 4.2
#: Smaller than this share of its size nobody could read the number of a leaf.
_LEAST_UNIT = 0.3
#: Between two lines of the caption, and between its two parts on one line.
_LINE, _APART = 3.6, 6.0
_UNTITLED = "Cuts"
#: How a printed sheet lies while it is cut, and what it is cut into.
PRINTED, LEAF = "printed side up, as fed", "leaf"


@dataclass(frozen=True, slots=True)
class _Board:
    """What is drawn on: how the sheet comes to it, the paper there, the size of it all, the lettering and
    the caption.
    """

    to_drawing: Affine
    scale: float
    paper: Box
    size: Size
    font: Font
    caption: tuple[str, str]
    two_lines: bool


def cut_diagram_svg(
    sheet: Sheet, plan: CutPlan, font: Font, width: float = WIDTH, how: str = PRINTED, part: str = LEAF
) -> str:
    """The diagram as the text of an SVG file, `width` mm wide, all lettering as outlines. `how` says how the sheet
    lies, `part` what it is cut into.
    """
    # What the slug says is not drawn: sheets of all variants look the same here.
    crops = tuple(node for node in sheet.marks if isinstance(node, Shape) and node.cause.part == "crop-mark")
    drawn = _drawn(replace(sheet, title="", marks=crops), plan, font, width, how, part)
    return drawn.replace(f"<title>{_UNTITLED}</title>", f"<title>Cuts of {escape(sheet.title)}</title>", 1)


@lru_cache(maxsize=8)
def _drawn(sheet: Sheet, plan: CutPlan, font: Font, width: float, how: str, part: str) -> str:
    return face_svg(cut_diagram(sheet, plan, font, width, how, part), _UNTITLED, _no_picture)


def cut_diagram(
    sheet: Sheet, plan: CutPlan, font: Font, width: float = WIDTH, how: str = PRINTED, part: str = LEAF
) -> Scene:
    """The diagram as a scene."""
    board = _board(sheet, plan, font, width, _captions(sheet, how, part))
    badges = callouts(plan.cuts, sheet, board.to_drawing)
    return Scene(
        board.size,
        0.0,
        (
            Layer("ground", _paper(board, sheet)),
            Layer("panel", _leaves(board, sheet) + _offcuts(board, plan)),
            Layer("rules", _crop_marks(board, sheet) + _cuts(board, plan, badges)),
            Layer("lettering", _numbers(board, sheet) + _pieces(board, sheet) + _caption(board)),
            Layer("marks", _lay_edges(board, badges) + _badges(board, badges)),
        ),
    )


def _no_picture(_image: Raster | Vector) -> str:
    raise ValueError("a cut diagram holds no picture")


def _captions(sheet: Sheet, how: str, part: str) -> tuple[str, str]:
    size = f"{number_text(sheet.size.width, 1)} × {mm_text(sheet.size.height, 1)}"
    named = "" if "×" in sheet.size_name else f"{sheet.size_name}, "
    return f"{named}{size}, {how}", f"head of a {part}"


def _wide(font: Font, text: str) -> float:
    return shape_line(font, text).advance * _TEXT


def _board(sheet: Sheet, plan: CutPlan, font: Font, width: float, caption: tuple[str, str]) -> _Board:
    sides = {side_of(cut, sheet) for cut in plan.cuts}
    left, head = (_BADGE_BAND if side in sides else _WORD_BAND for side in ("left", "head"))
    right, foot = (_BADGE_BAND if side in sides else _EDGE for side in ("right", "foot"))
    scale = (width - left - right) / sheet.size.width
    paper = Box(left, head, sheet.size.width * scale, sheet.size.height * scale)
    two_lines = sum(_wide(font, text) for text in caption) + _APART > paper.width
    size = Size(width, paper.bottom + foot + _CAPTION + (_LINE if two_lines else 0.0))
    to_drawing = Affine.scale(scale).then(Affine.move(left, head))
    return _Board(to_drawing, scale, paper, size, font, caption, two_lines)


def _paper(board: _Board, sheet: Sheet) -> tuple[Node, ...]:
    printable = mapped_box(sheet.printable, board.to_drawing)
    return (
        # White all over, or a viewer with a dark ground would swallow the lettering.
        Shape(rectangle(Box(0, 0, board.size.width, board.size.height)), _cause("ground"), WHITE),
        Shape(rectangle(board.paper), _cause("ground"), WHITE, Stroke(_QUIET, 0.15)),
        Shape(dashed(printable), _cause("ground"), stroke=Stroke(_FAINT, _HAIR)),
    )


def _leaves(board: _Board, sheet: Sheet) -> tuple[Node, ...]:
    bleeds = [mapped_box(box, board.to_drawing) for slot in sheet.slots for box in slot.printed]
    trims = [mapped_box(slot.trim, board.to_drawing) for slot in sheet.slots]
    return tuple(Shape(rectangle(box), _cause("ground"), _BLEED) for box in bleeds) + tuple(
        Shape(rectangle(box), _cause("panel"), _LEAF) for box in trims
    )


def _crop_marks(board: _Board, sheet: Sheet) -> tuple[Node, ...]:
    return tuple(
        Shape(mapped(node.outline, board.to_drawing), node.cause, stroke=Stroke(_QUIET, _HAIR))
        for node in sheet.marks
        if isinstance(node, Shape) and node.cause.part == "crop-mark"
    )


def _cuts(board: _Board, plan: CutPlan, badges: tuple[Callout, ...]) -> tuple[Node, ...]:
    """Leaders beneath, then every cut over what it cuts through."""
    leaders = [
        Shape(_polyline(badge.leader), _cause("rule"), stroke=Stroke(_CUT, _LEADER))
        for badge in badges
        if badge.leader
    ]
    found = []
    for cut in plan.cuts:
        ends = (cut.at, cut.start, cut.at, cut.end) if cut.upright else (cut.start, cut.at, cut.end, cut.at)
        blade = mapped(line(*ends), board.to_drawing)
        found.append(Shape(blade, _cause("rule"), stroke=Stroke(_CUT, _BLADE)))
    return (*leaders, *found)


def _polyline(points: tuple[tuple[float, float], ...]) -> Outline:
    first, *rest = points
    return (Move(*first), *(Line(*point) for point in rest))


def _badges(board: _Board, badges: tuple[Callout, ...]) -> tuple[Node, ...]:
    bold = replace(board.font, weight=max(board.font.weight, 800))
    found: list[Node] = []
    for badge in badges:
        size = _NUMERAL * badge.radius / RADIUS * (1.0 if badge.number < 100 else 0.8)
        found.append(Shape(circle(*badge.centre, badge.radius), _cause("rule"), _CUT))
        found.append(_centred(bold, str(badge.number), size, badge.centre, WHITE))
    return tuple(found)


def _numbers(board: _Board, sheet: Sheet) -> tuple[Node, ...]:
    return tuple(node for place, slot in enumerate(sheet.slots) for node in _number(board, slot, place + 1))


def _number(board: _Board, slot: Slot, number: int) -> tuple[Node, ...]:
    """The number in the middle of a leaf, an arrow from it to the head of the face."""
    box = mapped_box(slot.trim, board.to_drawing)
    unit = min(1.0, min(box.width, box.height) / 26)
    if unit < _LEAST_UNIT:
        return ()
    x, y = box.centre
    turn = replace(slot.transform, e=0.0, f=0.0)
    arrow = mapped(_arrow(4.0, 9.5), Affine.scale(unit).then(turn).then(Affine.move(x, y)))
    return (
        _centred(board.font, str(number), _LEAF_NUMERAL * unit, (x, y), _QUIET),
        Shape(arrow, _cause("lettering"), _QUIET),
    )


def _arrow(start: float, end: float) -> Outline:
    """An arrow that points up, to the head of a face, from `start` to `end` above its origin."""
    neck, half, wing = end - 2.4, 0.16, 1.05
    return polygon(
        (-half, -start), (-half, -neck), (-wing, -neck), (0, -end), (wing, -neck), (half, -neck), (half, -start)
    )  # fmt: skip


def _pieces(board: _Board, sheet: Sheet) -> tuple[Node, ...]:
    """The letters of the pieces of a mixed sheet, each in the corner where no badge starts."""
    grids = lettered(sheet)
    found: list[Node] = []
    for letter, box in grids if len(grids) > 1 else ():
        corner = mapped_box(box, board.to_drawing)
        wide = max(_TAG, 2.2 * len(letter) + 2)
        tag = Box(corner.right - 1.3 - wide, corner.bottom - 1.3 - _TAG, wide, _TAG)
        found.append(Shape(rounded(tag, 0.9), _cause("lettering"), WHITE, Stroke(_INK, 0.18)))
        found.append(_centred(board.font, letter, 3.0, tag.centre, _INK))
    return tuple(found)


def _offcuts(board: _Board, plan: CutPlan) -> tuple[Node, ...]:
    """Each clean piece once, with all that could be made of it."""
    places: dict[Box, list[OffcutFound]] = {}
    for found in plan.offcuts:
        places.setdefault(found.box, []).append(found)
    drawn: list[Box] = []
    nodes: list[Node] = []
    for box in sorted(places, key=lambda one: (-round(one.width * one.height, 6), one.x, one.y)):
        if not any(box.overlaps(other) for other in drawn):
            drawn.append(box)
            nodes += _offcut(board, box, places[box])
    return tuple(nodes)


def _offcut(board: _Board, box: Box, found: list[OffcutFound]) -> list[Node]:
    area = mapped_box(box, board.to_drawing)
    lines = (
        " or ".join(f"{one.count} × {one.name}" for one in found),
        f"{number_text(box.width, 1)} × {mm_text(box.height, 1)}",
    )
    hatch = Shape(hatched(area, 1.6), _cause("pattern"), stroke=Stroke(_OFFCUT, _HAIR))
    edge = Shape(rectangle(area), _cause("pattern"), stroke=Stroke(_OFFCUT, _LEADER))
    return [hatch, edge, *_label(board, area, lines)]


def _label(board: _Board, area: Box, lines: tuple[str, ...]) -> list[Node]:
    """Lines on a white plate in the middle of an area, along its longer side; nothing where they find no room."""
    along, across = max(area.width, area.height), min(area.width, area.height)
    wide = max(shape_line(board.font, text).advance for text in lines)
    size = min(_TEXT, (along - 3) / wide, (across - 2) / (1.35 * len(lines)))
    if size < _TEXT / 2:
        return []
    plate = Box(0, 0, wide * size + 2, 1.35 * size * len(lines) + 0.8).moved(
        -wide * size / 2 - 1, -1.35 * size * len(lines) / 2 - 0.4
    )
    turn = Affine() if area.width >= area.height else Affine(0, -1, 1, 0, 0, 0)
    to_place = turn.then(Affine.move(*area.centre))
    nodes: list[Node] = [Shape(rounded(plate, 0.6), _cause("pattern"), WHITE)]
    for place, text in enumerate(lines):
        y = (place - (len(lines) - 1) / 2) * 1.35 * size
        nodes.append(_centred(board.font, text, size, (0.0, y), _OFFCUT))
    return [Group(tuple(nodes), to_place)]


def _lay_edges(board: _Board, badges: tuple[Callout, ...]) -> tuple[Node, ...]:
    """The two edges that the first cuts are measured from, thick, with their name where no badge stands."""
    paper, half = board.paper, _LAY / 2
    pen = Stroke(_INK, _LAY)
    angle = (
        Move(paper.x - half, paper.bottom),
        Line(paper.x - half, paper.y - half),
        Line(paper.right, paper.y - half),
    )
    wide = shape_line(board.font, "lay edge").advance * _TEXT
    at = _free(wide, [badge for badge in badges if badge.side == "head"], paper.x, upright=True)
    down = _free(wide, [badge for badge in badges if badge.side == "left"], paper.y, upright=False)
    turn = Affine(0, -1, 1, 0, paper.x - _LAY - 1.0, down + wide)
    return (
        Shape(angle, _cause("rule"), stroke=pen),
        _word(board, "lay edge", Affine.move(at, paper.y - _LAY - 1.0)),
        _word(board, "lay edge", turn),
    )


def _free(length: float, badges: list[Callout], start: float, upright: bool) -> float:
    """The first place along an edge where a word of this length keeps clear of badges and leaders."""
    taken = []
    for badge in badges:
        ends = [point[0] if upright else point[1] for point in (*badge.leader, badge.centre)]
        taken.append((min(ends) - RADIUS - 1, max(ends) + RADIUS + 1))
    at = start
    for low, high in sorted(taken):
        if at + length <= low:
            break
        at = max(at, high)
    return at


def _caption(board: _Board) -> tuple[Node, ...]:
    """How the sheet lies at the left, what the arrows mean at the right, or below it where there is no room."""
    base = board.size.height - 1.2
    how, words = board.caption
    at = board.paper.right - _wide(board.font, words)
    arrow = mapped(_arrow(0.0, 4.2), Affine.scale(0.62).then(Affine.move(at - 1.6, base + 0.3)))
    return (
        _word(board, how, Affine.move(board.paper.x, base - (_LINE if board.two_lines else 0.0))),
        _word(board, words, Affine.move(at, base)),
        Shape(arrow, _cause("lettering"), _QUIET),
    )


def _word(board: _Board, text: str, to_place: Affine) -> Shape:
    outline = mapped(shape_line(board.font, text).outline, Affine.scale(_TEXT).then(to_place))
    return Shape(outline, _cause("lettering"), _INK)


def _centred(font: Font, text: str, size: float, centre: tuple[float, float], colour: Colour) -> Shape:
    """A line whose ink is centred across, and whose capitals are centred in height."""
    shaped = shape_line(font, text)
    x = centre[0] - (shaped.ink.x + shaped.ink.width / 2) * size
    y = centre[1] + cap_height(font) / 2 * size
    outline = mapped(shaped.outline, Affine.scale(size).then(Affine.move(x, y)))
    return Shape(outline, _cause("lettering"), colour)


def _cause(part: Part) -> Cause:
    return Cause("sheet", part)
