"""A printer that shifts, stretches and turns what it is given, and reading back what it was given.

Written from what such a printer does, not from what padspec makes good: the page is laid on the sheet as it is
fed, then every point moves away from the middle of the sheet by the stretch, and all of it by the shift.
"""

import io
from dataclasses import dataclass
from functools import cache

import numpy as np
import pdfplumber
from draw.reading_back import POINTS, Part, _read_part
from numpy.typing import NDArray

Points = NDArray[np.float64]


@dataclass(frozen=True)
class Printer:
    """Shift to the right and down in mm, stretch across and down, and how a page wider than high is turned."""

    shift: tuple[float, float]
    stretch: tuple[float, float]
    turn: str = "left"

    def fed(self, page: tuple[float, float], points: Points) -> Points:
        """Where points of a page lie on the sheet upright as it is fed."""
        width, height = page
        x, y = points[:, 0], points[:, 1]
        if width <= height:
            return np.stack([x, y], axis=1)
        if self.turn == "left":  # a quarter turn anticlockwise: the head goes to the left
            return np.stack([y, width - x], axis=1)
        return np.stack([height - y, x], axis=1)

    def printed(self, page: tuple[float, float], points: Points) -> Points:
        """Where the printer really puts them, on the sheet upright as it is fed."""
        sheet = np.array(sorted(page))
        return sheet / 2 + np.array(self.shift) + np.array(self.stretch) * (self.fed(page, points) - sheet / 2)

    @property
    def yaml(self) -> str:
        """What the maker writes into studio.yaml after measuring."""
        (x, y), (across, down) = self.shift, self.stretch
        return (
            f"printer: {{offset: {{x: {x} mm, y: {y} mm}}, "
            f"scale: {{x: {across * 100:.6g} %, y: {down * 100:.6g} %}}, turn: {self.turn}}}\n"
        )


@cache
def pages_of(pdf: bytes) -> list[tuple[tuple[float, float], list[Part]]]:
    """Each page: its size in mm and the parts that pdfplumber finds on it."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        return [
            (
                (float(page.width) / POINTS, float(page.height) / POINTS),
                [_read_part(found) for found in page.rects + page.lines + page.curves],
            )
            for page in document.pages
        ]


def nearest(wanted: list[Points], found: list[Points]) -> float:
    """The greatest distance of wanted points to the nearest found ones of the same number."""
    return max(min(float(np.abs(w - f).max()) for f in found if f.shape == w.shape) for w in wanted)
