"""padspec build --plan: the pages of a job, to be printed in order."""

from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import click

from padspec.base.errors import ProblemsError
from padspec.cli.plan import failing, planned, say_failing, say_looked
from padspec.cli.say import counted, one_problem, say_json, say_problems, shown_path, table, teller, unusable
from padspec.jobs.as_data import plan_data
from padspec.jobs.build import build_plan, withdraw_plan
from padspec.jobs.figures import figures_of
from padspec.jobs.job import JOB_ENDING, wanted_of
from padspec.jobs.load import Loaded, load
from padspec.jobs.pages import folder_of, page_stem
from padspec.jobs.plan import JobPlan
from padspec.sheet.cautions import CAUTIONS
from padspec.workspace import FolderWorkspace

REMARK = "PRINTED DESPITE ERRORS"


@dataclass(frozen=True, slots=True)
class PagesRun:
    """How the pages were asked for."""

    out: str | None
    proofs: bool
    despite_errors: bool
    as_json: bool
    quiet: bool
    verbose: bool


def build_pages(job: str, paths: tuple[str, ...], run: PagesRun) -> int:
    """Make the pages of a job; the exit status."""
    loaded = None
    try:
        if not job.endswith((JOB_ENDING, ".job.yml")):
            raise one_problem(
                job, "This is not a job.", f"A job's name ends in {JOB_ENDING}: padspec explain job."
            )
        loaded = load((job, *paths), (), True, lambda path: teller(run.verbose, path))
        wanted = wanted_of(loaded.job, tuple(pad.design for pad in loaded.pads))
        failed = failing(loaded, wanted)
        plan = planned(loaded, wanted, REMARK if failed else "")
        if failed and not run.despite_errors:
            withdraw_plan(plan.name, FolderWorkspace(_folder(loaded, run)))
            return _held_back(failed, run)
        figures = figures_of(plan)
        output = FolderWorkspace(_folder(loaded, run))
        files = build_plan(plan, figures, output, run.proofs)
    except ProblemsError as error:
        if loaded is not None:
            with suppress(ProblemsError):  # the one that is told comes first
                withdraw_plan(loaded.job.name, FolderWorkspace(_folder(loaded, run)))
        if run.as_json:
            return unusable(error, as_json=True)
        say_problems(error, loaded.root if loaded else None)
        return 2
    shown = [shown_path(output.root / file) for file in files]
    if run.as_json:
        say_json({**plan_data(plan, figures), "designs_with_errors": list(failed), "files": shown})
    else:
        say_looked(figures, loaded)
    if not (run.as_json or run.quiet):
        _say_pages(plan, shown_path(output.root / folder_of(plan.name)))
        say_failing(failed)
    return 1 if failed else 0


def _folder(loaded: Loaded, run: PagesRun) -> Path:
    return Path(run.out) if run.out else loaded.root / "out"


def _held_back(failed: tuple[str, ...], run: PagesRun) -> int:
    if run.as_json:
        say_json({"designs_with_errors": list(failed), "files": []})
    else:
        names = ", ".join(failed)
        click.echo(
            f"No page was written: {counted(len(failed), 'design')} with errors ({names}). "
            "Mend the errors first (padspec check), or add --despite-errors.",
            err=True,
        )
    return 1


def _say_pages(plan: JobPlan, folder: str) -> None:
    rows = [
        (
            f"{page.number}",
            page.sheet.size_name,
            f"{page.sheet.copies}",
            f"{folder}/{page_stem(page, plan)}-{page.sheet.copies}-copies.pdf",
        )
        for page in plan.pages
    ]
    click.echo(f"{plan.name}: print these in order, at 100 %, no scaling.")
    click.echo(table(("page", "on", "copies", "file"), rows))
    click.echo(f"The cuts are drawn in {folder}/page-N-cuts.svg and told by padspec plan.")
    click.echo(CAUTIONS[plan.wanted[0].design.studio.cutter.kind])
