"""Room for grids and for marks to fill in."""

from collections.abc import Iterator

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import mm_text
from padspec.checks.check import Limits, Subject
from padspec.checks.least_trim import leaf_text, least_trim
from padspec.compose.blocks.grid import lattice_in
from padspec.compose.blocks.grid import side as grid_side
from padspec.compose.face import Face, Placement
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.grid import Grid
from padspec.resolve.blocks.marks import Marks
from padspec.resolve.design import blocks

#: A grid of fewer squares than this, either way, is no grid (common practice).
LEAST_SQUARES = 3


def block_room(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (it fits or it does not)
    """Do grids and marks fit the leaf? The height that they are left against the height that they need.

    Error where marks to fill in have no room, which leaves them out, or where a grid has fewer than three squares
    one way: common practice, no published source. Remedy: the least leaf on which they fit, tried.
    """
    for block in blocks(subject.design):
        if isinstance(block, Marks | Grid) and not _fits(block, subject.face):
            yield _finding(subject, block, subject.face.placement(block.id))


def _fits(block: Marks | Grid, face: Face) -> bool:
    placed = face.placement(block.id)
    if isinstance(block, Marks):
        return placed.rows > 0
    lattice = lattice_in(block, placed.box)
    return min(lattice.across, lattice.down) >= LEAST_SQUARES


def _finding(subject: Subject, block: Marks | Grid, placed: Placement) -> Finding:
    has, need, message = _marks(block, placed) if isinstance(block, Marks) else _squares(block, placed)
    return Finding(
        check="block-room",
        severity=Severity.ERROR,
        place=subject.design.key(block.id, "size" if isinstance(block, Marks) else "pitch").place,
        message=message,
        measured=mm_text(has),
        limit=mm_text(need),
        remedy=Remedy(_remedy(subject, block)),
    )


def _marks(block: Marks, placed: Placement) -> tuple[float, float, str]:
    """What marks have, what they need, and both in words: of the height, or of the width for a single one."""
    width, height = max(placed.box.width, 0.0), max(placed.box.height, 0.0)
    if block.size > width:
        words = f"Marks of {mm_text(block.size)} are wider than the {mm_text(width)} that {block.called} has."
        return width, block.size, words
    need = height + placed.short_by
    words = f"The {block.count} marks of {block.called} need {mm_text(need)} of height and have {mm_text(height)}."
    return height, need, words


def _squares(block: Grid, placed: Placement) -> tuple[float, float, str]:
    """What a grid has of its shorter side, what it needs, and both in words."""
    width, height = max(placed.box.width, 0.0), max(placed.box.height, 0.0)
    words = (
        f"The grid {block.called} has room for {mm_text(width)} × {mm_text(height)}, less than {LEAST_SQUARES} "
        f"squares of {mm_text(block.pitch)} each way."
    )
    return min(width, height), grid_side(block, LEAST_SQUARES), words


def _remedy(subject: Subject, block: Block) -> str:
    smaller = "a smaller size or count" if isinstance(block, Marks) else "a smaller pitch"
    trim = least_trim(subject.design, lambda face: _all_fit(subject, block, face))
    if trim is None:
        return f"Set {smaller}, or give the other blocks less."
    return f"It fits a leaf of {leaf_text(trim)}; or set {smaller}, or a lower picture."


def _all_fit(subject: Subject, block: Block, face: Face) -> bool:
    """Whether a block fits with all its copies, where it repeats."""
    return all(
        _fits(other, face)
        for other in blocks(subject.design)
        if isinstance(other, Marks | Grid) and other.called == block.called
    )
