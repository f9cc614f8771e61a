"""A batch and its time line in, the steps of the workshop out, in order, each with how it is done and how long."""

from collections.abc import Iterator
from dataclasses import dataclass

from padspec.base.geometry import Size
from padspec.base.numbers import mm_text, number_text
from padspec.batch.batch import Batch, Load
from padspec.costing.costed import Costed
from padspec.jobs.pages import page_stem
from padspec.resolve.workbench import Workbench
from padspec.schedule.task import Stage
from padspec.schedule.timeline import Timeline


@dataclass(frozen=True, slots=True)
class Tick:
    """A line to tick off; `boxes` is how many times."""

    text: str
    boxes: int = 1


@dataclass(frozen=True, slots=True)
class Step:
    """One step: what it is, how it is done, what is ticked off, and its minutes: by hand, and waiting or
    running by itself. `begins` is when the first of it starts, in minutes from the start.
    """

    title: str
    how: str
    ticks: tuple[Tick, ...]
    by_hand: float
    waiting: float
    begins: float


@dataclass(frozen=True, slots=True)
class _Words:
    """A step before its times are known."""

    stages: tuple[Stage, ...]
    title: str
    how: str
    ticks: tuple[Tick, ...]


def steps_of(found: Costed, folder: str) -> tuple[Step, ...]:
    """Every step that the batch has; `folder` is where its pages lie."""
    batch = found.batch
    every = (
        *_printing(batch, folder),
        *_cutting(batch),
        *_padding(batch),
        *_finishing(batch),
    )
    return tuple(_timed(words, found.timeline) for words in every)


def _timed(words: _Words, timeline: Timeline) -> Step:
    own = [one for one in timeline.placed if one.task.stage in words.stages]
    return Step(
        title=words.title,
        how=words.how,
        ticks=words.ticks,
        by_hand=sum(one.task.minutes for one in own if one.task.by_hand),
        waiting=sum(one.task.minutes for one in own if not one.task.by_hand),
        begins=min((one.start for one in own), default=0.0),
    )


def _printing(batch: Batch, folder: str) -> Iterator[_Words]:
    ticks = [
        Tick(
            f"{page.sheet.copies} copies of {folder}/{page_stem(page, batch.plan)}-{page.sheet.copies}-copies.pdf"
        )
        for page in batch.plan.pages
    ]
    yield _Words(
        ("set up", "print"),
        "Print",
        "At 100 %, no scaling, best paper side. Print one sheet first and lay a ruler on its bar marked 100 mm: "
        "if it "
        "is not 100 mm, stop and look at the print dialogue. Keep the copies in the order in which they come out.",
        tuple(ticks),
    )
    yield _Words(
        ("ink dries",),
        "Let the ink dry",
        "Fan the stack once so that air comes between the sheets. Cut nothing that still feels cool or smears.",
        (Tick("dry to the touch, edge to edge"),),
    )


def _cutting(batch: Batch) -> Iterator[_Words]:
    ticks = [
        Tick(
            f"page {page.number}: {len(page.cuts.cuts)} cuts, lifts of {page.cuts.sheets_a_lift}", page.cuts.lifts
        )
        for page in batch.plan.pages
    ]
    joined = all(page.joined for page in batch.plan.pages)
    after = (
        "lay the stacks of all leaves of one design together" if joined else "keep every stack apart: each is pads"
    )
    yield _Words(
        ("cut leaves",),
        "Cut the leaves",
        "Cut in the order of the numbers in the drawing, a lift at a time; jog each lift to the edges marked "
        "lay edge "
        f"first. Then {after}.",
        tuple(ticks),
    )
    if batch.backs:
        yield _Words(
            ("cut boards",),
            "Cut the backs",
            "Board one sheet at a time, by knife along a metal rule, several light passes. Cut edges must be as "
            "clean "
            "as the leaves: the backs lie flush with them.",
            tuple(Tick(f"{backs.wanted} backs of {_by(backs.trim)}") for backs in batch.backs),
        )


def _by(size: Size) -> str:
    return f"{number_text(size.width, 1)} × {mm_text(size.height, 1)}"


