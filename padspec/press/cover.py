"""How much ink lies on a printed page: separations go in, coverage comes out.

Coverage of an ink is the mean of its share over an area, total area coverage the sum over the inks, up to 4
(400 %): definitions common to the trade. Limits are the press's own.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from padspec.press.inks import STEPS

#: The heaviest place is looked for in squares of about this side, in mm, so that no single pixel alarms.
WINDOW = 1.0


@dataclass(frozen=True, slots=True)
class Cover:
    """What was measured on a face.

    `most` is the greatest total coverage over a square of about 1 mm², 0 to 4, and `at` the middle of the square
    in mm from the trim's top left corner; `means` is the mean of cyan, magenta, yellow and black, 0 to 1, over
    the `area`, in mm², that was looked at: the face with its bleed.
    """

    most: float
    at: tuple[float, float]
    means: tuple[float, float, float, float]
    area: float

    @property
    def mean(self) -> float:
        """Mean total coverage, 0 to 4."""
        return round(sum(self.means), 9)


def measure_cover(separations: NDArray[np.uint8], ppi: float, corner: tuple[float, float] = (0.0, 0.0)) -> Cover:
    """Coverage of separations, shape (height, width, 4), 255 being solid, at `ppi` pixels an inch.

    `corner` is where their top left corner lies on the face, in mm.
    """
    pixel = 25.4 / ppi
    height, width, _ = separations.shape
    rows, columns = (max(1, min(side, round(WINDOW / pixel))) for side in (height, width))
    sums = _sums(separations.sum(axis=2, dtype=np.int64), rows, columns)
    top, left = divmod(int(sums.argmax()), sums.shape[1])
    means = separations.mean(axis=(0, 1), dtype=np.float64) / STEPS
    cyan, magenta, yellow, black = (round(float(mean), 9) for mean in means)
    return Cover(
        most=round(int(sums[top, left]) / (rows * columns * STEPS), 9),
        at=(round(corner[0] + (left + columns / 2) * pixel, 3), round(corner[1] + (top + rows / 2) * pixel, 3)),
        means=(cyan, magenta, yellow, black),
        area=round(height * width * pixel**2, 6),
    )


def _sums(total: NDArray[np.int64], rows: int, columns: int) -> NDArray[np.int64]:
    """The sum of every window that lies inside, by the table of sums from the top left corner."""
    table = np.zeros((total.shape[0] + 1, total.shape[1] + 1), np.int64)
    table[1:, 1:] = total.cumsum(axis=0).cumsum(axis=1)
    return table[rows:, columns:] - table[:-rows, columns:] - table[rows:, :-columns] + table[:-rows, :-columns]
