"""The one gate to the maker's files and the date. What goes through it is recorded, so that a later build
can tell whether anything that mattered has changed.

Paths are texts with forward slashes, relative to the project folder; nothing outside it is read or written.
`MemoryWorkspace` is the twin for tests and trials: the same gate, over a dictionary.
"""

import errno
import os
from abc import ABC, abstractmethod
from contextlib import suppress
from hashlib import blake2b
from itertools import count
from pathlib import Path, PurePosixPath
from stat import S_ISREG

from padspec.base.clock import source_date, today
from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place

#: A file of the maker's may be this large; more is refused before it is read.
MOST_BYTES = 160 * 1024 * 1024
_COPY_IT_IN = "Copy the file into the folder and name it from there."
_WRITE_ELSEWHERE = "Write elsewhere: --out FOLDER."

#: Files by path, with their digests.
ReadFiles = dict[str, tuple[bytes | None, str]]


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

    def __init__(self, read: ReadFiles | None = None) -> None:
        self._seen: dict[str, str] = {}
        self._keeps = read is not None
        self._read: ReadFiles = {} if read is None else read

    def _loaded(self, path: str) -> tuple[bytes | None, str]:
        data = self._load(path)
        found = (data, content_digest(data) if data is not None else "")
        if self._keeps and data is not None:
            self._read[path] = found
        return found

    @property
    def seen(self) -> dict[str, str]:
        """Every path asked for so far with the digest of what was there, or an empty text for nothing."""
        return dict(sorted(self._seen.items()))

    def read(self, path: str) -> bytes:
        """The bytes of a file; raises ProblemsError where it is missing or over the size allowed."""
        data, digest = self._read.get(path) or self._loaded(path)
        self._seen[path] = digest
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
        """The day that SOURCE_DATE_EPOCH names, as YYYY-MM-DD, or None: no build knows another clock.

        Raises ProblemsError where it is set to anything but a number of seconds.
        """
        return source_date()

    def today(self) -> str:
        """The same day, else the calendar's: for what a maker enters, never for what is built."""
        return today()

    @abstractmethod
    def _load(self, path: str) -> bytes | None: ...

    @abstractmethod
    def _has(self, path: str) -> bool: ...

    @abstractmethod
    def stamp(self, path: str) -> str:
        """What a file has beside its content that no edit leaves as it is; empty where there is no file."""

    @abstractmethod
    def write(self, path: str, data: bytes) -> None:
        """Put a whole file in place at once: a reader sees the old one or the new one, never a part."""

    def write_to_last(self, path: str, data: bytes) -> None:
        """Like write, and kept through a power cut: on the disk when this returns. A file keeps its rights."""
        self.write(path, data)

    @abstractmethod
    def set_aside(self, path: str, other: str) -> None:
        """Rename a file if it is there, replacing the other; nothing happens where there is none."""

    @abstractmethod
    def remove(self, path: str) -> None:
        """Take a file away if it is there, with its folder where it was the last in it."""

    @abstractmethod
    def neighbours(self, folder: str, suffix: str) -> tuple[str, ...]:
        """The files in one folder whose names end so, sorted."""


