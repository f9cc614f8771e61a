"""What a command line names, opened: the job, and the designs that it is about."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.own_sku import own_skus
from padspec.collection.targets import Target, project_root, targets
from padspec.jobs.job import JOB_ENDING, Job, job_from_words, read_job
from padspec.pipeline import Pad, make
from padspec.workspace import FolderWorkspace

UNNAMED = "Job"


@dataclass(frozen=True, slots=True)
class Loaded:
    """A job, its designs at every stage, and the project folder that they lie in."""

    job: Job
    pads: tuple[Pad, ...]
    root: Path


def load(
    paths: tuple[str, ...], words: tuple[str, ...], gang: bool, tell: Callable[[str], Callable[[str], None]]
) -> Loaded:
    """Open a job file, or designs with numbers of pads in words; `tell` gives a listener for each design's path.

    Raises ProblemsError for what cannot be used, and for designs of more than one project: they have different
    studios, and no sheet in common.
    """
    files = [path for path in paths if path.endswith((JOB_ENDING, ".job.yml"))]
    others = tuple(path for path in paths if path not in files)
    _refuse_two(files, words)
    found = targets(others) if others or not files else _beside(files[0])
    refuse_two_projects(found, others)
    job = job_at(files[0]) if files else job_from_words(UNNAMED, words, gang)
    return load_job(job if gang else Job(job.name, job.wishes, False), found, tell)


def load_job(job: Job, found: tuple[Target, ...], tell: Callable[[str], Callable[[str], None]]) -> Loaded:
    """A job with its designs at every stage, which are among the pads found, all in one project."""
    wished = _wished(job, found)
    pads = tuple(
        make(target.path, FolderWorkspace(target.root), tell(target.path), target.variation) for target in wished
    )
    if job.name == UNNAMED and len(pads) == 1:
        job = replace(job, name=pads[0].design.name)
    return Loaded(job, pads, found[0].root)


def coded(found: tuple[Target, ...]) -> dict[str, Target]:
    """Pads by their SKUs; of those that share one, the last."""
    skus = own_skus(found)
    return {target.variation.sku_of(skus[target.root, target.path]): target for target in found}


def _wished(job: Job, found: tuple[Target, ...]) -> tuple[Target, ...]:
    """The pads that a job names: of a collection of many, no others need be made. All where it names one that is
    not there, which is told with the names of all.
    """
    by_sku = coded(found)
    named = [wish.sku for wish in job.wishes]
    if len(by_sku) < len(found) or not all(name in by_sku for name in named):
        return found
    return tuple(target for sku, target in by_sku.items() if sku in named)


def refuse_two_projects(found: tuple[Target, ...], paths: tuple[str, ...]) -> None:
    """Raise ProblemsError for pads of more than one project: they have different studios and ledgers."""
    roots = tuple(dict.fromkeys(target.root for target in found))
    if len(roots) > 1:
        shown = " and ".join(str(root) for root in roots[:2])
        message = f"These designs belong to {len(roots)} projects, {shown}."
        raise ProblemsError(Problem(Place(paths[0], 0, 0), message, "Plan one project at a time."))


def _refuse_two(files: list[str], words: tuple[str, ...]) -> None:
    if len(files) > 1:
        message = f"Here are {len(files)} jobs."
        raise ProblemsError(Problem(Place(files[1], 0, 0), message, "Plan one at a time."))
    if files and words:
        message = "The job says how many pads, and --pads does too."
        raise ProblemsError(Problem(Place(files[0], 0, 0), message, "Leave one of them out."))


def _beside(file: str) -> tuple[Target, ...]:
    """The designs of the folder that a job lies in."""
    folder = Path(file).parent
    try:
        return targets((str(folder),))
    except ProblemsError as error:
        if not Path(file).is_file() or any(folder.glob("*.pad.yaml")):
            raise
        message = "No design lies beside this job."
        mend = "Put it into the folder of its designs, or name them: padspec plan JOB FOLDER."
        raise ProblemsError(Problem(Place(file, 0, 0), message, mend)) from error


def job_at(file: str) -> Job:
    """The job of a file anywhere on disk; raises ProblemsError."""
    path = Path(file)
    if not path.is_file():
        message = "There is no such job."
        raise ProblemsError(Problem(Place(file, 0, 0), message, "Write one: padspec explain job shows how."))
    root = project_root(path)
    return read_job((path.parent.resolve() / path.name).relative_to(root).as_posix(), FolderWorkspace(root))
