"""What is true of the workshop, typed: printer, cutter, stock, other paper, ink, press, tolerances.

Lengths are millimetres; errors are ± limits held 95 % of the time; money is exact.
"""

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from padspec.base.geometry import Sides, Size
from padspec.base.place import Place
from padspec.resolve.money import Money
from padspec.resolve.workbench import Workbench

CutterKind = Literal["knife", "lever", "guillotine"]
Intent = Literal["perceptual", "relative", "saturation", "absolute"]
Turn = Literal["unknown", "left", "right"]


@dataclass(frozen=True, slots=True)
class Printer:
    """The printer, for the sheet upright as it is fed.

    `offset` is how far it shifts the middle of the print, to the right and down; `scale` what it makes of a length
    across and down, as a share of one; `turn` where the head of a page wider than high ends up; `sheet_minutes`
    how long one sheet takes.
    """

    margins: Sides
    offset: tuple[float, float]
    scale: tuple[float, float]
    turn: Turn
    placement_error: float
    skew_error: float
    least_line: float
    least_screened_line: float
    sheet_minutes: float


@dataclass(frozen=True, slots=True)
class Cutter:
    """What the sheets are cut with: how many it takes at once (a guillotine: how high a stack), and how long one
    stroke takes with setting it up.
    """

    kind: CutterKind
    error: float
    sheets_at_once: int
    clamp_height: float
    stroke_seconds: int


@dataclass(frozen=True, slots=True)
class Stock:
    """The paper: grammage in g/m², caliper, how far both may be off as a share of one, price of a sheet (None
    where it is not stated), and how much ink it takes, as a share of one ink's solid (2.6 is 260 %).
    """

    grammage: float
    caliper: float
    tolerance: float
    price: Decimal | None
    ink_limit: float


@dataclass(frozen=True, slots=True)
class OtherSheet:
    """A size of sheet that the maker can buy as well, to be compared."""

    size_name: str
    size: Size
    price: Decimal | None


@dataclass(frozen=True, slots=True)
class Tolerance:
    """What the maker still takes for good: a sliver as wide as this, a panel this far off its middle, and how
    often either may be missed, as a share of one.
    """

    sliver: float
    off_centre: float
    chance: float


@dataclass(frozen=True, slots=True)
class Offcut:
    """Something that can be made of what is left of a sheet."""

    name: str
    size: Size


@dataclass(frozen=True, slots=True)
class Cartridge:
    """Price of one ink's cartridge and how many pages it is said to print at 5 % cover."""

    price: Decimal
    pages: int


#: The inks of a process, in the order in which everything lists them.
INKS = ("cyan", "magenta", "yellow", "black")


@dataclass(frozen=True, slots=True)
class Ink:
    """The printer's inks, each None where it is not stated, and what cleaning takes beside, as a share of one."""

    cyan: Cartridge | None
    magenta: Cartridge | None
    yellow: Cartridge | None
    black: Cartridge | None
    allowance: float

    @property
    def cartridges(self) -> tuple[Cartridge | None, ...]:
        """Those of `INKS`, in that order."""
        return self.cyan, self.magenta, self.yellow, self.black


@dataclass(frozen=True, slots=True)
class Press:
    """How work that is sent out is prepared: the press's profile and how colours are brought into it; `place` is
    where the studio names the profile.
    """

    place: Place
    profile_file: str
    profile: bytes
    intent: Intent
    black_point: bool
    pages: Literal["face", "sheet"]


@dataclass(frozen=True, slots=True)
class Studio:
    """The workshop. `sheet` is its usual size of paper, which the stock's price is for; `overs` is a share of one;
    `press` is None where no work is sent out.
    """

    name: str
    sheet: Size
    printer: Printer
    cutter: Cutter
    stock: Stock
    other_sheets: tuple[OtherSheet, ...]
    tolerance: Tolerance
    offcuts: tuple[Offcut, ...]
    ink: Ink
    press: Press | None
    money: Money
    bench: Workbench
    overs: float
    test_sheets: int

    @property
    def currency(self) -> str:
        """The currency of every price."""
        return self.money.currency
