"""A run cut into volumes: so many sheets each, and no more pictures than memory holds with ease."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice
from math import ceil
from uuid import uuid4

from padspec.personal.bench import Pattern, Ready, bench_of
from padspec.personal.volume import MOST_SHEETS, VolumeUnit
from padspec.personal.wish import PersonalPad, PersonalWish
from padspec.reading.rows import Row

#: A volume is ended where the pictures of its designs would come to so many bytes, if all are like the first.
_BYTES = 160 * 2**20


@dataclass(frozen=True, slots=True, eq=False)
class Cut:
    """How a pad's run is cut into volumes: how many rows each has, and how many stand on a sheet."""

    rows: tuple[int, ...]
    n_up: int

    @property
    def sheets(self) -> int:
        """How many sheets all volumes have."""
        return sum(ceil(rows / self.n_up) for rows in self.rows)


def rows_of(wish: PersonalWish, pad: PersonalPad) -> Iterator[Row]:
    """The rows that are for a pad, in the order of the table."""
    if pad.rows == wish.table.rows:
        return iter(wish.table)
    return (row for row in wish.table if wish.sku_of(row) == pad.sku)


def first_unit(wish: PersonalWish, pad: PersonalPad, despite_errors: bool) -> VolumeUnit:
    """A unit with the first row alone, from which it is seen how the sheets lie; it begins a run of its own."""
    pattern = Pattern.of_pad(wish, pad.target)
    return VolumeUnit(
        run=uuid4().hex,
        source=pattern.source,
        path=pattern.path,
        variation=pattern.variation,
        settings=pattern.settings,
        table=wish.table.file,
        columns=wish.table.columns,
        key=wish.key,
        rows=(next(rows_of(wish, pad)),),
        number=1,
        volumes=1,
        first_sheet=1,
        n_up=1,
        despite_errors=despite_errors,
    )


def cut_of(wish: PersonalWish, pad: PersonalPad, first: VolumeUnit, ready: Ready, n_up: int) -> Cut:
    """Where the volumes of a pad end; `ready` is the design of its first row."""
    bench, weight = bench_of(first.run, first.pattern), ready.weight
    most = MOST_SHEETS * n_up
    if bench.is_one_design or not weight:
        return Cut(tuple(min(most, pad.rows - begun) for begun in range(0, pad.rows, most)), n_up)
    # Whole sheets, on which the designs are as many as their pictures may be, or rows at most.
    designs = max(n_up, _BYTES // weight)
    ends: list[int] = []
    held: set[tuple[str, ...]] = set()
    begun = 0
    for place, row in enumerate(rows_of(wish, pad)):
        if (place - begun) % n_up == 0 and (place - begun == most or len(held) + n_up > designs) and place > begun:
            ends.append(place - begun)
            begun, held = place, set()
        held.add(bench.key(wish.table.values(row)))
    return Cut((*ends, pad.rows - begun), n_up)


def units_of(wish: PersonalWish, pad: PersonalPad, first: VolumeUnit, cut: Cut) -> Iterator[VolumeUnit]:
    """The volumes of a pad, each taken from the table when it can be begun."""
    rows, sheet = rows_of(wish, pad), 1
    for number, many in enumerate(cut.rows, start=1):
        some = tuple(islice(rows, many))
        yield replace(first, rows=some, number=number, volumes=len(cut.rows), first_sheet=sheet, n_up=cut.n_up)
        sheet += ceil(many / cut.n_up)
