"""One volume of a personal run: the unit of work. Rows go in; sheets to print and a list of who is where come out.

Nothing is written here: a volume is the same in this process, in another and on another machine.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.base.spreadsheet import csv_text
from padspec.collection.source import Source
from padspec.compose.other_words import Reset
from padspec.draw.volume import Leaf, VolumePage, volume_pdf
from padspec.personal.bench import Bench, Pattern, Ready, bench_of, leaf_of
from padspec.personal.faults import MOST_TOLD, RowFault, empty_cells, unset_words
from padspec.personal.looks import Look, look_of
from padspec.personal.sheet import PersonalSheet, personal_sheet
from padspec.reading.rows import Row
from padspec.reading.tree import Mapping
from padspec.reading.variation import Variation

#: A volume has at most so many sheets, and its pictures so many bytes: one that is written and let go of keeps the
#: memory flat.
MOST_SHEETS = 1000
MOST_BYTES = 384 * 2**20
REMARK = "PRINTED DESPITE ERRORS"
CONTENTS = ("key", "row", "volume", "sheet", "slot", "words")


@dataclass(frozen=True, slots=True, eq=False)
class VolumeUnit:
    """The rows of one volume, and all that their leaves are made from. `run` tells one run from every other;
    `number` counts from 1 up to `volumes`; `key` is the column that rows are known by, empty for their numbers.
    """

    run: str
    source: Source
    path: str
    variation: Variation
    settings: Mapping
    table: str
    columns: tuple[str, ...]
    key: str
    rows: tuple[Row, ...]
    number: int
    volumes: int
    first_sheet: int
    n_up: int
    despite_errors: bool

    @property
    def variations(self) -> tuple[Variation, ...]:
        """What the rows make of the pad, each once: what may name files."""
        bench = Bench(self.pattern)
        rows = (dict(zip(self.columns, row.cells, strict=True)) for row in self.rows)
        return tuple({bench.key(cells): self.pattern.of(cells) for cells in rows}.values())

    @property
    def pattern(self) -> Pattern:
        """The pad that is personalised."""
        return Pattern(self.source, self.path, self.variation, self.settings)


@dataclass(frozen=True, slots=True)
class Extreme:
    """The row that goes furthest in some way (`smallest` lettering, `tallest` need) of one block of one design."""

    way: str
    block: str
    key: tuple[str, ...]
    measure: float
    row: Row


@dataclass(frozen=True, slots=True)
class VolumeMade:
    """A volume: its PDF and its list of contents, empty where rows are at fault; faults told, and all counted;
    what was found of its designs; the files that it was made from and the packaged fonts that it was or might have
    been set in.
    """

    number: int
    pdf: bytes
    contents: str
    faults: tuple[RowFault, ...]
    errors: int
    extremes: tuple[Extreme, ...]
    looks: tuple[Look, ...]
    seen: dict[str, str]
    families: tuple[str, ...]


def make_volume(unit: VolumeUnit) -> VolumeMade:
    """Set every row of a volume, and draw its sheets unless a row is at fault."""
    bench = bench_of(unit.run, unit.pattern)
    setting = _Setting(unit, bench)
    leaves = [leaf for row in unit.rows if (leaf := setting.leaf(row)) is not None]
    whole = unit.despite_errors or not setting.errors
    pdf = _drawn(unit, setting, leaves) if whole and leaves else b""
    return VolumeMade(
        number=unit.number,
        pdf=pdf,
        contents=csv_text(_contents(unit, setting.told)) if whole else "",
        faults=tuple(setting.faults),
        errors=setting.errors,
        extremes=tuple(setting.extremes.values()),
        looks=tuple(setting.looks.values()),
        seen=dict(bench.seen),
        families=tuple(bench.families),
    )


def sheet_for(unit: VolumeUnit, ready: Ready) -> PersonalSheet | None:
    """The sheet of a volume; None where not one leaf fits."""
    remark = REMARK if unit.despite_errors else ""
    return personal_sheet(ready.pad.design, f"volume {unit.number} of {unit.volumes}", remark)


class _Setting:
    """Rows being set: their faults, the words they came to, and the most extreme of them."""

    def __init__(self, unit: VolumeUnit, bench: Bench) -> None:
        self._unit, self._bench = unit, bench
        self.first: Ready | None = None
        self.faults: list[RowFault] = []
        self.errors = 0
        self.told: list[tuple[Row, str]] = []
        self.extremes: dict[tuple[str, str, tuple[str, ...]], Extreme] = {}
        self.looks: dict[tuple[str, ...], Look] = {}
        self._weight = 0
        self._known: dict[tuple[str, ...], tuple[Leaf, str, tuple[tuple[str, str], ...], Reset]] = {}

    def leaf(self, row: Row) -> Leaf | None:
        """The leaf of a row; None, with a fault told, where its cells make none."""
        cells = dict(zip(self._unit.columns, row.cells, strict=True))
        try:
            ready = self._bench.ready(cells, row.number)
        except ProblemsError as error:
            for problem in error.problems:
                self._fault(row, cells, f"{problem.message} ({problem.place})", problem.mend)
            return None
        self.first = self.first or ready
        if ready.key not in self.looks:
            self._begin(ready, row, cells)
        for _, text in ready.texts:
            for message, mend in empty_cells(text, cells):
                self._fault(row, cells, message, mend)
        words = ready.words(cells)
        key = (*ready.key, *words.values())
        known = self._known.get(key)
        if known is None:
            known = self._known[key] = self._set(ready, words)
        leaf, told, faults, reset = known
        for message, mend in faults:
            self._fault(row, cells, message, mend)
        self.told.append((row, told))
        self._look(row, ready.key, reset)
        return leaf

    def _begin(self, ready: Ready, row: Row, cells: dict[str, str]) -> None:
        """Take on a design; raises ProblemsError where the pictures of a volume come to too much."""
        self.looks[ready.key] = look_of(
            ready, self._unit.table, row, cells[self._unit.key] if self._unit.key else ""
        )
        self._weight += ready.weight
        if self._weight > MOST_BYTES:
            message = (
                f"Up to this row, the pictures of {len(self.looks)} designs come to {self._weight // 2**20} MiB "
                f"in one volume; it holds {MOST_BYTES // 2**20}."
            )
            mend = "Make the pictures smaller, or put the rows into several tables."
            raise ProblemsError(Problem(Place(self._unit.table, row.line, 1), message, mend))

    def _set(self, ready: Ready, words: dict[str, str]) -> tuple[Leaf, str, tuple[tuple[str, str], ...], Reset]:
        reset = ready.faces.reset(words)
        faults = tuple(fault for lettering in reset.lettering for fault in unset_words(lettering))
        return (
            leaf_of(ready.key, reset),
            " / ".join(text.strip("\u200e\u200f") for text in words.values()),
            faults,
            reset,
        )

    def _look(self, row: Row, key: tuple[str, ...], reset: Reset) -> None:
        for words in reset.lettering:
            fitted = words.laid.fitted
            if fitted.lines:
                self._compare(Extreme("smallest", words.block.id, key, round(-fitted.size, 6), row))
                height = words.laid.placement.box.height
                self._compare(Extreme("tallest", words.block.id, key, round(height, 6), row))

    def _compare(self, extreme: Extreme) -> None:
        where = extreme.way, extreme.block, extreme.key
        best = self.extremes.get(where)
        if best is None or extreme.measure > best.measure:
            self.extremes[where] = extreme

    def _fault(self, row: Row, cells: dict[str, str], message: str, mend: str) -> None:
        self.errors += 1
        if len(self.faults) < MOST_TOLD:
            key = cells[self._unit.key] if self._unit.key else ""
            place = Place(self._unit.table, row.line, 1)
            self.faults.append(RowFault(place, row.number, key, "error", message, mend))


def _drawn(unit: VolumeUnit, setting: "_Setting", leaves: list[Leaf]) -> bytes:
    ready = setting.first
    personal = sheet_for(unit, ready) if ready is not None else None
    if ready is None or personal is None:
        return b""
    n_up = personal.sheet.n_up
    keys = [_key(unit, row) for row, _ in setting.told]

    def pages() -> Iterator[VolumePage]:
        for start in range(0, len(leaves), n_up):
            some = leaves[start : start + n_up]
            slug = personal.slug(unit.first_sheet + start // n_up, ", ".join(keys[start : start + n_up]))
            yield VolumePage((*some, *(None,) * (n_up - len(some))), slug)

    return volume_pdf(personal.sheet, pages(), personal.sheet.title, ready.pad.design.date)


def _contents(unit: VolumeUnit, told: list[tuple[Row, str]]) -> Iterator[tuple[str | int, ...]]:
    yield CONTENTS
    for at, (row, words) in enumerate(told):
        yield (
            _key(unit, row),
            row.number,
            unit.number,
            unit.first_sheet + at // unit.n_up,
            at % unit.n_up + 1,
            words,
        )


def _key(unit: VolumeUnit, row: Row) -> str:
    return row.cells[unit.columns.index(unit.key)] if unit.key else str(row.number)
