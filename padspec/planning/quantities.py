"""Pads into sheets and back: a stack that is one pad, and stacks that are joined and counted off."""

from dataclasses import dataclass
from math import ceil, floor

from padspec.base.numbers import EPSILON
from padspec.sheet.copies import copies_to_print


@dataclass(frozen=True, slots=True)
class Need:
    """An order as the planner reckons with it.

    `order`: its index; `depth`: sheets that make one pad in a slot of its own; `use`: leaves with overs that one
    pad takes where stacks are joined; `kind`: its trim among those that are in use; `n_up`: slots of a sheet of
    that trim alone.
    """

    order: int
    pads: int
    depth: int
    use: float
    kind: int
    n_up: int


def stack_depth(leaves: int, overs: float) -> int:
    """Sheets that make one pad in a slot that keeps its design: ⌈leaves × (1 + overs)⌉.

    >>> stack_depth(50, 0.05), stack_depth(40, 0.05)
    (53, 42)
    """
    return ceil(leaves * (1 + overs) - EPSILON)


def pads_in_slot(run: int, depth: int) -> int:
    """Whole pads in one slot after a run of so many sheets.

    >>> pads_in_slot(530, 53), pads_in_slot(529, 53)
    (10, 9)
    """
    return run // depth


def joined_run(pads: int, use: float, n_up: int) -> int:
    """Sheets for some pads of one design whose stacks are joined, test sheets not counted.

    >>> joined_run(10, 52.5, 3)
    175
    """
    return copies_to_print(pads, 1, n_up, use - 1, 0)


def joined_pads(run: int, use: float, n_up: int) -> int:
    """Whole pads that can be counted off such a run.

    >>> joined_pads(175, 52.5, 3), joined_pads(174, 52.5, 3)
    (10, 9)
    """
    return floor((run + EPSILON) * n_up / use + EPSILON)


def shared_out(pads: int, slots: int) -> tuple[int, ...]:
    """Pads over slots as evenly as may be, the first slots taking what is left over.

    >>> shared_out(10, 3)
    (4, 3, 3)
    """
    return tuple(pads // slots + (slot < pads % slots) for slot in range(slots))
