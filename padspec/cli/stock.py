"""padspec stock: the ledger of pads made, sold, returned and counted, and what is on hand."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

import click

from padspec.base.errors import Problem, ProblemsError
from padspec.base.money import minor_digits
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.cli.options import CONTEXT, as_json
from padspec.cli.say import one_problem, say_json, say_problems, unusable
from padspec.cli.stock_text import entered_data, entered_lines, stock_data, stock_lines
from padspec.cli.stock_words import Words, parted
from padspec.resolve.stall import read_stall
from padspec.stock import cells
from padspec.stock.append import enter, load
from padspec.stock.events import KINDS, LEDGER, Event, Kind
from padspec.stock.ledger import Ledger, least_pads, price_of
from padspec.stock.on_hand import late_counts, shortfalls, tallies
from padspec.workspace import FolderWorkspace

Value = TypeVar("Value")

EPILOG = """\b
Examples:
  padspec stock                                        what is on hand, and the takings
  padspec stock made NG-MOTH=12 NG-OWL=6
  padspec stock made saturday.job.yaml                 every pad of a job
  padspec stock sold NG-MOTH=3 --each 6.50 --at "Saturday market" --date 2026-06-06
  padspec stock returned NG-OWL=1 --each 6.50
  padspec stock counted NG-MOTH=7 --at "one got wet"   what a stock-take found
"""


@dataclass(frozen=True, slots=True)
class Said:
    """What the options say of the lines to enter, as written; `date` and `each` may be empty."""

    each: str
    place: str
    date: str
    new: bool


@click.command("stock", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("words", nargs=-1, metavar="[EVENT SKU=PADS... | JOB] [FOLDER]")
@click.option("--each", default="", metavar="PRICE", help="Price of one pad, sold or returned, such as 6.50.")
@click.option("--at", "place", default="", metavar="PLACE", help="Where it was, or what else there is to say.")
@click.option("--date", "day", default="", metavar="DAY", help="The day, such as 2026-06-06. [default: today]")
@click.option("--new", is_flag=True, help="Take a SKU that neither a design here nor the ledger has.")
@as_json
def command(words: tuple[str, ...], each: str, place: str, day: str, new: bool, as_json: bool) -> int:
    """Enter what was made and sold, and show what is on hand.

    EVENT is made, sold, returned or counted, followed by numbers of pads by SKU, or by a job that was made. Each
    becomes a line at the foot of stock.csv in the project folder; all of a command are entered or none, and lines
    that stand there are never changed. counted is a stock-take: so many there are, whatever the lines above say.
    Without an EVENT, what is on hand is shown.
    Exit status: 0, 1 where a line sells more than there was, 2 where something could not be used.
    """
    said = Said(each, place, day, new)
    root = None
    try:
        kind = next((one for one in KINDS if words and words[0] == one), None)
        given = parted(kind, words[1:] if kind else words)
        root = given.root
        if kind is None:
            _refuse_options(said)
            return _show(FolderWorkspace(given.root), as_json)
        return _enter(kind, given, said, as_json)
    except ProblemsError as error:
        if as_json:
            return unusable(error, as_json)
        say_problems(error, root)
        return 2


def _show(workspace: FolderWorkspace, as_json: bool) -> int:
    currency = read_stall(workspace).currency
    ledger = load(workspace, currency)
    faults, doubts = tuple(shortfalls(ledger.events)), tuple(late_counts(ledger.events))
    if as_json:
        say_json(stock_data(tallies(ledger.events), currency, faults, doubts))
    else:
        for told in (faults, doubts):
            if told:
                say_problems(ProblemsError(*told), workspace.root)
        click.echo("\n".join(stock_lines(tallies(ledger.events), currency)))
    return 1 if faults else 0


def _enter(kind: Kind, given: Words, said: Said, as_json: bool) -> int:
    workspace = FolderWorkspace(given.root)
    currency = read_stall(workspace).currency
    events = _events(kind, given, said, currency, workspace)
    if not said.new:
        _refuse_unknown(given, load(workspace, currency))
    ledger = enter(events, workspace, currency)
    entered = ledger.events[-len(events) :]
    if as_json:
        say_json(entered_data(entered, tallies(ledger.events), currency))
    else:
        click.echo("\n".join(entered_lines(entered, tallies(ledger.events), currency)))
    return 0


def _events(kind: Kind, given: Words, said: Said, currency: str, workspace: FolderWorkspace) -> tuple[Event, ...]:
    date = _option("--date", said.date, cells.day) if said.date else workspace.today()
    place = _option("--at", said.place, cells.note)
    each = _option("--each", said.each, lambda text: price_of(kind, text, currency, minor_digits(currency)))
    return tuple(
        Event(
            date,
            kind,
            _option(f"{sku}={number}", sku, cells.sku),
            _option(f"{sku}={number}", number, lambda text: cells.pads(text, least_pads(kind))),
            each,
            place,
        )
        for sku, number in given.pads
    )


def _option(name: str, text: str, read: Callable[[str], Value]) -> Value:
    try:
        return read(text.strip())
    except cells.CellError as error:
        raise one_problem(name, error.message, error.mend) from None


def _refuse_unknown(given: Words, ledger: Ledger) -> None:
    """A SKU that was mistyped would be a pad of its own from then on."""
    known = {event.sku for event in ledger.events}
    strange = [sku for sku, _ in given.pads if sku not in known]
    if strange:
        _refuse_strange(strange, known, given.root)


def _refuse_strange(strange: list[str], known: set[str], root: Path) -> None:
    from padspec.collection.project_skus import project_skus

    designs = project_skus(root)
    every = sorted({*designs, *known})
    problems = [
        Problem(
            Place(sku, 0, 0),
            f"Neither a design in {root.name or root} nor {LEDGER} has this SKU.",
            f"{did_you_mean(sku, every) if every else ''} To enter it as it is, add --new.".strip(),
        )
        for sku in strange
        if sku not in designs
    ]
    if problems:
        raise ProblemsError(*problems)


def _refuse_options(said: Said) -> None:
    given = [name for name, text in (("--each", said.each), ("--at", said.place), ("--date", said.date)) if text]
    given += ["--new"] if said.new else []
    if given:
        mend = f"Say it before them: padspec stock {KINDS[1]} SKU=3 {given[0]} …; events: {', '.join(KINDS)}."
        raise one_problem(given[0], "This belongs to an event, and none is named.", mend)
