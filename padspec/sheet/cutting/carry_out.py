"""Cuts carried out on one sheet of paper, as rectangles: the proof that they free every leaf and nothing else."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from padspec.base.geometry import Box
from padspec.sheet.cutting.plan import TOUCH, Cut
from padspec.sheet.sheet import Sheet


@dataclass(frozen=True, slots=True)
class Waste:
    """Paper without a leaf on it, and the number of the cut that took it off."""

    cut: int
    box: Box


@dataclass(frozen=True, slots=True)
class Pieces:
    """What lies on the bench in the end, each where it lay on the sheet."""

    leaves: tuple[Box, ...]
    waste: tuple[Waste, ...]


def carry_out(cuts: Sequence[Cut], sheet: Sheet) -> Pieces:
    """Every cut parts each piece that it crosses from edge to edge; one that ends inside a piece parts nothing.

    A part without any of a leaf on it is waste, and is cut no further.
    """
    paper = [Box(0.0, 0.0, sheet.size.width, sheet.size.height)]
    waste: list[Waste] = []
    for cut in cuts:
        parts = [part for piece in paper for part in parted(piece, cut)]
        paper = [part for part in parts if _holds_leaf(part, sheet)]
        waste += [Waste(cut.number, part) for part in parts if not _holds_leaf(part, sheet)]
    return Pieces(tuple(paper), tuple(waste))


def parted(piece: Box, cut: Cut) -> Iterator[Box]:
    """The two parts of a piece that a cut crosses, else the piece."""
    low, high = (piece.x, piece.right) if cut.upright else (piece.y, piece.bottom)
    start, end = (piece.y, piece.bottom) if cut.upright else (piece.x, piece.right)
    right_across = cut.start <= start + TOUCH and cut.end >= end - TOUCH
    if not right_across or not low + TOUCH < cut.at < high - TOUCH:
        yield piece
    elif cut.upright:
        yield Box(piece.x, piece.y, cut.at - low, piece.height)
        yield Box(cut.at, piece.y, high - cut.at, piece.height)
    else:
        yield Box(piece.x, piece.y, piece.width, cut.at - low)
        yield Box(piece.x, cut.at, piece.width, high - cut.at)


def _holds_leaf(piece: Box, sheet: Sheet) -> bool:
    return any(piece.overlaps(slot.trim, TOUCH) for slot in sheet.slots)
