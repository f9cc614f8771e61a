"""Nothing stale looks fresh: who owns a folder of results, and what an earlier build left there goes."""

from collections.abc import Callable, Collection
from pathlib import Path
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.records.ledger import Ledger
from padspec.collection.records.record import Record, way_to
from padspec.collection.records.volumes import withdraw_all
from padspec.collection.targets import Target
from padspec.report import json_text, problem_data
from padspec.workspace import FolderWorkspace

SHEET, SHEET_ASIDE, FINDINGS = "sheet.pdf", "sheet.old.pdf", "findings.json"
ELSEWHERE = "--out FOLDER"
#: Pictures for a shop, which a build does not make and which show a face as it was.
_FLAT_LAYS = ("flat-lay", "flat-lay-colourways")
#: All that a build may put into the folder of a SKU.
NAMES = ("face.svg", "face.png", SHEET, "sheet.png", "cuts.svg", "press.pdf", "press.png", FINDINGS)


#: The pads that a collection file of a project makes: path of the design and values.
Makes = Callable[[Path, str], frozenset[tuple[str, frozenset[tuple[str, str]]]]]


def given_up(
    sku: str, target: Target, mine: str, ledger: Ledger, output: FolderWorkspace, makes: Makes
) -> dict[str, Record]:
    """The records of pads that once wrote this SKU's folder and no longer do, by their paths.

    `mine` is the path of the target's own record. Raises ProblemsError where one still does.
    """
    holders = {path: record for path, record in ledger.holders(sku).items() if path != mine}
    for record in holders.values():
        root = (output.root / record.project).resolve()
        same_design = (root, record.path) == (target.root, target.path)
        if same_design and _other_makes(root, record, target, makes):
            told = f"{sku} of {target.told} is made by {record.collection} too"
            mend = f"Take it out of one of them, call its values otherwise, or write elsewhere: {ELSEWHERE}."
        elif not same_design and _still_has(root, record):
            told = f"Its SKU {sku} is that of {root / record.path} too"
            mend = f"Give one of them a sku of its own, or write elsewhere: {ELSEWHERE}."
        else:
            continue
        message = f"{told}, whose files stand in {output.root / sku}."
        raise ProblemsError(Problem(Place(target.told if same_design else target.path, 0, 0), message, mend))
    return holders


def pads_made(root: Path, collection: str) -> frozenset[tuple[str, frozenset[tuple[str, str]]]]:
    """What a collection file makes by now (see Makes), none where there is no such file; raises ProblemsError."""
    from padspec.collection.collection_file import read_collection

    workspace = FolderWorkspace(root)
    members = read_collection(collection, workspace).members if workspace.is_file(collection) else ()
    return frozenset((member.path, frozenset(member.variation.values)) for member in members)


def clear(
    sku: str, olds: dict[str, Record], kept: Collection[str], ledger: Ledger, output: FolderWorkspace
) -> None:
    """Take away what the folder of a SKU and earlier builds hold, except `kept` and what others wrote.

    `olds` are the records of those earlier builds, by their paths. A sheet is set aside.
    """
    mine = frozenset(olds)
    stale = {f"{sku}/{name}" for name in NAMES}.union(*(record.written for record in olds.values()))
    for path in sorted(stale.difference(kept)):
        if not ledger.written_by_others(path, mine):
            _take(path, output)


def set_flat_lays_aside(sku: str, output: FolderWorkspace) -> None:
    """A flat-lay of a face that has changed is no picture of the pad any more."""
    for name in _FLAT_LAYS:
        output.set_aside(f"{sku}/{name}.png", f"{sku}/{name}.old.png")


def withdraw(where: str, record: Record, error: ProblemsError, ledger: Ledger, output: FolderWorkspace) -> None:
    """Let nothing that a design made look as if it came from the design as it is now, which cannot be used."""
    findings, mine = f"{record.sku}/{FINDINGS}", frozenset([where])
    for path in record.written:
        if path != findings and path.startswith(f"{record.sku}/") and not ledger.written_by_others(path, mine):
            _take(path, output)
    if not ledger.written_by_others(findings, mine):
        withdraw_all(record.sku, output)
        output.write(findings, json_text(_failed(record, error)).encode("utf-8", "backslashreplace"))


def orphans(
    collection: str, members: Collection[Target], root: Path, ledger: Ledger, output: FolderWorkspace
) -> dict[str, Record]:
    """The records of variants that a collection no longer makes, by their paths.

    `collection` is its file, `members` all that it makes by now, in the project at `root`.
    """
    project = way_to(root, output)
    now = {(target.path, frozenset(target.variation.values)) for target in members}
    return {
        path: record
        for path, record in ledger.records.items()
        if record.values
        and (record.project, record.collection) == (project, collection)
        and (record.path, frozenset(record.values.items())) not in now
    }


def take_away(orphans: dict[str, Record], ledger: Ledger, output: FolderWorkspace) -> None:
    """Take away what some records wrote, and the records; sheets are set aside."""
    mine = frozenset(orphans)
    for where, record in orphans.items():
        for path in record.written:
            if not ledger.written_by_others(path, mine):
                _take(path, output)
        if not ledger.written_by_others(f"{record.sku}/{FINDINGS}", mine):
            withdraw_all(record.sku, output)
        ledger.remove(where)


def _take(path: str, output: FolderWorkspace) -> None:
    folder, _, name = path.rpartition("/")
    if name == SHEET:
        output.set_aside(path, f"{folder}/{SHEET_ASIDE}")
    else:
        output.remove(path)


def _failed(record: Record, error: ProblemsError) -> dict[str, Any]:
    told = {key: record.summary[key] for key in ("design", "sku", "file")}
    problems = [problem_data(problem) for problem in error.problems]
    return {**told, "state": "failed", "findings": [], "problems": problems}


def _other_makes(root: Path, record: Record, target: Target, makes: Makes) -> bool:
    """Whether another collection makes the variant of a record; those of one never share a SKU."""
    if not record.collection or record.collection == target.variation.file:
        return False
    try:
        return (record.path, frozenset(record.values.items())) in makes(root, record.collection)
    except ProblemsError:
        return True


def _still_has(root: Path, record: Record) -> bool:
    """Whether a design is there, and does not say by now that its SKU is another."""
    from padspec.reading.parsing.yaml_reader import decode, parse_leniently
    from padspec.reading.tree import Scalar

    try:
        workspace = FolderWorkspace(root)
        if not workspace.is_file(record.path):
            return False
        tree, _ = parse_leniently(decode(workspace.read(record.path), record.path), record.path)
    except ProblemsError:
        return True
    named = tree.get("sku") if tree else None
    own = record.summary["base_sku"]
    return not isinstance(named, Scalar) or named.text.casefold() == own.casefold()
