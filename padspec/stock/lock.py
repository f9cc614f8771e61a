"""One entry at a time: a ledger is read, checked and added to by one process, and the next one waits for it.

The lock is kept in the system's folder for passing files, so that nothing of it lies in the maker's folder.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import gettempdir

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.stock.events import LEDGER
from padspec.workspace import content_digest

#: An entry takes a few milliseconds; whoever holds the ledger this long has come to a stop.
PATIENCE = 30


@contextmanager
def held(root: Path, patience: float = PATIENCE) -> Iterator[None]:
    """The ledger of a project for this process alone; raises ProblemsError after `patience` seconds, or where the
    system gives no lock: without one a line could be lost, so nothing is entered.
    """
    from filelock import FileLock, Timeout

    name = content_digest(f"{Path.home()}\n{root.resolve() / LEDGER}".encode("utf-8", "surrogateescape"))
    lock = FileLock(Path(gettempdir()) / f"padspec-stock-{name}.lock", timeout=patience)
    try:
        lock.acquire()
    except Timeout:
        message = f"Another padspec has held the ledger for {patience:g} seconds."
        raise ProblemsError(Problem(Place(LEDGER, 0, 0), message, "End it, then enter this again.")) from None
    except OSError as error:
        message = f"The system gives no lock in {gettempdir()}: {error.strerror}."
        mend = "Name a folder on a disk of this machine in TMPDIR, with at least 1 MB free."
        raise ProblemsError(Problem(Place(LEDGER, 0, 0), message, mend)) from None
    try:
        yield
    finally:
        lock.release()
