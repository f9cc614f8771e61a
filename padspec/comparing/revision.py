"""A project folder as it was at a commit: the same gate to files as one on disk, read only.

Links are followed as on a disk, inside the project and never out of it. Of a file that git holds only a pointer
to (large-file storage), the content is taken from the store beside the repository where it is there, else that is
told.
"""

import hashlib
import os
import re
from collections import deque
from dataclasses import dataclass
from functools import cached_property

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.comparing.git import Commit, Repository, ask
from padspec.workspace import MOST_BYTES, Workspace

#: Files up to so many bytes are kept once read: the variants of a design read the same ones again.
_MOST_KEPT = 2**18
_LINK, _SUBMODULE = "120000", "160000"
#: As many links as Linux follows before it says that they lead in a circle.
_MOST_LINKS = 40
#: The pointer format of large-file storage, version 1: this line first, at most 1024 bytes in all.
_POINTER = b"version https://git-lfs.github.com/spec/v1\n"
_MOST_POINTER = 1024
_POINTED = re.compile(rb"^oid sha256:([0-9a-f]{64})$\n^size (\d+)$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of git's list of a commit's files: its mode and the object that holds it."""

    mode: str
    digest: str


class RevisionWorkspace(Workspace):
    """The files of one project as of one commit."""

    def __init__(self, repository: Repository, commit: Commit) -> None:
        super().__init__()
        self._repository = repository
        self._commit = commit
        self._kept: dict[str, bytes] = {}

    @cached_property
    def _entries(self) -> dict[str, Entry]:
        """Every file of the project by its path there."""
        prefix = self._repository.prefix
        paths = ["--", prefix] if prefix else []
        told = ask(self._repository.project, "ls-tree", "-r", "-z", "--full-tree", self._commit.digest, *paths)
        if not told.done:
            message = f"git cannot list the files as of {self._commit.asked}: {told.trouble}"
            raise ProblemsError(Problem(Place(str(self._repository.project), 0, 0), message))
        found = {}
        for line in told.out.split(b"\0"):
            head, _, path = line.partition(b"\t")
            if path:
                mode, _, digest = head.decode("ascii").split(" ")
                found[os.fsdecode(path).removeprefix(prefix)] = Entry(mode, digest)
        return found

    @cached_property
    def _folders(self) -> frozenset[str]:
        """Every folder that holds a file, at whatever depth."""
        return frozenset(path[:at] for path in self._entries for at in range(len(path)) if path[at] == "/")

    @property
    def is_empty(self) -> bool:
        """Whether the commit has nothing of the project."""
        return not self._entries

    def _real(self, path: str) -> str:
        """Where a path leads, links followed; raises ProblemsError where that is out of the project."""
        to_go, gone, links = deque(path.split("/")), list[str](), 0
        while to_go:
            part = to_go.popleft()
            if part in ("", "."):
                continue
            if part == "..":
                if not gone:
                    raise self._refused(path, f"This leads outside the project folder as of {self._commit.asked}.")
                gone.pop()
                continue
            entry = self._entries.get("/".join([*gone, part]))
            if entry is not None and entry.mode == _LINK:
                links += 1
                if links > _MOST_LINKS:
                    raise self._refused(path, "This is a link that leads in a circle.")
                target = os.fsdecode(self._blob(path, entry))
                if target.startswith("/"):
                    raise self._refused(path, f"This was a link out of the project folder, to {target}.")
                to_go.extendleft(reversed(target.split("/")))
                continue
            if entry is not None and entry.mode == _SUBMODULE:
                here = "/".join([*gone, part])
                raise self._refused(
                    path, f"{here} is a repository of its own (a submodule); it is not looked into."
                )
            gone.append(part)
        return "/".join(gone)

    def _load(self, path: str) -> bytes | None:
        entry = self._entries.get(self._real(path))
        if entry is None:
            return None
        data = self._blob(path, entry)
        if len(data) <= _MOST_POINTER and data.startswith(_POINTER):
            return self._pointed_to(path, data)
        return data

    def _has(self, path: str) -> bool:
        return self._real(path) in self._entries

    def _blob(self, path: str, entry: Entry) -> bytes:
        if entry.digest not in self._kept:
            data = self._asked(path, entry)
            if len(data) > _MOST_KEPT:
                return data
            self._kept[entry.digest] = data
        return self._kept[entry.digest]

    def _asked(self, path: str, entry: Entry) -> bytes:
        project = self._repository.project
        size = ask(project, "cat-file", "-s", entry.digest)
        if size.done and int(size.text) > MOST_BYTES:
            told = f"The file had {int(size.text) / 2**20:.0f} MiB; at most {MOST_BYTES // 2**20} MiB are read."
            raise self._refused(path, told)
        content = ask(project, "cat-file", "blob", entry.digest) if size.done else size
        if not content.done:
            message = f"This clone does not hold the file as of {self._commit.asked}, only its name."
            raise self._refused(path, message, "Fetch it: git fetch --refetch, or clone again without --filter.")
        return content.out

    def _pointed_to(self, path: str, pointer: bytes) -> bytes:
        match = _POINTED.search(pointer)
        digest, size = (match[1].decode("ascii"), int(match[2])) if match else ("", 0)
        kept = self._repository.store / "lfs" / "objects" / digest[:2] / digest[2:4] / digest
        if match and size <= MOST_BYTES and kept.is_file() and kept.stat().st_size == size:
            data = kept.read_bytes()
            if hashlib.sha256(data).hexdigest() == digest:
                return data
        told = f"{size / 2**20:.1f} MiB in large-file storage"
        message = f"git holds only a pointer to it as of {self._commit.asked}: {told}."
        raise self._refused(path, message, f"Fetch it: git lfs fetch origin {self._commit.short}")

    def stamp(self, path: str) -> str:
        """See Workspace.stamp: git's own name of the content."""
        entry = self._entries.get(self._real(path))
        return entry.digest if entry else ""

    def write(self, path: str, data: bytes) -> None:  # noqa: ARG002 (a workspace's signature)
        """Refused: what was committed stays as it is."""
        raise self._refused(path, f"{self._commit.asked} is committed: nothing is written there.")

    def set_aside(self, path: str, other: str) -> None:  # noqa: ARG002 (a workspace's signature)
        """Refused: what was committed stays as it is."""
        raise self._refused(path, f"{self._commit.asked} is committed: nothing is renamed there.")

    def remove(self, path: str) -> None:
        """Refused: what was committed stays as it is."""
        raise self._refused(path, f"{self._commit.asked} is committed: nothing is taken away there.")

    def neighbours(self, folder: str, suffix: str) -> tuple[str, ...]:
        """See Workspace.neighbours."""
        try:
            base = self._real(folder)
        except ProblemsError:
            return ()
        start = f"{base}/" if base else ""
        names = [path.removeprefix(start) for path in self._entries if path.startswith(start)]
        beside = "" if folder in ("", ".") else f"{folder}/"
        found = (f"{beside}{name}" for name in sorted(names) if "/" not in name and name.endswith(suffix))
        return tuple(path for path in found if self._is_file_at(path))

    def is_folder(self, path: str) -> bool:
        """Whether there was a folder with anything in it."""
        real = self._real(path)
        return real in self._folders or (not real and bool(self._entries))

    def _is_file_at(self, path: str) -> bool:
        try:
            return self._has(path)
        except ProblemsError:
            return False

    def _refused(self, path: str, message: str, mend: str = "") -> ProblemsError:
        return ProblemsError(Problem(Place(path, 0, 0), message, mend))
