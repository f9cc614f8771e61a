"""What a build read and wrote, kept beside the output, so that the next one can tell whether anything changed.

The record holds a digest for every file asked for (an empty one for a file that was looked for and missing, so
that adding a studio.yaml counts as a change), for every file written (an empty one for what must not stand
there), for the fonts of installed packages, and the versions and options that matter.
"""

import json
import os
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from padspec.base.errors import ProblemsError
from padspec.collection.records.shape import SUMMARY, is_texts, stays_inside
from padspec.collection.targets import Target
from padspec.workspace import FolderWorkspace, Workspace, content_digest

RECORDS = ".cache/builds"


@dataclass(frozen=True, slots=True)
class Record:
    """One build: whose it was, what was read and written (path → digest), the circumstances, and its summary.

    `project` is the way from the output folder to the project's, so that both may move together. `values` are
    those of the variant by axis and `collection` the file that has them, both empty for a design as it is.
    `varied` is the digest of what a variant's settings say, `varied_places` of where they say it, `drawn` of all
    that the drawn files show: while it stays, they need not be drawn again.
    """

    project: str
    path: str
    collection: str
    values: dict[str, str]
    varied: str
    varied_places: str
    circumstances: dict[str, str]
    fonts: dict[str, str]
    inputs: dict[str, str]
    outputs: dict[str, str]
    drawn: str
    summary: dict[str, Any]

    @property
    def sku(self) -> str:
        """The name of the folder that it wrote."""
        return str(self.summary["sku"])

    @property
    def written(self) -> tuple[str, ...]:
        """The paths of the files that it wrote."""
        return tuple(path for path, digest in self.outputs.items() if digest)

    @property
    def told_places(self) -> frozenset[str]:
        """The files that its findings point into."""
        return frozenset(finding["file"] for finding in self.summary["findings"])

    def text(self) -> bytes:
        """The record as it is stored."""
        # Half a character, as a file's name may hold, is then written as JSON's own escape.
        text = json.dumps(asdict(self), indent=1, sort_keys=True, ensure_ascii=False)
        return f"{text}\n".encode("utf-8", "backslashreplace")


def way_to(project: Path, output: FolderWorkspace) -> str:
    """How a record in this output folder names a project."""
    try:
        return Path(os.path.relpath(project.resolve(), output.root)).as_posix()
    except ValueError:  # another drive
        return project.resolve().as_posix()


def record_path(target: Target, output: FolderWorkspace) -> str:
    """Where the record of one pad is kept, under the output folder: no two pads share one."""
    variation = target.variation
    whose = json.dumps([way_to(target.root, output), target.path, variation.file, *variation.values])
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
    texts = (record.project, record.path, record.collection, record.varied, record.varied_places, record.drawn)
    bundles = (record.values, record.circumstances, record.fonts, record.inputs, record.outputs)
    return (
        all(isinstance(text, str) for text in texts)
        and all(is_texts(bundle) for bundle in bundles)
        and all(stays_inside(path) for path in record.outputs)
        and SUMMARY.fits(record.summary)
    )
