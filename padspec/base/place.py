"""Where something stands in a maker's file: what every message and finding points at."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Place:
    """A spot in a text file, as an editor counts it: lines and columns start at 1.

    `line` 0 stands for the file as a whole (a picture, a file that is missing).

    >>> str(Place("moth.pad.yaml", 4, 9))
    'moth.pad.yaml:4:9'
    >>> str(Place("art/moth.png", 0, 0))
    'art/moth.png'
    """

    file: str
    line: int
    column: int
    length: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file
