"""New lines at the foot of the ledger: all of a command or none, each on the disk before it is said to be entered.

The whole file is written anew beside the old one and renamed over it. One write at the end of the file would cost
less, but a disk that loses power may keep the first half of such a write, and where that half ends with a line,
nobody could tell that others are missing. A rename is done or not done, a reader without the lock never sees half
a line, and a ledger of ten years is a few hundred kilobytes.
"""

from collections import Counter
from collections.abc import Sequence

from padspec.base.errors import Problem, ProblemsError
from padspec.base.money import minor_digits
from padspec.base.place import Place
from padspec.stock.events import LEDGER, Event
from padspec.stock.ledger import Ledger, head, read_ledger, record
from padspec.stock.lock import held
from padspec.stock.on_hand import on_hand
from padspec.workspace import FolderWorkspace, Workspace

#: A program that writes the ledger without asking for the lock, an editor say, is let finish this many times.
_TRIES = 20


def load(workspace: Workspace, currency: str) -> Ledger:
    """The ledger of a project, an empty one where there is none yet; raises ProblemsError."""
    return read_ledger(workspace.read(LEDGER), currency) if workspace.is_file(LEDGER) else Ledger()


def enter(events: Sequence[Event], workspace: FolderWorkspace, currency: str) -> Ledger:
    """Add events to the ledger of a project, in their order; the ledger as it then is.

    Raises ProblemsError, and nothing is entered, for a ledger that cannot be read and for pads sold that are not
    on hand.
    """
    with held(workspace.root):
        for _ in range(_TRIES):
            before = workspace.stamp(LEDGER)
            old = workspace.read(LEDGER) if before else b""
            ledger = read_ledger(old, currency)
            _refuse_what_is_not_there(ledger, events)
            new = old + added(ledger, events, currency)
            if workspace.stamp(LEDGER) == before:
                workspace.write_to_last(LEDGER, new)
                return read_ledger(new, currency)
    message = f"Another program changed it {_TRIES} times while a line was to be entered."
    raise ProblemsError(Problem(Place(LEDGER, 0, 0), message, "End that program, then enter this again."))


def added(ledger: Ledger, events: Sequence[Event], currency: str) -> bytes:
    """What entering some events puts behind the bytes of a ledger: LF lines, parted as those that are there."""
    digits = minor_digits(currency)
    lines = [record(event, ledger.delimiter, digits) for event in events]
    return "".join([head(ledger.delimiter) if ledger.is_new else "", *lines]).encode()


def _refuse_what_is_not_there(ledger: Ledger, events: Sequence[Event]) -> None:
    """No more can be sold than there is, so one of the two numbers is wrong, and the maker says which."""
    there = Counter(on_hand(ledger.events))
    problems = []
    for event in events:
        left = event.after(there[event.sku])
        if event.kind == "sold" and left < 0:
            message = f"{event.sku}: {there[event.sku]} on hand, {event.pads} to be sold, {-left} short."
            mend = f"If there are more, count them first: padspec stock counted {event.sku}={event.pads}"
            problems.append(Problem(Place(LEDGER, 0, 0), message, f"{mend} (the number that you find)."))
        there[event.sku] = left
    if problems:
        raise ProblemsError(*problems)
