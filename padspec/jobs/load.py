"""What a command line names, opened: the job, and the designs that it is about."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.targets import project_root, targets
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
    found = targets(others or tuple(str(Path(file).parent) for file in files))
    roots = tuple(dict.fromkeys(target.root for target in found))
    if len(roots) > 1:
        shown = " and ".join(str(root) for root in roots[:2])
        message = f"These designs belong to {len(roots)} projects, {shown}."
        raise ProblemsError(Problem(Place(others[0], 0, 0), message, "Plan one project at a time."))
    job = _job(files[0]) if files else job_from_words(UNNAMED, words, gang)
    wanted = {wish.sku for wish in job.wishes}
    pads = tuple(make(target.path, FolderWorkspace(target.root), tell(target.path)) for target in found)
    named = tuple(pad for pad in pads if "" in wanted or pad.design.sku in wanted)
    return Loaded(job if gang else Job(job.name, job.wishes, False), named or pads, roots[0])


def _refuse_two(files: list[str], words: tuple[str, ...]) -> None:
    if len(files) > 1:
        message = f"Here are {len(files)} jobs."
        raise ProblemsError(Problem(Place(files[1], 0, 0), message, "Plan one at a time."))
    if files and words:
        message = "The job says how many pads, and --pads does too."
        raise ProblemsError(Problem(Place(files[0], 0, 0), message, "Leave one of them out."))


def _job(file: str) -> Job:
    path = Path(file)
    if not path.is_file():
        message = "There is no such job."
        raise ProblemsError(Problem(Place(file, 0, 0), message, "Write one: padspec explain job shows how."))
    root = project_root(path)
    return read_job((path.parent.resolve() / path.name).relative_to(root).as_posix(), FolderWorkspace(root))
