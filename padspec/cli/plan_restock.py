"""padspec plan --restock: what to make for the next markets, proposed from the ledger and planned as any job."""

from dataclasses import replace

import click

from padspec.base.errors import ProblemsError, UnitError
from padspec.base.units import parse_share
from padspec.cli.plan import failing, planned, say_failing, say_looked
from padspec.cli.plan_text import plan_lines
from padspec.cli.restock_options import RestockOptions
from padspec.cli.restock_text import restock_data, restock_lines, told_for
from padspec.cli.say import one_problem, say_json, say_problems, shown_path, teller, unusable
from padspec.collection.targets import Target, targets
from padspec.jobs.as_data import plan_data
from padspec.jobs.figures import figures_of
from padspec.jobs.job import JOB_ENDING, job_from_words, wanted_of
from padspec.jobs.load import Loaded, coded, load_job, refuse_two_projects
from padspec.jobs.plan import JobPlan
from padspec.jobs.restock import Proposal, RestockWish, filled, propose, with_made, write_job
from padspec.resolve.stall import CHANCES, read_stall, within
from padspec.workspace import FolderWorkspace


def plan_restock(
    paths: tuple[str, ...], words: tuple[str, ...], gang: bool, options: RestockOptions, as_json: bool
) -> int:
    """Propose what to make, plan it as any job, and write the job where that is wished; the exit status."""
    loaded, plan, root = None, None, None
    try:
        found = _meant(paths)
        root = found[0].root
        proposal, loaded = _proposed(found, words, gang, options)
        if loaded is not None:
            wanted = wanted_of(loaded.job, tuple(pad.design for pad in loaded.pads))
            plan = filled(planned(loaded, wanted), proposal)
            proposal = with_made(proposal, plan)
        written = (
            write_job(proposal, told_for(proposal), FolderWorkspace(root)) if plan and options.write else None
        )
    except ProblemsError as error:
        if as_json:
            return unusable(error, as_json)
        say_problems(error, root)
        return 2
    failed = failing(loaded, plan.wanted) if loaded and plan else ()
    if as_json:
        told = {"restock": restock_data(proposal), "written": written}
        told |= plan_data(plan, figures_of(plan)) if plan else {}
        say_json({**told, "designs_with_errors": list(failed)})
        return 1 if failed else 0
    click.echo("\n".join(restock_lines(proposal)))
    if written:
        shown = shown_path(root / written)
        click.echo(f"Wrote {shown}. When the pads are made: padspec stock made {shown}")
    if loaded and plan:
        _say_plan(plan, loaded, failed)
    return 1 if failed else 0


def _say_plan(plan: JobPlan, loaded: Loaded, failed: tuple[str, ...]) -> None:
    figures = figures_of(plan)
    say_failing(failed)
    say_looked(figures, loaded)
    click.echo("\n".join(["", *plan_lines(plan, figures)]))


def _meant(paths: tuple[str, ...]) -> tuple[Target, ...]:
    """The designs that may be made, all of one project."""
    jobs = [path for path in paths if path.endswith((JOB_ENDING, ".job.yml"))]
    if jobs:
        raise one_problem(jobs[0], "A job says what to make, and --restock does too.", "Leave one of them out.")
    found = targets(paths)
    refuse_two_projects(found, paths)
    return found


def _proposed(
    found: tuple[Target, ...], words: tuple[str, ...], gang: bool, options: RestockOptions
) -> tuple[Proposal, Loaded | None]:
    """What to make of some designs, and the job of it opened: None where there is nothing to make."""
    workspace = FolderWorkspace(found[0].root)
    by_sku = coded(found)
    proposal = propose(tuple(by_sku), workspace, _wish(words, workspace, options))
    job = proposal.job
    loaded = load_job(replace(job, gang=gang), found, lambda path: teller(False, path)) if job else None
    return proposal, loaded


def _wish(words: tuple[str, ...], workspace: FolderWorkspace, options: RestockOptions) -> RestockWish:
    stall = read_stall(workspace)
    fixed = job_from_words("", words, True).wishes if words else ()
    bare = next((wish for wish in fixed if not wish.sku), None)
    if bare is not None:
        mend = f"Name its pad, --pads SKU={bare.pads}; or have so many of each on the table: --least {bare.pads}."
        raise one_problem(f"--pads {bare.pads}", "With --restock a number is for one pad.", mend)
    return RestockWish(
        replace(
            stall,
            chance=_chance(options.chance) if options.chance else stall.chance,
            markets=options.markets or stall.markets,
            least=stall.least if options.least is None else options.least,
        ),
        options.place,
        tuple((wish.sku, wish.pads) for wish in fixed),
    )


def _chance(text: str) -> float:
    try:
        chance = parse_share(text)
    except UnitError as error:
        raise one_problem(f"--chance {text}", error.message, error.mend) from None
    if not within(chance):
        raise one_problem(f"--chance {text}", "This is no chance to stock by.", CHANCES)
    return chance
