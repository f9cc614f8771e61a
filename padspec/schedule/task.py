"""What a task is: a stretch of work or of waiting, what it keeps busy, and what must be done before it. Values."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

#: What can be busy. Drying keeps nothing busy but the clamp that it happens in.
Resource = Literal["hands", "printer", "clamp"]
Stage = Literal[
    "set up", "print", "ink dries", "cut leaves", "cut boards", "count off", "clamp", "coat", "coat dries",
    "adhesive sets", "slit apart", "trim", "look over", "magnets", "sleeve", "extras",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Task:
    """One task. It keeps `busy` what it needs from start to end; `load` is the number of the clamp's filling that
    it belongs to, 0 for none: a clamp is taken by the first of a load's tasks that `takes_clamp` and free again
    after the one that `frees_clamp`. `shares` says which part of it is for which lot of the batch; together one.
    """

    key: str
    stage: Stage
    what: str
    minutes: float
    busy: tuple[Resource, ...]
    after: tuple[str, ...]
    shares: tuple[tuple[int, Fraction], ...]
    load: int = 0
    takes_clamp: bool = False
    frees_clamp: bool = False

    @property
    def by_hand(self) -> bool:
        """Whether a person is busy with it."""
        return "hands" in self.busy