class FolderWorkspace(Workspace):
    """A folder on disk. Files among those `read` are not read again, and what is read joins them: a run of work
    on one design sees each file as it was when it was first asked for.
    """

    def __init__(self, root: Path, read: ReadFiles | None = None) -> None:
        super().__init__(read)
        self.root = root.resolve()

    def _on_disk(self, path: str, mend: str = _COPY_IT_IN) -> Path:
        """Where a path leads, links followed. Raises ValueError for a name that no file can have."""
        try:
            full = (self.root / path).resolve()
        except (OSError, RuntimeError):
            message = "This is a link that leads in a circle."
            raise ProblemsError(Problem(Place(path, 0, 0), message, "Put the file itself there.")) from None
        if not full.is_relative_to(self.root):
            message = f"This leads outside the project folder {self.root}."
            if mend != _COPY_IT_IN:
                message = f"This leads outside the folder that is written, {self.root}."
            raise ProblemsError(Problem(Place(path, 0, 0), message, mend))
        return full

    def _spot(self, path: str) -> Path:
        """The place of a path itself: where it is a link, the link and not what it leads to."""
        place = PurePosixPath(path)
        return self._on_disk(str(place.parent), _WRITE_ELSEWHERE) / place.name

    def _load(self, path: str) -> bytes | None:
        try:
            full = self._on_disk(path)
            if not full.is_file():
                return None
            size = full.stat().st_size
            if size > MOST_BYTES:
                raise _too_large(path, f"{size / 2**20:.0f} MiB")
            with full.open("rb") as file:
                # Some files of the system say that they are empty, and never end.
                data = file.read(MOST_BYTES + 1 if size == 0 else size + 1)
                data += file.read(MOST_BYTES + 1 - len(data)) if len(data) > size > 0 else b""
        except (FileNotFoundError, NotADirectoryError, ValueError):
            return None
        except OSError as error:
            raise _unreadable(path, error) from None
        if len(data) > MOST_BYTES:
            raise _too_large(path, "no end that was found")
        return data

    def _has(self, path: str) -> bool:
        try:
            return self._on_disk(path).is_file()
        except ValueError:
            return False
        except OSError as error:
            if error.errno == errno.ENAMETOOLONG:
                return False
            raise _unreadable(path, error) from None

    def stamp(self, path: str) -> str:
        """See Workspace.stamp: size, time of the last change in nanoseconds, number of the file on its disk."""
        try:
            stat = self._on_disk(path).stat()
        except (OSError, ValueError):
            return ""
        if not S_ISREG(stat.st_mode):
            return ""
        return f"{stat.st_size}-{stat.st_mtime_ns}-{stat.st_ino}"

    def write(self, path: str, data: bytes) -> None:
        """See Workspace.write. A file beside it is renamed over the old one."""
        self._replace(self._on_disk(path, _WRITE_ELSEWHERE), data)

    def write_to_last(self, path: str, data: bytes) -> None:
        """See Workspace.write_to_last."""
        self._replace(self._on_disk(path, _WRITE_ELSEWHERE), data, lasting=True)

    def _replace(self, full: Path, data: bytes, lasting: bool = False) -> None:
        try:
            full.parent.mkdir(parents=True, exist_ok=True)
            part, handle = _new_part(full.parent)
            try:
                with os.fdopen(handle, "wb") as file:
                    file.write(data)
                    if lasting:
                        file.flush()
                        os.fsync(file.fileno())
                if lasting and full.exists():
                    part.chmod(full.stat().st_mode & 0o7777)
                part.replace(full)
                if lasting:
                    _settle(full.parent)
            except BaseException:
                part.unlink(missing_ok=True)
                raise
        except OSError as error:
            raise _unwritable(full, error) from None

    def set_aside(self, path: str, other: str) -> None:
        """See Workspace.set_aside."""
        spot = self._spot(path)
        try:
            if spot.is_file():
                self._spot(other).parent.mkdir(parents=True, exist_ok=True)
                spot.replace(self._spot(other))
        except OSError as error:
            raise _unwritable(self._spot(other), error) from None

    def remove(self, path: str) -> None:
        """See Workspace.remove."""
        spot = self._spot(path)
        try:
            spot.unlink(missing_ok=True)
        except NotADirectoryError:
            return
        except OSError as error:
            raise _unwritable(spot, error) from None
        if spot.parent != self.root:
            with suppress(OSError):  # it is not empty, or was never there
                spot.parent.rmdir()

    def neighbours(self, folder: str, suffix: str) -> tuple[str, ...]:
        """See Workspace.neighbours."""
        try:
            base = self._on_disk(folder)
            if not base.is_dir():
                return ()
            names = sorted(
                entry.name for entry in base.iterdir() if entry.name.endswith(suffix) and entry.is_file()
            )
        except (OSError, ValueError):
            return ()
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

    def stamp(self, path: str) -> str:
        """See Workspace.stamp: here the content itself tells."""
        data = self._load(path)
        return "" if data is None else content_digest(data)

    def write(self, path: str, data: bytes) -> None:
        """See Workspace.write."""
        self.files[path] = data

    def set_aside(self, path: str, other: str) -> None:
        """See Workspace.set_aside."""
        if path in self.files:
            self.files[other] = self.files.pop(path)

    def remove(self, path: str) -> None:
        """See Workspace.remove; what lies behind stays as it is."""
        self.files.pop(path, None)

    def neighbours(self, folder: str, suffix: str) -> tuple[str, ...]:
        """See Workspace.neighbours."""
        parent = str(PurePosixPath(folder))
        mine = {path for path in self.files if path.endswith(suffix) and str(PurePosixPath(path).parent) == parent}
        behind = self._behind.neighbours(folder, suffix) if self._behind else ()
        return tuple(sorted(mine.union(behind)))


def _new_part(folder: Path) -> tuple[Path, int]:
    """A new file to write into; its rights are what the umask leaves, as with any file a program makes."""
    for number in count():
        part = folder / f".{os.getpid()}-{number}.part"
        with suppress(FileExistsError):
            return part, os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    raise AssertionError("count ends")


def _settle(folder: Path) -> None:
    """Have the names in a folder on the disk too; systems that cannot open a folder see to it themselves."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _too_large(path: str, size: str) -> ProblemsError:
    message = f"The file has {size}; at most {MOST_BYTES // 2**20} MiB are read."
    return ProblemsError(Problem(Place(path, 0, 0), message, "Save a smaller one."))


def _unreadable(path: str, error: OSError) -> ProblemsError:
    return ProblemsError(Problem(Place(path, 0, 0), f"It cannot be read: {error.strerror}."))


def _unwritable(full: Path, error: OSError) -> ProblemsError:
    message = f"It cannot be written: {error.strerror}."
    return ProblemsError(Problem(Place(str(full), 0, 0), message, _WRITE_ELSEWHERE))
