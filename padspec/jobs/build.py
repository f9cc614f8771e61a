"""The pages of a plan, written: what is printed, in order, with copies; the cuts drawn; the plan as data."""

import json

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.jobs.as_data import plan_data
from padspec.jobs.figures import Figures
from padspec.jobs.pages import NAME, PLAN, folder_of, page_files
from padspec.jobs.plan import JobPlan
from padspec.report import json_text
from padspec.workspace import FolderWorkspace


def build_plan(plan: JobPlan, figures: Figures, output: FolderWorkspace, proofs: bool) -> tuple[str, ...]:
    """Write every page of a plan; the paths written, under the output folder, pages first.

    Pages of an earlier plan go: nothing stale looks fresh. Each file is whole, the plan last. Raises ProblemsError
    where the folder holds the pages of a job of another name.
    """
    folder = folder_of(plan.name)
    _refuse_another(plan.name, folder, output)
    files = page_files(plan, figures.looked, proofs)
    for path in _pages_there(folder, output) - files.keys():
        output.remove(path)
    for path, data in files.items():
        output.write(path, data)
    told = {**plan_data(plan, figures), "files": list(files)}
    output.write(f"{folder}/{PLAN}", json_text(told).encode("utf-8"))
    return (*files, f"{folder}/{PLAN}")


def withdraw_plan(name: str, output: FolderWorkspace) -> None:
    """Take away what an earlier plan of a job wrote."""
    folder = folder_of(name)
    if _name_there(folder, output) in (None, name):
        for path in (*sorted(_pages_there(folder, output)), f"{folder}/{PLAN}"):
            output.remove(path)


def _pages_there(folder: str, output: FolderWorkspace) -> set[str]:
    """Every file of the folder that is named as a page of a plan is."""
    return {path for path in output.neighbours(folder, "") if NAME.fullmatch(path.rpartition("/")[2])}


def _name_there(folder: str, output: FolderWorkspace) -> str | None:
    """The job whose plan lies in a folder; None where there is none that can be read."""
    try:
        told = json.loads(output.read(f"{folder}/{PLAN}")) if output.is_file(f"{folder}/{PLAN}") else {}
    except (ProblemsError, ValueError):
        return None
    name = told.get("job") if isinstance(told, dict) else None
    return name if isinstance(name, str) else None


def _refuse_another(name: str, folder: str, output: FolderWorkspace) -> None:
    other = _name_there(folder, output)
    if other not in (None, name):
        message = f"The pages of the job {other} lie in {output.root / folder}, and those of {name} would too."
        raise ProblemsError(Problem(Place(folder, 0, 0), message, "Give one of the jobs another name."))
