"""What came of comparing: every pad with its state, its changes and its pictures, as values."""

from dataclasses import dataclass
from typing import Literal

from padspec.base.errors import Problem
from padspec.base.geometry import Box
from padspec.comparing.git import Commit
from padspec.comparing.told import Change

State = Literal["same", "changed", "added", "removed", "unreadable"]


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """The pictures of a pad as PNG, by their names: before, now, difference, or the one of them that there is.

    `width` and `height` are their size in mm; `share` is the part of the face that changed, `places` the boxes of
    the largest changes, in mm from the trim's top left corner.
    """

    files: dict[str, bytes]
    width: float
    height: float
    share: float
    places: tuple[Box, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Compared:
    """One pad. `sku`, `name` and `file` are those of now, or of before where it is no more.

    `old_sku` is another SKU that it had; `untold` says what could not be read before; `same_face` that not one
    point of the face is drawn otherwise. An unreadable pad has `problems`: those of now. `own_sku` is the SKU of
    the design without its variant, `values` are those of the variant by axis.
    """

    sku: str
    name: str
    file: str
    state: State
    own_sku: str = ""
    values: tuple[tuple[str, str], ...] = ()
    old_sku: str = ""
    changes: tuple[Change, ...] = ()
    shown: Shown | None = None
    same_face: bool = False
    untold: str = ""
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Comparison:
    """A whole collection. `note` is something to be told of it all, such as that there was no collection yet."""

    title: str
    commit: Commit
    pads: tuple[Compared, ...]
    note: str = ""

    @property
    def differing(self) -> tuple[Compared, ...]:
        """The pads that are not the same."""
        return tuple(pad for pad in self.pads if pad.state != "same")

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is wrong now, each problem once."""
        return tuple(dict.fromkeys(problem for pad in self.pads for problem in pad.problems))

    @property
    def status(self) -> int:
        """The exit status: 0 the same, 1 changed, 2 where something cannot be read now."""
        return 2 if self.problems else int(bool(self.differing))

    def of_state(self, state: State) -> tuple[Compared, ...]:
        """The pads of one state."""
        return tuple(pad for pad in self.pads if pad.state == state)
