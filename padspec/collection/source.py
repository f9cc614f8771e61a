"""Where a unit of work finds the maker's files: in their folder, or packed up to be sent to another machine."""

from dataclasses import dataclass
from pathlib import Path

from padspec.workspace import FolderWorkspace, MemoryWorkspace, ReadFiles, Workspace


@dataclass(frozen=True, slots=True)
class Folder:
    """A project folder on this machine."""

    root: Path

    def open(self, read: ReadFiles | None = None) -> Workspace:
        """A workspace that has seen nothing yet; files among those `read` are not read again, others join them."""
        return FolderWorkspace(self.root, read)


@dataclass(frozen=True, slots=True)
class Packed:
    """Files by path, and the day that held where they were packed."""

    files: tuple[tuple[str, bytes], ...]
    date: str | None

    def open(self, read: ReadFiles | None = None) -> Workspace:  # noqa: ARG002 (here nothing is read)
        """A workspace that has seen nothing yet."""
        return _DatedWorkspace(dict(self.files), self.date)


class _DatedWorkspace(MemoryWorkspace):
    """Files in memory with the date of another machine."""

    def __init__(self, files: dict[str, bytes], date: str | None) -> None:
        super().__init__(files)
        self._date = date

    def date(self) -> str | None:
        """See Workspace.date."""
        return self._date


Source = Folder | Packed
