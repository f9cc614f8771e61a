"""Nothing stale looks fresh: what no run makes any more is withdrawn, and no two runs write one folder."""

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.records.volumes import folder_of, withdraw_all
from padspec.personal.record import FOLDER, PersonalRecord, recall
from padspec.workspace import FolderWorkspace


def records(output: FolderWorkspace) -> dict[str, PersonalRecord]:
    """Every record of a run that can be trusted, by its path."""
    found = {where: recall(where, output) for where in output.neighbours(FOLDER, ".json")}
    return {where: record for where, record in found.items() if record is not None}


def others(
    known: dict[str, PersonalRecord], project: str, collection: str, skus: frozenset[str]
) -> dict[str, PersonalRecord]:
    """Those of a collection's run for pads that it is not for any more; `project` is the way to its project."""
    return {
        where: record
        for where, record in known.items()
        if (record.project, record.collection) == (project, collection) and record.sku not in skus
    }


def withdraw(some: dict[str, PersonalRecord], output: FolderWorkspace) -> None:
    """Let nothing of some runs look as if it came from what is wished for now."""
    for where, record in some.items():
        withdraw_all(record.sku, output)
        output.remove(where)


def refuse_shared(
    known: dict[str, PersonalRecord],
    project: str,
    collection: str,
    skus: frozenset[str],
    place: Place,
    output: FolderWorkspace,
) -> None:
    """Two runs that write the same folder would each take the other's volumes away; raises ProblemsError."""
    taken = {sku.casefold() for sku in skus}
    for record in known.values():
        other = (output.root / record.project).resolve() / record.collection
        mine = (record.project, record.collection) == (project, collection)
        if record.sku.casefold() in taken and not mine and other.is_file():
            named = record.collection if record.project == project else str(other)
            message = f"The volumes of {record.sku} in {output.root / folder_of(record.sku)} are those of {named}."
            mend = f"Write these elsewhere: --out FOLDER; or take personal out of {named} and build it."
            raise ProblemsError(Problem(place, message, mend))
