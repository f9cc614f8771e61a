"""The integer masters: which runs of which layout, and how many slots of each run every order takes.

Designs of one trim can stand in for each other in a slot, so patterns need not be listed: slots of equal runs are
shared out among the orders, and any such sharing can be laid out on the pages. That holds all patterns over the
given runs and layouts at once. Variables, in this order: pages of each run and layout; slots of each run for each
order; pads, sheets and use of each order's own page.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from padspec.planning.drafts import Draft, Shared
from padspec.planning.mixtures import Mixture
from padspec.planning.programme import Programme, Row
from padspec.planning.quantities import Need, joined_run
from padspec.planning.runs import Runs


@dataclass(frozen=True, slots=True, eq=False)
class Master:
    """What may be chosen from, and where each variable stands."""

    needs: tuple[Need, ...]
    mixtures: tuple[Mixture, ...]
    runs: Runs
    test_sheets: int

    @property
    def pages(self) -> int:
        """Variables that count shared pages."""
        return len(self.runs.lengths) * len(self.mixtures)

    def page(self, run: int, layout: int) -> int:
        """The variable that counts the pages of this run and layout."""
        return run * len(self.mixtures) + layout

    def slots(self, run: int, need: int) -> int:
        """The variable that counts the slots of this run that an order takes."""
        return self.pages + run * len(self.needs) + need

    def alone(self, need: int) -> tuple[int, int, int]:
        """The variables of an order's own page: its pads, its sheets, whether there is one."""
        first = self.pages + len(self.runs.lengths) * len(self.needs)
        return first + need, first + len(self.needs) + need, first + 2 * len(self.needs) + need


def fewest_sheets(master: Master, then_pages: bool = False) -> Programme:
    """Least sheets in all, test sheets included; of equals fewest pages, where both are asked for at once."""
    sheets = _sheets(master)
    if not then_pages:
        return _programme(master, sheets, ())
    pages = _pages(master)
    weight = float(2 * len(master.needs) + 2)
    return _programme(master, tuple(weight * s + p for s, p in zip(sheets, pages, strict=True)), ())


def fewest_pages(master: Master, sheets: int) -> Programme:
    """Fewest different pages with no more sheets than these."""
    taken = _sheets(master)
    limit = Row(tuple(range(len(taken))), taken, most=sheets + 0.5)
    return _programme(master, _pages(master), (limit,))


def _sheets(master: Master) -> tuple[float, ...]:
    shared = [float(run + master.test_sheets) for run in master.runs.lengths for _ in master.mixtures]
    n = len(master.needs)
    slots = [0.0] * (len(master.runs.lengths) * n)
    return (*shared, *slots, *[0.0] * n, *[1.0] * n, *[float(master.test_sheets)] * n)


def _pages(master: Master) -> tuple[float, ...]:
    uses = {master.alone(i)[2] for i in range(len(master.needs))}
    return tuple(float(j < master.pages or j in uses) for j in range(len(_sheets(master))))


def _programme(master: Master, costs: tuple[float, ...], more: tuple[Row, ...]) -> Programme:
    needs, runs = master.needs, master.runs
    most_pages = float(sum(need.pads for need in needs))
    slots = [
        float(-(-need.pads // each)) if each else 0.0
        for row in runs.yields.tolist()
        for need, each in zip(needs, row, strict=True)
    ]
    own = [joined_run(need.pads, need.use, need.n_up) for need in needs]
    limits = (
        *[most_pages] * master.pages,
        *slots,
        *[float(need.pads) for need in needs],
        *map(float, own),
        *[1.0] * len(needs),
    )
    rows = (*_slot_rows(master), *_order_rows(master), *more)
    return Programme(costs, limits, rows)


def _slot_rows(master: Master) -> list[Row]:
    """No more slots taken of a run than its pages have, for each trim."""
    rows = []
    for r in range(len(master.runs.lengths)):
        for kind in range(len(master.mixtures[0])):
            pages = [(master.page(r, q), float(m[kind])) for q, m in enumerate(master.mixtures) if m[kind]]
            takers = [
                (master.slots(r, i), -1.0)
                for i, need in enumerate(master.needs)
                if need.kind == kind and master.runs.yields[r, i]
            ]
            terms = pages + takers
            rows.append(Row(tuple(j for j, _ in terms), tuple(f for _, f in terms), least=0.0))
    return rows


def _order_rows(master: Master) -> list[Row]:
    """Every order met; its own page long enough for the pads made there, and paid for."""
    rows = []
    for i, need in enumerate(master.needs):
        pads, sheets, use = master.alone(i)
        made = [(r, float(each)) for r, each in enumerate(master.runs.yields[:, i].tolist()) if each]
        variables = (*(master.slots(r, i) for r, _ in made), pads)
        rows.append(Row(variables, (*(each for _, each in made), 1.0), least=float(need.pads)))
        rows.append(Row((sheets, pads), (float(need.n_up), -need.use), least=0.0))
        rows.append(Row((use, pads), (float(need.pads), -1.0), least=0.0))
    return rows


def values_of(draft: Draft, master: Master) -> list[int]:
    """A draft as a solution to start from; its runs must be among the master's."""
    values = [0] * (master.pages + (len(master.runs.lengths) + 3) * len(master.needs))
    for page in draft.shared:
        r = master.runs.lengths.index(page.run)
        values[master.page(r, page.layout)] += 1
        for i, n in enumerate(page.slots):
            values[master.slots(r, i)] += n
    for i, (n, need) in enumerate(zip(draft.alone, master.needs, strict=True)):
        pads, sheets, use = master.alone(i)
        values[pads], values[sheets], values[use] = n, joined_run(n, need.use, need.n_up), int(n > 0)
    return values


def draft_of(values: Sequence[int], master: Master) -> Draft:
    """A solution laid out: of each run the slots go to the pages in order, one design after the other."""
    shared: list[Shared] = []
    for r, run in enumerate(master.runs.lengths):
        layouts = [q for q in range(len(master.mixtures)) for _ in range(values[master.page(r, q)])]
        queues = _queues(values, master, r)
        for q in layouts:
            slots = [0] * len(master.needs)
            for kind, n in enumerate(master.mixtures[q]):
                for i in queues[kind][:n]:
                    slots[i] += 1
                queues[kind] = queues[kind][n:]
            shared.append(Shared(run, q, tuple(slots)))
    return Draft(tuple(shared), tuple(values[master.alone(i)[0]] for i in range(len(master.needs))))


def _queues(values: Sequence[int], master: Master, r: int) -> list[list[int]]:
    """Which orders wait for the slots of a run, by trim: those that take most of them first."""
    queues: list[list[int]] = [[] for _ in master.mixtures[0]]
    for i in sorted(range(len(master.needs)), key=lambda i: (-values[master.slots(r, i)], i)):
        queues[master.needs[i].kind] += [i] * values[master.slots(r, i)]
    return queues
