"""Build one design: skip it where nothing changed, else make it, write it whole and remember what it came from."""

import gc
import os
import sys
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from threading import Thread
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.record import Record, circumstances, is_current, recall, record_path
from padspec.collection.targets import Target
from padspec.workspace import FolderWorkspace, Workspace, content_digest, joined


@dataclass(frozen=True, slots=True)
class BuildWish:
    """How to build; `again` makes even what has not changed, the others change what is written."""

    embed: bool = False
    despite_errors: bool = False
    proofs: bool = True
    again: bool = False

    def as_texts(self) -> dict[str, str]:
        """For the record."""
        return {"embed": str(self.embed), "despite-errors": str(self.despite_errors), "proofs": str(self.proofs)}


@dataclass(frozen=True, slots=True)
class Built:
    """The outcome for one design: its summary (see report.pad_data), its files, whether all stood already."""

    target: Target
    summary: dict[str, Any]
    files: tuple[str, ...]
    was_current: bool


def build(
    target: Target, output: Workspace, wish: BuildWish, claimed: dict[str, str], tell: Callable[[str], None]
) -> Built:
    """Build one design into the output folder; raises ProblemsError where its files cannot be used.

    `claimed` says which design of this run writes which SKU's folder, so that no two write one.
    """
    now = circumstances(wish.as_texts())
    where = record_path(target.path)
    record = recall(where, output)
    if not wish.again and record is not None and is_current(record, now, FolderWorkspace(target.root), output):
        files = tuple(path for path, digest in record.outputs.items() if digest)
        _claim(record.summary["sku"], target, claimed)
        return Built(target, record.summary, files, was_current=True)
    return _make(target, output, wish, now, where, claimed, tell)


def _make(
    target: Target,
    output: Workspace,
    wish: BuildWish,
    now: dict[str, str],
    where: str,
    claimed: dict[str, str],
    tell: Callable[[str], None],
) -> Built:
    _make_haste()
    Thread(target=_decode_ahead, args=(target,), daemon=True).start()
    # Imported only when there is something to make: finding that nothing changed must stay quick.
    from padspec.draw.outputs import DrawWish
    from padspec.pipeline import draw, make
    from padspec.report import pad_data

    source = FolderWorkspace(target.root)
    pad = make(target.path, source, tell)
    _claim(pad.design.sku, target, claimed)
    files = draw(pad, DrawWish(wish.embed, wish.despite_errors, wish.proofs), tell)
    sheet = f"{pad.design.sku}/sheet.pdf"
    if sheet not in files:
        output.set_aside(sheet, f"{pad.design.sku}/sheet.old.pdf")
    for path, data in files.items():
        output.write(path, data)
    summary = pad_data(pad.design, pad.sheet, pad.findings)
    written = {path: content_digest(data) for path, data in files.items()}
    absent = {} if sheet in files else {sheet: ""}
    output.write(where, Record(now, source.seen, written | absent, summary).text())
    return Built(target, summary, tuple(files), was_current=False)


def _make_haste() -> None:
    """Set the process up for a short run of two threads; nothing that is written depends on it."""
    # Loading makes a hundred thousand objects that all stay: looking for garbage among them finds none.
    gc.set_threshold(100_000)
    # The thread that decodes wants Python back for a moment at every block of its file.
    sys.setswitchinterval(0.0005)
    # No matrix here is large: threads for matrices would only take the cores from the picture.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


def _decode_ahead(target: Target) -> None:
    """Decode the picture that a design seems to name, beside all else that has to be loaded first.

    Decoding lets go of Python. Only time hangs on the guess: whoever finds nothing decoded decodes it then, and
    what is wrong with a file is said then too.
    """
    from padspec.art.errors import ArtError
    from padspec.art.raster.once import decoded
    from padspec.reading.parsing.yaml_reader import decode, parse_leniently
    from padspec.reading.tree import Mapping, Scalar

    workspace = FolderWorkspace(target.root)
    with suppress(ProblemsError, ArtError, ValueError):
        root, _ = parse_leniently(decode(workspace.read(target.path), target.path), target.path)
        art = root.get("art") if root else None
        name = art.get("file") if isinstance(art, Mapping) else None
        if isinstance(name, Scalar):
            decoded(workspace.read(joined(target.path, name.text)), name.text, keep=True)


def _claim(sku: str, target: Target, claimed: dict[str, str]) -> None:
    holder = claimed.setdefault(sku.casefold(), f"{target.root}/{target.path}")
    if holder != f"{target.root}/{target.path}":
        message = f"Its SKU {sku} is that of {holder} too, and both would write the same folder."
        raise ProblemsError(Problem(Place(target.path, 0, 0), message, "Give one of them a sku of its own."))