def _padding(batch: Batch) -> Iterator[_Words]:
    bench = batch.lots[0].design.studio.bench
    board = bool(batch.backs)
    yield _Words(
        ("count off",),
        "Count off and jog",
        f"{_heights(batch)} Count the first pad leaf by leaf and match the others to it in height, again by "
        "counting "
        "now and then: past some twenty leaves a ruler alone is not sure of one. Knock the leaves down on the "
        "glue "
        "edge on a flat table until that edge is flat to the finger"
        + (", then lay the back under, flush with the glue edge." if board else "."),
        tuple(Tick(f"{lot.design.sku}: {lot.pads} pads of {lot.design.leaves} leaves") for lot in batch.lots),
    )
    yield _Words(
        ("clamp",),
        "Stack and clamp",
        "Glue edges all to one side and flush, a back under every pad, a waste board on top. Press down firmly "
        "and "
        "evenly; run a finger along the edge once more before you tighten.",
        tuple(Tick(_load_text(load)) for load in batch.loads),
    )
    yield _Words(
        ("coat", "coat dries", "adhesive sets"),
        "Brush the glue edge",
        _coats(bench),
        tuple(Tick(f"load {load.number}, each coat", bench.adhesive.coats) for load in batch.loads),
    )


def _heights(batch: Batch) -> str:
    heights = dict.fromkeys(
        f"{lot.design.leaves} leaves stand {mm_text(lot.design.finish.thickness.leaves, 1)} high"
        for lot in batch.lots
    )
    return f"{'; '.join(heights)}."


def _load_text(load: Load) -> str:
    high = f"{mm_text(load.height.value, 0)} ± {mm_text(load.height.error, 0)}"
    return f"load {load.number}: {load.count} pad{'s' if load.count > 1 else ''}, {high} high"


def _coats(bench: Workbench) -> str:
    adhesive = bench.adhesive
    set_for = f"leave it {number_text(adhesive.set_minutes)} min before the clamp is opened"
    if adhesive.coats == 1:
        return f"One thin, even coat over the whole edge, worked in with the brush; {set_for}. Dry is clear."
    return (
        f"{adhesive.coats} thin, even coats over the whole edge, worked in with the brush; each dries "
        f"{number_text(adhesive.dry_minutes)} min, until it is clear, before the next. After the last {set_for}."
    )


def _finishing(batch: Batch) -> Iterator[_Words]:
    bench, cutter = batch.lots[0].design.studio.bench, batch.lots[0].design.studio.cutter
    pads = f"{batch.pads} pads"
    yield _Words(
        ("slit apart",),
        "Slit apart",
        "Bend the stack a little and run a thin blade along the underside of each back, from the glue edge in. "
        "Flat, "
        "slow, away from the hand.",
        (Tick(pads),),
    )
    if bench.times.trim_strokes:
        yield _Words(
            ("trim",),
            "Trim the pads",
            f"{bench.times.trim_strokes} sides again, the glue side first and a hair at most, in the "
            f"{cutter.kind}; "
            "cut through the glue edge towards the pad, not out of it.",
            (Tick(pads),),
        )
    yield _Words(
        ("look over",), "Look over and flip", "See the quality points. Put pads that fail aside.", (Tick(pads),)
    )
    magnets = [lot for lot in batch.lots if lot.hold is not None]
    if magnets:
        yield _Words(
            ("magnets",),
            "Magnets",
            f"{_by(bench.magnets.size)}, on the back, parallel to the glue edge, well "
            "inside the edges; rub them down.",
            tuple(Tick(f"{lot.design.sku}: {lot.design.finish.magnets} on each of {lot.pads}") for lot in magnets),
        )
    sleeved = [lot for lot in batch.lots if lot.sleeve is not None]
    if sleeved:
        yield _Words(
            ("sleeve",),
            "Sleeve",
            "Foot first, face to the clear side; press the air out before you close the flap.",
            tuple(
                Tick(f"{lot.design.sku}: {lot.pads} × {lot.sleeve.sleeve.name}") for lot in sleeved if lot.sleeve
            ),
        )
    if bench.extras:
        names = [extra.name for extra in bench.extras]
        title = " and ".join(names)
        yield _Words(("extras",), title[0].upper() + title[1:], "One on every pad.", (Tick(pads, len(names)),))
