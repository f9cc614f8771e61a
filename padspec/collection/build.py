"""Build many pads: skip what has not changed, share out the rest, and put it in place as it is made."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import ceil
from pathlib import Path
from threading import Thread

from padspec.base.errors import ProblemsError
from padspec.collection.alone import alone
from padspec.collection.collection_file import Collection
from padspec.collection.decode_ahead import decode_ahead
from padspec.collection.records.circumstances import circumstances
from padspec.collection.records.digests import Digests
from padspec.collection.records.font_files import font_digest
from padspec.collection.records.reasons import drawn_files_stand, reasons
from padspec.collection.records.record import RECORDS, Record, record_path
from padspec.collection.records.stale import orphans, take_away
from padspec.collection.site import Built, Site
from padspec.collection.source import Folder
from padspec.collection.targets import Target
from padspec.collection.work import BuildWish, Made, Unit
from padspec.collection.workers import Workers
from padspec.workspace import FolderWorkspace

#: So many units for each worker: few share more work between variants, many leave none idle at the end.
_UNITS_A_WORKER = 4


@dataclass(frozen=True, slots=True)
class Failed:
    """A pad whose files cannot be used."""

    target: Target
    error: ProblemsError


@dataclass(frozen=True, slots=True)
class Run:
    """How to build: where the results of a project go, what is wished for, who does it and how.

    `work` is work.work, or the same with a listener; `jobs` is how many can work at once; `waiting` is called with
    the folder where another build is at work.
    """

    folder_of: Callable[[Path], Path]
    wish: BuildWish
    workers: Workers
    work: Callable[[Unit], tuple[Made, ...]]
    jobs: int
    waiting: Callable[[Path], None]


Outcome = Built | Failed


@dataclass(frozen=True, slots=True)
class _Stale:
    """A pad to make, why, and the digest of what its drawn files show where they stand whole."""

    target: Target
    why: tuple[str, ...]
    drawn: str


def build_all(targets: Sequence[Target], run: Run) -> Iterator[Outcome]:
    """Build every pad; each outcome as it is there, those that need nothing first.

    What an earlier build wrote and this one does not is taken away; also where a design cannot be used by now.
    Raises ProblemsError where the date that the surroundings name is none.
    """
    for root in dict.fromkeys(target.root for target in targets):
        yield from _build_project([target for target in targets if target.root == root], root, run)


def _build_project(targets: list[Target], root: Path, run: Run) -> Iterator[Outcome]:
    site = Site(FolderWorkspace(run.folder_of(root)))
    now = circumstances(FolderWorkspace(root).date() or "", run.wish.as_texts())
    outcomes, stale = _parted(targets, root, site, now, run.wish)
    if not stale:
        yield from outcomes
        site.digests.save()
        return
    with alone(site.output.root, run.waiting) as had_to_wait:
        if had_to_wait:
            site = Site(site.output)
            outcomes, stale = _parted(targets, root, site, now, run.wish)
        yield from outcomes
        yield from _make(stale, root, site, now, run)
        site.digests.save()


def _parted(
    targets: list[Target], root: Path, site: Site, now: dict[str, str], wish: BuildWish
) -> tuple[list[Outcome], list[_Stale]]:
    """What needs nothing, and what has to be made."""
    source, font = Digests(FolderWorkspace(root)), lru_cache(maxsize=None)(font_digest)
    outcomes: list[Outcome] = []
    stale: list[_Stale] = []
    for target in targets:
        record = site.record(target)
        why = tuple(reasons(record, wish, now, target.variation, source, site.digests, font))
        if record is not None and not why:
            outcomes.append(_claimed(target, record, site))
        else:
            stands = record is not None and record.circumstances == now and drawn_files_stand(record, site.digests)
            drawn = record.drawn if record is not None and stands and not wish.again else ""
            stale.append(_Stale(target, why, drawn))
    return outcomes, stale


def _claimed(target: Target, record: Record, site: Site) -> Outcome:
    try:
        return site.current(target, record)
    except ProblemsError as error:
        return Failed(target, error)


def _make(stale: list[_Stale], root: Path, site: Site, now: dict[str, str], run: Run) -> Iterator[Outcome]:
    if len(stale) == 1:
        Thread(target=decode_ahead, args=(stale[0].target,), daemon=True).start()
    shares = dict(_shares(stale, root, run))
    for unit, made in run.workers.run(run.work, shares):
        for one, result in zip(shares[unit], made, strict=True):
            try:
                yield site.put(one.target, result, now, one.why)
            except ProblemsError as error:
                yield Failed(one.target, error)


def _shares(stale: list[_Stale], root: Path, run: Run) -> Iterator[tuple[Unit, list[_Stale]]]:
    """Units of work, each with what it makes: variants of one design go together, as they share most."""
    most = ceil(len(stale) / (run.jobs * _UNITS_A_WORKER))
    for path in dict.fromkeys(one.target.path for one in stale):
        alike = [one for one in stale if one.target.path == path]
        for start in range(0, len(alike), most):
            some = alike[start : start + most]
            variations = tuple(one.target.variation for one in some)
            yield Unit(Folder(root), path, variations, tuple(one.drawn for one in some), run.wish), some


def take_orphans(collection: Collection, root: Path, run: Run) -> tuple[str, ...]:
    """Take away what was built of variants that a collection no longer makes; their SKUs."""
    output = FolderWorkspace(run.folder_of(root))
    members = [Target(root, member.path, member.variation) for member in collection.members]
    mine = {record_path(member, output) for member in members}
    if mine.issuperset(output.neighbours(RECORDS, ".json")):
        return ()
    site = Site(output)
    if not orphans(collection.file, members, root, site.ledger, site.output):
        return ()
    with alone(site.output.root, run.waiting):
        site = Site(site.output)
        found = orphans(collection.file, members, root, site.ledger, site.output)
        take_away(found, site.ledger, site.output)
    return tuple(sorted(record.sku for record in found.values()))
