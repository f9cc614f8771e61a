"""What stands on the workbench, typed: board, adhesive, clamp, magnets, sleeves, and how long things take.

Lengths are millimetres, densities g/cm³, prices exact and None where they are not stated. Shares are of one.
"""

from dataclasses import dataclass
from decimal import Decimal

from padspec.base.geometry import Size


@dataclass(frozen=True, slots=True)
class Board:
    """The stiff backing, cut from big sheets of size `sheet`; a thickness of 0 is no board at all."""

    thickness: float
    density: float
    tolerance: float
    sheet: Size
    price: Decimal | None
    stroke_seconds: int


@dataclass(frozen=True, slots=True)
class Adhesive:
    """Padding adhesive: `rate` is grams a square metre wet for one coat, `price` that of a kilogram."""

    coats: int
    rate: float
    dry_minutes: float
    set_minutes: float
    pad_seconds: float
    price: Decimal | None


@dataclass(frozen=True, slots=True)
class Clamp:
    """What holds the stack while it dries: how high a stack, how many at once, and minutes to fill one."""

    height: float
    count: int
    load_minutes: float


@dataclass(frozen=True, slots=True)
class Magnets:
    """Pieces of flexible magnet: `pull` is grams a square centimetre straight off steel, `measured` by the maker
    or taken from the usual figures; `slide` the share of it that holds against sliding.
    """

    count: int
    size: Size
    thickness: float
    density: float
    pull: float
    measured: bool
    slide: float
    safety: float
    seconds: float
    price: Decimal | None


@dataclass(frozen=True, slots=True)
class Sleeve:
    """A bag measured flat and inside, without its flap; `film` is one wall, None where it is not stated."""

    name: str
    size: Size
    film: float | None
    price: Decimal | None


@dataclass(frozen=True, slots=True)
class Extra:
    """Something else that goes on every pad, such as its label."""

    name: str
    price: Decimal | None
    seconds: float


@dataclass(frozen=True, slots=True)
class Times:
    """How long the rest of the work takes, in the units that the names say; `trim_strokes` are sides of a finished
    pad that are cut again.
    """

    page_minutes: float
    ink_dry_minutes: float
    count_seconds: float
    slit_seconds: float
    trim_strokes: int
    check_seconds: float


@dataclass(frozen=True, slots=True)
class Workbench:
    """All of it. `ease` is the air that a pad needs in its sleeve, across and along; `glued_across` says that the
    edge brushed with adhesive is head or foot, as long as a leaf is wide.
    """

    glued_across: bool
    board: Board
    adhesive: Adhesive
    clamp: Clamp
    magnets: Magnets
    sleeves: tuple[Sleeve, ...]
    ease: Size
    sleeve_seconds: float
    extras: tuple[Extra, ...]
    times: Times
