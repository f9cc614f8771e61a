"""A batch in, its tasks out, each with its minutes and what comes before it.

Times are the studio's own or common practice without a published source: a table of them is an estimate.
"""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from padspec.batch.batch import Batch, Load, shares_of
from padspec.making.boards import BoardLayout, Boards
from padspec.resolve.design import Design
from padspec.schedule.task import Resource, Stage, Task

_HANDS: tuple[Resource, ...] = ("hands",)


def tasks_of(batch: Batch) -> tuple[Task, ...]:
    """Every task, those before always listed before; one that would take no time at all is left out, and what
    came after it comes after what was before it.
    """
    every = [*_printing(batch), *_boards(batch), *_loads(batch)]
    return tuple(_without_empty(every))


def _printing(batch: Batch) -> Iterator[Task]:
    times = _first(batch).studio.bench.times
    printer = _first(batch).studio.printer
    for page in batch.plan.pages:
        n, shares = page.number, shares_of(page, batch.plan)
        copies = page.sheet.copies
        yield Task(f"set-up-{n}", "set up", f"page {n}", times.page_minutes, ("hands", "printer"), (), shares)
        run = copies * printer.sheet_minutes
        yield Task(
            f"print-{n}", "print", f"page {n}, {copies} sheets", run, ("printer",), (f"set-up-{n}",), shares
        )
        wait = times.ink_dry_minutes
        yield Task(f"ink-{n}", "ink dries", f"page {n}", wait, (), (f"print-{n}",), shares)
        cut = page.cuts.minutes
        yield Task(f"cut-{n}", "cut leaves", f"page {n}", cut, _HANDS, (f"ink-{n}",), shares)


def _boards(batch: Batch) -> Iterator[Task]:
    if batch.boards is None:
        return
    for number, layout in enumerate(batch.boards.layouts, 1):
        what = f"{layout.sheets} big sheet{'' if layout.sheets == 1 else 's'}"
        shares = _of_layout(layout, batch.boards, batch)
        yield Task(f"boards-{number}", "cut boards", what, layout.cuts.minutes, _HANDS, (), shares)


def _of_layout(layout: BoardLayout, boards: Boards, batch: Batch) -> tuple[tuple[int, Fraction], ...]:
    """By the backs that a layout gives of each size, shared out to the designs of that size by their pads."""
    gives = {boards.sizes[item].trim: number for item, number in layout.gives}
    wanted = {size.trim: size.wanted for size in boards.sizes}
    whole = sum(gives.values())
    return tuple(
        (index, Fraction(gives[lot.design.trim], whole) * Fraction(lot.pads, wanted[lot.design.trim]))
        for index, lot in enumerate(batch.lots)
        if lot.design.trim in gives
    )


def _loads(batch: Batch) -> Iterator[Task]:
    for load in batch.loads:
        yield from _load(load, batch)


def _load(load: Load, batch: Batch) -> Iterator[Task]:
    """From counting off to the finished pads of one filling of the clamp."""
    bench = _first(batch).studio.bench
    pads, n = load.count, load.number
    shares = tuple((index, Fraction(number, pads)) for index, number in load.pads)
    many = f"{pads} pad{'' if pads == 1 else 's'}"

    def task(
        name: str, stage: Stage, minutes: float, after: tuple[str, ...], busy: tuple[Resource, ...] = _HANDS,
        what: str = many, takes: bool = False, frees: bool = False,
    ) -> Task:  # fmt: skip
        return Task(f"{name}-{n}", stage, what, minutes, busy, after, shares, n, takes, frees)

    counted = pads * bench.times.count_seconds / 60
    yield task("count", "count off", counted, _before_counting(load, batch))
    yield task("clamp", "clamp", bench.clamp.load_minutes, (f"count-{n}",), takes=True)
    before = f"clamp-{n}"
    for coat in range(1, bench.adhesive.coats + 1):
        what = f"{many}, coat {coat} of {bench.adhesive.coats}"
        yield task(f"coat-{coat}", "coat", pads * bench.adhesive.pad_seconds / 60, (before,), what=what)
        last = coat == bench.adhesive.coats
        wait = bench.adhesive.set_minutes if last else bench.adhesive.dry_minutes
        stage: Stage = "adhesive sets" if last else "coat dries"
        yield task(f"dry-{coat}", stage, wait, (f"coat-{coat}-{n}",), (), what=what, frees=last)
        before = f"dry-{coat}-{n}"
    yield task("slit", "slit apart", pads * bench.times.slit_seconds / 60, (before,))
    cutter = _first(batch).studio.cutter
    trimming = pads * bench.times.trim_strokes * cutter.stroke_seconds / 60
    yield task("trim", "trim", trimming, (f"slit-{n}",))
    yield task("look", "look over", pads * bench.times.check_seconds / 60, (f"trim-{n}",))
    magnets = sum(number * batch.lots[index].design.finish.magnets for index, number in load.pads)
    yield task(
        "magnets", "magnets", magnets * bench.magnets.seconds / 60, (f"look-{n}",), what=f"{magnets} magnets"
    )
    sleeved = sum(number for index, number in load.pads if batch.lots[index].sleeve is not None)
    yield task("sleeve", "sleeve", sleeved * bench.sleeve_seconds / 60, (f"magnets-{n}",), what=f"{sleeved} pads")
    names = ", ".join(extra.name for extra in bench.extras)
    seconds = sum(extra.seconds for extra in bench.extras)
    yield task("extras", "extras", pads * seconds / 60, (f"sleeve-{n}",), what=f"{names} for {many}")


def _before_counting(load: Load, batch: Batch) -> tuple[str, ...]:
    """The cutting of every page that holds a design of the load, and of its backs."""
    lots = {index for index, _ in load.pads}
    pages = (f"cut-{page.number}" for page in batch.plan.pages if lots.intersection(page.designs))
    return (*pages, *_before_boarding(lots, batch))


def _before_boarding(lots: set[int], batch: Batch) -> Iterator[str]:
    if batch.boards is None:
        return
    trims = {batch.lots[index].design.trim for index in lots}
    for number, layout in enumerate(batch.boards.layouts, 1):
        if any(batch.boards.sizes[item].trim in trims for item, _ in layout.gives):
            yield f"boards-{number}"


def _without_empty(tasks: list[Task]) -> Iterator[Task]:
    """Tasks of no length left out, but for those that take or free a clamp."""
    before: dict[str, tuple[str, ...]] = {}
    for task in tasks:
        after = tuple(dict.fromkeys(key for name in task.after for key in before.get(name, (name,))))
        if task.minutes <= 0 and not (task.takes_clamp or task.frees_clamp):
            before[task.key] = after
            continue
        yield replace(task, after=after)


def _first(batch: Batch) -> Design:
    return batch.lots[0].design
