"""What to make for the next markets, as lines for a terminal and as data: the numbers and what they rest on."""

from collections.abc import Iterator
from textwrap import wrap
from typing import Any

from padspec.base.numbers import number_text, percent_text
from padspec.cli.say import counted, table
from padspec.cli.stock_text import right_set
from padspec.jobs.restock import Line, Proposal
from padspec.stock.events import LEDGER
from padspec.stock.forecast import PRIOR_DAYS

#: From here on days differ so much that the chance asked for is not held.
_WIDE = 2.0
_WIDTH = 110


def told_for(proposal: Proposal) -> str:
    """What a proposal is made for, in a line."""
    stall = proposal.wish.stall
    place = f" at {proposal.wish.place}" if proposal.wish.place else ""
    return f"{counted(stall.markets, 'market day')}{place}, chance {percent_text(stall.chance)}"


def restock_lines(proposal: Proposal) -> Iterator[str]:
    """The proposal, pad by pad, and what it rests on."""
    yield f"Restock for {told_for(proposal)}, from {counted(proposal.days, 'selling day')} in {LEDGER}:"
    shown = [line for line in proposal.lines if line.forecast or line.make or line.on_hand]
    strange = len(proposal.lines) - len(shown)
    if shown:
        head = ("sku", "days", "sold", "a day", "sold out", "wanted", "on hand", "make", "")
        rows = [_row(line, proposal) for line in shown]
        yield table(*right_set(head, rows, tuple(range(1, 8))))
    if not proposal.mean:
        where = f" at {proposal.wish.place}" if proposal.wish.place else ""
        yield f"No pad was sold{where} yet, so there is nothing to forecast from."
    if strange:
        yield f"{counted(strange, 'design')} with no line in {LEDGER} yet: nobody was offered them."
    if not proposal.mean or strange:
        yield "Say how many: --pads SKU=6, or --least 3 for three of each on the table."
    if proposal.mean:
        yield from _grounds(proposal)
    if proposal.job is None:
        yield "Nothing needs to be made."


def _row(line: Line, proposal: Proposal) -> tuple[str, ...]:
    known = line.forecast.history if line.forecast else None
    days = known.days if known else 0
    return (
        line.sku,
        str(days),
        str(known.sold if known else 0),
        number_text(known.sold / days, 1) if known and days else "–",
        str(known.sold_out if known else 0),
        str(line.wanted),
        str(line.on_hand),
        str(line.make),
        _remark(line, proposal.wish.stall.least),
    )


def _remark(line: Line, least: int) -> str:
    if line.fixed:
        return "as you asked"
    if line.make > max(0, line.wanted - line.on_hand):
        return f"{line.make - max(0, line.wanted - line.on_hand)} more fill the sheets"
    return "the least you asked for" if line.make and line.wanted == least else ""


def _grounds(proposal: Proposal) -> Iterator[str]:
    """What the numbers rest on, and what they leave out."""
    chance = percent_text(proposal.wish.stall.chance)
    yield ""
    yield from wrap(
        f"Wanted is the fewest that last with a chance of {chance}, each pad for itself. A day's sales are taken "
        f"as Poisson, at a rate that is not known (gamma prior of {number_text(proposal.mean, 1)} a day, the mean "
        f"of all pads, with the weight of {counted(PRIOR_DAYS, 'day')}), so what is wanted is negative binomial. "
        "A day counts for a pad that was on hand, whether it was sold or not.",
        _WIDTH,
    )
    short = [line.sku for line in proposal.lines if line.forecast and line.forecast.history.sold_out]
    if short:
        yield from wrap(
            f"Sold out on some days: {', '.join(short)}. More may have been wanted then, so the number is rather "
            "too low.",
            _WIDTH,
        )
    if proposal.spread is not None and proposal.spread >= _WIDE:
        yield from wrap(
            f"Days differ {number_text(proposal.spread, 1)} times as much as chance alone would have it, so "
            f"{chance} is more than these numbers hold: ask for a higher --chance, or go by one place with --at.",
            _WIDTH,
        )


def restock_data(proposal: Proposal) -> dict[str, Any]:
    """The proposal as data."""
    stall = proposal.wish.stall
    return {
        "chance": stall.chance,
        "markets": stall.markets,
        "least": stall.least,
        "place": proposal.wish.place,
        "selling_days": proposal.days,
        "prior": {"mean_a_day": round(proposal.mean, 6), "weight_in_days": PRIOR_DAYS},
        "spread": None if proposal.spread is None else round(proposal.spread, 6),
        "pads": [_line_data(line) for line in proposal.lines],
    }


def _line_data(line: Line) -> dict[str, Any]:
    told = line.forecast
    return {
        "sku": line.sku,
        "days_on_hand": told.history.days if told else None,
        "sold": told.history.sold if told else None,
        "days_sold_out": told.history.sold_out if told else None,
        "negative_binomial": {"r": round(told.shape, 6), "p": round(told.p, 6)} if told else None,
        "wanted": line.wanted,
        "on_hand": line.on_hand,
        "make": line.make,
        "as_asked": line.fixed,
    }
