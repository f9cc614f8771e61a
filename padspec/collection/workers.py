"""Who does the work: this process, or processes beside it. What they make does not hang on how many there are."""

import multiprocessing
import os
import signal
import sys
import threading
from collections.abc import Callable, Iterable, Iterator, Sized
from concurrent.futures import FIRST_COMPLETED, Executor, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from itertools import chain, islice
from typing import Protocol, TypeVar

from padspec.base.errors import PadspecError

#: So many tasks a process wait, so that none is idle while results are put in place.
_AHEAD = 2

Task = TypeVar("Task")
Result = TypeVar("Result")


class Workers(Protocol):
    """Whoever can do tasks of a kind that can be sent elsewhere."""

    def run(self, work: Callable[[Task], Result], tasks: Iterable[Task]) -> Iterator[tuple[Task, Result]]:
        """Each task with what came of it, as they are done; tasks are taken only as they can be begun."""
        ...


class Here:
    """This process, one task after the other."""

    def run(self, work: Callable[[Task], Result], tasks: Iterable[Task]) -> Iterator[tuple[Task, Result]]:
        """See Workers.run."""
        for task in tasks:
            yield task, work(task)


class Processes:
    """Several processes on this machine."""

    def __init__(self, jobs: int) -> None:
        self._jobs = jobs

    def run(self, work: Callable[[Task], Result], tasks: Iterable[Task]) -> Iterator[tuple[Task, Result]]:
        """See Workers.run; a single task is done here. PadspecError where a process ends before its time."""
        to_do = iter(tasks)
        first = tuple(islice(to_do, 2))
        if len(first) < 2:
            yield from Here().run(work, first)
            return
        context = multiprocessing.get_context(_way_to_start())
        number = min(self._jobs, len(tasks)) if isinstance(tasks, Sized) else self._jobs
        pool = ProcessPoolExecutor(number, context, initializer=_stop_at_once)
        try:
            yield from completed(pool, work, chain(first, to_do), _AHEAD * number)
        except BrokenProcessPool:
            message = "A process that built beside this one ended before its time; memory may have run out."
            raise PadspecError(f"{message} Try fewer: --jobs {max(1, number // 2)}.") from None
        except KeyboardInterrupt:
            # Nobody wants what they are about any more, and none of them writes a file.
            _end_processes()
            raise ProcessesEnded from None
        finally:
            pool.shutdown(wait=False, cancel_futures=True)


class ProcessesEnded(KeyboardInterrupt):
    """This run was interrupted, and so were the processes beside it: whoever leaves must not wait for them, since
    they may have been caught holding each other up.
    """


def _end_processes() -> None:
    for process in multiprocessing.active_children():
        process.kill()


def completed(
    executor: Executor, work: Callable[[Task], Result], tasks: Iterable[Task], ahead: int
) -> Iterator[tuple[Task, Result]]:
    """Hand tasks to an executor, never more than `ahead` at once; each with its result, as they are done."""
    to_do = iter(tasks)
    waiting: dict[Future[Result], Task] = {executor.submit(work, task): task for task in islice(to_do, ahead)}
    while waiting:
        done, _ = wait(waiting, return_when=FIRST_COMPLETED)
        for future in done:
            # Nothing but what is under way is held: together, results would fill the memory.
            task = waiting.pop(future)
            waiting.update((executor.submit(work, more), more) for more in islice(to_do, 1))
            yield task, future.result()


def usual_jobs() -> int:
    """As many processes as this one may use cores."""
    if sys.platform == "linux":
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _way_to_start() -> str:
    """Forked processes have everything loaded already; that is safe only while no thread runs."""
    return "fork" if sys.platform == "linux" and threading.active_count() == 1 else "spawn"


def _stop_at_once() -> None:
    """A worker that is interrupted simply ends: it never writes a file."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
