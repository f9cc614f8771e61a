"""What to make for the next markets: the ledger and the designs in, for each the pads to have and to make out."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.jobs.job import Job, Wish
from padspec.jobs.plan import JobPlan, Wanted, make_plan
from padspec.resolve.stall import Stall
from padspec.stock.append import load
from padspec.stock.events import LEDGER, MOST_PADS
from padspec.stock.forecast import Forecast, forecast, histories, pooled_mean, spread
from padspec.stock.ledger import Ledger
from padspec.stock.on_hand import on_hand, shortfalls
from padspec.stock.selling_days import places, selling_days
from padspec.workspace import Workspace

RESTOCK = "Restock"
RESTOCK_FILE = "restock.job.yaml"
_MARK = "# Written by padspec plan --restock --write, which replaces it:"


@dataclass(frozen=True, slots=True)
class RestockWish:
    """How far to stock, as the stall says; by the days at one `place` alone, or at all (None). `fixed`: numbers to
    make that the maker has set.
    """

    stall: Stall
    place: str | None = None
    fixed: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Line:
    """One pad: its forecast, how many to have, how many there are, how many to make. There is no forecast where
    nothing was ever sold, and for a pad that the ledger does not know: nobody was ever offered it. `fixed`: the
    maker has said how many to make.
    """

    sku: str
    forecast: Forecast | None
    wanted: int
    on_hand: int
    make: int
    fixed: bool = False


@dataclass(frozen=True, slots=True)
class Proposal:
    """A line for each design, and what they were reckoned from: selling days, the mean of all pads a day, and how
    much days differ (None where that cannot be said).
    """

    wish: RestockWish
    lines: tuple[Line, ...]
    days: int
    mean: float
    spread: float | None

    @property
    def job(self) -> Job | None:
        """The job of making them; None where there is nothing to make."""
        place = Place("--restock", 0, 0)
        wishes = tuple(Wish(line.sku, line.make, place) for line in self.lines if line.make)
        return Job(RESTOCK, wishes) if wishes else None


def propose(skus: Sequence[str], workspace: Workspace, wish: RestockWish) -> Proposal:
    """What to make of some designs of a project. Raises ProblemsError for a ledger that cannot be used, and for a
    place or a SKU that is not known.
    """
    ledger = load(workspace, wish.stall.currency)
    _refuse(ledger, skus, wish)
    days = selling_days(ledger.events, wish.place)
    mean = pooled_mean(days)
    there, fixed = on_hand(ledger.events), dict(wish.fixed)
    lines = []
    for history in histories(days, skus):
        known = mean > 0 and history.sku in there
        expected = forecast(history, mean, wish.stall.markets) if known else None
        enough = expected.enough(wish.stall.chance) if expected else 0
        wanted = max(enough, wish.stall.least)
        have = there.get(history.sku, 0)
        make = fixed.get(history.sku, min(max(0, wanted - have), MOST_PADS))
        lines.append(Line(history.sku, expected, wanted, have, make, history.sku in fixed))
    return Proposal(wish, tuple(lines), len(days), mean, spread(days))


def _refuse(ledger: Ledger, skus: Sequence[str], wish: RestockWish) -> None:
    problems = list(shortfalls(ledger.events))
    known = places(ledger.events)
    if wish.place is not None and wish.place.casefold() not in {place.casefold() for place in known}:
        mend = did_you_mean(wish.place, known) if known else f"{LEDGER} has no sale at any place yet."
        problems.append(Problem(Place(f"--at {wish.place}", 0, 0), "Nothing was ever sold there.", mend))
    for sku, number in wish.fixed:
        if sku not in skus:
            message = f"No design here has the SKU {sku}."
            problems.append(Problem(Place(f"--pads {sku}={number}", 0, 0), message, did_you_mean(sku, skus)))
    if problems:
        raise ProblemsError(*problems)


def filled(plan: JobPlan, proposal: Proposal) -> JobPlan:
    """The plan with the pads that its sheets hold over what was wanted, if those take no more sheets or pages.

    Numbers that the maker has set stay as they are.
    """
    fixed = {line.sku for line in proposal.lines if line.fixed}
    more = tuple(
        one if one.design.sku in fixed else Wanted(one.design, one.pads + spare)
        for one, spare in zip(plan.wanted, plan.spare, strict=True)
    )
    if more == plan.wanted:
        return plan
    again = make_plan(plan.name, more, plan.gang)
    fits = (again.sheets, len(again.pages)) <= (plan.sheets, len(plan.pages))
    return again if fits else plan


def with_made(proposal: Proposal, plan: JobPlan) -> Proposal:
    """The proposal with the numbers that a plan makes."""
    wanted = {one.design.sku: one.pads for one in plan.wanted}
    lines = tuple(replace(line, make=wanted.get(line.sku, line.make)) for line in proposal.lines)
    return replace(proposal, lines=lines)


def write_job(proposal: Proposal, told: str, workspace: Workspace) -> str:
    """Write the proposal as a job of its own; its path. `told` says in a line what it was made for.

    Raises ProblemsError where a job of the maker's own has that name.
    """
    if workspace.is_file(RESTOCK_FILE):
        first = workspace.read(RESTOCK_FILE).decode("utf-8", "replace").partition("\n")[0]
        if not first.startswith(_MARK):
            message = "This job is your own: its line 1 does not say that padspec wrote it."
            raise ProblemsError(Problem(Place(RESTOCK_FILE, 1, 1), message, "Rename it, then write again."))
    pads = [f"  {line.sku}: {line.make}" for line in proposal.lines if line.make]
    text = "\n".join([f"{_MARK} {told}", f"job: {RESTOCK}", "pads:", *pads])
    workspace.write(RESTOCK_FILE, f"{text}\n".encode())
    return RESTOCK_FILE
