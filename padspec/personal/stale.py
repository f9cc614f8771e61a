"""Nothing stale looks fresh: volumes that no run makes any more are set aside, their lists taken away."""

from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.personal.record import FOLDER, recall
from padspec.workspace import FolderWorkspace

_FINDINGS = "findings.json"


def folder_of(sku: str) -> str:
    """Where the volumes of a pad lie, under the output folder."""
    return f"{sku}/personal"


def withdraw_volumes(folder: str, output: FolderWorkspace, kept: frozenset[str] = frozenset()) -> None:
    """Set aside or take away every volume and list of a folder but those of these names."""
    for path in output.neighbours(folder, ""):
        name = path.rpartition("/")[2]
        if name.startswith("volume-") and name not in kept and not name.endswith(".old.pdf"):
            if name.endswith(".pdf"):
                output.set_aside(path, f"{path.removesuffix('.pdf')}.old.pdf")
            else:
                output.remove(path)


def withdraw_run(where: str, sku: str, output: FolderWorkspace) -> None:
    """Let nothing of a pad's run look as if it came from what is wished for now; `where` is its record's path."""
    withdraw_volumes(folder_of(sku), output)
    output.remove(f"{folder_of(sku)}/{_FINDINGS}")
    output.remove(where)


def refuse_shared(
    collection: str, skus: frozenset[str], place: Place, root: Path, output: FolderWorkspace
) -> None:
    """Two runs that write the same folder would each take the other's volumes away; raises ProblemsError."""
    for where in output.neighbours(FOLDER, ".json"):
        record = recall(where, output)
        told = record.summary if record is not None else {}
        other, sku = str(told.get("collection")), told.get("sku")
        if sku in skus and other != collection and (root / other).is_file():
            message = f"The volumes of {sku} in {output.root / folder_of(str(sku))} are those of {other}."
            mend = f"Write these elsewhere: --out FOLDER; or take personal out of {other} and build it."
            raise ProblemsError(Problem(place, message, mend))


def withdraw_others(collection: str, skus: frozenset[str], output: FolderWorkspace) -> None:
    """The same for every pad that a collection's run was for and is not for any more."""
    for where in output.neighbours(FOLDER, ".json"):
        record = recall(where, output)
        if record is None or record.summary.get("collection") != collection:
            continue
        sku = record.summary.get("sku")
        if isinstance(sku, str) and sku not in skus:
            withdraw_run(where, sku, output)
