"""A task as it travels to a worker of a cluster, and what the worker does with it.

Small files travel inside; a large one is named by its content, for the worker to take from its shelf.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache
from threading import Lock
from typing import Any, Generic, Protocol, TypeVar, cast, runtime_checkable

from padspec.base.errors import ProblemsError
from padspec.collection.cluster.lookout import Lookout, Watched
from padspec.collection.cluster.packing import packed
from padspec.collection.cluster.shelf import kept
from padspec.collection.records.circumstances import tools
from padspec.collection.source import Folder, Packed, Source
from padspec.reading.variation import Variation
from padspec.workspace import content_digest

#: Files with fewer bytes are not worth the asking whether a worker has them.
_SMALL = 32 * 1024
_NOTHING = Packed((), None)
#: One task at a time in a process, as everywhere: threads would only share out the same one core.
_at_work = Lock()

Task = TypeVar("Task")
Result = TypeVar("Result")


@runtime_checkable
class OfFiles(Protocol):
    """A task that is made of the maker's files; a dataclass, of which a copy can have another source."""

    @property
    def source(self) -> Source:
        """Where its files are."""
        ...

    @property
    def path(self) -> str:
        """The design's."""
        ...

    @property
    def variations(self) -> tuple[Variation, ...]:
        """What is varied in it."""
        ...


@dataclass(frozen=True, slots=True, eq=False)
class Parcel(Generic[Task]):
    """A task without its files, the small files, the large ones by path and digest, and the date of here.

    `tools` is the digest of what the sender works with. `packed` is False where the task is sent as it was.
    """

    task: Task
    small: tuple[tuple[str, bytes], ...]
    large: tuple[tuple[str, str], ...]
    date: str | None
    tools: str
    packed: bool


@dataclass(frozen=True, slots=True)
class Done(Generic[Result]):
    """The task was done; `absent` are the files that it looked for and that were not packed, `looked_around` says
    whether it looked for names in a folder of which not all was packed.
    """

    result: Result
    absent: tuple[str, ...] = ()
    looked_around: bool = False


@dataclass(frozen=True, slots=True)
class Lacking:
    """The worker at an address has no longer, or not yet, what it needs."""

    worker: str
    digests: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Unlike:
    """The worker at an address works with other tools than the sender."""

    worker: str
    tools: dict[str, str]


Answer = Done[Result] | Lacking | Unlike


def parcel(task: Task) -> tuple[Parcel[Task], dict[str, bytes]]:
    """A task ready to travel, and the contents of its large files by digest."""
    if not isinstance(task, OfFiles):
        return Parcel(task, (), (), None, own_tools(), packed=False), {}
    source = task.source
    box = packed(source, task.path, task.variations) if isinstance(source, Folder) else source
    small = tuple((path, data) for path, data in box.files if len(data) < _SMALL)
    digests = [(path, content_digest(data), data) for path, data in box.files if len(data) >= _SMALL]
    large = tuple((path, digest) for path, digest, _ in digests)
    bare = _with_source(task, _NOTHING)
    contents = {digest: data for _, digest, data in digests}
    return Parcel(bare, small, large, box.date, own_tools(), packed=True), contents


def whole(sent: Parcel[Task], contents: dict[str, bytes]) -> Parcel[Task]:
    """A parcel with its large files inside, for where nothing else helps."""
    return replace(
        sent, small=sent.small + tuple((path, contents[digest]) for path, digest in sent.large), large=()
    )


def unpack_and_do(work: Callable[[Task], Result], sent: Parcel[Task]) -> Answer[Result]:
    """On the worker: do the task, if all that it needs is here."""
    if sent.tools != own_tools():
        return Unlike(_address(), tools())
    found = tuple((path, kept(digest)) for path, digest in sent.large)
    lacking = tuple(digest for (_, digest), (_, data) in zip(sent.large, found, strict=True) if data is None)
    if lacking:
        return Lacking(_address(), lacking)
    task, lookout = sent.task, Lookout()
    if sent.packed:
        files = sent.small + tuple((path, data) for path, data in found if data is not None)
        task = _with_source(task, Watched(files, sent.date, lookout))
    with _at_work:
        result = work(task)
    return Done(result, tuple(sorted(lookout.absent)), lookout.looked_around)


def missed(task: object, done: Done[Any]) -> bool:
    """Whether a task, where it was done, could not see what it looked for and what may be here."""
    if not isinstance(task, OfFiles) or not isinstance(task.source, Folder):
        return False
    here = task.source.open()
    try:
        return done.looked_around or any(here.is_file(path) for path in done.absent)
    except ProblemsError:  # what is wrong with a file is told by whoever needs it
        return True


@lru_cache(maxsize=1)
def own_tools() -> str:
    """The digest of what this process works with."""
    return content_digest(repr(tools()).encode())


def _with_source(task: Task, source: Source) -> Task:
    return cast(Task, replace(cast(Any, task), source=source))


def _address() -> str:
    from distributed import get_worker

    return str(get_worker().address)
