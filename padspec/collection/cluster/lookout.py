"""Packed files whose reader is watched: what it looks for in vain may well lie where they were packed."""

from dataclasses import dataclass, field

from padspec.collection.cluster.packing import FONTS
from padspec.collection.source import Packed
from padspec.workspace import MemoryWorkspace, ReadFiles, Workspace


class Lookout:
    """What was looked for and not found, and whether names were looked for in a folder that is not here whole."""

    __slots__ = ("absent", "looked_around")

    def __init__(self) -> None:
        self.absent: set[str] = set()
        self.looked_around = False


@dataclass(frozen=True, slots=True)
class Watched(Packed):
    """Packed files, and who is told of what is missing among them."""

    lookout: Lookout = field(compare=False)

    def open(self, read: ReadFiles | None = None) -> Workspace:  # noqa: ARG002 (here nothing is read)
        """See Packed.open."""
        return _Watching(dict(self.files), self.date, self.lookout)


class _Watching(MemoryWorkspace):
    def __init__(self, files: dict[str, bytes], date: str | None, lookout: Lookout) -> None:
        super().__init__(files)
        self._date, self._lookout = date, lookout

    def date(self) -> str | None:
        """See Workspace.date."""
        return self._date

    def neighbours(self, folder: str, suffix: str) -> tuple[str, ...]:
        """See Workspace.neighbours."""
        self._lookout.looked_around |= folder != FONTS
        return super().neighbours(folder, suffix)

    def _load(self, path: str) -> bytes | None:
        data = super()._load(path)
        if data is None:
            self._lookout.absent.add(path)
        return data

    def _has(self, path: str) -> bool:
        found = super()._has(path)
        if not found:
            self._lookout.absent.add(path)
        return found
