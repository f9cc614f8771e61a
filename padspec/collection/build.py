"""Build one design: skip it where nothing changed, else make it, write it whole and remember what it came from."""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from threading import Thread
from typing import TYPE_CHECKING, Any

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.circumstances import circumstances
from padspec.collection.record import Record, font_digests, is_current, recall, record_path, way_to
from padspec.collection.stale import NAMES, clear, given_up, others_than, withdraw
from padspec.collection.targets import Target
from padspec.workspace import FolderWorkspace, content_digest, joined

if TYPE_CHECKING:
    from padspec.resolve.design import Design


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
    target: Target, output: FolderWorkspace, wish: BuildWish, claimed: dict[str, str], tell: Callable[[str], None]
) -> Built:
    """Build one design into the output folder; raises ProblemsError where its files cannot be used.

    `claimed` says which design of this run writes which SKU's folder, so that no two write one. What an earlier
    build wrote and this one does not is taken away; also where the design cannot be used by now.
    """
    source = FolderWorkspace(target.root)
    now = circumstances(source.date() or "", wish.as_texts())
    where = record_path(target, output)
    record = recall(where, output)
    try:
        if not wish.again and record is not None and is_current(record, now, source, output):
            _claim(record.sku, target, claimed)
            return Built(target, record.summary, record.written, was_current=True)
        return _make(target, output, wish, now, record, claimed, tell)
    except ProblemsError as error:
        if record is not None:
            with suppress(ProblemsError):  # the one that is told comes first
                withdraw(record, error, others_than(where, output).files, output)
        raise


def _make(
    target: Target,
    output: FolderWorkspace,
    wish: BuildWish,
    now: dict[str, str],
    record: Record | None,
    claimed: dict[str, str],
    tell: Callable[[str], None],
) -> Built:
    Thread(target=_decode_ahead, args=(target,), daemon=True).start()
    # Imported only when there is something to make: finding that nothing changed must stay quick.
    from padspec.draw.outputs import DrawWish
    from padspec.pipeline import draw, make
    from padspec.report import pad_data

    source = FolderWorkspace(target.root)
    pad = make(target.path, source, tell)
    sku, where = pad.design.sku, record_path(target, output)
    _claim(sku, target, claimed)
    others = others_than(where, output)
    free = given_up(sku, target, others, output)
    files = draw(pad, DrawWish(wish.embed, wish.despite_errors, wish.proofs), tell)
    olds = (*(old for _, old in free.records), *([record] if record else []))
    clear(sku, olds, others.without(free).files | files.keys(), output)
    for path, data in files.items():
        output.write(path, data)
    for path, _ in free.records:
        output.remove(path)
    summary = pad_data(pad.design, pad.sheet, pad.findings)
    written = {path: content_digest(data) for path, data in files.items()}
    absent = {f"{sku}/{name}": "" for name in NAMES if f"{sku}/{name}" not in files}
    mark = way_to(target.root, output)
    made = Record(mark, target.path, now, _fonts(pad.design), source.seen, written | absent, summary)
    output.write(where, made.text())
    return Built(target, summary, tuple(files), was_current=False)


def _fonts(design: "Design") -> dict[str, str]:
    """The fonts that came from packages, stand-ins too; a file of the maker's is among what was read."""
    from padspec.resolve.blocks.words import words_of
    from padspec.resolve.coverage import families_used
    from padspec.resolve.design import blocks
    from padspec.resolve.lettering_fonts import FILE_ENDINGS

    words = words_of(blocks(design))
    names = [design.small_print.name, *(some.font.name for some in words)]
    names += [family for some in words for family in families_used(some.font, some.text)]
    return font_digests(tuple(name for name in dict.fromkeys(names) if not name.lower().endswith(FILE_ENDINGS)))


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
