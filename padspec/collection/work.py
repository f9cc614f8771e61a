"""The unit of work of a build: some variants of one design, from its files to the bytes of theirs.

Nothing is written here and nothing is asked of a clock or a screen: a unit gives the same in this process, in
another and on another machine. What its variants share (the picture, letters, deflated pixels) is made once.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.collection.source import Source
from padspec.reading.variation import Variation
from padspec.workspace import ReadFiles


@dataclass(frozen=True, slots=True)
class BuildWish:
    """How to build; `again` makes even what has not changed, the others change what is written."""

    embed: bool = False
    despite_errors: bool = False
    proofs: bool = True
    again: bool = False

    def as_texts(self) -> dict[str, str]:
        """For the record."""
        return {"embed": str(self.embed), "despite-errors": str(self.despite_errors), "proofs": str(self.proofs)}


@dataclass(frozen=True, slots=True, eq=False)
class Unit:
    """Variants of one design. `drawn` is, for each, what its drawn files on disk show (see drawn.py), or empty."""

    source: Source
    path: str
    variations: tuple[Variation, ...]
    drawn: tuple[str, ...]
    wish: BuildWish


@dataclass(frozen=True, slots=True)
class Made:
    """What came of one variant: its summary (report.pad_data), files by path, and what it was made from.

    Where `drawn` is what the unit said, only findings.json is among the files. `fonts` are the packaged families
    with the digests of their files, `seen` the files asked for. With `problems`, there is nothing else.
    """

    summary: dict[str, Any]
    files: dict[str, bytes]
    fonts: dict[str, str]
    seen: dict[str, str]
    drawn: str
    problems: tuple[Problem, ...] = ()


def work(unit: Unit, tell: Callable[[str], None] | None = None) -> tuple[Made, ...]:
    """Make every variant of a unit, in its order; `tell` is called with each step's name."""
    read: ReadFiles = {}
    return tuple(
        _made(unit, variation, drawn, read, tell)
        for variation, drawn in zip(unit.variations, unit.drawn, strict=True)
    )


def _made(
    unit: Unit, variation: Variation, drawn: str, read: ReadFiles, tell: Callable[[str], None] | None
) -> Made:
    # Imported only when there is something to make: finding that nothing changed must stay quick.
    from padspec.collection.records.drawn import drawn_digest
    from padspec.collection.records.fonts_used import fonts_used
    from padspec.draw.outputs import DrawWish
    from padspec.pipeline import draw, make, silent
    from padspec.report import findings_json, pad_data

    workspace, listener = unit.source.open(read), tell or silent
    try:
        pad = make(unit.path, workspace, listener, variation)
        wish = DrawWish(unit.wish.embed, unit.wish.despite_errors, unit.wish.proofs)
        now = drawn_digest(pad, wish)
        if now == drawn:
            files = {f"{pad.design.sku}/findings.json": findings_json(pad.design, pad.sheet, pad.findings)}
        else:
            files = draw(pad, wish, listener)
    except ProblemsError as error:
        return Made({}, {}, {}, {}, "", error.problems)
    summary = pad_data(pad.design, pad.sheet, pad.findings)
    return Made(summary, files, fonts_used(pad.design), workspace.seen, now)
