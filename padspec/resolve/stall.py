"""What the studio says of the stall, without a design: its currency, and how far a restock is to reach."""

from dataclasses import dataclass

from padspec.base.money import CurrencyError, minor_digits
from padspec.reading.defaults import defaults
from padspec.reading.document import read
from padspec.reading.gather import STUDIO_FILE, read_file
from padspec.resolve.settings import Settings, Troubles, merge
from padspec.workspace import Workspace


@dataclass(frozen=True, slots=True)
class Stall:
    """`currency` by ISO 4217; `chance` that what is taken along is enough, as a share of one; `markets` to stock
    for; `least` pads of each design that the table is to show.
    """

    currency: str
    chance: float
    markets: int
    least: int


def read_stall(workspace: Workspace) -> Stall:
    """The stall of a project's studio; its defaults without a studio.yaml. Raises ProblemsError."""
    there = workspace.is_file(STUDIO_FILE)
    document = read_file(STUDIO_FILE, "studio", workspace) if there else read("{}\n", STUDIO_FILE, "studio")
    troubles = Troubles()
    studio = Settings(merge(defaults("studio"), document.root), troubles)
    money, restock = studio.section("money"), studio.section("restock")
    currency, chance = money.text("currency"), restock.share("chance")
    try:
        minor_digits(currency)
    except CurrencyError as error:
        troubles.add(money.place("currency"), str(error.args[0]), str(error.args[1]))
    if not within(chance):
        troubles.add(restock.place("chance"), f"{restock.text('chance')} is no chance to stock by.", CHANCES)
    troubles.raise_if_any()
    return Stall(currency, chance, restock.integer("markets"), restock.integer("least"))


#: The chances that can be asked for: below, more than half of the days would sell out; nothing is ever certain.
LEAST_CHANCE, MOST_CHANCE = 0.5, 0.999
CHANCES = "Write a percentage from 50 % to 99.9 %, such as 90 %."


def within(chance: float) -> bool:
    """Whether a chance can be asked for.

    >>> within(0.9), within(1.0)
    (True, False)
    """
    return LEAST_CHANCE <= chance <= MOST_CHANCE
