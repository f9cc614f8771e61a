"""Large files on the workers of a cluster: each is sent to a worker once, whatever number of tasks need it."""

from typing import TYPE_CHECKING

from padspec.collection.shelf import keep, lacking

if TYPE_CHECKING:
    from distributed import Client


class Stock:
    """What the workers of a cluster have, as far as it is known here."""

    def __init__(self, client: "Client") -> None:
        self._client = client
        self._holds: dict[str, set[str]] = {}

    def provide(self, contents: dict[str, bytes]) -> None:
        """Send to each worker those of some contents, by digest, that it has neither from here nor from before."""
        digests = tuple(contents)
        if self._holds and not self._unsure(digests):
            return
        self._holds = {worker: self._holds.get(worker, set()) for worker in self._client.nthreads()}
        unsure = self._unsure(digests)
        # A worker that has ended by now, or has no shelf, does not answer; no task waits for it.
        told = self._client.run(lacking, digests, workers=unsure, on_error="ignore") if unsure else {}
        for worker, lacks in told.items():
            self._holds[worker].update(set(digests).difference(lacks))
        for digest, data in contents.items():
            without = [worker for worker, lacks in told.items() if digest in lacks]
            arrived = self._client.run(keep, data, workers=without, on_error="ignore") if without else {}
            for worker in arrived:
                self._holds[worker].add(digest)

    def lost(self, worker: str, digests: tuple[str, ...]) -> None:
        """Note that a worker does not have some contents; it may be one that has only just come."""
        self._holds.setdefault(worker, set()).difference_update(digests)

    def _unsure(self, digests: tuple[str, ...]) -> list[str]:
        return [worker for worker, holds in self._holds.items() if not holds.issuperset(digests)]
