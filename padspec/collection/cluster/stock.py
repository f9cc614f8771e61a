"""Large files on the workers of a cluster: each is sent to a worker once, whatever number of tasks need it."""

from collections.abc import Callable
from contextlib import suppress
from threading import Thread
from typing import TYPE_CHECKING

from padspec.collection.cluster.shelf import held, keep

if TYPE_CHECKING:
    from distributed import Client

#: So long the arrival of a file is waited for, in seconds, and in bytes a second that any line should carry.
_PATIENCE, _SLOW = 3.0, 1_000_000


class Stock:
    """What the workers of a cluster have, as far as it is known here, from this build and from earlier ones."""

    def __init__(self, client: "Client") -> None:
        self._client = client
        self._holds = {worker: set(found) for worker, found in client.run(held, on_error="ignore").items()}

    def provide(self, contents: dict[str, bytes]) -> None:
        """Send to each worker those of some contents, by digest, that it does not have."""
        if all(holds.issuperset(contents) for holds in self._holds.values()):
            return
        self._holds = {worker: self._holds.get(worker, set()) for worker in self._client.nthreads()}
        for digest, data in contents.items():
            without = [worker for worker, holds in self._holds.items() if digest not in holds]
            if without:
                self._send(data, without)
            # What did not arrive will be told of by whoever needs it.
            for worker in without:
                self._holds[worker].add(digest)

    def lost(self, worker: str, digests: tuple[str, ...]) -> None:
        """Note that a worker does not have some contents; it may be one that has only just come."""
        self._holds.setdefault(worker, set()).difference_update(digests)

    def _send(self, data: bytes, workers: list[str]) -> None:
        def sending() -> None:
            with suppress(Exception):  # a worker or the scheduler has ended: noticed where tasks are waited for
                self._client.run(keep, data, workers=workers, on_error="ignore")

        _within(_PATIENCE + len(data) / _SLOW, sending)


def _within(seconds: float, call: Callable[[], None]) -> None:
    """Call, and wait so long at most: where a worker has just ended, its scheduler knocks for half a minute."""
    thread = Thread(target=call, daemon=True)
    thread.start()
    thread.join(seconds)
