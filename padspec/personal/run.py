"""A personal run from its table to volumes in place: all of it, or nothing while a row is at fault."""

import json
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.collection.alone import alone
from padspec.collection.build import Run
from padspec.collection.collection_file import Collection
from padspec.collection.own_sku import own_skus
from padspec.collection.records.circumstances import circumstances
from padspec.collection.records.digests import Digests, StampedDigests
from padspec.collection.records.record import way_to
from padspec.collection.records.variation_digest import places_digest, settings_digest
from padspec.collection.records.volumes import withdraw_all
from padspec.collection.targets import Target
from padspec.personal.record import PersonalRecord, record_path, still_holds
from padspec.personal.stale import others, records, refuse_shared, withdraw
from padspec.personal.wish import PersonalPad, PersonalWish, read_wish
from padspec.reading.tree import as_data
from padspec.reading.variation import Variation
from padspec.workspace import FolderWorkspace, content_digest

#: So many rows that name no pad are told.
_MOST_TOLD = 50


@dataclass(frozen=True, slots=True)
class PersonalBuilt:
    """The outcome of a run for one pad: its summary (see making.py) and whether all stood already."""

    root: Path
    summary: dict[str, Any]
    was_current: bool


def wished_pads(collection: Collection, root: Path) -> tuple[PersonalWish, tuple[PersonalPad, ...]] | None:
    """The run of a collection and the pads that its rows are for; None where it has none. Raises ProblemsError."""
    wish = read_wish(collection, FolderWorkspace(root))
    if wish is None:
        return None
    targets = [Target(root, member.path, member.variation) for member in collection.members]
    skus = own_skus(targets)
    known = {target.variation.sku_of(skus[target.root, target.path]): target for target in targets}
    if not wish.sku and len(known) == 1:
        (sku, target), *_ = known.items()
        return wish, (PersonalPad(target, sku, wish.table.rows),)
    return wish, tuple(
        PersonalPad(known[sku], sku, number) for sku, number in _rows_by_sku(wish, list(known)).items()
    )


def build_personal(
    collection: Collection, root: Path, run: Run, progress: Callable[[int, int], None]
) -> tuple[PersonalBuilt, ...]:
    """Make the volumes of a collection's personal run, one pad after the other; none where it has no run.

    `progress` is told how many rows of how many are set. Raises ProblemsError for what cannot be used; nothing of
    an earlier run then looks as if it came from the files as they are.
    """
    output = FolderWorkspace(run.folder_of(root))
    # Whoever finds all as it was does not wait for others.
    with suppress(ProblemsError):
        outlook = _outlook(collection, root, run, output)
        if outlook.is_settled:
            return outlook.built
    with alone(output.root, run.waiting):
        try:
            outlook = _outlook(collection, root, run, output)
        except ProblemsError:
            withdraw(others(records(output), way_to(root, output), collection.file, frozenset()), output)
            raise
        withdraw(outlook.gone, output)
        built = tuple(_all_made(outlook, collection, run, output, progress))
        outlook.digests.save()
    return built


@dataclass(frozen=True, slots=True)
class _Outlook:
    """What a run is to make, and what stands: pads whose volumes hold, and records of pads that it is not for."""

    root: Path
    wish: PersonalWish | None
    pads: tuple[PersonalPad, ...]
    holding: dict[str, PersonalRecord]
    gone: dict[str, PersonalRecord]
    now: dict[str, str]
    digests: StampedDigests

    @property
    def is_settled(self) -> bool:
        """Whether nothing is to be made or taken away."""
        return not self.gone and all(pad.sku in self.holding for pad in self.pads) and not self.digests.is_changed

    @property
    def built(self) -> tuple[PersonalBuilt, ...]:
        """The pads whose volumes hold."""
        return tuple(PersonalBuilt(self.root, record.summary, True) for record in self.holding.values())


