"""The words of padspec stock: numbers of pads by SKU, a job, the folder that is meant."""

from dataclasses import dataclass
from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import nearest
from padspec.base.place import Place
from padspec.cli.say import one_problem
from padspec.collection.targets import project_root, why
from padspec.stock.events import KINDS, MOST_PADS, Kind

#: As in padspec.jobs.job, which brings the whole planner along: a sale is entered with a customer waiting.
_JOB_ENDINGS = (".job.yaml", ".job.yml")


@dataclass(frozen=True, slots=True)
class Words:
    """SKUs with their numbers, as written, and the project that is meant."""

    pads: tuple[tuple[str, str], ...]
    root: Path


def parted(kind: Kind | None, words: tuple[str, ...]) -> Words:
    """What the words after an event mean, or those of a command without one. Raises ProblemsError."""
    pairs = [word for word in words if "=" in word]
    jobs = [word for word in words if word not in pairs and word.endswith(_JOB_ENDINGS)]
    folders = [word for word in words if word not in pairs and word not in jobs]
    if len(folders) > 1:
        raise one_problem(folders[1], f"Here are {len(folders)} folders.", "Name 1 project.")
    for folder in folders:
        _refuse_no_folder(folder, kind)
    root = _root([*folders, *jobs])
    if kind is None:
        if pairs or jobs:
            mend = f"Begin with one of {', '.join(KINDS)}: padspec stock made {(pairs + jobs)[0]}"
            raise one_problem((pairs + jobs)[0], "What became of these pads?", mend)
        return Words((), root)
    pads = [(sku.strip(), number.strip()) for sku, _, number in (word.rpartition("=") for word in pairs)]
    for job in jobs:
        pads += _of_job(job, kind, root)
    if not pads:
        raise one_problem(kind, "This names no pads.", f"Write SKU=NUMBER: padspec stock {kind} NG-MOTH=3")
    _refuse_twice(pads)
    return Words(tuple(pads), root)


def _root(paths: list[str]) -> Path:
    try:
        return project_root(Path(paths[0] if paths else "."))
    except (OSError, RuntimeError, ValueError) as error:
        raise one_problem(paths[0] if paths else ".", f"This path cannot be used: {why(error)}.") from None


def _refuse_no_folder(word: str, kind: Kind | None) -> None:
    try:
        there = Path(word).exists()
    except (OSError, ValueError):
        there = False
    if there:
        return
    if kind:
        mend = f"Write {word}=NUMBER, from 1 to {MOST_PADS}; or name a folder that is there."
        raise one_problem(word, "This is neither SKU=NUMBER nor a job nor a folder.", mend)
    near = nearest(word, KINDS)
    mend = f"Did you mean padspec stock {near}?" if near else f"Events: {', '.join(KINDS)}."
    raise one_problem(word, "This is neither an event nor a folder that is there.", mend)


def _of_job(file: str, kind: Kind, root: Path) -> list[tuple[str, str]]:
    from padspec.jobs.load import job_at

    if kind != "made":
        mend = f"Enter it with padspec stock made {file}, or write the numbers: padspec stock {kind} NG-MOTH=3"
        raise one_problem(file, "A job says what is made.", mend)
    if project_root(Path(file)) != root:
        message = f"This job belongs to another project, {project_root(Path(file))}."
        raise one_problem(file, message, f"Name one that lies in {root}.")
    return [(wish.sku, str(wish.pads)) for wish in job_at(file).wishes]


def _refuse_twice(pads: list[tuple[str, str]]) -> None:
    skus = [sku for sku, _ in pads]
    problems = [
        Problem(Place(sku, 0, 0), f"{skus.count(sku)} numbers are given for this SKU.", "Write 1, all in all.")
        for sku in dict.fromkeys(skus)
        if skus.count(sku) > 1
    ]
    if problems:
        raise ProblemsError(*problems)
