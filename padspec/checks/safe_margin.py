"""The safe margin: nothing but ground near the knife, and less near the glue."""

from collections.abc import Iterator
from dataclasses import dataclass

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.geometry import Box, Sides, Size
from padspec.base.numbers import mm_text, number_text, round_up
from padspec.checks.check import Level, Limits, Subject
from padspec.resolve.design import Art, Panel, blocks
from padspec.scene.nodes import Cause, Shape, pictures, shapes
from padspec.scene.outline import bounds

_WORDS = {
    "panel": "The panel",
    "art": "The picture",
    "lettering": "The lettering",
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
    glue-edge). 3 mm is what print-shop guides usually ask; trim variance of ± 1/16 in is their usual statement.
    Remedy for a panel or a picture: the inset that keeps clear.
    """
    safe = _safe(subject.design.safe, limits.mildest)
    found: dict[Cause, _Nearest] = {}
    for cause, box in _everything(subject):
        nearest = _nearest(box, subject.design.trim, safe)
        known = found.get(cause)
        if nearest is not None and (
            known is None or nearest.distance - nearest.margin < known.distance - known.margin
        ):
            found[cause] = nearest
    for cause, nearest in found.items():
        yield _finding(subject, cause, nearest, safe)


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


def _everything(subject: Subject) -> Iterator[tuple[Cause, Box]]:
    for shape in shapes(subject.face.scene):
        if shape.cause.part in _WORDS:
            yield shape.cause, _ink(shape)
    for picture in pictures(subject.face.scene):
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
    block = next(block for block in blocks(subject.design) if block.id == cause.block)
    key = subject.design.key(cause.block, "inset")
    inset = f"{number_text(_inset(safe), 1)} mm"
    movable = isinstance(block, Art | Panel)
    remedy = (
        Remedy(f"Set inset: {inset}.", ((key.path, inset),))
        if movable
        else Remedy(f"Move it {mm_text(nearest.margin - nearest.distance)} away from the {nearest.edge}.")
    )
    return Finding(
        check="safe-margin",
        severity=Severity.WARNING,
        place=key.place,
        message=f"{_WORDS[cause.part]} comes within {mm_text(nearest.distance)} of the {nearest.edge}.",
        measured=mm_text(nearest.distance),
        limit=mm_text(nearest.margin),
        remedy=remedy,
    )


def _inset(safe: Sides) -> float:
    return round_up(max(safe.left, safe.top, safe.right, safe.bottom), 0.1)
