"""What the gang planner takes and gives: orders and the room of a sheet, pages and the plan."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from padspec.base.geometry import Size
from padspec.planning.mixtures import Front, every_mixture
from padspec.sheet.arrangement import Arrangement
from padspec.sheet.fitting.guillotine import Cutting, Piece, best_cutting

#: Given the area, the pieces with what one of each is worth, and the gutter: the most valuable cutting.
Oracle = Callable[[Size, Sequence[Piece], float], Cutting]
#: Given the area, item and size of the trims, the gutter and whether faces may lie: every mixture, if few enough.
Lister = Callable[[Size, Sequence[tuple[int, Size]], float, bool], Front | None]


@dataclass(frozen=True, slots=True)
class Order:
    """So many pads of a design: its name, the leaves of a pad, and which of the sheet's trims it has.

    Designs of one trim (`item`, an index into `SheetRoom.trims`) can stand in for each other in a slot.
    """

    name: str
    pads: int
    leaves: int
    item: int = 0


@dataclass(frozen=True, slots=True)
class SheetRoom:
    """What a sheet offers: the area that trims and gutters may take (mm), the trims, and who arranges them.

    `turns`: whether a face may lie on its side. `oracle` finds the most valuable arrangement of trims. `lister`
    knows all mixtures of several trims; it may be None, then the oracle is asked for them as far as it can tell.
    Another oracle needs a lister that agrees with it, or None.
    """

    area: Size
    gutter: float
    trims: tuple[Size, ...]
    turns: bool = True
    oracle: Oracle = best_cutting
    lister: Lister | None = every_mixture


@dataclass(frozen=True, slots=True)
class Effort:
    """Bounds of the planner's work, counted, never timed, so that a plan is the same on every machine.

    `cells`: run lengths times designs and layouts that an integer master over the whole plan may hold; `nodes`:
    cells times branch-and-bound nodes that it may take. A plan of more than `window_cells` is first reworked in
    `windows` of a few pages, by masters of about so many cells and at most `window_nodes` nodes; a plan of more
    than `cells` is only reworked. `rounds`: rounds of column generation; `questions`: what the oracle is asked.
    """

    cells: int = 500
    nodes: int = 10_000
    windows: int = 24
    window_cells: int = 150
    window_nodes: int = 12
    rounds: int = 200
    questions: int = 60


@dataclass(frozen=True, slots=True)
class Page:
    """One page to print: which design lies in which slot, and how many sheets of it.

    `designs` and `pads` have one number for each slot, in the order of the arrangement's faces: grids first to
    last, in each row by row. A design is its index in the orders. `sheets` are printed to be used, `test_sheets`
    besides. `joined`: one design fills the page, its stacks are joined and the pads counted off, shared out over
    the slots in `pads` as evenly as may be; otherwise each slot keeps its stack, and that many pads lie in it.
    """

    arrangement: Arrangement
    designs: tuple[int, ...]
    sheets: int
    test_sheets: int
    pads: tuple[int, ...]
    joined: bool

    @property
    def all_sheets(self) -> int:
        """Sheets to print, test sheets included."""
        return self.sheets + self.test_sheets


@dataclass(frozen=True, slots=True)
class GangPlan:
    """What to print: as few sheets as were found, then as few different pages.

    `sheets` counts all sheets, test sheets included; no plan whatever takes fewer than `bound`. `solo_sheets` is
    what one design a sheet would take. `pads` and `spare` have one number for each order: pads made, and those
    over the order. `fewest_pages`: whether no plan with so many sheets is proved to have fewer pages.
    """

    pages: tuple[Page, ...]
    sheets: int
    bound: int
    solo_sheets: int
    pads: tuple[int, ...]
    spare: tuple[int, ...]
    fewest_pages: bool

    @property
    def gap(self) -> float:
        """The share by which the plan may exceed the best there is: 0 where it is proved best."""
        return (self.sheets - self.bound) / self.bound if self.bound else 0.0

    @property
    def proved(self) -> bool:
        """Whether no plan takes fewer sheets."""
        return self.sheets == self.bound
