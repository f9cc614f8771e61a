"""Two other ways to find the best straight cuts, for small whole numbers: trying everything, and a programme.

Both know nothing of reachable sums, of grids chosen at once or of millimetres.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_array

#: Width, height and value of a face, one way round.
Face = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Judged:
    """The most value, the fewest strokes for it, and the fewest grids for those."""

    value: int
    strokes: int
    grids: int


def try_everything(width: int, height: int, faces: Sequence[Face], gutter: int) -> Judged | None:
    """What a person with a cutter could do, every stroke at every whole number; None where nothing fits.

    Faces and sheet grow by one gutter, which then is a part of each face.
    """
    line = 2 if gutter else 1
    grown = tuple((w + gutter, h + gutter, value) for w, h, value in faces)

    @cache
    def best(w: int, h: int) -> tuple[int, int, int] | None:
        """Value, and less strokes and grids, of a piece of paper that is cut on all its sides already."""
        ways = [
            (w // a * (h // b) * value, -line * (w // a + h // b - 2), -1)
            for a, b, value in grown
            if w % a == 0 and h % b == 0
        ]
        smaller = [best(k, h) for k in range(1, w)] + [best(w, k) for k in range(1, h)]
        ways += [(one[0], one[1] - 1, one[2]) for one in smaller if one]
        pairs = [(best(k, h), best(w - k, h)) for k in range(1, w // 2 + 1)]
        pairs += [(best(w, k), best(w, h - k)) for k in range(1, h // 2 + 1)]
        ways += [(a[0] + b[0], a[1] + b[1] - line, a[2] + b[2]) for a, b in pairs if a and b]
        return max(ways, default=None)

    sizes = ((w, h) for w in range(1, width + gutter + 1) for h in range(1, height + gutter + 1))
    found = max((one for one in (best(w, h) for w, h in sizes) if one), default=None)
    return Judged(found[0], 4 - found[1], -found[2]) if found else None


def by_programme(width: int, height: int, faces: Sequence[Face], most: Sequence[int] | None = None) -> float:
    """The most value by an integer programme over sizes of paper, butted.

    One variable counts how often paper of a size is cut at one place, or is sold as one face; of every size no
    more can be used than is made. Of each face `most` may be sold, or any number where it is None: then the
    relaxed programme will do, since its dual is the recursion itself.
    """
    columns = list(_uses(width, height, faces))
    entries = [
        (row, number, amount) for number, (_, _, used) in enumerate(columns) for row, amount in used.items()
    ]
    rows, numbers, amounts = zip(*entries, strict=True)
    balance = csr_array((amounts, (rows, numbers)), shape=(width * height, len(columns)))
    given = np.zeros(width * height)
    given[-1] = 1
    constraints = [LinearConstraint(balance, -np.inf, given)]
    if most is not None:
        sold = [[float(face == number) for face, _, _ in columns] for number in range(len(faces))]
        constraints.append(LinearConstraint(np.array(sold), -np.inf, np.array(most, float)))
    worth = [-value for _, value, _ in columns]
    solved = milp(worth, integrality=int(most is not None), bounds=Bounds(0, np.inf), constraints=constraints)
    assert solved.success
    return -float(solved.fun)


def _uses(width: int, height: int, faces: Sequence[Face]) -> Iterator[tuple[int | None, int, dict[int, int]]]:
    """Which face it is, what it is worth, and how many of each size it takes (less how many it makes)."""

    def size(w: int, h: int) -> int:
        return (w - 1) * height + h - 1

    for w in range(1, width + 1):
        for h in range(1, height + 1):
            for number, (a, b, value) in enumerate(faces):
                if a <= w and b <= h:
                    yield number, value, {size(w, h): 1}
            cuts = [((k, h), (w - k, h)) for k in range(1, w // 2 + 1)]
            cuts += [((w, k), (w, h - k)) for k in range(1, h // 2 + 1)]
            for one, two in cuts:
                used = {size(w, h): 1}
                for part in (size(*one), size(*two)):
                    used[part] = used.get(part, 0) - 1
                yield None, 0, used
