"""One build at a time for each output folder: a second one waits, and then finds most of its work done.

Every file is written whole at once, so nothing is harmed without it; what this saves is double work, and results
of two versions of a design side by side. The lock is kept in the system's folder for passing files, so that a
build that fails leaves nothing behind in the maker's.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import gettempdir

from padspec.workspace import content_digest


@contextmanager
def alone(folder: Path, waiting: Callable[[Path], None]) -> Iterator[bool]:
    """The folder for this process alone; gives whether another had to be waited for, and tells `waiting` so."""
    from filelock import FileLock, Timeout

    # Whose it is counts too: the lock of somebody else could not be opened.
    name = content_digest(f"{Path.home()}\n{folder.resolve()}".encode("utf-8", "surrogateescape"))
    lock = FileLock(Path(gettempdir()) / f"padspec-{name}.lock")
    had_to_wait = False
    # A lock that this system does not give is done without.
    with suppress(OSError):
        try:
            lock.acquire(timeout=0)
        except Timeout:
            had_to_wait = True
            waiting(folder)
            lock.acquire()
    try:
        yield had_to_wait
    finally:
        lock.release()
