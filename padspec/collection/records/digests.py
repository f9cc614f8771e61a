"""Digests of files on disk, each worked out once a run; of written files, only where their stamp has changed.

The maker's files are read whole every run: an edit must never be missed. What padspec wrote itself is trusted as
long as size, time and number of the file are those that it had when its digest was last worked out.
"""

import json

from padspec.base.errors import ProblemsError
from padspec.collection.records.shape import is_texts
from padspec.workspace import FolderWorkspace, Workspace, content_digest

STAMPS = ".cache/stamps.json"


class Digests:
    """The digests of one folder's files, read when first asked for."""

    __slots__ = ("_known", "_workspace")

    def __init__(self, workspace: Workspace) -> None:
        self._workspace = workspace
        self._known: dict[str, str] = {}

    def of(self, path: str) -> str:
        """The digest of a file's content, empty where there is none; ProblemsError where it is unreadable."""
        if path not in self._known:
            there = self._workspace.is_file(path)
            self._known[path] = content_digest(self._workspace.read(path)) if there else ""
        return self._known[path]


class StampedDigests:
    """The digests of files that padspec wrote, remembered between runs by the stamps of the files."""

    __slots__ = ("_changed", "_known", "_output")

    def __init__(self, output: FolderWorkspace) -> None:
        self._output = output
        self._known = _recalled(output)
        self._changed = False

    def of(self, path: str) -> str:
        """The digest of a file's content, empty where there is none; ProblemsError where it is unreadable."""
        stamp = self._output.stamp(path)
        if not stamp:
            return ""
        known = self._known.get(path, "").split()
        if known[:1] != [stamp]:
            known = [stamp, content_digest(self._output.read(path))]
            self._known[path] = " ".join(known)
            self._changed = True
        return known[1]

    def know(self, path: str, digest: str) -> None:
        """Remember the digest of a file that was just written."""
        self._known[path] = f"{self._output.stamp(path)} {digest}"
        self._changed = True

    @property
    def is_changed(self) -> bool:
        """Whether more is known than was kept."""
        return self._changed

    def save(self) -> None:
        """Keep what is known for the next run, of files that are still there."""
        if self._changed:
            self._known = {path: value for path, value in self._known.items() if self._output.stamp(path)}
            text = json.dumps(self._known, indent=0, sort_keys=True, ensure_ascii=False)
            self._output.write(STAMPS, text.encode("utf-8", "backslashreplace"))
            self._changed = False


def _recalled(output: FolderWorkspace) -> dict[str, str]:
    try:
        data = json.loads(output.read(STAMPS)) if output.is_file(STAMPS) else {}
    except (ProblemsError, ValueError, RecursionError):
        return {}
    sound = is_texts(data) and all(len(value.split()) == 2 for value in data.values())
    return data if sound else {}
