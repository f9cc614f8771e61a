"""A real cluster on this machine: a scheduler and workers as processes of their own, and what is done on them."""

import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from distributed import Client

from padspec.collection.cluster import parcels, shelf
from padspec.collection.records import circumstances
from padspec.collection.source import Source
from padspec.reading.variation import Variation
from padspec.workspace import content_digest

_TESTS = Path(__file__).parents[1]
_TRUE_VERSIONS = circumstances._versions
_SAID = re.compile(r"Scheduler at:\s+(tcp://\S+)")


@dataclass
class LocalCluster:
    """The scheduler's address, the workers' processes, and a client beside the one that is tested."""

    address: str
    client: Client
    workers: list[subprocess.Popen[bytes]] = field(default_factory=list)

    def add_workers(self, number: int) -> None:
        """Start workers of one thread that nobody starts again, and wait for them."""
        awaited = self.running + number
        for _ in range(number):
            args = [self.address, "--no-nanny", "--nthreads", "1", "--no-dashboard"]
            self.workers.append(_started("distributed.cli.dask_worker", *args))
        until(lambda: self.running == awaited)

    @property
    def running(self) -> int:
        return len(self.client.nthreads())

    def kill(self, worker: str) -> None:
        """End a worker at once, in the middle of what it does."""
        pid = self.client.run(os.getpid, workers=[worker])[worker]
        # Stopped first: what it is busy with now, it never finishes.
        os.kill(pid, signal.SIGSTOP)
        until(lambda: self.client.processing()[worker])
        os.kill(pid, signal.SIGKILL)

    def end(self) -> None:
        self.client.close()
        for process in self.workers:
            process.kill()
            process.wait()


@contextmanager
def started(workers: int) -> Iterator[LocalCluster]:
    scheduler = _started("distributed.cli.dask_scheduler", "--host", "127.0.0.1", "--port", "0", "--no-dashboard")
    assert scheduler.stderr is not None
    try:
        said = next(found for line in scheduler.stderr if (found := _SAID.search(line.decode())))
        cluster = LocalCluster(said[1], Client(said[1], timeout=10, set_as_default=False))
        try:
            cluster.add_workers(workers)
            yield cluster
        finally:
            cluster.end()
    finally:
        scheduler.kill()
        scheduler.wait()
        scheduler.stderr.close()


def _started(module: str, *args: str) -> subprocess.Popen[bytes]:
    errors = subprocess.PIPE if module.endswith("scheduler") else subprocess.DEVNULL
    surroundings = os.environ | {"PYTHONPATH": str(_TESTS), "SOURCE_DATE_EPOCH": "0"}
    return subprocess.Popen([sys.executable, "-m", module, *args], stderr=errors, env=surroundings)


def until(holds: Callable[[], Any], seconds: float = 20) -> None:
    """Wait until something holds; fail where it does not in time."""
    end = time.monotonic() + seconds
    while not holds():
        assert time.monotonic() < end, "it never came to that"
        time.sleep(0.01)


# What follows is done on the workers.


def slowly(number: int) -> int:
    time.sleep(0.05)
    return number * number


@dataclass(frozen=True)
class Reading:
    """A task that reads one file, named by no text of the design's."""

    source: Source
    path: str
    variations: tuple[Variation, ...]
    file: str


def reads(task: Reading) -> bytes | None:
    workspace = task.source.open()
    return workspace.read(task.file) if workspace.is_file(task.file) else None


def ends_its_worker(number: int) -> int:
    os._exit(number)


def count_arrivals() -> None:
    """Empty this worker's shelf, and note from now on what is put there."""
    noted: list[str] = []
    shelf._SHELF = shelf.Shelf(2**29)

    def counting(data: bytes) -> None:
        noted.append(content_digest(data))
        shelf._SHELF.put(data)

    shelf.keep = counting
    shelf.noted = noted


def arrivals() -> list[str]:
    return shelf.noted


def empty_shelf(most: int) -> None:
    shelf._SHELF = shelf.Shelf(most)


def pretend(numpy: str) -> None:
    """Say that this version of numpy is installed."""
    circumstances._versions = lambda: _TRUE_VERSIONS() | {"numpy": numpy}
    parcels.own_tools.cache_clear()
