"""What a build read and wrote, kept beside the output, so that the next one can tell whether anything changed.

The record holds a digest for every file asked for (an empty one for a file that was looked for and missing, so
that adding a studio.yaml counts as a change), for every file written, and the versions and options that matter.
"""

import json
import os
from dataclasses import dataclass
from functools import lru_cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any

import padspec
from padspec import __version__
from padspec.workspace import Workspace, content_digest

#: The installed packages whose version can change a byte of the output.
PACKAGES = (
    "cairosvg",
    "fontpkg-fredoka",
    "fontpkg-nunito",
    "font-fredoka-one",
    "numpy",
    "pikepdf",
    "pillow",
    "pypdfium2",
    "resvg-py",
    "svgwrite",
    "uharfbuzz",
)


@dataclass(frozen=True, slots=True)
class Record:
    """One build: what was read and written (path → digest), under which circumstances, and its summary."""

    circumstances: dict[str, str]
    inputs: dict[str, str]
    outputs: dict[str, str]
    summary: dict[str, Any]

    def text(self) -> bytes:
        """The record as it is stored."""
        data = {
            "circumstances": self.circumstances,
            "inputs": self.inputs,
            "outputs": self.outputs,
            "summary": self.summary,
        }
        return (json.dumps(data, indent=1, sort_keys=True, ensure_ascii=False) + "\n").encode("utf-8")


def record_path(target_path: str) -> str:
    """Where the record of one design is kept, under the output folder."""
    return f".cache/builds/{content_digest(target_path.encode('utf-8'))[:16]}.json"


def circumstances(options: dict[str, str]) -> dict[str, str]:
    """Everything outside the maker's files that decides what is written."""
    return {
        "padspec": __version__,
        "code": _code_stamp(),
        "date": os.environ.get("SOURCE_DATE_EPOCH", ""),
        **_versions(),
        **options,
    }


def recall(path: str, output: Workspace) -> Record | None:
    """The record of an earlier build, or None where there is none that can be read."""
    if not output.is_file(path):
        return None
    try:
        data = json.loads(output.read(path))
        return Record(data["circumstances"], data["inputs"], data["outputs"], data["summary"])
    except (ValueError, KeyError, TypeError):
        return None


def is_current(record: Record, now: dict[str, str], source: Workspace, output: Workspace) -> bool:
    """Whether the same circumstances and the same inputs hold and every output is as it was written."""
    return (
        record.circumstances == now
        and all(_digest(path, source) == digest for path, digest in record.inputs.items())
        and all(_digest(path, output) == digest for path, digest in record.outputs.items())
    )


def _digest(path: str, workspace: Workspace) -> str:
    return content_digest(workspace.read(path)) if workspace.is_file(path) else ""


@lru_cache(maxsize=1)
def _versions() -> dict[str, str]:
    return {name: _version(name) for name in PACKAGES}


@lru_cache(maxsize=1)
def _code_stamp() -> str:
    """Changes when padspec's own files do, so that whoever works on it never looks at an old picture."""
    folder = Path(padspec.__file__).parent
    stats = ((path.relative_to(folder).as_posix(), path.stat()) for path in sorted(folder.rglob("*.py")))
    return content_digest(repr([(name, stat.st_size, stat.st_mtime_ns) for name, stat in stats]).encode())


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return ""
