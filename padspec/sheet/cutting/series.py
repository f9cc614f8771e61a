"""Sheet in, series of cuts out: all that is cut in one direction of one piece before anything is turned.

The four outside cuts come first, then what is inside: across first, then upright. A mixed sheet is parted; its
pieces follow one after the other, each first brought to its own length where a neighbour was longer.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from padspec.base.geometry import Box, Size
from padspec.sheet.arrangement import Arrangement, Grid, Split, extent, placed
from padspec.sheet.cutting.plan import TOUCH
from padspec.sheet.sheet import Sheet

SHEET = "the sheet"


@dataclass(frozen=True, slots=True)
class Series:
    """Cuts of one direction, right across one piece.

    `places` rise from the left or the head. They part `box` into one band more; `bands` names what lies in each,
    empty for waste.
    """

    piece: str
    box: Box
    upright: bool
    places: tuple[float, ...]
    bands: tuple[str, ...]

    @property
    def near(self) -> float:
        """Where the piece begins: its left edge or head."""
        return self.box.x if self.upright else self.box.y

    @property
    def far(self) -> float:
        """Where the piece ends: its right edge or foot."""
        return self.box.right if self.upright else self.box.bottom

    @property
    def span(self) -> tuple[float, float]:
        """From where to where each cut runs."""
        return (self.box.y, self.box.bottom) if self.upright else (self.box.x, self.box.right)


@dataclass(frozen=True, slots=True)
class _Part:
    """An arrangement on its piece of paper, which begins where it does and may be larger to the right or foot.

    `letters` names its grids, `leaf` is the number of its first leaf.
    """

    piece: str
    arrangement: Arrangement
    box: Box
    letters: tuple[str, ...]
    leaf: int


def series_of(sheet: Sheet) -> tuple[Series, ...]:
    """All series of a sheet in their order. A side where the leaf ends with the paper is not cut."""
    block = sheet.trim_box
    found = list(_outside(sheet.size, block))
    letters = tuple(letter for letter, _ in lettered(sheet))
    whole = _Part(SHEET, sheet.arrangement, block, letters, 1)
    return tuple(found + [one for one in _inside(whole, sheet.gutter) if one.places])


def lettered(sheet: Sheet) -> tuple[tuple[str, Box], ...]:
    """The letter of each grid of a sheet, and the box around its trims."""
    return tuple((_letter(place), grid.box) for place, grid in enumerate(sheet.grids))


def _letter(place: int) -> str:
    """A to Z, then AA, AB and so on.

    >>> _letter(0), _letter(25), _letter(26)
    ('A', 'Z', 'AA')
    """
    before = _letter(place // 26 - 1) if place >= 26 else ""
    return before + chr(ord("A") + place % 26)


def _piece(letters: tuple[str, ...]) -> str:
    """What a piece is called, by the grids on it.

    >>> _piece(("A",)), _piece(("B", "C", "D"))
    ('piece A', 'piece B–D')
    """
    return f"piece {letters[0]}" if len(letters) == 1 else f"piece {letters[0]}–{letters[-1]}"


def _outside(paper: Size, block: Box) -> Iterator[Series]:
    """Left and right of the raw sheet, then head and foot of what is left."""
    upright = _trims(Box(0.0, 0.0, paper.width, paper.height), True, block.x, block.right)
    if upright.places:
        yield upright
    level = _trims(Box(block.x, 0.0, block.width, paper.height), False, block.y, block.bottom)
    if level.places:
        yield level


def _trims(box: Box, upright: bool, low: float, high: float) -> Series:
    bare = Series(SHEET, box, upright, (), ("the block",))
    first = ((low,), ("",)) if low > bare.near + TOUCH else ((), ())
    last = ((high,), ("",)) if high < bare.far - TOUCH else ((), ())
    return Series(SHEET, box, upright, first[0] + last[0], first[1] + bare.bands + last[1])


def _inside(part: _Part, gutter: float) -> Iterator[Series]:
    match part.arrangement:
        case Grid():
            yield from _of_grid(part, part.arrangement, gutter)
        case Split():
            yield from _of_split(part, part.arrangement, gutter)
        case _:
            assert_never(part.arrangement)


def _of_grid(part: _Part, grid: Grid, gutter: float) -> Iterator[Series]:
    size, leaves = extent(grid, gutter), range(part.leaf, part.leaf + grid.rows * grid.columns)
    rows = [_leaves(leaves[row * grid.columns : (row + 1) * grid.columns]) for row in range(grid.rows)]
    columns = [_leaves(leaves[column :: grid.columns]) for column in range(grid.columns)]
    yield _parting(part.piece, part.box, False, [grid.face.height] * grid.rows, rows, gutter)
    box = Box(part.box.x, part.box.y, part.box.width, size.height)
    yield _parting(part.piece, box, True, [grid.face.width] * grid.columns, columns, gutter)


def _of_split(part: _Part, split: Split, gutter: float) -> Iterator[Series]:
    """Brought to its size across the split, then parted, then each part by itself."""
    size, box, across = extent(split, gutter), part.box, not split.upright
    wide = size.width if across else size.height
    yield _parting(part.piece, box, across, [wide], [part.piece], gutter)
    box = Box(box.x, box.y, wide, box.height) if across else Box(box.x, box.y, box.width, wide)
    one, other = _parted(part, split, box, gutter)
    lengths = [part.box.width if split.upright else part.box.height for part in (one, other)]
    yield _parting(part.piece, box, split.upright, lengths, [one.piece, other.piece], gutter)
    yield from _inside(one, gutter)
    yield from _inside(other, gutter)


def _parted(part: _Part, split: Split, box: Box, gutter: float) -> tuple[_Part, _Part]:
    """The two parts of a split, on the pieces that its cut leaves."""
    grids = placed(split.first, 0, 0, gutter)
    count, leaves = len(grids), sum(one.grid.rows * one.grid.columns for one in grids)
    first, second = extent(split.first, gutter), extent(split.second, gutter)
    if split.upright:
        boxes = (
            Box(box.x, box.y, first.width, box.height),
            Box(box.x + first.width + gutter, box.y, second.width, box.height),
        )
    else:
        boxes = (
            Box(box.x, box.y, box.width, first.height),
            Box(box.x, box.y + first.height + gutter, box.width, second.height),
        )
    here, there = part.letters[:count], part.letters[count:]
    return (
        _Part(_piece(here), split.first, boxes[0], here, part.leaf),
        _Part(_piece(there), split.second, boxes[1], there, part.leaf + leaves),
    )


def _parting(piece: str, box: Box, upright: bool, lengths: list[float], names: list[str], gutter: float) -> Series:
    """The cuts between lengths that follow each other from the near edge, a gutter between, and past the last.

    Butted neighbours share one cut, a gutter takes two.
    """
    bare = Series(piece, box, upright, (), ())
    places: list[float] = []
    bands: list[str] = []
    start = bare.near
    for number, (length, name) in enumerate(zip(lengths, names, strict=True)):
        at = start + sum(lengths[:number]) + number * gutter
        if number and gutter > TOUCH:
            places.append(at)
            bands.append("")
        places.append(at + length)
        bands.append(name)
    if places[-1] < bare.far - TOUCH:
        return Series(piece, box, upright, tuple(places), (*bands, ""))
    return Series(piece, box, upright, tuple(places[:-1]), tuple(bands))


def _leaves(numbers: range) -> str:
    """Leaves by their numbers.

    >>> _leaves(range(3, 4)), _leaves(range(1, 3)), _leaves(range(1, 8, 3))
    ('leaf 3', 'leaves 1 and 2', 'leaves 1, 4 and 7')
    """
    if len(numbers) == 1:
        return f"leaf {numbers[0]}"
    return f"leaves {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"
