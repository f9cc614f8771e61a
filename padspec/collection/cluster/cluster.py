"""Who does the work: the workers of a Dask cluster, on this machine or on others.

They get what processes beside this one would get, with the files that it may read packed up (see packing.py and
parcels.py), and make the same bytes of it: no worker is used that works with other versions than this machine. A
worker may end at any time; what it was about is then done by another.
"""

import time
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, CancelledError, Executor, Future, wait
from contextlib import suppress
from dataclasses import dataclass, replace
from itertools import islice
from typing import Any, Generic, NoReturn, TypeVar

from padspec.base.errors import Problem, ProblemsError
from padspec.collection.cluster.door import connected, place_of, refuse_unlike
from padspec.collection.cluster.parcels import (
    Answer,
    Done,
    Lacking,
    Parcel,
    Unlike,
    missed,
    parcel,
    unpack_and_do,
    whole,
)
from padspec.collection.cluster.stock import Stock
from padspec.collection.records.circumstances import tools
from padspec.collection.records.font_files import font_digests
from padspec.collection.work import Made, Unit

#: So many tasks a worker wait, so that none is idle while results are put in place.
_AHEAD = 2
#: Seconds until somebody looks whether any worker is left, while nothing comes back.
_GLANCE = 0.5
#: So often a worker may lack a file that was sent to it; after that the file travels with the task.
_MOST_LACKING = 2

Task = TypeVar("Task")
Result = TypeVar("Result")


@dataclass(frozen=True, slots=True, eq=False)
class _Sending(Generic[Task]):
    """A task under way: what was sent, the large files that it needs, and how often a worker lacked some."""

    task: Task
    parcel: Parcel[Task]
    contents: dict[str, bytes]
    lacked: int = 0


class Cluster:
    """The workers of a scheduler. `jobs` is how many there were at first; each does one task at a time.

    Raises ProblemsError where nobody answers or no worker appears within `patience` seconds, and where a worker
    has other versions. The same patience holds later, when all workers are gone.
    """

    def __init__(self, address: str, patience: float = 10.0) -> None:
        self._address, self._patience = address, patience
        self._client = connected(address, patience)
        refuse_unlike(address, self._client.run(tools, on_error="return"))
        self.jobs = len(self._client.nthreads())
        self._stock = Stock(self._client)
        self._latest: dict[str, bytes] = {}
        self._seen = time.monotonic()

    def close(self) -> None:
        """Part from the scheduler; a command that ends does so anyway."""
        self._client.close()

    def run(self, work: Callable[[Task], Result], tasks: Iterable[Task]) -> Iterator[tuple[Task, Result]]:
        """See Workers.run. Raises ProblemsError where the cluster cannot go on; what was under way is let go."""
        to_do = iter(tasks)
        executor: Executor = self._client.get_executor(pure=False)
        under_way: dict[Future[Answer[Result]], _Sending[Task]] = {}

        def send(sending: _Sending[Task]) -> None:
            self._stock.provide({digest: sending.contents[digest] for _, digest in sending.parcel.large})
            under_way[executor.submit(unpack_and_do, work, sending.parcel)] = sending

        try:
            for task in islice(to_do, _AHEAD * self.jobs):
                send(self._packed(task))
            self._seen = time.monotonic()
            while under_way:
                for future in self._come_back(under_way):
                    sending = under_way.pop(future)
                    answer = self._answer(future, sending)
                    if not isinstance(answer, Done):
                        send(self._again(sending, answer))
                        continue
                    for task in islice(to_do, 1):
                        send(self._packed(task))
                    yield sending.task, _checked(work, sending.task, answer)
        finally:
            if self._client.status == "running":
                executor.shutdown(wait=False)

    def _packed(self, task: Task) -> _Sending[Task]:
        sent, contents = parcel(task)
        # Units of one design come one after the other: their pictures are held once.
        self._latest = {digest: self._latest.get(digest, data) for digest, data in contents.items()}
        return _Sending(task, sent, self._latest)

    def _come_back(self, under_way: Iterable[Future[Any]]) -> set[Future[Any]]:
        """Those that are done; ProblemsError where there has been no worker for too long."""
        done, _ = wait(under_way, timeout=_GLANCE, return_when=FIRST_COMPLETED)
        if done or self._any_worker():
            self._seen = time.monotonic()
        elif self._client.status == "closed" or time.monotonic() - self._seen > self._patience:
            message = f"For {self._patience:g} s no worker was left to do what is not done yet."
            self._refuse(message, "Start workers again, then build again: what was made by now is kept.")
        return done

    def _any_worker(self) -> bool:
        with suppress(OSError, TimeoutError):
            return self._client.status == "running" and bool(self._client.nthreads())
        return False

    def _answer(self, future: Future[Answer[Result]], sending: _Sending[Any]) -> Answer[Result]:
        from distributed import KilledWorker

        try:
            return future.result()
        except CancelledError:
            message = "The scheduler ended, or let go of what was under way."
            self._refuse(message, "Start it again with its workers, then build again.")
        except KilledWorker as error:
            what = sending.task.path if sending.parcel.packed else "a task"
            message = f"Each worker that began {what} ended before its time, {error.allowed_failures + 1} by now."
            self._refuse(message, "Memory may have run out: give each worker more of it, and only one thread.")

    def _again(self, sending: _Sending[Task], answer: Lacking | Unlike) -> _Sending[Task]:
        """What to send where a worker could not begin; ProblemsError where it never will."""
        if isinstance(answer, Unlike):
            refuse_unlike(self._address, {answer.worker: answer.tools})
        else:
            self._stock.lost(answer.worker, answer.digests)
        if sending.lacked < _MOST_LACKING:
            return replace(sending, lacked=sending.lacked + 1)
        return replace(sending, parcel=whole(sending.parcel, sending.contents))

    def _refuse(self, message: str, mend: str) -> NoReturn:
        raise ProblemsError(Problem(place_of(self._address), message, mend))


def _checked(work: Callable[[Task], Result], task: Task, done: Done[Result]) -> Result:
    """What came of a task, made again here where the worker could not know enough.

    That is so where it looked for a file that was not packed, for names beside a missing one to propose, or for a
    font that need not be installed and is another there.
    """
    return work(task) if missed(task, done) or not _sound(task, done.result) else done.result


def _sound(task: object, result: object) -> bool:
    if not isinstance(task, Unit) or not isinstance(result, tuple):
        return True
    made = [one for one in result if isinstance(one, Made)]
    return all(not one.problems and one.fonts == font_digests(tuple(one.fonts)) for one in made)
