"""What a cut plan is: cuts in order, each with the edge it is measured from; lifts, strokes, time. Values."""

from dataclasses import dataclass

from padspec.base.geometry import Box, Size
from padspec.resolve.studio import CutterKind
from padspec.sheet.sheet import Edge

#: Two places nearer than this, in mm, are one.
TOUCH = 1e-6


@dataclass(frozen=True, slots=True)
class Gauge:
    """The edge that a cut is measured from: one of the paper's own edges, or one that an earlier cut made.

    `edge` is the side of the piece, seen as the sheet is fed, where it lies; `cut` the number of the cut that
    made it, None for a raw edge.
    """

    edge: Edge
    cut: int | None

    @property
    def name(self) -> str:
        """What a person calls it.

        >>> Gauge("left", None).name, Gauge("right", 1).name
        ('the raw left edge', 'the edge of cut 1')
        """
        return f"the raw {self.edge} edge" if self.cut is None else f"the edge of cut {self.cut}"


@dataclass(frozen=True, slots=True)
class Cut:
    """One stroke. Places are millimetres from the top left corner of the sheet as it is fed.

    It runs `upright` (from head to foot) or level, at x or y `at`, from `start` to `end` along itself: right
    across the `piece` that is under the blade ("the sheet", or "piece A" once a mixed sheet is parted).
    `distance` is measured from the `gauge` edge; the part that lies between stays, and `off` comes off: leaves
    or a piece by name, or waste; `off_box` says where that lay on the sheet. `jog`: the pile is set against the
    gauge anew first. `marked`: crop marks stand at both its ends on what is under the blade at that moment.
    """

    number: int
    upright: bool
    at: float
    start: float
    end: float
    piece: str
    gauge: Gauge
    distance: float
    off: str
    off_box: Box
    jog: bool
    marked: bool

    @property
    def takes_waste(self) -> bool:
        """Whether nothing is printed for use on what comes off."""
        return self.off == ""


@dataclass(frozen=True, slots=True)
class OffcutFound:
    """Clean paper that comes off with one cut and could become something.

    `box` is the clean rectangle where it lay on the sheet, `count` how many things of size `each` it holds.
    """

    name: str
    each: Size
    box: Box
    count: int
    cut: int


@dataclass(frozen=True, slots=True)
class CutPlan:
    """How all sheets of a job are cut.

    `lifts` piles of at most `sheets_a_lift` sheets each go through all `cuts`: `strokes` in all, for about
    `minutes` (an estimate: strokes × the cutter's time for one).
    """

    kind: CutterKind
    cuts: tuple[Cut, ...]
    sheets: int
    sheets_a_lift: int
    lifts: int
    strokes: int
    minutes: float
    offcuts: tuple[OffcutFound, ...]
