"""A batch and its time line in, the steps of the workshop out, in order, each with how it is done and how long."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from padspec.base.geometry import Size
from padspec.base.numbers import mm_text, number_text
from padspec.batch.batch import Batch, Load, PadLot
from padspec.costing.costed import Costed
from padspec.resolve.workbench import Workbench
from padspec.schedule.task import Stage
from padspec.schedule.timeline import Timeline


@dataclass(frozen=True, slots=True)
class Tick:
    """A line to tick off, and how many times; `of` says what is counted, where that is many."""

    text: str
    boxes: int = 1
    of: str = ""


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


_STOP = {"lever": "fence", "guillotine": "back gauge"}
_AT_THE_STOP = (
    "Printed side up, as fed. The edge that is named lies against the {stop}, the {stop} is set to the "
    "distance, and "
    "what lies before the blade comes off."
)
_BY_KNIFE = (
    "Tape it down and leave every piece where it is; all is measured from the raw edges named. Turn the ruler, "
    "never "
    "the work."
)


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
        Tick(f"page {page.number}: {page.sheet.copies} copies on {page.sheet.size_name}")
        for page in batch.plan.pages
    ]
    yield _Words(
        ("set up", "print"),
        "Print",
        f"The pages lie in {folder}, numbered. At 100 %, no scaling. Print one sheet first and lay a ruler on "
        "its bar "
        "marked 100 mm: if it is not 100 mm, stop and look at the print dialogue. Keep copies in the order they "
        "come.",
        tuple(ticks),
    )
    yield _Words(
        ("ink dries",),
        "Let the ink dry",
        "Fan the stack once so that air comes between the sheets. Cut nothing that still feels cool or smears.",
        (Tick("dry to the touch, edge to edge"),),
    )


def _cutting(batch: Batch) -> Iterator[_Words]:
    pages = batch.plan.pages
    kind = pages[0].cuts.kind
    ticks = tuple(Tick(f"page {page.number}", page.cuts.lifts, "lifts") for page in pages)
    joined = all(page.joined for page in pages)
    after = (
        "lay all leaves of one design together" if joined else "keep every stack apart: each is pads as it lies"
    )
    how = _BY_KNIFE if kind == "knife" else _AT_THE_STOP.format(stop=_STOP[kind])
    yield _Words(
        ("cut leaves",),
        "Cut the leaves",
        f"{how} Cut by the numbers in the drawings, lift by lift; then {after}.",
        ticks,
    )
    if batch.boards is not None and batch.boards.layouts:
        yield _Words(
            ("cut boards",),
            "Cut the backs",
            f"{_BY_KNIFE} Several light passes; edges as clean as the leaves, for the backs lie flush with them.",
            tuple(Tick(f"{size.wanted} backs of {_by(size.trim)}") for size in batch.boards.sizes),
        )


def _by(size: Size) -> str:
    return f"{number_text(size.width, 1)} × {mm_text(size.height, 1)}"


def _padding(batch: Batch) -> Iterator[_Words]:
    bench = batch.lots[0].design.studio.bench
    board = batch.boards is not None
    yield _Words(
        ("count off",),
        "Count off and jog",
        f"{_heights(batch)} Count the first pad leaf by leaf and match the others to it in height, again by "
        "counting "
        "now and then: past some twenty leaves a ruler alone is not sure of one. Knock the leaves down on the "
        "glue "
        "edge on a table until that edge is flat to the finger"
        + (", then lay the back under, flush with the glue edge." if board else "."),
        tuple(Tick(f"{lot.design.sku}: {lot.pads} × {lot.design.leaves}") for lot in batch.lots),
    )
    yield _Words(
        ("clamp",),
        "Stack and clamp",
        "Glue edges all to one side and flush, a back under every pad, a waste board on top. Press down firmly "
        "and "
        "evenly; run a finger along the edge once more before you tighten.",
        tuple(Tick(_load_text(load, batch.lots)) for load in batch.loads),
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


def _load_text(load: Load, lots: Sequence[PadLot]) -> str:
    held = ", ".join(f"{number} {lots[index].design.sku}" for index, number in load.pads)
    high = f"{mm_text(load.height.value, 0)} ± {mm_text(load.height.error, 0)} high"
    return f"load {load.number}: {held}; {high}"


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
            tuple(_magnet_ticks(magnets)),
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


def _magnet_ticks(lots: Sequence[PadLot]) -> Iterator[Tick]:
    """One tick where all pads have as many, else one a design."""
    if len({lot.design.finish.magnets for lot in lots}) == 1:
        yield Tick(f"{lots[0].design.finish.magnets} on each of {sum(lot.pads for lot in lots)}")
        return
    for lot in lots:
        yield Tick(f"{lot.design.sku}: {lot.design.finish.magnets} on each of {lot.pads}")


def _sleeve_ticks(lots: Sequence[PadLot]) -> Iterator[Tick]:
    """One tick for each kind of sleeve, with the designs that go into it where there are several kinds."""
    kinds: dict[str, list[PadLot]] = {}
    for lot in lots:
        if lot.sleeve is not None:
            kinds.setdefault(lot.sleeve.sleeve.name, []).append(lot)
    for name, own in kinds.items():
        whose = f": {', '.join(lot.design.sku for lot in own)}" if len(kinds) > 1 else ""
        yield Tick(f"{sum(lot.pads for lot in own)} × {name}{whose}")
