"""What the checks say of the designs of a run, each with its first row's words and with its most extreme ones."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from padspec.base.findings import Finding, Severity
from padspec.base.place import Place
from padspec.checks.table import run_checks
from padspec.collection.source import Source
from padspec.compose.compose import compose
from padspec.personal.bench import Pattern, Ready, bench_of
from padspec.personal.faults import RowFault
from padspec.reading.rows import Row
from padspec.reading.tree import Mapping
from padspec.reading.variation import Variation
from padspec.sheet.tile import tile


@dataclass(frozen=True, slots=True)
class Look:
    """What the checks said of one design: of which row's words, everything that they found by check and severity,
    and what of it counts as faults of that row.
    """

    key: tuple[str, ...]
    row: int
    found: frozenset[tuple[str, Severity]]
    faults: tuple[RowFault, ...]


@dataclass(frozen=True, slots=True, eq=False)
class LookUnit:
    """The most extreme rows of one design; `key` is the column that rows are known by, empty for their numbers,
    `found` what was found of the design already.
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
    found: frozenset[tuple[str, Severity]]

    @property
    def variations(self) -> tuple[Variation, ...]:
        """What the rows make of the pad: one, as they share a design."""
        return (self.pattern.of(self.cells(self.rows[0])),)

    @property
    def pattern(self) -> Pattern:
        """The pad that is personalised."""
        return Pattern(self.source, self.path, self.variation, self.settings)

    def cells(self, row: Row) -> dict[str, str]:
        """The cells of a row by their columns."""
        return dict(zip(self.columns, row.cells, strict=True))


def look(unit: LookUnit) -> tuple[RowFault, ...]:
    """What the checks find on extreme rows and did not on their design's first: all others lie between them."""
    return tuple(_found(unit))


def _found(unit: LookUnit) -> Iterator[RowFault]:
    bench = bench_of(unit.run, unit.pattern)
    for row in unit.rows:
        cells = unit.cells(row)
        ready = bench.ready(cells, row.number)
        design = ready.faces.design(ready.words(cells))
        for finding in run_checks(design, compose(design), tile(design)):
            fault = fault_of(finding, unit.table, row, cells[unit.key] if unit.key else "")
            if fault is not None and (finding.check, finding.severity) not in unit.found:
                yield fault


def look_of(ready: Ready, table: str, row: Row, key: str) -> Look:
    """What the checks found of a design with the words of the row that it was made for."""
    found = frozenset((finding.check, finding.severity) for finding in ready.pad.findings)
    faults = (fault_of(finding, table, row, key) for finding in ready.pad.findings)
    return Look(ready.key, ready.row, found, tuple(fault for fault in faults if fault is not None))


def fault_of(finding: Finding, table: str, row: Row, key: str) -> RowFault | None:
    """A finding as the fault of a row; None for one that does not weigh."""
    if not finding.counts or finding.severity == Severity.NOTE:
        return None
    severity: Literal["error", "warning"] = "error" if finding.severity == Severity.ERROR else "warning"
    mend = finding.remedy.text if finding.remedy else ""
    message = f"{finding.check}: {finding.message}"
    return RowFault(Place(table, row.line, 1), row.number, key, severity, message, mend)
