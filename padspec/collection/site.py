"""One folder that a run writes into: what is known of it, and putting in place what was made."""

from contextlib import suppress
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.records.digests import StampedDigests
from padspec.collection.records.in_catalogue import set_catalogue_aside
from padspec.collection.records.ledger import Ledger
from padspec.collection.records.record import Record, record_path, way_to
from padspec.collection.records.stale import NAMES, clear, given_up, pads_made, set_flat_lays_aside, withdraw
from padspec.collection.records.variation_digest import places_digest, settings_digest
from padspec.collection.records.volumes import withdraw_all
from padspec.collection.targets import Target
from padspec.collection.work import Made
from padspec.workspace import FolderWorkspace, content_digest


@dataclass(frozen=True, slots=True)
class Built:
    """The outcome for one pad: its summary (see report.pad_data), its files, and why they were made.

    Without `reasons` all stood already; `redrawn` says whether more than the findings was made.
    """

    target: Target
    summary: dict[str, Any]
    files: tuple[str, ...]
    reasons: tuple[str, ...] = ()
    redrawn: bool = False

    @property
    def was_current(self) -> bool:
        """Whether all stood already."""
        return not self.reasons


class Site:
    """An output folder during a run. No two pads of a run write the folder of one SKU."""

    __slots__ = ("_claimed", "_makes", "digests", "ledger", "output")

    def __init__(self, output: FolderWorkspace) -> None:
        self.output = output
        self.ledger = Ledger(output)
        self.digests = StampedDigests(output)
        self._claimed: dict[str, Target] = {}
        # Read once, however many of its variants another collection makes too.
        self._makes = lru_cache(maxsize=None)(pads_made)

    def record(self, target: Target) -> Record | None:
        """What is known of the last build of a pad."""
        return self.ledger.get(record_path(target, self.output))

    def claim(self, sku: str, target: Target) -> None:
        """Say that a pad writes the folder of a SKU; raises ProblemsError where another of this run does."""
        holder = self._claimed.setdefault(sku.casefold(), target)
        if holder.key != target.key:
            if (holder.root, holder.path) == (target.root, target.path):
                told, place = f"{sku} of {target.told} is made by {holder.told}", target.told
            else:
                told, place = f"Its SKU {sku} is that of {holder.root}/{holder.path}", target.path
            message = f"{told} too, and both would write the same folder."
            raise ProblemsError(Problem(Place(place, 0, 0), message, "Give one of them a sku of its own."))

    def current(self, target: Target, record: Record) -> Built:
        """A pad whose files can stay."""
        self.claim(record.sku, target)
        return Built(target, record.summary, record.written)

    def put(self, target: Target, made: Made, circumstances: dict[str, str], why: tuple[str, ...]) -> Built:
        """Write what was made of a pad, take away what that makes stale, remember all; raises ProblemsError."""
        where = record_path(target, self.output)
        record = self.ledger.get(where)
        if made.problems:
            error = ProblemsError(*made.problems)
            self._withdraw(where, record, error)
            raise error
        sku = str(made.summary["sku"])
        self.claim(sku, target)
        free = given_up(sku, target, where, self.ledger, self.output, self._makes)
        kept = _kept(record, made)
        olds = free | ({where: record} if record else {})
        clear(sku, olds, {*made.files, *kept}, self.ledger, self.output)
        written = kept | {path: self._write(path, data) for path, data in made.files.items()}
        for old in olds.values():
            self._set_aside(sku, old, written)
        if made.summary["state"] == "failed":
            set_catalogue_aside(sku, self.output)
        for path in free:
            self.ledger.remove(path)
        absent = {f"{sku}/{name}": "" for name in NAMES if f"{sku}/{name}" not in written}
        self.ledger.put(where, self._record(target, made, circumstances, written | absent))
        return Built(target, made.summary, tuple(written), why, redrawn=not kept)

    def _set_aside(self, sku: str, record: Record, written: dict[str, str]) -> None:
        """What others made of the pad's face, and of its sheet, where these have changed."""
        face, sheet = (
            record.outputs.get(f"{sku}/{name}", "") != written.get(f"{sku}/{name}", "")
            for name in ("face.svg", "sheet.pdf")
        )
        if face and f"{sku}/face.svg" in record.outputs:
            set_flat_lays_aside(sku, self.output)
        if face or sheet:
            withdraw_all(sku, self.output)
        if record.sku != sku:
            withdraw_all(record.sku, self.output)

    def _record(
        self, target: Target, made: Made, circumstances: dict[str, str], outputs: dict[str, str]
    ) -> Record:
        return Record(
            project=way_to(target.root, self.output),
            path=target.path,
            collection=target.variation.file,
            values=dict(target.variation.values),
            varied=settings_digest(target.variation),
            varied_places=places_digest(target.variation),
            circumstances=circumstances,
            fonts=made.fonts,
            inputs=made.seen,
            outputs=outputs,
            drawn=made.drawn,
            summary=made.summary,
        )

    def _write(self, path: str, data: bytes) -> str:
        """Write a file unless it stands there already, as a picture that variants share does; its digest."""
        digest = content_digest(data)
        if self.digests.of(path) != digest:
            self.output.write(path, data)
            self.digests.know(path, digest)
        return digest

    def _withdraw(self, where: str, record: Record | None, error: ProblemsError) -> None:
        if record is not None:
            with suppress(ProblemsError):  # the one that is told comes first
                withdraw(where, record, error, self.ledger, self.output)
                set_catalogue_aside(record.sku, self.output)


def _kept(record: Record | None, made: Made) -> dict[str, str]:
    """The drawn files that stay as they are, with their digests: where only the findings were made again."""
    if record is None or f"{record.sku}/face.svg" in made.files or record.drawn != made.drawn:
        return {}
    return {path: digest for path, digest in record.outputs.items() if digest and path not in made.files}