def _outlook(collection: Collection, root: Path, run: Run, output: FolderWorkspace) -> _Outlook:
    """Raises ProblemsError where the run cannot be made."""
    found, way, known = wished_pads(collection, root), way_to(root, output), records(output)
    wish, pads = found or (None, ())
    skus = frozenset(pad.sku for pad in pads)
    if wish is not None:
        refuse_shared(known, way, collection.file, skus, wish.place, output)
    now = circumstances(FolderWorkspace(root).date() or "", run.wish.as_texts())
    source, digests = Digests(FolderWorkspace(root)), StampedDigests(output)
    holding: dict[str, PersonalRecord] = {}
    for pad in pads if wish is not None and not run.wish.again else ():
        assert wish is not None
        record = known.get(record_path(way, collection.file, pad.sku))
        wished, places = _wished(wish, pad), _places(wish, pad)
        if record is not None and still_holds(record, wished, places, now, source, digests):
            holding[pad.sku] = record
    return _Outlook(root, wish, pads, holding, others(known, way, collection.file, skus), now, digests)


def _all_made(
    outlook: _Outlook,
    collection: Collection,
    run: Run,
    output: FolderWorkspace,
    progress: Callable[[int, int], None],
) -> Iterator[PersonalBuilt]:
    whole, done = sum(pad.rows for pad in outlook.pads), 0
    for at, pad in enumerate(outlook.pads):
        record = outlook.holding.get(pad.sku)
        current = record is not None
        if record is None:
            try:
                record = _made(outlook, pad, collection, run, output, partial(_told, progress, done, whole))
            except ProblemsError:
                left = [late for late in outlook.pads[at:] if late.sku not in outlook.holding]
                _withdraw(left, outlook, collection, output)
                raise
        yield PersonalBuilt(outlook.root, record.summary, current)
        done += pad.rows
        progress(done, whole)


def _made(
    outlook: _Outlook,
    pad: PersonalPad,
    collection: Collection,
    run: Run,
    output: FolderWorkspace,
    told: Callable[[int], None],
) -> PersonalRecord:
    """Make the volumes of one pad and remember them; raises ProblemsError."""
    # Imported only when there is something to make: finding that nothing changed must stay quick.
    from padspec.personal.making import make_personal

    wish, way = outlook.wish, way_to(outlook.root, output)
    assert wish is not None
    made = make_personal(wish, pad, collection, output, run, told)
    record = PersonalRecord(
        project=way,
        wished=_wished(wish, pad),
        places=_places(wish, pad),
        circumstances=outlook.now,
        inputs=made.inputs,
        fonts=made.fonts,
        outputs=made.outputs,
        summary=made.summary,
    )
    output.write(record_path(way, collection.file, pad.sku), record.text())
    return record


def _withdraw(pads: list[PersonalPad], outlook: _Outlook, collection: Collection, output: FolderWorkspace) -> None:
    """What stood of pads that were to be made, and of which one could not be."""
    for pad in pads:
        withdraw_all(pad.sku, output)
        output.remove(record_path(way_to(outlook.root, output), collection.file, pad.sku))


def _told(progress: Callable[[int, int], None], before: int, whole: int, rows: int) -> None:
    progress(before + rows, whole)


def _rows_by_sku(wish: PersonalWish, known: list[str]) -> dict[str, int]:
    """How many rows each pad has, in the order in which the table names them; ProblemsError for what is no pad."""
    if not wish.sku:
        message = f"This collection makes {len(known)} pads, and personal does not say which one."
        raise ProblemsError(Problem(wish.place, message, f"Write sku: {known[0]}, or a column that names it."))
    counts: dict[str, int] = {}
    problems: list[Problem] = []
    for row in wish.table:
        sku = wish.sku_of(row)
        if sku not in known and sku not in counts:
            fixed = sku == wish.sku
            message = f"No pad of this collection has the SKU {sku}." if sku else "This row names no pad."
            problems.append(
                Problem(wish.place if fixed else wish.table.place(row), message, did_you_mean(sku, known))
            )
        counts[sku] = counts.get(sku, 0) + 1
    if problems:
        raise ProblemsError(*problems[:_MOST_TOLD])
    return counts


def _wished(wish: PersonalWish, pad: PersonalPad) -> str:
    """The digest of what is asked for one pad, whatever the files say."""
    varied = settings_digest(pad.target.variation)
    said = [wish.table.file, wish.sku, wish.key, as_data(wish.settings), varied, pad.target.path]
    return content_digest(json.dumps(said).encode())


def _places(wish: PersonalWish, pad: PersonalPad) -> str:
    """The digest of where in the collection's file that is asked for."""
    wished = Variation(settings=wish.settings)
    return content_digest(f"{places_digest(wished)} {places_digest(pad.target.variation)}".encode())
