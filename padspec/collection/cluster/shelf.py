"""What a worker of a cluster keeps from one unit of work to the next: large files, each by its content."""

from threading import Lock

from padspec.workspace import content_digest


class Shelf:
    """Contents by digest; past `most` bytes in all, those go first that were not asked for the longest."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._lock = Lock()
        self._kept: dict[str, bytes] = {}

    def put(self, data: bytes) -> None:
        """Keep some content."""
        with self._lock:
            self._kept[content_digest(data)] = data
            over = sum(map(len, self._kept.values())) - self._most
            for digest, old in tuple(self._kept.items())[:-1]:
                if over > 0:
                    over -= len(old)
                    del self._kept[digest]

    def get(self, digest: str) -> bytes | None:
        """The content with a digest, or None where it is not kept."""
        with self._lock:
            data = self._kept.pop(digest, None)
            if data is not None:
                self._kept[digest] = data
            return data

    @property
    def digests(self) -> tuple[str, ...]:
        """The digests of all that is kept."""
        with self._lock:
            return tuple(self._kept)


#: That of this process. Nothing hangs on what is still there but what has to be sent again.
_SHELF = Shelf(512 * 1024 * 1024)


def keep(data: bytes) -> None:
    """Put some content on this process's shelf."""
    _SHELF.put(data)


def kept(digest: str) -> bytes | None:
    """Some content from this process's shelf."""
    return _SHELF.get(digest)


def held() -> tuple[str, ...]:
    """The digests of all that is on this process's shelf."""
    return _SHELF.digests
