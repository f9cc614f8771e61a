"""Volumes of one pad, made beside what stands and moved there when every row has passed."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.collection.build import Run
from padspec.collection.collection_file import Collection
from padspec.collection.records.font_files import font_digests
from padspec.collection.records.volumes import folder_of
from padspec.personal.bench import Ready, bench_of
from padspec.personal.faults import MOST_TOLD, RowFault
from padspec.personal.looks import LookUnit, look
from padspec.personal.sheet import PersonalSheet
from padspec.personal.tally import Tally, in_order
from padspec.personal.units import Cut, cut_of, first_unit, rows_of, units_of
from padspec.personal.volume import VolumeUnit, make_volume, sheet_for
from padspec.personal.wish import PersonalPad, PersonalWish
from padspec.reading.rows import Row
from padspec.report import finding_data, json_text
from padspec.workspace import FolderWorkspace, content_digest

CAUTION = "Print all copies of a sheet before the next (uncollated): the stack in every slot is then one pad."
#: So many keys are held at once.
_MOST_KEYS = 250_000


@dataclass(frozen=True, slots=True)
class PersonalMade:
    """What a run came to for one pad: what was read, fonts, what was written (path to digest), and its summary."""

    inputs: dict[str, str]
    fonts: dict[str, str]
    outputs: dict[str, str]
    summary: dict[str, Any]


@dataclass(frozen=True, slots=True)
class _Job:
    """One pad of a run: what is wished for, how its first row's design lies on a sheet, and where volumes end."""

    wish: PersonalWish
    pad: PersonalPad
    first: VolumeUnit
    ready: Ready
    sheet: PersonalSheet
    cut: Cut


def make_personal(
    wish: PersonalWish,
    pad: PersonalPad,
    collection: Collection,
    output: FolderWorkspace,
    run: Run,
    progress: Callable[[int], None],
) -> PersonalMade:
    """Every volume of one pad; `progress` is told how many rows are set. Raises ProblemsError."""
    job = _job(wish, pad, run)
    tally = Tally(folder_of(pad.sku), output)
    try:
        return _made(job, collection, tally, output, run, progress)
    finally:
        # Also where this run is interrupted: nobody would find what lies there.
        tally.clear()
        bench_of.cache_clear()


def _job(wish: PersonalWish, pad: PersonalPad, run: Run) -> _Job:
    first = first_unit(wish, pad, run.wish.despite_errors)
    (row,) = first.rows
    ready = bench_of(first.run, first.pattern).ready(wish.table.values(row), row.number)
    sheet = sheet_for(first, ready)
    if sheet is None:
        size = ready.pad.design.sheet.size_name
        raise ProblemsError(
            Problem(ready.pad.design.place, f"No leaf of this pad fits {size}.", "padspec check says why.")
        )
    return _Job(wish, pad, first, ready, sheet, cut_of(wish, pad, first, ready, sheet.sheet.n_up))


def _made(
    job: _Job,
    collection: Collection,
    tally: Tally,
    output: FolderWorkspace,
    run: Run,
    progress: Callable[[int], None],
) -> PersonalMade:
    wish, pad, rows = job.wish, job.pad, 0
    for unit, volume in run.workers.run(make_volume, units_of(wish, pad, job.first, job.cut)):
        tally.take(volume)
        rows += len(unit.rows)
        progress(rows)
    looked = (*_looked(job, tally, run), *islice(_key_faults(wish, pad), MOST_TOLD))
    errors = tally.errors + sum(fault.severity == "error" for fault in looked)
    failed = job.ready.pad.failed or errors > 0
    kept = not failed or run.wish.despite_errors
    files = tally.settle(kept)
    summary = {
        "sku": pad.sku,
        "design": job.ready.pad.design.name,
        "collection": collection.file,
        "table": wish.table.file,
        "state": "failed" if failed else "passed",
        "pads": pad.rows,
        "n_up": job.cut.n_up,
        "sheets": job.cut.sheets,
        "copies": job.sheet.sheet.copies,
        "volumes": tally.volumes if kept else 0,
        "errors": errors,
        "caution": CAUTION,
        "notes": [job.sheet.note] if job.sheet.note else [],
        "findings": [finding_data(finding) for finding in job.ready.pad.findings],
        "rows": [_fault_data(fault) for fault in in_order((*tally.faults, *looked))],
    }
    data = json_text(summary).encode("utf-8", "backslashreplace")
    output.write(f"{folder_of(pad.sku)}/findings.json", data)
    outputs = files | {f"{folder_of(pad.sku)}/findings.json": content_digest(data)}
    inputs = tally.seen | {wish.table.file: wish.table.digest}
    return PersonalMade(inputs, font_digests(tuple(sorted(tally.families))), outputs, summary)


def _looked(job: _Job, tally: Tally, run: Run) -> Iterator[RowFault]:
    """What the checks find on the designs of other rows than the first, and on the most extreme rows of each."""
    for seen in tally.looks.values():
        if seen.key != job.ready.key:
            yield from seen.faults
    for _, faults in run.workers.run(look, _to_look_at(job, tally)):
        yield from faults


def _to_look_at(job: _Job, tally: Tally) -> Iterator[LookUnit]:
    at_fault = {fault.row for fault in tally.faults}
    rows: dict[tuple[str, ...], set[Row]] = {}
    for extreme in tally.extremes.values():
        # The first row of a design was looked at when it was made.
        if extreme.row.number not in at_fault and extreme.row.number != tally.looks[extreme.key].row:
            rows.setdefault(extreme.key, set()).add(extreme.row)
    for key, some in rows.items():
        yield LookUnit(
            run=job.first.run,
            source=job.first.source,
            path=job.first.path,
            variation=job.first.variation,
            settings=job.first.settings,
            table=job.first.table,
            columns=job.first.columns,
            key=job.first.key,
            rows=tuple(sorted(some, key=lambda row: row.number)),
            found=tally.looks[key].found,
        )


def _key_faults(wish: PersonalWish, pad: PersonalPad) -> Iterator[RowFault]:
    """Rows that their key does not tell apart, among the first quarter of a million: memory stays flat."""
    first: dict[str, int] = {}
    for row in islice(rows_of(wish, pad) if wish.key else (), _MOST_KEYS):
        key = wish.key_of(row)
        before = first.setdefault(key, row.number)
        if not key:
            message, mend = f"{wish.key} is empty, so nothing tells this row from others.", "Fill the cell."
        elif before != row.number:
            message, mend = f"its {wish.key} is that of row {before} too.", "Give each row one of its own."
        else:
            continue
        yield RowFault(wish.table.place(row), row.number, key, "warning", message, mend)


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
