"""What a build read and wrote, kept beside the output, so that the next one can tell whether anything changed.

The record holds a digest for every file asked for (an empty one for a file that was looked for and missing, so
that adding a studio.yaml counts as a change), for every file written (an empty one for what must not stand
there), for the fonts of installed packages, and the versions and options that matter.
"""

import json
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from padspec.base.errors import ProblemsError
from padspec.collection.shape import SUMMARY, is_texts, stays_inside
from padspec.collection.targets import Target
from padspec.fonts import family_file
from padspec.workspace import FolderWorkspace, Workspace, content_digest

RECORDS = ".cache/builds"


@dataclass(frozen=True, slots=True)
class Record:
    """One build: whose it was, what was read and written (path → digest), the circumstances, and its summary.

    `project` is the way from the output folder to the project's, so that both may move together.
    """

    project: str
    path: str
    circumstances: dict[str, str]
    fonts: dict[str, str]
    inputs: dict[str, str]
    outputs: dict[str, str]
    summary: dict[str, Any]

    @property
    def sku(self) -> str:
        """The name of the folder that it wrote."""
        return str(self.summary["sku"])

    @property
    def written(self) -> tuple[str, ...]:
        """The paths of the files that it wrote."""
        return tuple(path for path, digest in self.outputs.items() if digest)

    def text(self) -> bytes:
        """The record as it is stored."""
        data = {
            "project": self.project,
            "path": self.path,
            "circumstances": self.circumstances,
            "fonts": self.fonts,
            "inputs": self.inputs,
            "outputs": self.outputs,
            "summary": self.summary,
        }
        # Half a character, as a file's name may hold, is then written as JSON's own escape.
        text = json.dumps(data, indent=1, sort_keys=True, ensure_ascii=False)
        return f"{text}\n".encode("utf-8", "backslashreplace")


def way_to(project: Path, output: FolderWorkspace) -> str:
    """How a record in this output folder names a project."""
    try:
        return Path(os.path.relpath(project.resolve(), output.root)).as_posix()
    except ValueError:  # another drive
        return project.resolve().as_posix()


def record_path(target: Target, output: FolderWorkspace) -> str:
    """Where the record of one design is kept, under the output folder: no two designs share one."""
    whose = json.dumps([way_to(target.root, output), target.path])
    return f"{RECORDS}/{content_digest(whose.encode())[:16]}.json"


def recall(path: str, output: Workspace) -> Record | None:
    """The record of an earlier build, or None where there is none that can be trusted."""
    try:
        if not output.is_file(path):
            return None
        data = json.loads(output.read(path))
        found = Record(**data)
    except (ProblemsError, ValueError, TypeError, RecursionError):
        return None
    return found if _is_sound(found) else None


def _is_sound(record: Record) -> bool:
    return (
        isinstance(record.project, str)
        and isinstance(record.path, str)
        and all(is_texts(part) for part in (record.circumstances, record.fonts, record.inputs, record.outputs))
        and all(stays_inside(path) for path in record.outputs)
        and SUMMARY.fits(record.summary)
    )


def is_current(record: Record, now: dict[str, str], source: Workspace, output: Workspace) -> bool:
    """Whether the same circumstances, fonts and inputs hold and every output is as it was written."""
    try:
        return (
            record.circumstances == now
            and all(_digest(path, source) == digest for path, digest in record.inputs.items())
            and all(_digest(path, output) == digest for path, digest in record.outputs.items())
            and record.fonts == font_digests(tuple(record.fonts))
        )
    except ProblemsError:
        # Making it tells what is wrong with the file, in the words of the design that names it.
        return False


def font_digests(families: tuple[str, ...]) -> dict[str, str]:
    """What the installed packages hold for these families now; an empty digest for a family that has gone."""
    found = {family: family_file(family) for family in families}
    return {family: content_digest(data) if data is not None else "" for family, data in found.items()}


def _digest(path: str, workspace: Workspace) -> str:
    return content_digest(workspace.read(path)) if workspace.is_file(path) else ""
