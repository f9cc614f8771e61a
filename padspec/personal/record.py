"""What a personal run was made from and what it wrote, so that the next build can tell whether it still holds."""

import json
from dataclasses import asdict, dataclass
from typing import Any

from padspec.base.errors import ProblemsError
from padspec.collection.records.digests import Digests, StampedDigests
from padspec.collection.records.font_files import font_digests
from padspec.collection.records.shape import FINDING, Shape, is_texts, stays_inside
from padspec.workspace import FolderWorkspace, content_digest

FOLDER = ".cache/personal"
_TEXT, _COUNT, _TEXT_OR_NONE = (str,), (int,), (str, type(None))
#: What `make_personal` sums a run up as.
_SUMMARY = Shape(
    (
        *((key, _TEXT) for key in ("sku", "design", "collection", "table", "state", "caution")),
        ("notes", (list,)),
        *((key, _COUNT) for key in ("pads", "n_up", "sheets", "copies", "volumes", "errors")),
    ),
    (
        ("findings", FINDING),
        (
            "rows",
            Shape(
                (
                    *((key, _TEXT) for key in ("file", "severity", "message")),
                    *((key, _COUNT) for key in ("line", "row")),
                    *((key, _TEXT_OR_NONE) for key in ("key", "mend")),
                )
            ),
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class PersonalRecord:
    """One run: the digests of what was wished for and of where that stands, and files and fonts with theirs, read
    and written. `project` is the way from the output folder to the project's, so that both may move together.
    """

    project: str
    wished: str
    places: str
    circumstances: dict[str, str]
    inputs: dict[str, str]
    fonts: dict[str, str]
    outputs: dict[str, str]
    summary: dict[str, Any]

    @property
    def collection(self) -> str:
        """The file that wished for it."""
        return str(self.summary["collection"])

    @property
    def sku(self) -> str:
        """The pad that it is of."""
        return str(self.summary["sku"])

    @property
    def tells_places(self) -> bool:
        """Whether what it found points into the collection's file."""
        files = [finding["file"] for finding in self.summary["findings"]]
        messages = [row["message"] for row in self.summary["rows"]]
        return self.collection in files or any(self.collection in message for message in messages)

    def text(self) -> bytes:
        """The record as it is stored."""
        text = json.dumps(asdict(self), indent=1, sort_keys=True, ensure_ascii=False)
        return f"{text}\n".encode("utf-8", "backslashreplace")


def record_path(project: str, collection: str, sku: str) -> str:
    """Where the record of a run is kept, under the output folder; `project` is the way from there."""
    return f"{FOLDER}/{content_digest(json.dumps([project, collection, sku]).encode())[:16]}.json"


def recall(path: str, output: FolderWorkspace) -> PersonalRecord | None:
    """The record of an earlier run, None where there is none that can be trusted."""
    try:
        found = PersonalRecord(**json.loads(output.read(path))) if output.is_file(path) else None
    except (ProblemsError, ValueError, TypeError, RecursionError):
        return None
    if found is None or not _SUMMARY.fits(found.summary):
        return None
    if not all(isinstance(text, str) for text in (found.project, found.wished, found.places)):
        return None
    bundles = (found.circumstances, found.inputs, found.fonts, found.outputs)
    sound = all(is_texts(bundle) for bundle in bundles) and all(stays_inside(path) for path in found.outputs)
    return found if sound else None


def still_holds(
    record: PersonalRecord,
    wished: str,
    places: str,
    now: dict[str, str],
    source: Digests,
    output: StampedDigests,
) -> bool:
    """Whether the same is wished for, where its findings point, and every file and font is as it was."""
    try:
        return (
            (record.wished, record.circumstances) == (wished, now)
            and (record.places == places or not record.tells_places)
            and all(source.of(path) == digest for path, digest in record.inputs.items())
            and all(output.of(path) == digest for path, digest in record.outputs.items())
            and font_digests(tuple(record.fonts)) == record.fonts
        )
    except ProblemsError:
        return False
