"""The maker's sheets of labels or tags: `tag-sheets` of studio.yaml in, checked geometry out."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, cast

from padspec.base.geometry import Box, Size
from padspec.base.numbers import EPSILON, mm_text, number_text
from padspec.reading.tree import Mapping
from padspec.resolve.settings import Settings, Troubles
from padspec.resolve.workshop import size_of, written_size

HoleEdge = Literal["head", "left"]
#: Card between a hole and any edge of its tag: less tears out (common practice, no published source).
LEAST_CARD = 2.0


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole to hang a tag by: how wide it is, and how far its middle lies from which edge."""

    across: float
    edge: HoleEdge
    distance: float


@dataclass(frozen=True, slots=True)
class TagSheet:
    """A sheet of labels: its paper, the grid of equal labels, and how they look.

    `left` and `top` are where the first label begins, `across` and `down` the steps from one label's edge to the
    same edge of the next. `cut` says that the tags are plain card, to be cut by hand.
    """

    name: str
    size_name: str
    size: Size
    rows: int
    columns: int
    label: Size
    left: float
    top: float
    across: float
    down: float
    corner: float = 0.0
    hole: Hole | None = None
    cut: bool = False

    @property
    def count(self) -> int:
        """Labels on a whole sheet."""
        return self.rows * self.columns

    def box(self, place: int) -> Box:
        """Where a label lies, counted from 0, row by row."""
        row, column = divmod(place, self.columns)
        x, y = self.left + column * self.across, self.top + row * self.down
        return Box(x, y, self.label.width, self.label.height)


def read_tag_sheets(root: Mapping, usual: tuple[str, Size], troubles: Troubles) -> tuple[TagSheet, ...]:
    """Every sheet of labels that a studio states; `usual` is the name and size of its usual paper.

    Labels that overlap or leave the sheet, and names that stand twice, are troubles.
    """
    found: list[TagSheet] = []
    for item in Settings(root, troubles).sections("tag-sheets"):
        sheet = _read(item, usual)
        if any(other.name == sheet.name for other in found):
            item.troubles.add(item.place("name"), f"{sheet.name} stands twice.", "Give each a name of its own.")
        for key, message, mend in _faults(sheet):
            item.troubles.add(item.place(key), message, mend)
        found.append(sheet)
    return tuple(found)


def _read(item: Settings, usual: tuple[str, Size]) -> TagSheet:
    name, size = written_size(item) if item.has("size") else usual
    label = size_of(item)
    rows, columns = item.integer("rows"), item.integer("columns")
    across = item.length("across") if item.has("across") else label.width
    down = item.length("down") if item.has("down") else label.height
    return TagSheet(
        name=item.text("name"),
        size_name=name,
        size=size,
        rows=rows,
        columns=columns,
        label=label,
        left=item.length("left") if item.has("left") else _spare(size.width, columns, across, label.width) / 2,
        top=item.length("top") if item.has("top") else _spare(size.height, rows, down, label.height) / 2,
        across=across,
        down=down,
        corner=item.length("corner") if item.has("corner") else 0.0,
        hole=_hole(item.section("hole")) if item.has("hole") else None,
        cut=item.has("cut") and item.flag("cut"),
    )


def _spare(whole: float, number: int, step: float, one: float) -> float:
    """What is left of the sheet; none where the labels take more than it."""
    return max(whole - (number - 1) * step - one, 0.0)


def _hole(hole: Settings) -> Hole:
    return Hole(
        across=hole.length("across"),
        edge=cast(HoleEdge, hole.text("edge") if hole.has("edge") else "head"),
        distance=hole.length("distance") if hole.has("distance") else 7.0,
    )


def _faults(sheet: TagSheet) -> Iterator[tuple[str, str, str]]:
    """What cannot be: the key to blame, what is wrong with the sum, and how to mend it."""
    ways = (
        ("across", "width", "left", sheet.columns, sheet.across, sheet.label.width, sheet.left, sheet.size.width),
        ("down", "height", "top", sheet.rows, sheet.down, sheet.label.height, sheet.top, sheet.size.height),
    )
    for step_key, side, start_key, number, step, one, start, whole in ways:
        if number > 1 and step < one - EPSILON:
            over = mm_text(one - step)
            message = f"Labels {mm_text(one)} {_ADJECTIVES[side]}, one every {mm_text(step)}, overlap by {over}."
            yield (
                step_key,
                message,
                f"Write {step_key}: {mm_text(one, 4)} or more: from an edge to the same edge of the next.",
            )
            continue
        end = start + (number - 1) * step + one
        if start < -EPSILON or end > whole + EPSILON:
            n = number_text
            sum_text = f"{n(start)} + {number - 1} × {n(step)} + {n(one)} = {n(end)} mm"
            over = f"{mm_text(max(end - whole, -start))} more than fits {mm_text(whole)} of {sheet.size_name}"
            mend = f"Measure {start_key}, {step_key} and {side} again, or write fewer {_COUNTED[side]}."
            yield start_key, f"The labels leave the sheet: {sum_text}, {over}.", mend
    least = min(sheet.label.width, sheet.label.height) / 2
    if sheet.corner > least + EPSILON:
        message = f"A corner of {mm_text(sheet.corner)} is more than half the label's shorter side."
        yield "corner", message, f"Write {mm_text(least)} or less."
    if sheet.hole is not None:
        yield from _hole_faults(sheet.hole, sheet.label)


_ADJECTIVES, _COUNTED = {"width": "wide", "height": "high"}, {"width": "columns", "height": "rows"}


def _hole_faults(hole: Hole, label: Size) -> Iterator[tuple[str, str, str]]:
    along, beside = (label.height, label.width) if hole.edge == "head" else (label.width, label.height)
    least = hole.across / 2 + LEAST_CARD
    if hole.distance < least - EPSILON or hole.distance > along - least + EPSILON or beside < 2 * least - EPSILON:
        message = (
            f"A hole of {mm_text(hole.across)} whose middle lies {mm_text(hole.distance)} from the {hole.edge} "
            f"leaves less than {mm_text(LEAST_CARD)} of card beside it, and tears out."
        )
        yield "hole", message, f"Write distance: {mm_text(least)} or more, or a smaller hole."
