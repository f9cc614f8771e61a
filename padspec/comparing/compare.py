"""Compare: each pad before and now is read, and where it is not alike made twice, and its facts and faces held up
against each other. What was committed is read from git, what is now from the folder; neither is written.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.collection_file import COLLECTION_FILE, DESIGN_ENDING
from padspec.collection.workers import Workers
from padspec.comparing.alike import Alike
from padspec.comparing.comparison import Compared, Comparison
from padspec.comparing.git import Commit, Repository, commit_of, repository_of
from padspec.comparing.held_up import made_side, one_sided, two_sided
from padspec.comparing.revision import RevisionWorkspace
from padspec.comparing.sides import Coded, Pair, Source, coded, members_of, paired, title_of
from padspec.workspace import FolderWorkspace, Workspace

#: So many pads of one design are compared by one worker, one after the other: they share their picture.
_PADS_A_TASK = 8


@dataclass(frozen=True, slots=True, eq=False)
class Task:
    """Some pads of one design, to be compared anywhere on this machine; `drawn`: whether pictures are wanted."""

    repository: Repository
    commit: Commit
    pairs: tuple[Pair, ...]
    drawn: bool


def compare(
    sources: Sequence[Source], revision: str, drawn: bool, workers: Workers, done: Callable[[int, int], None]
) -> Comparison:
    """Every pad that the sources mean, as of a revision and now.

    `done` is called with how many pads have been compared, and of how many. Raises ProblemsError where there is no
    such revision, and where what is meant now cannot be read.
    """
    tasks: list[Task] = []
    notes: list[str] = []
    for root, some in groupby(sorted(sources, key=lambda source: str(source.root)), lambda source: source.root):
        made, note = _tasks(root, tuple(some), revision, drawn)
        tasks += made
        notes += [note] if note else []
    whole = sum(len(task.pairs) for task in tasks)
    found: dict[int, tuple[Compared, ...]] = {}
    numbered = {id(task): number for number, task in enumerate(tasks)}
    for task, pads in workers.run(compare_pads, tasks):
        found[numbered[id(task)]] = pads
        done(sum(len(some) for some in found.values()), whole)
    pads = tuple(pad for number in sorted(found) for pad in found[number])
    commit = tasks[0].commit if tasks else commit_of(repository_of(sources[0].root), revision)
    return Comparison(title_of(sources), commit, pads, " ".join(notes))


def compare_pads(task: Task) -> tuple[Compared, ...]:
    """The work of one task; what a pad's files hold wrong is told in its place."""
    before, now = RevisionWorkspace(task.repository, task.commit), FolderWorkspace(task.repository.project)
    alike = Alike(before, now)
    return tuple(_compared(pair, before, now, alike, task) for pair in task.pairs)


def _compared(pair: Pair, before: Workspace, now: Workspace, alike: Alike, task: Task) -> Compared:
    old, new = pair.before, pair.now
    if new is None:
        return _gone(old, before, task.drawn)
    if old is not None and old.sku == new.sku and alike.members(old.member, new.member):
        return Compared(new.sku, new.name, new.member.path, "same", same_face=True)
    try:
        made = made_side(new.member, now)
    except ProblemsError as error:
        return Compared(new.sku, new.name, new.member.path, "unreadable", problems=error.problems)
    if old is None:
        return one_sided(made.pad, "added", task.drawn)
    renamed = old.sku if old.sku.casefold() != made.pad.design.sku.casefold() else ""
    try:
        earlier = made_side(old.member, before)
    except ProblemsError as error:
        untold = f"As of {task.commit.asked} it cannot be read: {error.problems[0]}"
        return replace(one_sided(made.pad, "changed", task.drawn), untold=untold, old_sku=renamed)
    return replace(two_sided(earlier, made, task.drawn), old_sku=renamed)


def _gone(old: Coded | None, before: Workspace, drawn: bool) -> Compared:
    if old is None:
        raise ValueError("a pair has a pad on one side at least")
    try:
        return one_sided(made_side(old.member, before).pad, "removed", drawn)
    except ProblemsError:
        return Compared(old.sku, old.name, old.member.path, "removed")


def _tasks(root: Path, sources: tuple[Source, ...], revision: str, drawn: bool) -> tuple[list[Task], str]:
    """The work in one project, and what is to be told of it as a whole."""
    repository = repository_of(root)
    commit = commit_of(repository, revision)
    before, now = RevisionWorkspace(repository, commit), FolderWorkspace(root)
    note = f"{commit.asked} has nothing of this project, so everything is new." if before.is_empty else ""
    news, olds = [], []
    for source in sources:
        new = members_of(source, now)
        try:
            old = members_of(source, before)
        except ProblemsError as error:
            old, note = (), f"As of {commit.asked}, {error.problems[0]} So its pads are told as new."
        if not new and not old:
            raise _nothing(source, commit)
        news += new
        olds += old
    pairs = paired(coded(olds, before), coded(news, now))
    return [Task(repository, commit, some, drawn) for some in _shares(pairs)], note


def _shares(pairs: Sequence[Pair]) -> Iterator[tuple[Pair, ...]]:
    """Pairs of one design together, not too many at once."""
    for _, some in groupby(pairs, _path):
        left = tuple(some)
        for start in range(0, len(left), _PADS_A_TASK):
            yield left[start : start + _PADS_A_TASK]


def _path(pair: Pair) -> str:
    one = pair.now or pair.before
    return one.member.path if one else ""


def _nothing(source: Source, commit: Commit) -> ProblemsError:
    place = Place(source.inside or str(source.root), 0, 0)
    if source.inside.endswith((".yaml", ".yml")):
        return ProblemsError(Problem(place, f"There is no such file, neither now nor as of {commit.asked}."))
    told = f"no {COLLECTION_FILE} and no file that ends in {DESIGN_ENDING}"
    message = f"There is no design here, neither now nor as of {commit.asked}: {told}."
    return ProblemsError(Problem(place, message, "Begin one from a picture: padspec new PICTURE"))
