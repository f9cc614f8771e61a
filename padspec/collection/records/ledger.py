"""All records of one output folder, read once a run and kept up with what the run writes."""

from collections import defaultdict

from padspec.collection.records.record import RECORDS, Record, recall
from padspec.workspace import FolderWorkspace


class Ledger:
    """The records by their paths, and which of them wrote which file and hold which SKU."""

    __slots__ = ("_output", "_records", "_skus", "_writers")

    def __init__(self, output: FolderWorkspace) -> None:
        self._output = output
        self._records: dict[str, Record] = {}
        self._writers: defaultdict[str, set[str]] = defaultdict(set)
        self._skus: defaultdict[str, set[str]] = defaultdict(set)
        for path in output.neighbours(RECORDS, ".json"):
            record = recall(path, output)
            if record is not None:
                self._know(path, record)

    def get(self, path: str) -> Record | None:
        """The record at a path, None where there is none that can be trusted."""
        return self._records.get(path)

    @property
    def records(self) -> dict[str, Record]:
        """Every record by its path."""
        return dict(self._records)

    def holders(self, sku: str) -> dict[str, Record]:
        """The records that hold a SKU, by their paths; upper and lower case are one, as on many disks."""
        return {path: self._records[path] for path in sorted(self._skus[sku.casefold()])}

    def written_by_others(self, file: str, mine: frozenset[str]) -> bool:
        """Whether a file is among those of a record that is not at one of `mine`: pictures are shared, for one."""
        return not self._writers[file] <= mine

    def put(self, path: str, record: Record) -> None:
        """Write a record, and know it."""
        self._output.write(path, record.text())
        self._forget(path)
        self._know(path, record)

    def remove(self, path: str) -> None:
        """Take a record away."""
        self._output.remove(path)
        self._forget(path)

    def _know(self, path: str, record: Record) -> None:
        self._records[path] = record
        self._skus[record.sku.casefold()].add(path)
        for file in record.written:
            self._writers[file].add(path)

    def _forget(self, path: str) -> None:
        record = self._records.pop(path, None)
        if record is not None:
            self._skus[record.sku.casefold()].discard(path)
            for file in record.written:
                self._writers[file].discard(path)
