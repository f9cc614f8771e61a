"""Compare: each pad before and now is read, and where it is not alike made twice, and its facts and faces held up
against each other. What was committed is read from git, what is now from the folder; neither is written.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.collection_file import COLLECTION_FILE, DESIGN_ENDING
from padspec.collection.variants import Member
from padspec.collection.workers import Workers
from padspec.comparing.alike import Alike
from padspec.comparing.comparison import Compared, Comparison, State
from padspec.comparing.git import Commit, Repository, commit_of, repository_of
from padspec.comparing.held_up import made_side, one_sided, two_sided
from padspec.comparing.revision import RevisionWorkspace
from padspec.comparing.sides import Coded, Pair, Source, coded, members_of, paired, title_of
from padspec.workspace import FolderWorkspace, Workspace

#: So many pads of one design are compared by one worker, one after the other: they share their picture.
_PADS_A_TASK = 8


@dataclass(frozen=True, slots=True, eq=False)
class Task:
    """Some pads of one design, to be compared anywhere on this machine.

    `numbers` are their places among all; `drawn` says whether pictures are wanted.
    """

    repository: Repository
    commit: Commit
    pairs: tuple[Pair, ...]
    numbers: tuple[int, ...]
    drawn: bool


@dataclass(frozen=True, slots=True, eq=False)
class Project:
    """What there is to compare in one project, and what is to be told of it as a whole."""

    repository: Repository
    commit: Commit
    pairs: tuple[Pair, ...]
    note: str


def compare(sources: Sequence[Source], revision: str, drawn: bool, workers: Workers) -> Comparison:
    """Every pad that the sources mean, as of a revision and now.

    Raises ProblemsError where there is no such revision, and where what is meant now cannot be read.
    """
    roots = dict.fromkeys(source.root for source in sources)
    projects = [_project(root, [one for one in sources if one.root == root], revision) for root in roots]
    found: dict[int, Compared] = {}
    tasks: list[Task] = []
    begun = 0
    for project in projects:
        found |= _alike(project, begun)
        left = [(begun + n, pair) for n, pair in enumerate(project.pairs) if begun + n not in found]
        tasks += _shares(left, project, drawn)
        begun += len(project.pairs)
    for task, pads in workers.run(compare_pads, tasks):
        found |= zip(task.numbers, pads, strict=True)
    notes = " ".join(project.note for project in projects if project.note)
    return Comparison(title_of(sources), projects[0].commit, tuple(found[n] for n in sorted(found)), notes)


def compare_pads(task: Task) -> tuple[Compared, ...]:
    """The work of one task; what a pad's files hold wrong is told in its place."""
    before, now = RevisionWorkspace(task.repository, task.commit), FolderWorkspace(task.repository.project)
    return tuple(_compared(pair, before, now, task) for pair in task.pairs)


def _alike(project: Project, begun: int) -> dict[int, Compared]:
    """The pads that are sure to be the same, by their places among all, those of this project from `begun`."""
    before = RevisionWorkspace(project.repository, project.commit)
    alike = Alike(before, FolderWorkspace(project.repository.project))
    found = {}
    for number, pair in enumerate(project.pairs, begun):
        old, new = pair.before, pair.now
        if old and new and old.sku == new.sku and alike.members(old.member, new.member):
            found[number] = replace(_bare(new, "same"), same_face=True)
    return found


def _compared(pair: Pair, before: Workspace, now: Workspace, task: Task) -> Compared:
    old, new = pair.before, pair.now
    if new is None:
        return _gone(old, before, task.drawn)
    try:
        made = made_side(new.member, now)
    except ProblemsError as error:
        return replace(_bare(new, "unreadable"), problems=error.problems)
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
        return _bare(old, "removed")


def _bare(one: Coded, state: State) -> Compared:
    """A pad of which no more is told than what it is called."""
    return Compared(one.sku, one.name, one.member.path, state, one.own_sku, one.member.variation.values)


def _project(root: Path, sources: Sequence[Source], revision: str) -> Project:
    repository = repository_of(root)
    commit = commit_of(repository, revision)
    before, now = RevisionWorkspace(repository, commit), FolderWorkspace(root)
    note = f"{commit.asked} has nothing of this project, so everything is new." if before.is_empty else ""
    news: list[Member] = []
    olds: list[Member] = []
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
    return Project(repository, commit, paired(coded(olds, before), coded(news, now)), note)


def _shares(numbered: Sequence[tuple[int, Pair]], project: Project, drawn: bool) -> Iterator[Task]:
    """Pairs of one design together, not too many at once."""
    for _, some in groupby(numbered, lambda one: _path(one[1])):
        left = tuple(some)
        for start in range(0, len(left), _PADS_A_TASK):
            numbers, pairs = zip(*left[start : start + _PADS_A_TASK], strict=True)
            yield Task(project.repository, project.commit, pairs, numbers, drawn)


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
