"""A personal run from its table to volumes in place: all of it, or nothing while a row is at fault."""

import json
from collections.abc import Callable
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
from padspec.collection.records.variation_digest import settings_digest
from padspec.collection.targets import Target
from padspec.personal.record import recall, record_path, still_holds
from padspec.personal.stale import refuse_shared, withdraw_others, withdraw_run
from padspec.personal.wish import PersonalPad, PersonalWish, read_wish
from padspec.reading.tree import as_data
from padspec.workspace import FolderWorkspace, content_digest

#: So many rows that name no pad are told.
_MOST_TOLD = 50


@dataclass(frozen=True, slots=True)
class PersonalBuilt:
    """The outcome of a run for one pad: its summary (see result.py) and whether all stood already."""

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

    `progress` is told how many rows of how many are set. Raises ProblemsError for what cannot be used.
    """
    output = FolderWorkspace(run.folder_of(root))
    found = wished_pads(collection, root)
    withdraw_others(collection.file, frozenset(pad.sku for pad in found[1]) if found else frozenset(), output)
    if found is None:
        return ()
    wish, pads = found
    refuse_shared(collection.file, frozenset(pad.sku for pad in pads), wish.place, root, output)
    digests = StampedDigests(output)
    now = circumstances(FolderWorkspace(root).date() or "", run.wish.as_texts())
    source = Digests(FolderWorkspace(root))
    whole = sum(pad.rows for pad in pads)
    built, done = [], 0
    for pad in pads:
        wished = _wished(wish, pad)
        where = record_path(collection.file, pad.sku)
        record = None if run.wish.again else recall(where, output)
        if record is not None and still_holds(record, wished, now, source, digests):
            built.append(PersonalBuilt(root, record.summary, was_current=True))
        else:
            with alone(output.root, run.waiting):
                # Imported only when there is something to make: finding that nothing changed must stay quick.
                from padspec.personal.making import make_personal

                told = partial(_told, progress, done, whole)
                try:
                    made = make_personal(wish, pad, collection, output, run, told)
                except ProblemsError:
                    withdraw_run(where, pad.sku, output)
                    raise
                output.write(where, made.record(wished, now).text())
            built.append(PersonalBuilt(root, made.summary, was_current=False))
        done += pad.rows
        progress(done, whole)
    digests.save()
    return tuple(built)


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
    said = [wish.sku, wish.key, as_data(wish.settings), settings_digest(pad.target.variation), pad.target.path]
    return content_digest(json.dumps(said).encode())
