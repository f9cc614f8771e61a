"""What a line of the ledger says: on a day, so many pads of a SKU were made, sold, returned, or counted."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from padspec.base.place import Place

Kind = Literal["made", "sold", "returned", "counted"]
#: Few on purpose. A pad that is spoiled, given away or lost shows at the next count, and so is no sale.
KINDS: tuple[Kind, ...] = ("made", "sold", "returned", "counted")
#: Those that may have a price; a return takes its price out of the takings.
PRICED: tuple[Kind, ...] = ("sold", "returned")

LEDGER = "stock.csv"
COLUMNS = ("date", "event", "sku", "pads", "each", "place")
MOST_PADS = 100_000
#: A place or a note has at most so many characters.
MOST_LETTERS = 200


@dataclass(frozen=True, slots=True)
class Event:
    """One line: `date` is YYYY-MM-DD, `each` the price of one pad in the studio's currency, None where none is
    known, `place` where it was or what else there is to say. `counted` says how many pads there are, the others
    how many come or go. `line` is where it stands, 0 before it stands anywhere.
    """

    date: str
    kind: Kind
    sku: str
    pads: int
    each: Decimal | None = None
    place: str = ""
    line: int = 0

    def after(self, on_hand: int) -> int:
        """How many pads are on hand after this, of those that were before.

        >>> Event("2026-06-06", "sold", "NG-MOTH", 3).after(12)
        9
        >>> Event("2026-06-06", "counted", "NG-MOTH", 7).after(9)
        7
        """
        if self.kind == "counted":
            return self.pads
        return on_hand - self.pads if self.kind == "sold" else on_hand + self.pads

    @property
    def takings(self) -> Decimal:
        """What the line brought in, below nothing for a return; nothing where no price is known."""
        if self.each is None:
            return Decimal(0)
        return self.each * (-self.pads if self.kind == "returned" else self.pads)

    @property
    def spot(self) -> Place:
        """The line in the ledger."""
        return Place(LEDGER, self.line, 1)
