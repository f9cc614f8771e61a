"""The options of padspec plan that belong to --restock, kept apart from what it takes to follow them."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

import click

from padspec.cli.say import one_problem

F = TypeVar("F", bound=Callable[..., Any])


@dataclass(frozen=True, slots=True)
class RestockOptions:
    """The options as they were given; None or empty where the studio's setting holds."""

    restock: bool
    chance: str
    markets: int | None
    least: int | None
    place: str | None
    write: bool

    def refuse_without_restock(self) -> None:
        """Raise ProblemsError for an option that has no meaning in a plan of given numbers."""
        given = {
            "--chance": self.chance,
            "--markets": self.markets,
            "--least": self.least is not None,
            "--at": self.place,
            "--write": self.write,
        }
        name = next((name for name, value in given.items() if value), None)
        if name and not self.restock:
            raise one_problem(name, "This belongs to --restock.", "Add --restock, or leave it out.")


def restocking(function: F) -> F:
    """--restock and what goes with it."""
    for option in reversed(_OPTIONS):
        function = option(function)
    return function


_OPTIONS = (
    click.option("--restock", is_flag=True, help="Propose how many, from stock.csv: sales, and what is on hand."),
    click.option(
        "--chance", default="", metavar="SHARE", help="How likely each pad is to last. [default: the studio's]"
    ),
    click.option(
        "--markets",
        type=click.IntRange(1, 100),
        metavar="N",
        help="Market days to stock for. [default: the studio's]",
    ),
    click.option(
        "--least",
        type=click.IntRange(0, 1000),
        metavar="N",
        help="So many of each on the table. [default: the studio's]",
    ),
    click.option("--at", "place", metavar="PLACE", help="Go by the sales at this place alone."),
    click.option("--write", is_flag=True, help="Write what is proposed as restock.job.yaml."),
)
