"""Volumes of one pad, made beside what stands and moved there when every row has passed."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice
from math import ceil
from typing import Any, Literal

from padspec.base.errors import Problem, ProblemsError
from padspec.base.findings import Finding, Severity
from padspec.checks.table import run_checks
from padspec.collection.build import Run
from padspec.collection.collection_file import Collection
from padspec.collection.records.font_files import font_digests
from padspec.compose.compose import compose
from padspec.personal.bench import Pattern, Ready, make_ready
from padspec.personal.faults import MOST_TOLD, RowFault
from padspec.personal.record import PersonalRecord
from padspec.personal.stale import folder_of, withdraw_volumes
from padspec.personal.volume import MOST_SHEETS, Extreme, VolumeMade, VolumeUnit, make_volume, sheet_for
from padspec.personal.wish import PersonalPad, PersonalWish
from padspec.reading.rows import Row
from padspec.report import finding_data, json_text
from padspec.sheet.tile import tile
from padspec.workspace import FolderWorkspace, content_digest

CAUTION = "Print all copies of a sheet before the next (uncollated): the stack in every slot is then one pad."
#: So many keys are held at once.
_MOST_KEYS = 250_000
_PASSING = ".cache/passing"


@dataclass(frozen=True, slots=True)
class PersonalMade:
    """What a run came to for one pad: what was read, fonts, what was written (path to digest), and its summary."""

    inputs: dict[str, str]
    fonts: dict[str, str]
    outputs: dict[str, str]
    summary: dict[str, Any]

    def record(self, wished: str, circumstances: dict[str, str]) -> PersonalRecord:
        """It all as it is remembered."""
        return PersonalRecord(wished, circumstances, self.inputs, self.fonts, self.outputs, self.summary)


def make_personal(
    wish: PersonalWish,
    pad: PersonalPad,
    collection: Collection,
    output: FolderWorkspace,
    run: Run,
    progress: Callable[[int], None],
) -> PersonalMade:
    """Every volume of one pad; `progress` is told how many rows are set. Raises ProblemsError."""
    first = next(_rows_of(wish, pad))
    pattern = Pattern.of_pad(wish, pad.target)
    ready = make_ready(pattern, wish.table.values(first))
    unit = _unit(wish, pattern, (first,), 1, 1, 1, run)
    sheet = sheet_for(unit, ready)
    if sheet is None:
        size = ready.pad.design.sheet.size_name
        raise ProblemsError(
            Problem(ready.pad.design.place, f"No leaf of this pad fits {size}.", "padspec check says why.")
        )
    folder = folder_of(pad.sku)
    tally = _Tally(output, f"{_PASSING}/{content_digest(folder.encode())[:16]}")
    for _, volume in run.workers.run(make_volume, units_of(wish, pad, pattern, sheet.sheet.n_up, run)):
        tally.take(volume)
        progress(min(tally.volumes * MOST_SHEETS * sheet.sheet.n_up, pad.rows))
    at_fault = {fault.row for fault in tally.faults}
    extremes = tuple(extreme for extreme in tally.extremes.values() if extreme.row.number not in at_fault)
    looked = (*_looked(wish, ready, extremes), *islice(_key_faults(wish, pad), MOST_TOLD))
    errors = tally.errors + sum(fault.severity == "error" for fault in looked)
    failed = ready.pad.failed or errors > 0
    kept = not failed or run.wish.despite_errors
    files = tally.settle(folder, kept)
    summary = {
        "sku": pad.sku,
        "design": ready.pad.design.name,
        "collection": collection.file,
        "table": wish.table.file,
        "state": "failed" if failed else "passed",
        "pads": pad.rows,
        "n_up": sheet.sheet.n_up,
        "sheets": ceil(pad.rows / sheet.sheet.n_up),
        "copies": sheet.sheet.copies,
        "volumes": tally.volumes if kept else 0,
        "errors": errors,
        "caution": CAUTION,
        "findings": [finding_data(finding) for finding in ready.pad.findings],
        "rows": [_fault_data(fault) for fault in _in_order((*tally.faults, *looked))],
    }
    data = json_text(summary).encode("utf-8", "backslashreplace")
    output.write(f"{folder}/findings.json", data)
    outputs = files | {f"{folder}/findings.json": content_digest(data)}
    inputs = ready.seen | tally.seen | _table_read(wish, pad)
    return PersonalMade(inputs, font_digests(tuple(sorted(tally.families))), outputs, summary)


class _Tally:
    """Volumes as they come in: written where nobody looks, until it is known whether all rows pass."""

    def __init__(self, output: FolderWorkspace, passing: str) -> None:
        self._output, self._passing = output, passing
        # What a run left here that was stopped in the middle.
        for path in output.neighbours(passing, ""):
            output.remove(path)
        self._files: dict[str, str] = {}
        self.volumes = self.errors = 0
        self.faults: list[RowFault] = []
        self.extremes: dict[tuple[str, str], Extreme] = {}
        self.seen: dict[str, str] = {}
        self.families: set[str] = set()

    def take(self, volume: VolumeMade) -> None:
        """Keep what one volume came to, and let its bytes go."""
        self.volumes += 1
        self.errors += volume.errors
        self.faults = _in_order((*self.faults, *volume.faults))
        self.seen |= volume.seen
        self.families.update(volume.families)
        for extreme in volume.extremes:
            best = self.extremes.get((extreme.way, extreme.block))
            if best is None or (-extreme.measure, extreme.row.number) < (-best.measure, best.row.number):
                self.extremes[extreme.way, extreme.block] = extreme
        if volume.pdf:
            stem = f"volume-{volume.number:03}"
            self._keep(f"{stem}.pdf", volume.pdf)
            self._keep(f"{stem}.csv", volume.contents.encode("utf-8-sig"))

    def _keep(self, name: str, data: bytes) -> None:
        self._output.write(f"{self._passing}/{name}", data)
        self._files[name] = content_digest(data)

    def settle(self, folder: str, kept: bool) -> dict[str, str]:
        """Put all in place, or take all away; what stands in place afterwards, with digests.

        Volumes of an earlier run are set aside or taken away: nothing stale looks fresh.
        """
        mine = self._files if kept else {}
        withdraw_volumes(folder, self._output, frozenset(mine))
        for name in self._files:
            if kept:
                self._output.set_aside(f"{self._passing}/{name}", f"{folder}/{name}")
            else:
                self._output.remove(f"{self._passing}/{name}")
        return {f"{folder}/{name}": digest for name, digest in mine.items()}


def _rows_of(wish: PersonalWish, pad: PersonalPad) -> Iterator[Row]:
    """The rows that are for a pad, in the order of the table."""
    if pad.rows == wish.table.rows:
        return iter(wish.table)
    return (row for row in wish.table if wish.sku_of(row) == pad.sku)


def units_of(wish: PersonalWish, pad: PersonalPad, pattern: Pattern, n_up: int, run: Run) -> Iterator[VolumeUnit]:
    """The volumes of a pad, each taken from the table when it can be begun."""
    rows, most = _rows_of(wish, pad), n_up * MOST_SHEETS
    volumes = ceil(pad.rows / most)
    for number in range(1, volumes + 1):
        yield _unit(wish, pattern, tuple(islice(rows, most)), number, volumes, n_up, run)


def _unit(
    wish: PersonalWish, pattern: Pattern, rows: tuple[Row, ...], number: int, volumes: int, n_up: int, run: Run
) -> VolumeUnit:
    return VolumeUnit(
        source=pattern.source,
        path=pattern.path,
        variation=pattern.variation,
        settings=pattern.settings,
        table=wish.table.file,
        columns=wish.table.columns,
        key=wish.key,
        rows=rows,
        number=number,
        volumes=volumes,
        n_up=n_up,
        despite_errors=run.wish.despite_errors,
    )


def _looked(wish: PersonalWish, ready: Ready, extremes: tuple[Extreme, ...]) -> Iterator[RowFault]:
    """What the checks find on the most extreme rows and not on the first: all others lie between them."""
    known = {(finding.check, finding.severity) for finding in ready.pad.findings}
    for row in dict.fromkeys(extreme.row for extreme in extremes):
        design = ready.faces.design(ready.words(wish.table.values(row)))
        for finding in run_checks(design, compose(design), tile(design)):
            new = (finding.check, finding.severity) not in known
            if new and finding.counts and finding.severity != Severity.NOTE:
                yield _fault_of(finding, row, wish)


def _key_faults(wish: PersonalWish, pad: PersonalPad) -> Iterator[RowFault]:
    """Rows that their key does not tell apart, among the first quarter of a million: memory stays flat."""
    first: dict[str, int] = {}
    for row in islice(_rows_of(wish, pad) if wish.key else (), _MOST_KEYS):
        key = wish.key_of(row)
        before = first.setdefault(key, row.number)
        if not key:
            message, mend = f"{wish.key} is empty, so nothing tells this row from others.", "Fill the cell."
        elif before != row.number:
            message, mend = f"its {wish.key} is that of row {before} too.", "Give each row one of its own."
        else:
            continue
        yield RowFault(wish.table.place(row), row.number, key, "warning", message, mend)


def _fault_of(finding: Finding, row: Row, wish: PersonalWish) -> RowFault:
    mend = finding.remedy.text if finding.remedy else ""
    message = f"{finding.check}: {finding.message}"
    key = wish.key_of(row) if wish.key else ""
    severity: Literal["error", "warning"] = "error" if finding.severity == Severity.ERROR else "warning"
    return RowFault(wish.table.place(row), row.number, key, severity, message, mend)


def _in_order(faults: tuple[RowFault, ...]) -> list[RowFault]:
    """The first faults in the order of their rows, errors before warnings, as many as are told."""
    return sorted(faults, key=lambda fault: (fault.severity != "error", fault.row, fault.message))[:MOST_TOLD]


def _fault_data(fault: RowFault) -> dict[str, Any]:
    return {
        "file": fault.place.file,
        "line": fault.place.line,
        "row": fault.row,
        "key": fault.key or None,
        "severity": fault.severity,
        "message": fault.told,
        "mend": fault.mend or None,
    }


def _table_read(wish: PersonalWish, pad: PersonalPad) -> dict[str, str]:
    return {wish.table.file: content_digest(FolderWorkspace(pad.target.root).read(wish.table.file))}
