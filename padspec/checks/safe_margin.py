"""The safe margin: nothing but ground near the knife, and less near the glue."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.geometry import Box, Sides, Size
from padspec.base.numbers import mm_text, number_text, round_up
from padspec.checks.check import Level, Limits, Subject
from padspec.compose.compose import compose
from padspec.compose.face import Face
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.block import Block, Holder
from padspec.resolve.blocks.columns import Columns
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.stack import Stack
from padspec.resolve.design import Design, blocks
from padspec.scene.nodes import Cause, Shape, pictures, shapes, without
from padspec.scene.outline import bounds

#: The schema allows no more.
MOST_INSET = 100.0
_WORDS = {
    "panel": "The panel",
    "art": "The picture",
    "lettering": "The lettering",
    "outline": "The edge of the lettering",
    "rule": "A rule",
    "checkbox": "A square",
}


@dataclass(frozen=True, slots=True)
class _Nearest:
    """The part of a block that comes nearest to an edge, measured against that edge's margin."""

    distance: float
    margin: float
    edge: str


def safe_margin(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Does anything but ground come too near to a cut?

    Warning within 3 mm of the trim, 5 mm at the glue edge where the leaf tears off (studio: safe-margin and
    glue-edge); error past the trim, where the knife cuts it off. 3 mm is what print-shop guides usually ask; trim
    variance of ± 1/16 in is their usual statement.
    Remedy for a panel or a picture: the inset that keeps clear.
    """
    safe = _safe(subject.design.safe, limits.mildest)
    for cause, nearest in _too_near(subject.face, subject.design, safe).items():
        yield _finding(subject, cause, nearest, safe)


def _too_near(face: Face, design: Design, safe: Sides) -> dict[Cause, _Nearest]:
    """The part of each block that comes nearest to an edge, where that is too near."""
    found: dict[Cause, _Nearest] = {}
    for cause, box in _everything(face):
        nearest = _nearest(box, design.trim, safe)
        known = found.get(cause)
        if nearest is not None and (
            known is None or nearest.distance - nearest.margin < known.distance - known.margin
        ):
            found[cause] = nearest
    return found


def _safe(studio: Sides, level: Level) -> Sides:
    """The studio's margins, or the maker's own limit in their place; the wider glue edge is never narrowed."""
    if level.usual is None:
        return studio
    common = studio.least()
    return Sides(
        *(
            level.value if side == common else max(side, level.value)
            for side in (studio.left, studio.top, studio.right, studio.bottom)
        )
    )


def _everything(face: Face) -> Iterator[tuple[Cause, Box]]:
    for shape in shapes(face.scene):
        if shape.cause.part in _WORDS:
            yield shape.cause, _ink(shape)
    for picture in pictures(without(face.scene, "ground")):
        yield picture.cause, picture.box


def _ink(shape: Shape) -> Box:
    grown = shape.stroke.weight / 2 if shape.stroke else 0.0
    return bounds(shape.outline).inset(-grown)


def _nearest(box: Box, trim: Size, safe: Sides) -> _Nearest | None:
    edges = (
        _Nearest(box.x, safe.left, "left edge"),
        _Nearest(box.y, safe.top, "head"),
        _Nearest(trim.width - box.right, safe.right, "right edge"),
        _Nearest(trim.height - box.bottom, safe.bottom, "foot"),
    )
    worst = min(edges, key=lambda edge: edge.distance - edge.margin)
    return worst if worst.distance < worst.margin - 1e-6 else None


def _finding(subject: Subject, cause: Cause, nearest: _Nearest, safe: Sides) -> Finding:
    over = nearest.distance < -1e-6
    comes = (
        f"runs {mm_text(-nearest.distance)} past the {nearest.edge} and is cut off there"
        if over
        else f"comes within {mm_text(nearest.distance)} of the {nearest.edge}"
    )
    return Finding(
        check="safe-margin",
        severity=Severity.ERROR if over else Severity.WARNING,
        place=subject.design.key(cause.block, "text" if cause.part in ("lettering", "outline") else "inset").place,
        message=f"{_WORDS[cause.part]} {comes}.",
        measured=mm_text(nearest.distance),
        limit=mm_text(nearest.margin),
        remedy=_remedy(subject, cause, nearest, safe),
    )


def _remedy(subject: Subject, cause: Cause, nearest: _Nearest, safe: Sides) -> Remedy:
    """The inset of the block, or of the panel or picture around it, that keeps clear: each one tried."""
    design, inset = subject.design, _inset(safe)
    movable = [block for block in blocks(design) if isinstance(block, Art | Panel | Columns | Stack)]
    for block in sorted(movable, key=lambda block: block.id != cause.block):
        if block.inset < inset <= MOST_INSET and cause not in _too_near(
            compose(_with_inset(design, block.id, inset)), design, safe
        ):
            key = design.key(block.id, "inset")
            text = f"{number_text(inset, 1)} mm"
            return Remedy(f"Set inset: {text} for the {block.id}.", ((key.path, text),))
    lack = mm_text(nearest.margin - nearest.distance)
    if cause.part == "lettering":
        return Remedy(f"It needs {lack} more room there: more lines, a smaller least-size or fewer words give it.")
    return Remedy(f"It needs {lack} more room there: smaller blocks above it or a larger trim give it.")


def _with_inset(design: Design, block_id: str, inset: float) -> Design:
    """The design with another inset for one block; a picture that no longer fits in shrinks with it."""

    def changed(block: Block) -> Block:
        opened = block
        if isinstance(block, Holder):
            opened = replace(block, holds=tuple(changed(inner) for inner in block.holds))
        movable = isinstance(opened, Art | Panel | Columns | Stack) and opened.id == block_id
        return replace(opened, inset=inset) if movable else opened  # type: ignore[call-arg]

    return replace(design, face=tuple(changed(block) for block in design.face))


def _inset(safe: Sides) -> float:
    return round_up(max(safe.left, safe.top, safe.right, safe.bottom), 0.1)
