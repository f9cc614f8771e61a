"""The pages of a plan, written: what is printed, in order, with copies; the cuts drawn; the plan as data."""

import json

from padspec.base.errors import ProblemsError
from padspec.jobs.as_data import plan_data
from padspec.jobs.figures import Figures
from padspec.jobs.pages import NAME, PLAN, folder_of, page_files
from padspec.jobs.plan import JobPlan
from padspec.report import json_text
from padspec.workspace import FolderWorkspace


def build_plan(plan: JobPlan, figures: Figures, output: FolderWorkspace, proofs: bool) -> tuple[str, ...]:
    """Write every page of a plan; the paths written, under the output folder, pages first.

    Pages of an earlier plan of the same name go: nothing stale looks fresh. Each file is whole, the plan last.
    """
    folder = folder_of(plan.name)
    files = page_files(plan, proofs)
    for path in _earlier(folder, output) - files.keys():
        output.remove(path)
    for path, data in files.items():
        output.write(path, data)
    told = {**plan_data(plan, figures), "files": list(files)}
    output.write(f"{folder}/{PLAN}", json_text(told).encode("utf-8"))
    return (*files, f"{folder}/{PLAN}")


def _earlier(folder: str, output: FolderWorkspace) -> set[str]:
    """The pages that an earlier plan names as its own and that lie there still."""
    try:
        told = json.loads(output.read(f"{folder}/{PLAN}")) if output.is_file(f"{folder}/{PLAN}") else {}
    except (ProblemsError, ValueError):
        return set()
    names = told.get("files", []) if isinstance(told, dict) else []
    own = (name.rpartition("/") for name in names if isinstance(name, str))
    paths = {f"{folder}/{name}" for parent, _, name in own if parent == folder and NAME.fullmatch(name)}
    return {path for path in paths if output.is_file(path)}
