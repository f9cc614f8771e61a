"""Nothing stale looks fresh: who owns a folder of results, and what an earlier build left there goes."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.record import RECORDS, Record, recall
from padspec.collection.targets import Target
from padspec.report import json_text, problem_data
from padspec.workspace import FolderWorkspace

SHEET, SHEET_ASIDE, FINDINGS = "sheet.pdf", "sheet.old.pdf", "findings.json"
#: All that a build may put into the folder of a SKU.
NAMES = ("face.svg", "face.png", SHEET, "sheet.png", "cuts.svg", "press.pdf", "press.png", FINDINGS)


@dataclass(frozen=True, slots=True)
class Others:
    """The records of other designs in one output folder, by their paths."""

    records: tuple[tuple[str, Record], ...]

    @property
    def files(self) -> frozenset[str]:
        """All that they wrote: pictures are shared, for one."""
        return frozenset(path for _, record in self.records for path in record.written)

    def without(self, given_up: "Others") -> "Others":
        """These but for some."""
        return Others(tuple(entry for entry in self.records if entry not in given_up.records))


def others_than(mine: str, output: FolderWorkspace) -> Others:
    """Every record of the output folder but the one at `mine`."""
    paths = (path for path in output.neighbours(RECORDS, ".json") if path != mine)
    found = ((path, recall(path, output)) for path in paths)
    return Others(tuple((path, record) for path, record in found if record is not None))


def given_up(sku: str, target: Target, others: Others, output: FolderWorkspace) -> Others:
    """The records of designs that once wrote this SKU's folder and no longer do.

    Raises ProblemsError where one still does.
    """
    holders = tuple(entry for entry in others.records if entry[1].sku.casefold() == sku.casefold())
    for _, record in holders:
        root = (output.root / record.project).resolve()
        if _still_has(sku, root, record.path):
            message = (
                f"Its SKU {sku} is that of {root / record.path} too, whose files stand in {output.root / sku}."
            )
            mend = "Give one of them a sku of its own, or write elsewhere: --out FOLDER."
            raise ProblemsError(Problem(Place(target.path, 0, 0), message, mend))
    return Others(holders)


def clear(sku: str, olds: tuple[Record, ...], kept: frozenset[str], output: FolderWorkspace) -> None:
    """Take away what the folder of a SKU and earlier builds hold, except `kept`; a sheet is set aside."""
    stale = {f"{sku}/{name}" for name in NAMES}.union(*(record.written for record in olds))
    for path in sorted(stale - kept):
        _take(path, output)


def withdraw(record: Record, error: ProblemsError, kept: frozenset[str], output: FolderWorkspace) -> None:
    """Let nothing that a design made look as if it came from the design as it is now, which cannot be used."""
    findings = f"{record.sku}/{FINDINGS}"
    for path in record.written:
        if path not in kept and path != findings and path.startswith(f"{record.sku}/"):
            _take(path, output)
    if findings not in kept:
        output.write(findings, json_text(_failed(record, error)).encode("utf-8", "backslashreplace"))


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


def _still_has(sku: str, root: Path, path: str) -> bool:
    """Whether a design is there, and does not say by now that its SKU is another."""
    from padspec.reading.parsing.yaml_reader import decode, parse_leniently
    from padspec.reading.tree import Scalar

    try:
        workspace = FolderWorkspace(root)
        if not workspace.is_file(path):
            return False
        tree, _ = parse_leniently(decode(workspace.read(path), path), path)
    except ProblemsError:
        return True
    named = tree.get("sku") if tree else None
    return not isinstance(named, Scalar) or named.text.casefold() == sku.casefold()
