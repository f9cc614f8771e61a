"""What a personal run was made from and what it wrote, so that the next build can tell whether it still holds."""

import json
from dataclasses import asdict, dataclass
from typing import Any

from padspec.base.errors import ProblemsError
from padspec.collection.records.digests import Digests, StampedDigests
from padspec.collection.records.font_files import font_digests
from padspec.collection.records.shape import is_texts, stays_inside
from padspec.workspace import FolderWorkspace, content_digest

FOLDER = ".cache/personal"


@dataclass(frozen=True, slots=True)
class PersonalRecord:
    """One run: the digest of what was wished for, and files and fonts with their digests, read and written."""

    wished: str
    circumstances: dict[str, str]
    inputs: dict[str, str]
    fonts: dict[str, str]
    outputs: dict[str, str]
    summary: dict[str, Any]

    def text(self) -> bytes:
        """The record as it is stored."""
        text = json.dumps(asdict(self), indent=1, sort_keys=True, ensure_ascii=False)
        return f"{text}\n".encode("utf-8", "backslashreplace")


def record_path(collection: str, sku: str) -> str:
    """Where the record of a run is kept, under the output folder."""
    return f"{FOLDER}/{content_digest(json.dumps([collection, sku]).encode())[:16]}.json"


def recall(path: str, output: FolderWorkspace) -> PersonalRecord | None:
    """The record of an earlier run, None where there is none that can be trusted."""
    try:
        found = PersonalRecord(**json.loads(output.read(path))) if output.is_file(path) else None
    except (ProblemsError, ValueError, TypeError, RecursionError):
        return None
    if found is None or not isinstance(found.summary, dict) or not isinstance(found.wished, str):
        return None
    bundles = (found.circumstances, found.inputs, found.fonts, found.outputs)
    sound = all(is_texts(bundle) for bundle in bundles) and all(stays_inside(path) for path in found.outputs)
    return found if sound else None


def still_holds(
    record: PersonalRecord, wished: str, now: dict[str, str], source: Digests, output: StampedDigests
) -> bool:
    """Whether the same is wished for, and every file and font is as it was."""
    try:
        return (
            (record.wished, record.circumstances) == (wished, now)
            and all(source.of(path) == digest for path, digest in record.inputs.items())
            and all(output.of(path) == digest for path, digest in record.outputs.items())
            and font_digests(tuple(record.fonts)) == record.fonts
        )
    except ProblemsError:
        return False
