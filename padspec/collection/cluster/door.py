"""The way into a Dask cluster: finding its scheduler, and refusing workers that would not make the same."""

import logging
import re
from typing import TYPE_CHECKING

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.records.circumstances import tools

if TYPE_CHECKING:
    from distributed import Client

_ADDRESS = re.compile(r"(tcp|tls)://(\[[0-9A-Fa-f:.]+\]|[^\s/:\[\]]+):(\d{1,5})")
_MOST_PORT = 65535
#: So many workers that cannot be used are named, however many there are.
_MOST_NAMED = 4


def place_of(address: str) -> Place:
    """What an error points at: the option as it was given."""
    return Place(f"--scheduler {address}", 0, 0)


def connected(address: str, patience: float) -> "Client":
    """A client of a scheduler that has workers; raises ProblemsError where there is none within some seconds."""
    match = _ADDRESS.fullmatch(address)
    if match is None or not 0 < int(match[3]) <= _MOST_PORT:
        message = f"This is not the address of a scheduler: tcp://HOST:PORT, with a port from 1 to {_MOST_PORT}."
        raise _problem(address, message, "Write it as the scheduler said it when it started: tcp://10.0.0.5:8786")
    try:
        from distributed import Client
    except ImportError:
        message = "This needs the package distributed, which is not installed."
        raise _problem(address, message, "Install it: pip install 'padspec[cluster]'") from None
    # What goes wrong is told once, as an error.
    logging.getLogger("distributed").setLevel(logging.CRITICAL + 1)
    try:
        client = Client(address, timeout=patience, set_as_default=False)
    except (OSError, TimeoutError):
        message = f"No scheduler answered within {patience:g} s."
        raise _problem(address, message, "Start one: dask scheduler; then, on each machine: dask worker") from None
    except (ImportError, RuntimeError, TypeError, ValueError) as error:
        raise _problem(address, f"The scheduler cannot be talked to: {error}.", "") from None
    try:
        client.wait_for_workers(1, timeout=patience)
    except TimeoutError:
        client.close()
        message = f"The scheduler has had no worker for {patience:g} s."
        mend = f"Start at least one: dask worker {address} --nthreads 1 --nworkers auto"
        raise _problem(address, message, mend) from None
    return client


def refuse_unlike(address: str, told: dict[str, object]) -> None:
    """Raise ProblemsError for the workers, by their addresses, that told of other tools than this process has."""
    found = {worker: _difference(theirs) for worker, theirs in sorted(told.items())}
    unlike = [(worker, difference, mend) for worker, (difference, mend) in found.items() if difference]
    problems = [
        Problem(place_of(address), f"Worker {worker} {difference}, so it might not make the same.", mend)
        for worker, difference, mend in unlike[:_MOST_NAMED]
    ]
    if len(unlike) > _MOST_NAMED:
        message = f"{len(unlike)} workers of {len(told)} are not as this machine; {_MOST_NAMED} are named."
        problems.append(Problem(place_of(address), message))
    if problems:
        raise ProblemsError(*problems)


def _difference(theirs: object) -> tuple[str, str]:
    """The first thing that a worker has otherwise, and how to mend it; empty where all is as here."""
    if not isinstance(theirs, dict):
        return f"cannot use padspec ({theirs})", "Install there what is here: pip install padspec; start it again."
    ours = tools()
    for name in (*ours, *theirs):
        there, here = theirs.get(name) or "none", ours.get(name) or "none"
        if there != here:
            return (
                f"has {name} {there}, this machine {here}",
                "Install the same on both, and start the worker again.",
            )
    return "", ""


def _problem(address: str, message: str, mend: str) -> ProblemsError:
    return ProblemsError(Problem(place_of(address), message, mend))
