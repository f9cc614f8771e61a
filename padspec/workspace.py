"""The one gate to the maker's files and the date. What goes through it is recorded, so that a later build
can tell whether anything that mattered has changed.

Paths are texts with forward slashes, relative to the project folder; nothing outside it is read or written.
`MemoryWorkspace` is the twin for tests and trials: the same gate, over a dictionary.
"""

import os
import tempfile
from abc import ABC, abstractmethod
from hashlib import blake2b
from pathlib import Path, PurePosixPath

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place

#: A file of the maker's may be this large; more is refused before it is read.
MOST_BYTES = 400 * 1024 * 1024


def content_digest(data: bytes) -> str:
    """The name of some content: 128 bits of BLAKE2b in hex."""
    return blake2b(data, digest_size=16).hexdigest()


def joined(folder_of: str, path: str) -> str:
    """The project path that `path` means inside the file `folder_of`, dots resolved.

    >>> joined("cards/moth.pad.yaml", "../art/moth.png")
    'art/moth.png'

    Raises ValueError where it leaves the project folder or is absolute.
    """
    parts: list[str] = []
    for part in (PurePosixPath(folder_of).parent / path.replace("\\", "/")).parts:
        if part == "..":
            if not parts:
                raise ValueError(path)
            parts.pop()
        elif part == "/" or (len(part) == 2 and part[1] == ":"):
            raise ValueError(path)
        elif part != ".":
            parts.append(part)
    return "/".join(parts)


class Workspace(ABC):
    """A project folder: reads that are remembered, writes that are whole or not at all."""

    def __init__(self) -> None:
        self._seen: dict[str, str] = {}

    @property
    def seen(self) -> dict[str, str]:
        """Every path asked for so far with the digest of what was there, or an empty text for nothing."""
        return dict(sorted(self._seen.items()))

    def read(self, path: str) -> bytes:
        """The bytes of a file; raises ProblemsError where it is missing or over the size allowed."""
        data = self._load(path)
        self._seen[path] = content_digest(data) if data is not None else ""
        if data is None:
            raise ProblemsError(Problem(Place(path, 0, 0), "There is no such file."))
        return data

    def is_file(self, path: str) -> bool:
        """Whether there is a file; the answer is remembered like a read."""
        found = self._has(path)
        if not found:
            self._seen[path] = ""
        return found

    def date(self) -> str | None:
        """The day that SOURCE_DATE_EPOCH names, as YYYY-MM-DD, or None; there is no other clock here."""
        return _source_date()

    @abstractmethod
    def _load(self, path: str) -> bytes | None: ...

    @abstractmethod
    def _has(self, path: str) -> bool: ...

    @abstractmethod
    def write(self, path: str, data: bytes) -> None:
        """Put a whole file in place at once: a reader sees the old one or the new one, never a part."""

    @abstractmethod
    def set_aside(self, path: str, other: str) -> None:
        """Rename a file if it is there, replacing the other; nothing happens where there is none."""

    @abstractmethod
    def neighbours(self, folder: str, suffix: str) -> tuple[str, ...]:
        """The files in one folder whose names end so, sorted."""


class FolderWorkspace(Workspace):
    """A folder on disk."""

    def __init__(self, root: Path) -> None:
        super().__init__()
        self.root = root.resolve()

    def _on_disk(self, path: str) -> Path:
        full = (self.root / path).resolve()
        if not full.is_relative_to(self.root):
            raise ProblemsError(
                Problem(
                    Place(path, 0, 0),
                    f"This leads outside the project folder {self.root}.",
                    "Copy the file into the folder and name it from there.",
                )
            )
        return full

    def _load(self, path: str) -> bytes | None:
        full = self._on_disk(path)
        try:
            size = full.stat().st_size
            if size > MOST_BYTES:
                raise ProblemsError(
                    Problem(
                        Place(path, 0, 0),
                        f"The file has {size / 2**20:.0f} MiB; at most {MOST_BYTES // 2**20} MiB are read.",
                        "Save a smaller one.",
                    )
                )
            return full.read_bytes() if full.is_file() else None
        except (FileNotFoundError, NotADirectoryError):
            return None
        except OSError as error:
            raise ProblemsError(Problem(Place(path, 0, 0), f"It cannot be read: {error.strerror}.")) from None

    def _has(self, path: str) -> bool:
        return self._on_disk(path).is_file()

    def write(self, path: str, data: bytes) -> None:
        """See Workspace.write. A temporary file in the same folder is renamed over the old one."""
        full = self._on_disk(path)
        try:
            full.parent.mkdir(parents=True, exist_ok=True)
            handle, name = tempfile.mkstemp(dir=full.parent, prefix=f".{full.name}.", suffix=".part")
            try:
                with os.fdopen(handle, "wb") as file:
                    file.write(data)
                Path(name).chmod(0o644)
                Path(name).replace(full)
            except BaseException:
                Path(name).unlink(missing_ok=True)
                raise
        except OSError as error:
            raise ProblemsError(
                Problem(
                    Place(str(full), 0, 0),
                    f"It cannot be written: {error.strerror}.",
                    "Write elsewhere: --out FOLDER.",
                )
            ) from None

    def set_aside(self, path: str, other: str) -> None:
        """See Workspace.set_aside."""
        full = self._on_disk(path)
        if full.is_file():
            full.replace(self._on_disk(other))

    def neighbours(self, folder: str, suffix: str) -> tuple[str, ...]:
        """See Workspace.neighbours."""
        base = self._on_disk(folder)
        if not base.is_dir():
            return ()
        names = sorted(entry.name for entry in base.iterdir() if entry.name.endswith(suffix) and entry.is_file())
        return tuple(str(PurePosixPath(folder) / name) for name in names)


class MemoryWorkspace(Workspace):
    """Files in a dictionary, for tests and for trying a design that is not on disk yet."""

    def __init__(self, files: dict[str, bytes], behind: Workspace | None = None) -> None:
        super().__init__()
        self.files = dict(files)
        self._behind = behind

    def _load(self, path: str) -> bytes | None:
        if path in self.files or self._behind is None:
            return self.files.get(path)
        return self._behind._load(path)

    def _has(self, path: str) -> bool:
        return path in self.files or (self._behind is not None and self._behind._has(path))

    def write(self, path: str, data: bytes) -> None:
        """See Workspace.write."""
        self.files[path] = data

    def set_aside(self, path: str, other: str) -> None:
        """See Workspace.set_aside."""
        if path in self.files:
            self.files[other] = self.files.pop(path)

    def neighbours(self, folder: str, suffix: str) -> tuple[str, ...]:
        """See Workspace.neighbours."""
        parent = str(PurePosixPath(folder))
        mine = {path for path in self.files if path.endswith(suffix) and str(PurePosixPath(path).parent) == parent}
        behind = self._behind.neighbours(folder, suffix) if self._behind else ()
        return tuple(sorted(mine.union(behind)))


def _source_date() -> str | None:
    from datetime import UTC, datetime

    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    return datetime.fromtimestamp(int(epoch), UTC).date().isoformat() if epoch.isdigit() else None
