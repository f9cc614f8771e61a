"""Tasks in, a time line out: when each starts, with one pair of hands, one printer and so many clamps.

The best of several list schedules: at every moment the free hands take, of all tasks that could start, the one
that by some rule should go first (`_ranks`; Johnson, Naval Research Logistics Quarterly 1, 1954, from memory).
No task is interrupted. That need not be the shortest time line there is, so beside it stands what none can beat.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush
from random import Random

from padspec.schedule.task import Resource, Task

#: Ranks that are tried: the plain ones, then shaken ones, by turns a little and altogether. As many as the work
#: allows, counted in pairs of tasks, so that a large batch does not take longer than a small one.
_TRIES, _WORK = 160, 600_000
_SHAKEN_BY = (0.35, 1.0)
_SOON = 1e-9


@dataclass(frozen=True, slots=True)
class Placed:
    """A task with its start and end, in minutes from the beginning."""

    task: Task
    start: float
    end: float


@dataclass(frozen=True, slots=True)
class Timeline:
    """Every task in order of start. `minutes` is when the last one ends, `bound` what no time line beats, and
    `bottleneck` what sets it: hands, printer or clamp, or "waiting" for the longest way of one load by itself.
    """

    placed: tuple[Placed, ...]
    minutes: float
    bound: float
    bottleneck: str
    hands: float

    @property
    def shortest(self) -> bool:
        """Whether it is proven that none is shorter."""
        return self.minutes <= self.bound + 1e-6


def timeline_of(tasks: Sequence[Task], clamps: int) -> Timeline:
    """The shortest time line found for these tasks, each of which comes after those it waits for."""
    tails = _tails(tasks)
    bounds = _bounds(tasks, tails, clamps)
    bottleneck, bound = max(bounds.items(), key=lambda item: item[1])
    best: list[Placed] | None = None
    for ranks in _ranks(tasks, tails):
        other = _schedule(tasks, clamps, ranks)
        best = other if best is None or _length(other) < _length(best) else best
        if _length(best) <= bound + 1e-6:
            break
    best = best or []
    hands = sum(task.minutes for task in tasks if task.by_hand)
    ordered = sorted(best, key=lambda one: (one.start, one.end))
    return Timeline(tuple(ordered), _length(best), bound, bottleneck, hands)


def _ranks(tasks: Sequence[Task], tails: dict[str, float]) -> Iterator[dict[str, float]]:
    """What goes first, by several rules: the longest way to the end; Johnson's rule for two machines (tasks
    shorter than what follows them first, the shortest of them first; then those that most follows); both shaken.
    """
    johnson = {task.key: _johnson(task.minutes, tails[task.key] - task.minutes) for task in tasks}
    yield tails
    yield johnson
    random = Random(1)
    for turn in range(min(_TRIES, _WORK // max(len(tasks) ** 2, 1))):
        plain, by = (tails, johnson)[turn % 2], _SHAKEN_BY[turn // 2 % len(_SHAKEN_BY)]
        yield {key: rank * (1 + random.uniform(-by, by)) for key, rank in plain.items()}


def _johnson(minutes: float, rest: float) -> float:
    """A rank: between 1 and 2 for tasks shorter than what follows, below 1 for the others.

    >>> _johnson(1, 2) > _johnson(3, 6) > _johnson(7, 5) > _johnson(5, 2)
    True
    """
    return 1 + 1 / (1 + minutes) if minutes < rest else 1 - 1 / (1 + rest)


def _length(placed: Sequence[Placed]) -> float:
    return max((one.end for one in placed), default=0.0)


def _tails(tasks: Sequence[Task]) -> dict[str, float]:
    """Minutes from the start of each task to the end of all, if nothing but its followers had to be done."""
    followers, _ = _followers(tasks)
    tails: dict[str, float] = {}
    for task in reversed(tasks):
        tails[task.key] = task.minutes + max((tails[one.key] for one in followers[task.key]), default=0.0)
    return tails


def _heads(tasks: Sequence[Task]) -> dict[str, float]:
    """When each task could start at the earliest."""
    ends: dict[str, float] = {}
    heads: dict[str, float] = {}
    for task in tasks:
        heads[task.key] = max((ends[key] for key in task.after), default=0.0)
        ends[task.key] = heads[task.key] + task.minutes
    return heads


def _bounds(tasks: Sequence[Task], tails: dict[str, float], clamps: int) -> dict[str, float]:
    """For each thing that can be busy: what comes before its first task, all its work, what comes after its last.
    And the longest way through.
    """
    heads = _heads(tasks)
    bounds = {"waiting": max((heads[task.key] + tails[task.key] for task in tasks), default=0.0)}
    resources: tuple[Resource, ...] = ("hands", "printer")
    for resource in resources:
        own = [task for task in tasks if resource in task.busy]
        if own:
            start = min(heads[task.key] for task in own)
            end = min(tails[task.key] - task.minutes for task in own)
            bounds[resource] = start + sum(task.minutes for task in own) + end
    loads = [_in_clamp(tasks, number, heads, tails) for number in sorted({task.load for task in tasks} - {0})]
    if loads:
        work = max(sum(length for _, length, _ in loads) / clamps, max(length for _, length, _ in loads))
        bounds["clamp"] = min(head for head, _, _ in loads) + work + min(tail for _, _, tail in loads)
    return bounds


def _in_clamp(
    tasks: Sequence[Task], load: int, heads: dict[str, float], tails: dict[str, float]
) -> tuple[float, float, float]:
    """Of one load: the earliest that it is clamped, how long it stays, how long the rest takes."""
    first = next(task for task in tasks if task.load == load and task.takes_clamp)
    last = next(task for task in tasks if task.load == load and task.frees_clamp)
    rest = tails[last.key] - last.minutes
    return heads[first.key], tails[first.key] - rest, rest


def _schedule(tasks: Sequence[Task], clamps: int, ranks: dict[str, float]) -> list[Placed]:
    """One list schedule: whatever can start, starts; of several the one of the highest rank."""
    followers, open_ones = _followers(tasks)
    ready = [task for task in tasks if not task.after]
    free: dict[str, float] = {"hands": 0.0, "printer": 0.0}
    held = 0  # clamps that are in use
    running: list[tuple[float, int, Task]] = []
    now, placed = 0.0, list[Placed]()
    while ready or running:
        able = [
            task
            for task in ready
            if all(free[name] <= now + _SOON for name in task.busy if name != "clamp")
            and (not task.takes_clamp or held < clamps)
        ]
        if able:
            task = max(able, key=lambda one: ranks[one.key])
            ready.remove(task)
            end = now + task.minutes
            for name in task.busy:
                free[name] = end
            held += task.takes_clamp
            placed.append(Placed(task, now, end))
            heappush(running, (end, len(placed), task))
            continue
        now = running[0][0]
        while running and running[0][0] <= now + _SOON:
            _, _, done = heappop(running)
            held -= done.frees_clamp
            for other in followers[done.key]:
                open_ones[other.key] -= 1
                if not open_ones[other.key]:
                    ready.append(other)
    return placed


def _followers(tasks: Sequence[Task]) -> tuple[dict[str, list[Task]], dict[str, int]]:
    """Who waits for each task, and for how many tasks each waits."""
    followers: dict[str, list[Task]] = {task.key: [] for task in tasks}
    for task in tasks:
        for key in task.after:
            followers[key].append(task)
    return followers, {task.key: len(task.after) for task in tasks}
