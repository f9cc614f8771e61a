"""The exceptions padspec raises on purpose; anything else is a bug in padspec.

    PadspecError
    ├── ProblemsError    a maker's file cannot be used; carries every problem found in it
    └── UnitError        a text is not the length, share or number it should be

What a *check* finds in a readable design is a value (`padspec.base.findings`), never an exception.
"""

from dataclasses import dataclass

from padspec.base.place import Place


class PadspecError(Exception):
    """The root of the tree: the message is for the maker, as it stands."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that stops a file from being used: where, what is wrong, and how to mend it."""

    place: Place
    message: str
    mend: str = ""

    def __str__(self) -> str:
        return f"{self.place}: {self.message}" + (f" {self.mend}" if self.mend else "")


class ProblemsError(PadspecError):
    """A maker's file cannot be used. `problems` holds all that was found, in order of place."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


class UnitError(PadspecError):
    """A text is not the quantity it should be; `mend` says how it is written."""

    def __init__(self, message: str, mend: str) -> None:
        super().__init__(f"{message} {mend}")
        self.message = message
        self.mend = mend
